// The changes that may be made now, each with what it leads to: the new end, and how long who waits. Tried on a copy with the very
// functions that make it. Pure.

import { cut, nextRep, take, whoseOf, partOf } from "./changes.js";
import { copied } from "./engine.js";
import { forecast } from "./forecast.js";

/** @typedef {import("./types.js").Change} Change */
/** @typedef {import("./types.js").Cut} Cut */
/** @typedef {import("./types.js").State} State */
/** @typedef {{change: Change, after: State, ends: number, isFrom: boolean, wait_ms: number, waiter: string, cuts?: Cut[]}} Offer `after` is
 *   what it makes of the run, `waiter` the crew that waits longest for the others, `wait_ms` how long */

/**
 * @param {State} state left as it is
 * @param {Change} change
 * @returns {Offer | null} null where it may not be made
 */
export function tried(state, change) {
  const after = copied(state);
  if (!take(after, change)) {
    return null;
  }
  const { ends, isFrom, waits } = forecast(after);
  const [waiter, wait_ms] = Object.entries(waits).reduce((most, own) => (own[1] > most[1] ? own : most), ["", 0]);
  const cuts = change.do === "cut" ? cut(copied(state), change.until ?? Infinity) : undefined;
  return { change, after, ends, isFrom, wait_ms, waiter, ...(cuts ? { cuts } : {}) };
}

const LATE_S = [30, 60, 120, 300, 600];

/**
 * @param {State} state left as it is, at this moment
 * @param {string | null} who a crew's key, or null for all
 * @returns {Offer[]}
 */
export function offers(state, who) {
  const at = state.now;
  const crews = whoseOf(state, { who });
  /** @type {Change[]} */
  const wanted = [];
  if (who !== null) {
    const own = { at, who };
    wanted.push(...(nextRep(crews[0])?.block?.more ?? []).map((s) => ({ ...own, do: /** @type {const} */ ("more"), s })));
    wanted.push({ ...own, do: "fewer" }, { ...own, do: "sit" }, { ...own, do: "meet" });
  }
  const part = partOf(crews);
  wanted.push({ at, do: "round", who, n: -1, part }, { at, do: "round", who, n: 1, part });
  wanted.push(...LATE_S.map((s) => ({ at, do: /** @type {const} */ ("late"), who, s })));
  if (who === null) {
    const left = new Set(state.crews.flatMap((crew) => crew.left.map((step) => step.part)));
    wanted.push(...[...left].sort((a, b) => a - b).map((one) => ({ at, do: /** @type {const} */ ("skip"), part: one })));
  }
  return wanted.map((change) => tried(state, change)).filter((offer) => offer !== null);
}

/** The parts that are still to come and may not be skipped.
 * @param {State} state */
export function notSkipped(state) {
  const left = new Set(state.crews.flatMap((crew) => crew.left.map((step) => step.part)));
  return [...new Set(state.data.parts.filter(({ skip }, p) => left.has(p) && !skip).map(({ title }) => title))];
}

/** The ways on after a stop that may be gone now.
 * @param {State} state left as it is */
export const waysOn = (state) =>
  /** @type {const} */ (["same", "next", "part"]).map((how) => tried(state, { at: state.now, do: "on", how })).filter((offer) => offer !== null);
