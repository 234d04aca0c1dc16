// When the run ends as it stands now, and whether a change can bring that forward.

import { make } from "../../lib/dom.js";
import { NOTICE_MS, nextMark } from "../engine.js";
import { forecast } from "../forecast.js";
import { waysToCut } from "../offers.js";
import { gone, timeOfDay } from "../words.js";
import { put } from "./put.js";

/** That a cut ends it by a time, where one is enough; "" where none is.
 * @param {import("../types.js").State} state
 * @param {number} until */
const canEndBy = (state, until) => (state.data.cuts?.length && waysToCut(state, until).some(({ ends }) => ends <= until) ? `can end ${timeOfDay(until)}` : "");

export class Ends {
  constructor() {
    this.box = make("span", { class: "run-ends" });
    /** What the end was last worked out for, and said to be. */
    this.of = "";
    this.said = "";
    /** What Change can do about an end that is too late. */
    this.canEnd = "";
  }

  /** It is worked out anew only where it may be another: after a change, and with each full mark that goes by while somebody waits.
   * @param {import("../types.js").State} state
   * @param {import("./session.js").Session} session */
  draw(state, session) {
    const modes = state.crews.map(({ mode }) => mode).join(" ");
    const isWaiting = state.crews.some(({ mode }) => mode !== "running" && mode !== "over");
    const key = `${session.run.begun} ${session.run.changes.length} ${modes} ${isWaiting ? nextMark(state.now + NOTICE_MS, state.marks) : ""}`;
    if (this.of !== key) {
      const { ends, isFrom } = forecast(state);
      const over_min = Math.floor(ends / 60_000) - Math.floor((session.run.until ?? Infinity) / 60_000); // of the minutes as they are shown
      const isOver = over_min > 0 && !state.crews.every(({ mode }) => mode === "over");
      this.of = key;
      this.said = state.crews.every(({ mode }) => mode === "over") ? "over" : `ends ${isFrom ? "from " : ""}${timeOfDay(ends)}${isOver ? `, ${over_min} min over` : ""}`;
      this.box.classList.toggle("is-over", isOver);
      this.canEnd = isOver && session.role === "lead" ? canEndBy(state, session.run.until ?? Infinity) : "";
    }
    put(this.box, state.stopped === null ? this.said : `stopped ${gone(state.now - state.stopped)}`);
  }
}
