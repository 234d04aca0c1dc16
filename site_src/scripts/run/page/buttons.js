// The large button and Change, below the rows: what they say, and what a press of the large one does.

import { make } from "../../lib/dom.js";
import { NOTICE_MS, nextMark } from "../engine.js";
import { tried } from "../offers.js";
import { mainAction } from "../view.js";
import { crewName, timeOfDay } from "../words.js";
import { button, held } from "./press.js";
import { put } from "./put.js";

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

/** For whom the large button is: the row that was touched, where that may go or be held; else all.
 * @param {import("../types.js").State} state
 * @param {string | null} open */
const whomFor = (state, open) => (state.crews.length > 1 && mainAction(state, open) ? open : null);

export class Buttons {
  /** @param {import("./app.js").App} app */
  constructor(app) {
    this.app = app;
    /** @type {string} what they say now */
    this.mode = "";
    this.main = held("run-main", [make("strong"), make("small")], () => this.pressed());
    this.changing = button("run-button", [make("span"), make("small")], () => app.onChange());
  }

  /** Have them say anew what they do. */
  renew() {
    this.mode = "";
  }

  /** They are made anew only where they do something else.
   * @param {import("./session.js").Session} session
   * @param {import("../types.js").State} state
   * @param {import("../view.js").Row[]} shown */
  draw(session, state, shown) {
    const { app, main, changing } = this;
    const { canEnd } = app.ends;
    const [action, words, mark] = said(session, state, shown, app.open);
    const mode = `${action} ${words}${mark} ${session.run.changes.length} ${canEnd}`;
    if (this.mode === mode && main.isConnected) {
      return;
    }
    this.mode = mode;
    if (!main.isConnected || app.foot.childElementCount !== 3) {
      app.foot.replaceChildren(app.stop, main, changing);
    }
    const [large, small] = /** @type {[Element, Element]} */ ([...main.children]);
    put(large, session.role === "follow" ? "Lead from here" : action === "hold" ? "Hold" : `Go${mark}`);
    put(small, [words, action === "go" ? this.endOfGo(state) : ""].filter(Boolean).join("\n"));
    const [change, about] = /** @type {[Element, Element]} */ ([...changing.children]);
    put(change, session.role === "lead" ? "Change" : "More");
    put(about, canEnd);
    main.disabled = session.role === "lead" && action === null;
    main.classList.toggle("is-go", action === "go");
  }

  /** Go is a change like others: its end is shown before it is made.
   * @param {import("../types.js").State} state */
  endOfGo(state) {
    const offer = tried(state, { at: state.now, do: "go", who: whomFor(state, this.app.open) });
    return offer ? `${offer.isFrom ? "from" : "ends"} ${timeOfDay(offer.ends)}` : "";
  }

  pressed() {
    const { app } = this;
    const session = /** @type {import("./session.js").Session} */ (app.session);
    if (session.role === "follow") {
      session.role = "lead";
      session.keep();
      this.renew();
      app.draw();
      return;
    }
    const state = session.now();
    const who = whomFor(state, app.open);
    const action = mainAction(state, who);
    if (action) {
      app.change({ do: action, who });
    }
  }
}
