// What each row of a run shows at a moment: the next send-off, what leaves then, and what is on. Pure; words are in `words.js`.

import { mayGo, underway } from "./engine.js";

/** @typedef {import("./types.js").Crew} Crew */
/** @typedef {import("./types.js").State} State */
/** @typedef {import("./types.js").Step} Step */
/** @typedef {"ready" | "waits" | "counts" | "ends" | "held" | "tap" | "over"} Look ready for Go; waits for other crews; counts down to a
 *   send-off; to the end of its part; held; waits for a tap because a length is not known; has done all */
/** @typedef {"now" | "soon" | "next"} Told what a row tells first: what is swum; what leaves soon, while somebody still swims; what leaves next,
 *   and nobody swims */
/** @typedef {{key: string, title: string, half: string, lanes: number[], look: Look, in_ms: number, next: Step | null, on: Step | null, wait: Step | null,
 *   told: Told, round: {no: number, of: number} | null, isNext: boolean}} Row `in_ms` until the send-off or the end; since it came to wait
 *   otherwise; `round` is of what is told first */

/** So long before a send-off a row tells what leaves then; of short reps half of the time between two. */
const SOON_MS = 10_000;

/**
 * The next send-off of a crew's part and the time from the next step to it; null where its part ends before.
 * @param {Crew} crew
 * @returns {{step: Step, after: number, wait: Step | null} | null}
 */
export function nextSendOff(crew) {
  let after = 0;
  /** @type {Step | null} */
  let wait = null;
  for (const step of crew.left) {
    if (step.kind === "end") {
      return null;
    }
    if (step.kind === "rep") {
      return { step, after, wait };
    }
    wait ??= step;
    after += step.ms ?? 0;
  }
  return null;
}

/** Which time through its rounds a step is, of how many; the outermost rounds that are more than one.
 * @param {Crew} crew
 * @param {Step | null} step */
function roundOf(crew, step) {
  for (const { node, no } of step?.rounds ?? []) {
    const numbers = new Set();
    /** @param {Step} own */
    const count = (own) => own.part === step?.part && own.rounds.forEach((round) => round.node === node && numbers.add(round.no));
    crew.done.forEach((begun) => begun.undone || count(begun.step));
    crew.left.forEach(count);
    if (numbers.size > 1) {
      return { no: [...numbers].filter((other) => other <= no).length, of: numbers.size };
    }
  }
  return null;
}

/** @param {State} state
 * @param {Crew} crew
 * @param {ReturnType<typeof nextSendOff>} next
 * @returns {{look: Look, in_ms: number}} */
function lookOf(state, crew, next) {
  const since = state.now - crew.since;
  if (crew.mode === "running") {
    return { look: next ? "counts" : "ends", in_ms: Math.max(0, crew.t + (next?.after ?? 0) - state.now) };
  }
  if (crew.mode === "ready") {
    return { look: mayGo(state, crew) ? "ready" : "waits", in_ms: since };
  }
  return { look: crew.mode, in_ms: since };
}

/** What is on: the send-off that has been and when, and the wait that it is or leads to.
 * @param {Crew} crew
 * @param {ReturnType<typeof nextSendOff>} next */
function onNow(crew, next) {
  const last = underway(crew);
  const isRep = last?.step.kind === "rep" && !last.undone;
  return { on: isRep ? last.step : null, since: last?.at ?? 0, wait: last?.step.kind === "wait" ? last.step : (next?.wait ?? null) };
}

/** @param {State} state
 * @param {{look: Look, in_ms: number}} shown
 * @param {ReturnType<typeof onNow>} now
 * @returns {Told} */
function toldOf({ now: moment }, { look, in_ms }, { on, since }) {
  if (!on || !["counts", "ends", "held", "tap"].includes(look)) {
    return "next";
  }
  const gone = moment - since;
  if (on.home && gone >= on.home) {
    return "next";
  }
  return look === "counts" && in_ms <= Math.min(SOON_MS, (gone + in_ms) / 2) ? "soon" : "now";
}

/** The send-off that a row tells first.
 * @param {Pick<Row, "told" | "next" | "on">} row */
export const first = ({ told, next, on }) => (told === "now" ? on : (next ?? on));

/** @param {State} state
 * @param {Crew} crew
 * @returns {Row} */
function rowOf(state, crew) {
  const found = nextSendOff(crew);
  const own = state.data.crews.find(({ key }) => key === crew.key);
  const [now, shown, next] = [onNow(crew, found), lookOf(state, crew, found), found?.step ?? null];
  const [title, half, lanes, told] = [own?.title ?? "", own?.half ?? "", lanesOf(state, crew, own?.lanes ?? []), toldOf(state, shown, now)];
  const round = roundOf(crew, first({ told, next, on: now.on }));
  return { key: crew.key, title, half, lanes, ...shown, next, on: now.on, wait: now.wait, told, round, isNext: false };
}

/** @param {State} state
 * @param {Crew} crew
 * @param {number[]} usual */
const lanesOf = (state, crew, usual) => state.data.parts[crew.left[0]?.part ?? -1]?.crews[crew.key]?.lanes ?? usual;

/**
 * @param {State} state at the moment that is shown
 * @returns {Row[]} in lane order, which never changes
 */
export function rows(state) {
  const made = state.crews.map((crew) => rowOf(state, crew));
  const soonest = Math.min(...made.filter(({ look }) => look === "counts").map(({ in_ms }) => in_ms));
  return made.map((row) => ({ ...row, isNext: row.look === "counts" && row.in_ms === soonest }));
}

/** What the one large button does, for one crew or for all: send off those that wait, else hold those that move; null where neither.
 * @param {State} state
 * @param {string | null} who
 * @returns {"go" | "hold" | null} */
export function mainAction(state, who) {
  const crews = state.crews.filter(({ key }) => who === null || key === who);
  if (crews.some((crew) => mayGo(state, crew))) {
    return "go";
  }
  return crews.some(({ mode, left }) => mode === "running" && left[0]?.kind !== "end") ? "hold" : null;
}
