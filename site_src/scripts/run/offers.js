// The changes that may be made now, each with what it leads to: the new end, and how long who waits. Tried on a copy with the very
// functions that make it. Pure.

import { nextRep, take, whoseOf, partOf } from "./changes.js";
import { cut, WAYS } from "./cuts.js";
import { copied } from "./engine.js";
import { forecast } from "./forecast.js";

/** @typedef {import("./types.js").Change} Change */
/** @typedef {import("./types.js").Cut} Cut */
/** @typedef {import("./types.js").State} State */
/** @typedef {{change: Change, after: State, ends: number, isFrom: boolean, wait_ms: number, waiter: string, cuts?: Cut[],
 *   less_m?: number}} Offer `after` is what it makes of the run, `waiter` the crew that waits longest for the others, `wait_ms` how long;
 *   `less_m`: metres that cuts take from one swimmer, of those who lose most */

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
  const cuts = change.do === "cut" ? { cuts: cut(copied(state), change.until ?? Infinity, change.by), less_m: lessMetres(state, after) } : {};
  return { change, after, ends, isFrom, wait_ms, waiter, ...cuts };
}

/** Metres that one swimmer of a crew has still to swim.
 * @param {State} state
 * @param {import("./types.js").Crew} crew */
const metresLeft = ({ data }, { left }) => left.filter(({ kind, wave, sat }) => kind === "rep" && wave === 1 && !sat)
  .reduce((sum, { part, item, whole, reps }) => sum + (data.parts[part].items[item ?? 0].metres ?? 0) * (whole ? (reps ?? 1) : 1), 0);

/** @param {State} before
 * @param {State} after */
const lessMetres = (before, after) => Math.max(...before.crews.map((crew, k) => metresLeft(before, crew) - metresLeft(after, after.crews[k])));

const MOST_CUTS = 3;

/** The ways to end by a time: those that are enough first, the one that takes least before others; of two that take the same, one. All of
 * the build's order only where no other is enough.
 * @param {State} state left as it is
 * @param {number} until
 * @returns {Offer[]} */
export function waysToCut(state, until) {
  const all = WAYS.map((by) => tried(state, { at: state.now, do: "cut", until, by })).filter((offer) => offer !== null);
  const taken = (/** @type {Offer} */ { cuts }) => JSON.stringify((cuts ?? []).map(({ part, do: what, run }) => [part, what, run]).sort());
  const own = all.filter((offer, k) => all.findIndex((other) => taken(other) === taken(offer)) === k);
  const isEnough = (/** @type {Offer} */ { ends }) => ends <= until;
  const others = own.filter(({ change }) => change.by !== "order");
  return (others.some(isEnough) ? others : own).sort((a, b) => Number(isEnough(b)) - Number(isEnough(a)) || (isEnough(a) ? (a.less_m ?? 0) - (b.less_m ?? 0) : a.ends - b.ends)).slice(0, MOST_CUTS);
}

const LATE_S = [30, 60, 120, 180, 300, 600];

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
