// The frame of the run's page: the time on top, Stop, Go and Change below, and between them the rows or one panel. Drawn once a second.

import { make } from "../../lib/dom.js";
import { read, write } from "../../lib/storage.js";
import { rows } from "../view.js";
import { timeOfDay } from "../words.js";
import { Buttons } from "./buttons.js";
import { Ends } from "./ends.js";
import { lastChange } from "./last.js";
import { guard, atOnce, button } from "./press.js";
import { further, whole } from "./pages.js";
import { put } from "./put.js";
import { Rows } from "./rows.js";
import { give, signs } from "./signs.js";
import { ask, onLost, SAID } from "./wake.js";

/** @typedef {{title: string, nodes: Node[], beside?: Node[], buttons?: Node[], tick?: () => void, isBare?: boolean, name?: string}} Panel
 *   `beside`: beside the title, on every screen of it; `isBare`: no way back by the foot */

const LOOK = "run-look";
const LATE_DRAW_MS = 5;
const FRESH_MS = 2000; // a send-off longer ago than this gives no sign: the page was frozen

export class App {
  /** @param {HTMLElement} box */
  constructor(box) {
    /** @type {import("./session.js").Session | null} */
    this.session = null;
    /** @type {Panel | null} */
    this.panel = null;
    /** @type {string | null} the row that was touched */
    this.open = null;
    /** @type {import("./wake.js").Wake | null} */
    this.wake = null;
    this.box = box;
    this.time = make("span", { class: "run-time" });
    this.ends = new Ends();
    this.marks = make("span", { class: "run-marks" });
    this.body = make("div", { class: "run-body" });
    this.last = make("div", { class: "run-last", role: "status" });
    this.foot = make("div", { class: "run-foot" });
    this.rows = new Rows((key) => this.touch(key));
    this.buttons = new Buttons(this);
    this.stop = atOnce("run-stop", ["Stop"], () => this.onStop());
    box.replaceChildren(make("div", { class: "run-top" }, this.time, this.ends.box, this.marks), this.body, this.last, this.foot);
    guard(document.documentElement);
    document.addEventListener("visibilitychange", () => this.wakeUp());
    document.addEventListener("keydown", ({ key }) => {
      if (key === "Escape" && this.panel && !this.panel.isBare) {
        this.close();
      }
    });
    onLost(() => {
      this.wake = "refused";
      this.draw();
    });
    this.setLook(this.look());
    /** Set by the parts that stand on this one. */
    this.onStop = () => {};
    this.onChange = () => {};
    this.onParted = () => {};
    /** @type {((told: string) => void)} */
    this.begin = () => {};
    /** Offer the rest of a panel where it does not fit. */
    this.measure = () => {};
    /** Back to the set-up. */
    this.again = () => {};
    /** @type {(() => import("./session.js").Session) | null} what would begin, while a run is set up */
    this.ready = null;
  }

  look() {
    return read(LOOK, { look: "bright" }).look;
  }

  /** @param {string} look bright or dark, apart from the site's */
  setLook(look) {
    write(LOOK, { look });
    document.documentElement.dataset.look = look === "dark" ? "dark" : "light";
    document.documentElement.dataset.runLook = look;
  }

  /** Show a panel in place of the rows; Stop stays where it is.
   * @param {Panel} panel */
  show(panel) {
    this.panel = panel;
    const body = make("div", { class: "panel-body" }, ...panel.nodes);
    this.body.replaceChildren(make("section", { class: `panel ${panel.name ?? ""}`, "aria-label": panel.title }, make("h2", { class: "panel-title", tabindex: "-1" }, panel.title), body, ...(panel.beside ?? [])));
    const more = button("run-button", ["More ↓"], () => { // no swipe scrolls
      further(body);
      this.measure();
    });
    const back = panel.isBare ? [] : [button("run-button", ["Back"], () => this.close())];
    this.foot.replaceChildren(this.stop, ...(panel.buttons ?? []), more, ...back);
    this.stop.hidden = !this.session && !this.ready; // where nothing is set up there is nothing to stop
    this.last.hidden = true;
    /** @type {HTMLElement | null} */ (this.body.querySelector(".panel-title"))?.focus();
    this.measure = () => {
      const { isAll, isLast } = whole(body);
      more.hidden = isAll;
      put(more, isLast ? "Top ↑" : "More ↓");
    };
    body.addEventListener("scroll", () => this.measure()); // a field that a key leads to comes into view by itself
    panel.tick?.();
    this.measure();
    this.draw();
  }

