// The frame of the run's page: the time on top, Stop, Go and Change below, and between them the rows or one panel. Drawn once a second.

import { make } from "../../lib/dom.js";
import { read, write } from "../../lib/storage.js";
import { forecast } from "../forecast.js";
import { nextMark, NOTICE_MS } from "../engine.js";
import { tried, waysToCut } from "../offers.js";
import { mainAction, rows } from "../view.js";
import { crewName, gone, timeOfDay } from "../words.js";
import { lastChange } from "./last.js";
import { guard, atOnce, button, held } from "./press.js";
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

/**
 * What the large button does, and for whom.
 * @param {import("./session.js").Session} session
 * @param {import("../types.js").State} state
 * @param {import("../view.js").Row[]} shown
 * @param {string | null} open
 * @returns {[action: "go" | "hold" | null, whom: string, mark: string]}
 */
function said({ role, run }, state, shown, open) {
  if (role === "follow") {
    return [null, "", ""];
  }
  const row = shown.length > 1 ? shown.find(({ key }) => key === whomFor(state, open)) : undefined;
  const action = mainAction(state, row?.key ?? null);
  return [action, row ? crewName(row) : shown.length > 1 ? "all" : "", action === "go" ? ` ${timeOfDay(nextMark(state.now + NOTICE_MS, run.marks), true).slice(-3)}` : ""];
}

/** That a cut ends it by a time, where one is enough; "" where none is.
 * @param {import("../types.js").State} state
 * @param {number} until */
const canEndBy = (state, until) => (state.data.cuts?.length && waysToCut(state, until).some(({ ends }) => ends <= until) ? `can end ${timeOfDay(until)}` : "");

/** For whom the large button is: the row that was touched, where that may go or be held; else all.
 * @param {import("../types.js").State} state
 * @param {string | null} open */
const whomFor = (state, open) => (state.crews.length > 1 && mainAction(state, open) ? open : null);

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
    this.ends = make("span", { class: "run-ends" });
    this.marks = make("span", { class: "run-marks" });
    this.body = make("div", { class: "run-body" });
    this.last = make("div", { class: "run-last", role: "status" });
    this.foot = make("div", { class: "run-foot" });
    this.rows = new Rows((key) => this.touch(key));
    /** What the end was last worked out for, and said to be. */
    this.endsOf = "";
    this.endsSaid = "";
    /** What Change can do about an end that is too late. */
    this.canEnd = "";
    /** @type {string} what the large button says */
    this.mode = "";
    this.main = held("run-main", [make("strong"), make("small")], () => this.mainPressed());
    this.changing = button("run-button", [make("span"), make("small")], () => this.onChange());
    this.stop = atOnce("run-stop", ["Stop"], () => this.onStop());
    box.replaceChildren(make("div", { class: "run-top" }, this.time, this.ends, this.marks), this.body, this.last, this.foot);
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
    this.mode = "";
    this.last.hidden = false;
    this.draw();
    (panel?.name === "setup-panel" && !this.main.disabled ? this.main : this.changing).focus();
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
    this.drawEnds(state);
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
      this.drawFoot(state, shown);
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

  /** The end is worked out anew only where it may be another: after a change, and with each full mark that goes by while somebody waits.
   * @param {import("../types.js").State} state */
  drawEnds(state) {
    const session = /** @type {import("./session.js").Session} */ (this.session);
    const modes = state.crews.map(({ mode }) => mode).join(" ");
    const isWaiting = state.crews.some(({ mode }) => mode !== "running" && mode !== "over");
    const key = `${session.run.begun} ${session.run.changes.length} ${modes} ${isWaiting ? nextMark(state.now + NOTICE_MS, state.marks) : ""}`;
    if (this.endsOf !== key) {
      const { ends, isFrom } = forecast(state);
      const over_min = Math.floor(ends / 60_000) - Math.floor((session.run.until ?? Infinity) / 60_000); // of the minutes as they are shown
      const isOver = over_min > 0 && !state.crews.every(({ mode }) => mode === "over");
      this.endsOf = key;
      this.endsSaid = state.crews.every(({ mode }) => mode === "over") ? "over" : `ends ${isFrom ? "from " : ""}${timeOfDay(ends)}${isOver ? `, ${over_min} min over` : ""}`;
      this.ends.classList.toggle("is-over", isOver);
      this.canEnd = isOver && session.role === "lead" ? canEndBy(state, session.run.until ?? Infinity) : "";
    }
    put(this.ends, state.stopped === null ? this.endsSaid : `stopped ${gone(state.now - state.stopped)}`);
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

  /** The large button and Change, made anew only where they do something else.
   * @param {import("../types.js").State} state
   * @param {import("../view.js").Row[]} shown */
  drawFoot(state, shown) {
    const { session } = this;
    if (!session) {
      return;
    }
    const [action, words, mark] = said(session, state, shown, this.open);
    const mode = `${action} ${words}${mark} ${session.run.changes.length} ${this.canEnd}`;
    if (this.mode !== mode || !this.main.isConnected) {
      this.mode = mode;
      if (!this.main.isConnected || this.foot.childElementCount !== 3) {
        this.foot.replaceChildren(this.stop, this.main, this.changing);
      }
      const [large, small] = /** @type {[Element, Element]} */ ([...this.main.children]);
      put(large, session.role === "follow" ? "Lead from here" : action === "hold" ? "Hold" : `Go${mark}`);
      put(small, [words, action === "go" ? this.endOfGo(state) : ""].filter(Boolean).join("\n"));
      const [change, about] = /** @type {[Element, Element]} */ ([...this.changing.children]);
      put(change, session.role === "lead" ? "Change" : "More");
      put(about, this.canEnd);
      this.main.disabled = session.role === "lead" && action === null;
      this.main.classList.toggle("is-go", action === "go");
    }
  }

  /** Go is a change like others: its end is shown before it is made.
   * @param {import("../types.js").State} state */
  endOfGo(state) {
    const offer = tried(state, { at: state.now, do: "go", who: whomFor(state, this.open) });
    return offer ? `${offer.isFrom ? "from" : "ends"} ${timeOfDay(offer.ends)}` : "";
  }

  mainPressed() {
    const session = /** @type {import("./session.js").Session} */ (this.session);
    if (session.role === "follow") {
      session.role = "lead";
      session.keep();
      this.mode = "";
      this.draw();
      return;
    }
    const state = session.now();
    const who = whomFor(state, this.open);
    const action = mainAction(state, who);
    if (action) {
      this.change({ do: action, who });
    }
  }
}
