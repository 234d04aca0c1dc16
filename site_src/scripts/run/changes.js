// What each change of a run does to its state, and whether it may be made at that moment. The build says what is allowed (`more`,
// `fewer`, `sit`, `meet`, `least`, `most`, `skip`, `cuts`): nothing else is.

import { cut, skip } from "./cuts.js";
import { endStage, holdForTheLast, mayGo, nextMark, NOTICE_MS, setOff, soonestBegin, underway, wait } from "./engine.js";
import { goOnAfterStop } from "./after-stop.js";
import { fewerRounds, moreRounds } from "./rounds.js";

/** @typedef {import("./types.js").Change} Change */
/** @typedef {import("./types.js").Crew} Crew */
/** @typedef {import("./types.js").State} State */
/** @typedef {import("./types.js").Step} Step */

/** The crews that a change is for.
 * @param {State} state
 * @param {{who?: string | null}} change */
export const whoseOf = (state, { who }) => state.crews.filter(({ key }) => who === undefined || who === null || key === who);

/** The next send-off of the part that a crew is at or waits for.
 * @param {Crew} crew */
export function nextRep(crew) {
  const next = crew.left.find(({ kind }) => kind !== "wait");
  return next?.kind === "rep" ? next : undefined;
}

/** Reps of the block of the next send-off that have not begun: whole ones, by number.
 * @param {Crew} crew
 * @returns {number[]} */
export function repsLeft(crew) {
  const next = nextRep(crew);
  const own = crew.left.filter(({ run, wave, sat }) => run !== undefined && run === next?.run && wave === 1 && !sat);
  return own.map(({ rep }) => rep ?? 0);
}

/**
 * Change the steps that are still to come.
 * @param {Crew} crew
 * @param {(step: Step) => Step} change
 */
function each(crew, change) {
  crew.left = crew.left.map(change);
}

/** Seconds more from a send-off to the next, for all reps of this item still to come in the part; rest grows by as much.
 * @param {Crew} crew
 * @param {number} s */
function more(crew, s) {
  const next = nextRep(crew);
  if (!next?.block?.more?.includes(s) || next.ms === null) {
    return false;
  }
  each(crew, (step) => {
    if (step.kind !== "rep" || step.part !== next.part || step.item !== next.item || step.ms === null) {
      return step;
    }
    const [waves, wave] = [step.waves ?? 1, step.wave ?? 1];
    const longer = Math.round((s * 1000 * wave) / waves) - Math.round((s * 1000 * (wave - 1)) / waves);
    return { ...step, ms: step.ms + longer, rest: typeof step.rest === "number" ? step.rest + s : (step.rest ?? null) };
  });
  return true;
}

/** The last reps of the block left out; the others keep what is theirs.
 * @param {Crew} crew */
function fewer(crew) {
  const [next, left] = [nextRep(crew), repsLeft(crew)];
  const out = next?.block?.fewer;
  const all = new Set([...crew.done.map(({ step }) => step), ...crew.left].filter(({ run }) => run === next?.run).map(({ rep }) => rep));
  if (!next || !out || left.length <= out || all.size - out < (next.block?.fewest ?? 1)) {
    return false;
  }
  const first = left[left.length - out];
  crew.left = crew.left.filter(({ run, rep }) => run !== next.run || (rep ?? 0) < first);
  return true;
}

/** The next reps stood out at the wall; the clock goes on.
 * @param {Crew} crew */
function sit(crew) {
  const [next, left] = [nextRep(crew), repsLeft(crew)];
  const out = next?.block?.sit;
  if (!next || !out || next.wave !== 1 || left.length < out) {
    return false;
  }
  const sat = new Set(left.slice(0, out));
  each(crew, (step) => (step.run === next.run && sat.has(step.rep ?? 0) ? { ...step, sat: true, home: 0 } : step));
  return true;
}

/** What is left of this stage dropped: the crew waits for the others at the next.
 * @param {State} state
 * @param {Crew} crew */
