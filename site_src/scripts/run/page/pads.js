// The pads: one a lane, pressed at the touch. Each counts for its own place in the lane; "missed" leaves a blank, "order changed" swaps the
// last two. Marked by hand. They go from this device after 14 days unless kept.

import { make } from "../../lib/dom.js";
import { nextRep } from "../changes.js";
import { resultOf, slotOf, slots, swapped } from "../results.js";
import { laneList, swum, whose } from "../words.js";
import { atOnce, button } from "./press.js";
import { put } from "./put.js";
import { keepResults, results } from "./session.js";

/** @typedef {import("./app.js").App} App */
/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("../types.js").Crew} Crew */

const NTH = ["leader", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];

/** The lanes of a crew; where a set alone knows none, as many as its swimmers fill.
 * @param {Session} session
 * @param {Crew} crew */
function lanesOf({ data }, crew) {
  const own = data.crews.find(({ key }) => key === crew.key);
  const step = crew.left[0] ?? crew.done[crew.done.length - 1].step;
  const lanes = data.parts[step.part].crews[crew.key]?.lanes ?? own?.lanes ?? [];
  return lanes.length ? lanes : Array.from({ length: filled(crew, own?.heads ?? 1) }, (_, k) => k + 1);
}

/** @param {Crew} crew
 * @param {number} heads */
const filled = (crew, heads) => Math.max(1, Math.ceil(heads / (nextRep(crew)?.block?.in_lane ?? 1)));

/** The crews of which results are asked for.
 * @param {Session} session */
const asked = (session) => session.now().crews.filter((crew) =>
  [...crew.left, ...crew.done.map(({ step }) => step)].some(({ part, item }) => session.data.parts[part].items[item ?? -1]?.result));

/** Whose pads they are; nothing where there is but one.
 * @param {App} app
 * @param {Crew[]} crews
 * @param {Crew} chosen */
function whosePads(app, crews, chosen) {
  const { data } = /** @type {Session} */ (app.session);
  const chips = crews.map(({ key }) => {
    const chip = button("run-chip", [whose(data, key)], () => pads(app, key));
    chip.setAttribute("aria-pressed", String(key === chosen.key));
    return chip;
  });
  return chips.length > 1 ? [make("div", { class: "run-chips" }, ...chips)] : [];
}

/** @param {App} app
 * @param {string | null} [of] whose: first the row that was touched */
export function pads(app, of = app.open) {
  const session = /** @type {Session} */ (app.session);
  const [state, crews] = [session.now(), asked(session)];
  const crew = crews.find(({ key }) => key === of) ?? crews[0] ?? state.crews[0];
  const own = results().find(({ begun }) => begun === session.run.begun) ?? { begun: session.run.begun, title: session.data.title, touches: [] };
  const lanes = lanesOf(session, crew);
  const said = lanes.map(() => make("small", {}));
  /** What can have been touched by now. */
  const all = () => slots(session.now(), session.now().crews.find(({ key }) => key === crew.key) ?? crew, lanes);
  const keep = (/** @type {import("../results.js").Touch[]} */ touches) => {
    own.touches = touches;
    keepResults(own);
    tick();
  };
  /** @param {number} lane
   * @param {number} moment
   * @param {number} at what is kept: NaN for a missed touch */
  const touch = (lane, moment, at) => {
    const slot = slotOf(all(), own.touches, lane, moment);
    if (slot) {
      keep([...own.touches, { lane, place: slot.place, rep: slot.rep, at }]);
    }
  };
  /** @param {number} lane */
  const swap = (lane) => {
    const [one, other] = own.touches.filter((own_) => own_.lane === lane).slice(-2);
    if (one && other && one.rep === other.rep) {
      keep(swapped(own.touches, { lane, rep: one.rep }, one.place, other.place));
    }
  };
  const at = (/** @type {Event} */ event) => session.clock.now() - (performance.now() - event.timeStamp);
  const tick = () => lanes.forEach((lane, k) => {
    const mine = all().filter((slot) => slot.lane === lane);
    const last = mine.slice(-1)[0];
    const ofRep = mine.filter(({ rep }) => rep === last?.rep);
    put(said[k], ofRep.map((slot) => { const s = resultOf(slot, own.touches); return `${NTH[slot.place] ?? slot.place + 1} ${s === null ? "–" : swum(s)}`; }).join(", ") || "no send-off yet");
  });
  const rows = lanes.map((lane, k) => make("div", { class: "pad-row" },
    atOnce("pad", [make("strong", {}, `Lane ${laneList([lane])}`), said[k]], (event) => touch(lane, at(event), at(event))),
    button("run-small", ["Missed"], () => touch(lane, session.clock.now(), NaN)), button("run-small", ["Order changed"], () => swap(lane))));
  const kept = button("run-chip", ["Keep longer than 14 days"], () => {
    own.kept = !own.kept;
    keepResults(own);
    kept.setAttribute("aria-pressed", String(own.kept));
  });
  kept.setAttribute("aria-pressed", String(own.kept ?? false));
  app.show({
    title: "Results, by hand", name: "pads-panel", tick,
    nodes: [...whosePads(app, crews, crew), make("div", { class: "pads" }, ...rows), make("div", { class: "run-chips" }, button("run-chip", ["All reps"], () => list(app, crew)), kept)],
  });
}

/** @param {App} app
 * @param {Crew} crew */
function list(app, crew) {
  const session = /** @type {Session} */ (app.session);
  const touches = results().find(({ begun }) => begun === session.run.begun)?.touches ?? [];
  const all = slots(session.now(), session.now().crews.find(({ key }) => key === crew.key) ?? crew, lanesOf(session, crew));
  const lines = all.map((slot) => { const s = resultOf(slot, touches); return make("li", {}, `Rep ${slot.label}, lane ${slot.lane}, ${NTH[slot.place] ?? slot.place + 1}: ${s === null ? "–" : `${swum(s)} by hand`}`); });
  app.show({ title: "Results, by hand", nodes: [make("ul", { class: "run-plain" }, ...lines)], buttons: [button("run-button", ["Pads"], () => pads(app, crew.key))] });
}
