// A run is its data, its start and a numbered list of changes; what stands at a moment is worked out from these alone, so that two
// phones with the same list show the same. Pure.

import { advance, begin, copied, setOff, underway, wait } from "./engine.js";
import { take } from "./changes.js";

/** @typedef {import("./types.js").Change} Change */
/** @typedef {import("./types.js").Crew} Crew */
/** @typedef {import("./types.js").Run} Run */
/** @typedef {import("./types.js").RunData} RunData */
/** @typedef {import("./types.js").State} State */
/** @typedef {import("./types.js").Step} Step */

/**
 * The state after all changes of a run, at the moment of the last of them.
 * @param {RunData} data
 * @param {Run} run
 * @returns {State}
 */
export function stateOf(data, run) {
  const state = begin(data, run);
  const gone = new Set();
  for (const [index, change] of run.changes.entries()) {
    advance(state, change.at);
    if (change.do === "back") {
      change.of?.forEach((number) => gone.add(number));
      takeBack(state, plain(data, run, index, gone, change.at));
    } else {
      take(state, change);
    }
  }
  return state;
}

/**
 * The state had some changes never been made.
 * @param {RunData} data
 * @param {Run} run
 * @param {number} before how many changes count
 * @param {Set<number>} gone numbers of those that do not, from 1
 * @param {number} moment
 */
function plain(data, run, before, gone, moment) {
  const state = begin(data, run);
  for (const [index, change] of run.changes.slice(0, before).entries()) {
    if (change.do !== "back" && !gone.has(index + 1)) {
      advance(state, change.at);
      take(state, change);
    }
  }
  advance(state, moment);
  return state;
}

/**
 * Take over what would stand without a change. What has begun is never undone: a crew whose send-offs were others goes on from the last
 * of them, by the plan without the change.
 * @param {State} state changed
 * @param {State} without
 */
function takeBack(state, without) {
  state.stopped = without.stopped;
  for (const [index, crew] of state.crews.entries()) {
    const plan = without.crews[index];
    if (isSame(crew, plan)) {
      state.crews[index] = copiedCrew(plan);
    } else {
      goOnBy(state, crew, plan);
    }
  }
}

/** Whether the same has begun at the same times.
 * @param {Crew} crew
 * @param {Crew} plan */
const isSame = (crew, plan) =>
  crew.done.length === plan.done.length &&
  crew.done.every((own, k) => own.step.id === plan.done[k].step.id && own.at === plan.done[k].at && own.undone === plan.done[k].undone);

/** @param {Crew} crew
 * @returns {Crew} */
const copiedCrew = (crew) => ({ ...crew, left: [...crew.left], done: [...crew.done] });

/**
 * @param {State} state
 * @param {Crew} crew changed
 * @param {Crew} plan
 */
function goOnBy(state, crew, plan) {
  const last = crew.done[crew.done.length - 1];
  const all = [...plan.done.filter(({ undone }) => !undone).map(({ step }) => step), ...plan.left];
  const from = all.findIndex(({ id }) => id === last?.step.id);
  if (!last || from < 0 || last.undone) {
    return;
  }
  crew.left = all.slice(from + 1);
  const planned = all[from].ms;
  if (crew.mode === "running" && planned !== null && last.step.ms !== null) {
    const earlier = Math.max(crew.t - (last.step.ms - planned), last.at + planned); // `t` may be that of an end, which comes sooner
    setOff(crew, earlier > state.now ? earlier : crew.t);
  } else if ((crew.mode === "ready" || crew.mode === "over") && underway(crew)) {
    wait(crew, "held", state.now);
  }
}

/**
 * A run's state at a moment.
 * @param {State} state after all changes, left as it is
 * @param {number} moment
 */
export function at(state, moment) {
  const now = copied(state);
  advance(now, moment);
  return now;
}

/**
 * A run with one change more, and the state after it; null where it does not apply now.
 * @param {RunData} data
 * @param {Run} run
 * @param {State} state after all changes
 * @param {Change} change
 * @returns {{run: Run, state: State} | null}
 */
export function changed(data, run, state, change) {
  const last = run.changes[run.changes.length - 1];
  const timed = { ...change, at: Math.max(change.at, last?.at ?? run.begun) };
  const next = { ...run, changes: [...run.changes, timed] };
  if (change.do === "back") {
    return { run: next, state: stateOf(data, next) };
  }
  const after = at(state, timed.at);
  return take(after, timed) ? { run: next, state: after } : null;
}

/** The numbers of changes that stand: not taken back, and no taking back themselves.
 * @param {Run} run */
export function standing(run) {
  const gone = new Set(run.changes.flatMap((change) => (change.do === "back" ? (change.of ?? []) : [])));
  return run.changes.map((_, k) => k + 1).filter((number) => run.changes[number - 1].do !== "back" && !gone.has(number));
}