  /** Back to the rows; who uses keys goes on at Change, or at Go as a run begins. */
  close() {
    const { panel } = this;
    this.panel = null;
    this.body.replaceChildren(this.rows.box);
    this.buttons.renew();
    this.last.hidden = false;
    this.draw();
    const { main, changing } = this.buttons;
    (panel?.name === "setup-panel" && !main.disabled ? main : changing).focus();
  }

  /** Hold no run, and say nothing of one. */
  leave() {
    this.session = null;
    [this.time, this.ends.box, this.marks].forEach((part) => put(part, ""));
  }

  /** @param {string} key of the row that was touched */
  touch(key) {
    this.open = this.open === key ? null : key;
    this.draw();
  }

  /** Make a change, and draw what came of it.
   * @param {Omit<import("../types.js").Change, "at">} change */
  change(change) {
    const made = this.session?.change(change) ?? false;
    this.draw();
    return made;
  }

  /** Ask to be kept lit, and draw at once: on a return to the page. */
  async wakeUp() {
    if (document.visibilityState === "visible") {
      this.wake = this.session ? await ask() : this.wake;
      this.draw();
      this.schedule();
    } else {
      clearTimeout(this.timer);
    }
  }

  /** Draw at the next full second of the pool's clock, for as long as the page is seen. */
  schedule() {
    clearTimeout(this.timer);
    const past = (this.session?.clock.now() ?? Date.now()) % 1000;
    this.timer = setTimeout(() => {
      this.draw();
      this.schedule();
    }, 1000 - past + LATE_DRAW_MS);
  }

  draw() {
    const { session } = this;
    if (!session || document.visibilityState === "hidden") {
      return;
    }
    const state = session.now();
    put(this.time, timeOfDay(state.now, true));
    this.ends.draw(state, session);
    put(this.marks, this.wake === "held" || this.wake === null ? "" : "goes dark");
    this.marks.title = this.wake ? SAID[this.wake] : "";
    if (session.clock.parted() && this.panel?.name !== "parted-panel" && session.stoppedAt() === null) {
      this.onParted();
    }
    if (this.panel) {
      this.panel.tick?.();
      this.measure();
    } else {
      const shown = this.shown(state);
      this.sign(state);
      this.rows.draw(session, state, shown, this.open);
      this.buttons.draw(session, state, shown);
      lastChange(this);
    }
  }

  /** The rows; one that has done all is open no longer.
   * @param {import("../types.js").State} state */
  shown(state) {
    const all = rows(state);
    this.open = all.some(({ key, look }) => key === this.open && look === "over") ? null : this.open;
    return all;
  }

  /** Signs for what has just been sent off; none for what a frozen page missed.
   * @param {import("../types.js").State} state */
  sign(state) {
    const sent = state.crews.map(({ done }) => done.filter(({ step }) => step.kind === "rep").length);
    const fresh = state.crews.filter((crew, k) => {
      const at = crew.done[crew.done.length - 1]?.at ?? -Infinity;
      return this.sent !== undefined && sent[k] > (this.sent[k] ?? 0) && state.now - at < FRESH_MS;
    });
    this.sent = sent;
    this.rows.flash(signs().flash ? fresh.map(({ key }) => key) : []);
    if (fresh.length) {
      give();
    }
  }
}