function meet(state, crew) {
  const last = underway(crew);
  const hasSwum = crew.done.some(({ step }) => step.part === last?.step.part && step.kind === "rep");
  if (!last || !hasSwum || !state.data.parts[last.step.part].crews[crew.key]?.meet) {
    return false;
  }
  endStage(state, crew, ({ stage }) => stage === last.step.stage);
  return true;
}

/** Send-offs at the next full mark for those that may go; what only waits for an end or a pause goes on at once.
 * @param {State} state
 * @param {Crew[]} crews */
function go(state, crews) {
  const ready = crews.filter((crew) => mayGo(state, crew));
  for (const crew of ready) {
    const soonest = Math.max(state.now + NOTICE_MS, crew.mode === "held" ? crew.clear : 0);
    const isAtOnce = crew.mode === "tap" && crew.left[0]?.kind !== "rep";
    setOff(crew, isAtOnce ? Math.max(state.now, crew.home) : nextMark(soonest, state.marks));
  }
  return ready.length > 0;
}

/** @param {State} state
 * @param {Crew[]} crews */
function hold(state, crews) {
  const moving = crews.filter(({ mode, left }) => mode === "running" && left[0]?.kind !== "end");
  moving.forEach((crew) => Object.assign(crew, { mode: "held", since: state.now, clear: crew.t }));
  return moving.length > 0;
}

/** What has not begun is moved by some seconds: from now, where it might have begun already.
 * @param {State} state
 * @param {Crew[]} crews
 * @param {number} s */
function late(state, crews, s) {
  for (const crew of crews) {
    crew.t += crew.mode === "running" && crew.left[0]?.kind !== "end" ? s * 1000 : 0;
    crew.clear += crew.mode === "held" ? s * 1000 : 0;
    if (crew.mode === "ready" && crew.left.length) {
      crew.late += s * 1000 + (mayGo(state, crew) ? Math.max(0, state.now - soonestBegin(state, crew)) : 0);
    }
  }
  return crews.some(({ mode }) => mode !== "over");
}

/** @param {State} state
 * @param {Crew[]} crews */
function end(state, crews) {
  const going = crews.filter(({ mode }) => mode !== "over");
  going.forEach((crew) => {
    crew.left = [];
    wait(crew, "over", state.now);
  });
  state.stopped = null;
  return going.length > 0;
}

/** @param {State} state */
function stop(state) {
  state.stopped = state.now;
  return true;
}

/** @type {Record<string, (state: State, crews: Crew[], change: Change) => boolean>} */
const TAKEN = {
  go,
  hold,
  stop,
  on: (state, _, change) => goOnAfterStop(state, change.how ?? "next"),
  more: (_, crews, change) => any(crews, (crew) => more(crew, change.s ?? 0)),
  fewer: (_, crews) => any(crews, fewer),
  sit: (_, crews) => any(crews, sit),
  meet: (state, crews) => any(crews, (crew) => meet(state, crew)),
  round: (_, crews, { n, part }) => (n === 1 ? moreRounds : fewerRounds)(crews, part ?? partOf(crews)),
  skip: (state, _, { part }) => skip(state, part ?? -1),
  late: (state, crews, { s }) => late(state, crews, s ?? 0),
  cut: (state, _, { until, by }) => cut(state, until ?? Infinity, by).length > 0,
  end,
};

/** @param {Crew[]} crews
 * @param {(crew: Crew) => boolean} change */
const any = (crews, change) => crews.map(change).some(Boolean);

/** The part that the first of some crews is at, or waits for.
 * @param {Crew[]} crews */
export const partOf = (crews) => crews.find(({ left }) => left.length)?.left[0].part ?? -1;

/**
 * Make a change at the moment that a state stands at. False where it does not apply then, and changes nothing.
 * @param {State} state changed
 * @param {Change} change
 */
export function take(state, change) {
  const isStanding = state.stopped !== null;
  if (isStanding && change.do !== "on" && change.do !== "end") {
    return false;
  }
  const taken = TAKEN[change.do]?.(state, whoseOf(state, change), change) ?? false;
  state.crews.filter(({ mode }) => mode === "running").forEach(holdForTheLast);
  return taken;
}
