// Going on after a stop: the same rep again, the next rep, or the next part; at a full mark, and never on a shorter rest than planned.
// What would break a rule of rest or safety is not done: a rep again as often as the build says, a part left where it may be.

import { endStage, nextMark, NOTICE_MS, setOff, underway } from "./engine.js";

/** @typedef {import("./types.js").Crew} Crew */
/** @typedef {import("./types.js").State} State */
/** @typedef {import("./types.js").Begun} Begun */

/** So often a rep of an item is swum again where the build says nothing of it. */
const AGAIN_MOST = 2;

/** The crews that a stop has broken off: those that moved, or waited for a tap within a part.
 * @param {State} state */
const brokenOff = (state) => state.crews.filter(({ mode }) => mode === "running" || mode === "tap");

/** The rep that a crew was at, where it may be swum again.
 * @param {Crew} crew
 * @returns {Begun | undefined} */
function againOf(crew) {
  const last = underway(crew);
  const { step } = last ?? {};
  if (step?.kind !== "rep" || step.sat) {
    return undefined;
  }
  const times = crew.done.filter((begun) => begun.undone && begun.step.part === step.part && begun.step.item === step.item).length;
  return times < (step.block?.again ?? AGAIN_MOST) ? last : undefined;
}

/** Whether a crew may leave the part that it is at: nothing of it is left, or the build allows it.
 * @param {State} state
 * @param {Crew} crew */
function mayLeave({ data }, crew) {
  const { part: at, kind } = crew.left[0];
  const hasSwum = crew.done.some(({ step }) => step.part === at && step.kind === "rep");
  return kind === "end" || Boolean(data.parts[at].skip) || (hasSwum && Boolean(data.parts[at].crews[crew.key]?.meet));
}

/** The same rep again: after the rest that was planned for after it, counted from the stop where that broke it off.
 * @param {Crew} crew
 * @param {Begun} last
 * @param {number} stopped */
function soonestAgain(crew, { step }, stopped) {
  const rested = typeof step.rest === "number" ? stopped + step.rest * 1000 : Infinity;
  return crew.mode === "running" ? Math.min(crew.t, rested) : stopped;
}

/** Go on with what is left.
 * @param {State} state
 * @param {Crew} crew */
function next(state, crew) {
  if (crew.left[0]?.kind === "end") {
    setOff(crew, state.now);
  } else if (crew.mode === "running") {
    setOff(crew, nextMark(Math.max(state.now + NOTICE_MS, crew.t), state.marks));
  }
}

/** @param {State} state
 * @param {Crew} crew
 * @param {number} stopped
 * @returns {boolean} whether it is swum again */
function same(state, crew, stopped) {
  const last = againOf(crew);
  if (!last) {
    next(state, crew);
    return false;
  }
  const soonest = soonestAgain(crew, last, stopped);
  crew.left.unshift(last.step);
  crew.done[crew.done.length - 1] = { ...last, undone: true };
  setOff(crew, nextMark(Math.max(state.now + NOTICE_MS, soonest), state.marks));
  return true;
}

/** @param {State} state
 * @param {Crew[]} crews */
function part(state, crews) {
  const isLast = crews.every(({ left }) => left.every((step) => step.part === left[0].part));
  if (isLast || !crews.every((crew) => mayLeave(state, crew))) {
    crews.forEach((crew) => next(state, crew)); // a list of which something was taken back goes on all the same
    return false;
  }
  for (const crew of crews) {
    const own = crew.left[0].part;
    crew.home = state.now;
    endStage(state, crew, (step) => step.part === own);
  }
  return true;
}

/**
 * @param {State} state changed: where that may not be done, to the next rep
 * @param {"same" | "next" | "part"} how
 * @returns {boolean} false where that may not be done for anybody
 */
export function goOnAfterStop(state, how) {
  const { stopped } = state;
  if (stopped === null) {
    return false;
  }
  const crews = brokenOff(state);
  state.stopped = null;
  if (how === "same") {
    return crews.map((crew) => same(state, crew, stopped)).some(Boolean);
  }
  if (how === "part") {
    return part(state, crews);
  }
  crews.forEach((crew) => next(state, crew));
  return true;
}
