// When a run would end if nobody waited longer than the plan asks: what is held or waits for Go goes at the next full mark that it may.

import { advance, copied, mayGo, nextMark, NOTICE_MS, setOff, soonestBegin } from "./engine.js";

/** @typedef {import("./types.js").Crew} Crew */
/** @typedef {import("./types.js").State} State */
/** @typedef {{ends: number, isFrom: boolean, waits: Record<string, number>}} Forecast `ends` in milliseconds of the pool's clock, "from" that
 *   time on where the length of something is not known; `waits` is how long each crew waits for the others after what it is at */

/**
 * When a crew that waits can go at the earliest.
 * @param {State} state
 * @param {Crew} crew
 */
function soonest(state, crew) {
  const notice = state.now + NOTICE_MS;
  if (crew.mode === "ready") {
    return nextMark(Math.max(notice, soonestBegin(state, crew)), state.marks);
  }
  return crew.mode === "held" ? nextMark(Math.max(notice, crew.clear), state.marks) : Math.max(state.now, crew.home);
}

/** Where each crew's present stage ends.
 * @param {State} state */
const stages = (state) => new Map(state.crews.map((crew) => [crew.key, crew.left[0]?.opens ? -1 : (crew.left[0]?.stage ?? -1)]));

/**
 * @param {State} state left as it is
 * @returns {Forecast}
 */
export function forecast(state) {
  const ahead = { ...copied(state), stopped: null, onward: false };
  const present = stages(ahead);
  const isPresent = [...present.values()].some((stage) => stage >= 0);
  /** @type {Record<string, number>} */
  let waits = {};
  let isFrom = false;
  for (let turn = 0; turn < 10_000; turn++) {
    run(ahead);
    const waiting = ahead.crews.filter((crew) => mayGo(ahead, crew));
    if (!waiting.length) {
      break;
    }
    if (isPresent && !Object.keys(waits).length && ahead.crews.every((crew) => crew.left[0]?.stage !== present.get(crew.key))) {
      waits = waitsOf(ahead, present);
    }
    isFrom ||= waiting.some(({ mode }) => mode === "tap");
    for (const crew of waiting) {
      setOff(crew, soonest(ahead, crew));
    }
  }
  waits = Object.keys(waits).length ? waits : waitsOf(ahead, present);
  return { ends: Math.max(state.now, ...ahead.crews.filter(({ done }) => done.length).map(({ clear }) => clear)), isFrom, waits };
}

/** Let all that moves come to where it waits.
 * @param {State} ahead */
function run(ahead) {
  const { now } = ahead;
  advance(ahead, Infinity);
  ahead.now = now;
}

/** @param {State} ahead
 * @param {Map<string, number>} present */
function waitsOf(ahead, present) {
  const there = ahead.crews.filter((crew) => (present.get(crew.key) ?? -1) >= 0);
  const last = Math.max(...there.map(({ clear }) => clear));
  return Object.fromEntries(there.map((crew) => [crew.key, last - crew.clear]));
}
