// Cut to end at a time, in one of a few ways: by rounds, by whole parts, or by a shorter wind-down. What may go is what the build allows to
// go, in any number together; the warm-up and the wind-down stay, and what has begun is never undone.

import { copied, endStage } from "./engine.js";
import { forecast } from "./forecast.js";
import { fewerRounds } from "./rounds.js";

/** @typedef {import("./types.js").By} By */
/** @typedef {import("./types.js").Crew} Crew */
/** @typedef {import("./types.js").Cut} Cut */
/** @typedef {import("./types.js").State} State */

/** With each of these a practice begins and ends. */
const STAYS = new Set(["warm-up", "cool-down"]);

/** In the order in which they are offered. */
export const WAYS = /** @type {const} */ (["rounds", "parts", "end", "order"]);

/** Whether a part has begun for anybody.
 * @param {State} state
 * @param {number} part */
const hasBegun = (state, part) => state.crews.some(({ done }) => done.some(({ step }) => step.part === part));

/** @param {State} state
 * @param {number} part */
export function skip(state, part) {
  const isLeft = state.crews.some(({ left }) => left.some((step) => step.part === part));
  if (!state.data.parts[part]?.skip || !isLeft) {
    return false;
  }
  state.crews.forEach((crew) => endStage(state, crew, (step) => step.part === part));
  return true;
}

/** What one cut does to a state; false where it may not be made.
 * @param {State} state changed
 * @param {Cut} cut */
function made(state, { part, do: what, run }) {
  if (what === "reps") {
    return state.crews.map((crew) => fewerReps(crew, run ?? "")).some(Boolean);
  }
  return what === "skip" ? !hasBegun(state, part) && skip(state, part) : fewerRounds(state.crews, part);
}

/** The last reps of a block left out, as many as the build says; at least one stays.
 * @param {Crew} crew
 * @param {string} run */
function fewerReps(crew, run) {
  const own = crew.left.filter((step) => step.run === run && step.wave === 1 && !step.sat);
  const all = new Set([...crew.done.map(({ step }) => step), ...crew.left].filter((step) => step.run === run).map(({ rep }) => rep));
  const { fewer, fewest } = own[0]?.block ?? {};
  if (!fewer || own.length <= fewer || all.size - fewer < (fewest ?? 1)) {
    return false;
  }
  const from = own[own.length - fewer].rep ?? 0;
  crew.left = crew.left.filter((step) => step.run !== run || (step.rep ?? 0) < from);
  return true;
}

/** The blocks of the wind-down that have not begun, each as a cut.
 * @param {State} state
 * @returns {Cut[]} */
function endCuts(state) {
  const part = state.data.parts.map(({ word }) => word).lastIndexOf("cool-down");
  if (part < 0 || hasBegun(state, part)) {
    return [];
  }
  const runs = new Set(state.crews.flatMap(({ left }) => left.flatMap((step) => (step.part === part && step.run && step.block?.fewer ? [step.run] : []))));
  const once = [...runs].map((run) => ({ part, do: /** @type {const} */ ("reps"), run }));
  return [...once, ...once, ...once]; // a block more than once, as far as it goes
}

/** Whole parts: of those that are enough alone the one that costs least; else those that save most first.
 * @param {State} state
 * @param {number} until
 * @returns {Cut[]} */
function partCuts(state, until) {
  const all = state.data.parts.flatMap(({ skip: may, word }, part) => {
    const after = copied(state);
    return may && !STAYS.has(word) && made(after, { part, do: "skip" }) ? [{ cut: { part, do: /** @type {const} */ ("skip") }, ends: forecast(after).ends }] : [];
  });
  const enough = all.filter(({ ends }) => ends <= until).sort((a, b) => b.ends - a.ends);
  return (enough.length ? enough : all.sort((a, b) => a.ends - b.ends)).map(({ cut: own }) => own);
}

/** The fewest rounds with which a shorter wind-down is enough, and then as much of that as is needed.
 * @param {State} state
 * @param {number} until
 * @param {Cut[]} rounds
 * @returns {Cut[]} */
function endFirst(state, until, rounds) {
  const ends = endCuts(state);
  for (let many = 0; many < rounds.length; many++) {
    const after = copied(state);
    [...rounds.slice(0, many), ...ends].forEach((own) => made(after, own));
    if (forecast(after).ends <= until) {
      return [...rounds.slice(0, many), ...ends];
    }
  }
  return [...rounds, ...ends];
}

/** The cuts of a way, in the order in which they are taken.
 * @param {State} state
 * @param {number} until
 * @param {By} by
 * @returns {Cut[]} */
function cutsOf(state, until, by) {
  const order = (state.data.cuts ?? []).filter(({ part, do: what }) => what === "round" || !STAYS.has(state.data.parts[part].word));
  const rounds = order.filter(({ do: what }) => what === "round");
  return { rounds: () => rounds, parts: () => partCuts(state, until), end: () => endFirst(state, until, rounds), order: () => order }[by]();
}

/**
 * Cut one by one, each only while the end is later than asked for.
 * @param {State} state changed
 * @param {number} until
 * @param {By} [by] in which way; else in the order that the build gives
 * @returns {Cut[]} those that were taken
 */
export const cut = (state, until, by = "order") => cutsOf(state, until, by).filter((own) => forecast(state).ends > until && made(state, own));
