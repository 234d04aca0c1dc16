// The clock of a run: for each crew what has begun and when, and what is left. `advance` lets time go by, and nothing else moves it;
// changes are in `changes.js`. Times are milliseconds of the pool's clock. A state is a copy of its own: `copied` before another is tried.

import { lead, stepsOf } from "./steps.js";

/** @typedef {import("./types.js").Crew} Crew */
/** @typedef {import("./types.js").Run} Run */
/** @typedef {import("./types.js").RunData} RunData */
/** @typedef {import("./types.js").State} State */
/** @typedef {import("./types.js").Step} Step */

/** A Go is not for a mark that nobody could still call. */
export const NOTICE_MS = 3000;
const MINUTE_MS = 60_000;

/**
 * The next full mark of the pool's clock, at or after a moment; the moment itself where no marks are kept to.
 * @param {number} moment
 * @param {number[]} marks seconds of the minute
 */
export function nextMark(moment, marks) {
  const minute = Math.floor(moment / MINUTE_MS) * MINUTE_MS;
  const ahead = marks.map((mark) => minute + mark * 1000).map((at) => (at < moment ? at + MINUTE_MS : at));
  return ahead.length ? Math.min(...ahead) : moment;
}

/**
 * A run before anything has begun: every crew waits for Go. The talk before the first part is counted from the start of the slot; where
 * that is not known, or has gone by, nobody is taken to talk once more.
 * @param {RunData} data
 * @param {Run} run
 * @returns {State}
 */
export function begin(data, run) {
  const waiting = { mode: /** @type {const} */ ("ready"), t: 0, since: run.begun, home: 0, late: 0 };
  const crews = run.crews.map((key) => {
    const left = stepsOf(data, key);
    return { key, left, done: [], ended: [], ...waiting, clear: run.planned ?? run.begun - (left.length ? lead(data.parts[left[0].part]) : 0) };
  });
  return { data, marks: run.marks, onward: run.onward, crews, now: run.begun, stopped: null };
}

/** A state that may be changed without changing this one. Steps are never changed in place.
 * @param {State} state
 * @returns {State} */
export const copied = (state) => ({
  ...state,
  crews: state.crews.map((crew) => ({ ...crew, left: [...crew.left], done: [...crew.done] })),
});

/** The stage that a crew is at: of what it does, or waits to do; Infinity when it has done all.
 * @param {Crew} crew */
export const stageOf = (crew) => crew.left[0]?.stage ?? Infinity;

/** Whether a crew may be sent off: it was held, waits for a tap, or waits for a part that all others are ready for, too.
 * @param {State} state
 * @param {Crew} crew */
export const mayGo = (state, crew) =>
  crew.mode === "held" || crew.mode === "tap" ||
  (crew.mode === "ready" && crew.left.length > 0 && state.crews.every((other) => stageOf(other) >= stageOf(crew)));

/**
 * When the part that a crew waits for can begin by the plan: the last crew's end of the stage before it (its own end of a part of the
 * same stage), and then what goes by before the part.
 * @param {State} state
 * @param {Crew} crew
 */
export function soonestBegin(state, crew) {
  const [next, last] = [crew.left[0], crew.done[crew.done.length - 1]];
  const isSameStage = last !== undefined && last.step.stage === next.stage;
  const before = state.crews.flatMap(({ ended }) => ended.filter(({ part }) => state.data.parts[part].stage < next.stage));
  const clear = isSameStage ? crew.clear : Math.max(crew.clear, ...before.map(({ at }) => at));
  return clear + lead(state.data.parts[next.part]) + crew.late;
}

/** Begin a crew's next step, at its time.
 * @param {Crew} crew */
function beginStep(crew) {
  const [step, at] = [/** @type {import("./types.js").Step} */ (crew.left.shift()), crew.t];
  if (step.kind === "end") {
    crew.ended = [...crew.ended, { part: step.part, at }];
    wait(crew, crew.left.length ? "ready" : "over", at);
    crew.home = 0;
    crew.late = 0;
    return;
  }
  crew.done.push({ step, at });
  if (step.kind === "rep") {
    crew.home = at + (step.home ?? 0);
  }
  if (step.ms === null) {
    wait(crew, "tap", at);
  } else {
    crew.t = at + step.ms;
    holdForTheLast(crew);
  }
}

/** A part is over when its clock is and the last swimmer is home.
 * @param {Crew} crew */
export function holdForTheLast(crew) {
  if (crew.left[0]?.kind === "end") {
    crew.t = Math.max(crew.t, crew.home);
  }
}

/**
 * @param {Crew} crew
 * @param {import("./types.js").Mode} mode
 * @param {number} at
 */
export function wait(crew, mode, at) {
  Object.assign(crew, { mode, since: at, clear: at });
}

/** @param {Crew} crew
 * @param {number} at */
export function setOff(crew, at) {
  Object.assign(crew, { mode: "running", t: at });
}

/** Where a run goes on by itself: crews whose next part may begin count down to it. The first part always waits for Go.
 * @param {State} state */
function goOn(state) {
  const first = Math.min(...state.data.parts.map(({ stage }) => stage));
  for (const crew of state.crews) {
    if (crew.mode === "ready" && mayGo(state, crew) && (crew.done.length || stageOf(crew) > first)) {
      setOff(crew, nextMark(soonestBegin(state, crew), state.marks));
    }
  }
}

/**
 * Let time go by up to a moment. Nothing is counted: each step begins at its own time, however late this is asked.
 * @param {State} state changed
 * @param {number} to
 */
export function advance(state, to) {
  while (state.stopped === null) {
    const moving = state.crews.filter((crew) => crew.mode === "running" && crew.left.length && crew.t <= to);
    if (!moving.length) {
      break;
    }
    beginStep(moving.reduce((soonest, crew) => (crew.t < soonest.t ? crew : soonest)));
    if (state.onward) {
      goOn(state);
    }
  }
  state.now = Math.max(state.now, to);
}

/** The last step that has begun, where its part is not over.
 * @param {Crew} crew
 * @returns {import("./types.js").Begun | undefined} */
export function underway(crew) {
  const last = crew.done[crew.done.length - 1];
  return last && crew.left[0]?.part === last.step.part && !crew.left[0].opens ? last : undefined;
}

/**
 * Drop steps that are still to come; a crew that is at them ends its part as soon as its last swimmer is home.
 * @param {State} state
 * @param {Crew} crew
 * @param {(step: Step) => boolean} isDropped
 */
export function endStage(state, crew, isDropped) {
  const last = underway(crew);
  const kept = crew.left.filter((step) => !isDropped(step));
  if (last && isDropped(last.step)) {
    kept.unshift(/** @type {Step} */ ({ id: `${last.step.part}:end`, kind: "end", part: last.step.part, stage: last.step.stage, ms: 0, rounds: [] }));
    setOff(crew, Math.max(state.now, crew.home));
  } else if (crew.mode === "running" && crew.left[0] && isDropped(crew.left[0])) {
    wait(crew, kept.length ? "ready" : "over", state.now);
  } else if (!kept.length) {
    wait(crew, "over", state.now);
  }
  crew.left = kept;
}
