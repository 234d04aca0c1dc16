// Results by hand: one pad a lane. A touch is counted from the send-off of that place in the lane; a missed one leaves a blank and
// shifts nothing. Never a name. Pure.

/** @typedef {import("./types.js").Crew} Crew */
/** @typedef {import("./types.js").Begun} Begun */
/** @typedef {import("./types.js").State} State */
/** @typedef {{lane: number, place: number, rep: string, at: number}} Touch `at` in milliseconds of the pool's clock; NaN kept as null: missed */
/** @typedef {{step: import("./types.js").Step, lane: number, place: number, from: number, until: number, label: string, rep: string}} Slot one result to come, touched
 *   before `until` */

/** No swimmer is back sooner: a touch before this share of the target is of the rep before. */
const SOONEST = 0.6;
const SOONEST_MS = 8000;
/** Nor later than so long after the rep's clock, or after the last of the lane should be home. */
const GRACE_MS = 10_000;

/**
 * The places of a lane, in order, with how long after the first send-off of the rep each goes, in milliseconds.
 * @param {import("./types.js").RepBlock} block
 * @param {number} wave from 1
 */
export function placesOf(block, wave) {
  const atOnce = block.waves ? (block.at_once ?? 1) : (block.in_lane ?? 1);
  const places = Array.from({ length: block.in_lane ?? 1 }, (_, place) => place);
  return places.filter((place) => Math.floor(place / atOnce) === wave - 1).map((place) => ({ place, after: (place % atOnce) * (block.gap ?? 0) * 1000 }));
}

/**
 * All results that a crew has been asked for, in the order in which they come.
 * @param {State} state
 * @param {Crew} crew
 * @param {number[]} lanes
 * @returns {Slot[]}
 */
export function slots(state, crew, lanes) {
  const asked = crew.done.filter(({ step, undone }) => step.kind === "rep" && !step.sat && !undone && state.data.parts[step.part].items[step.item ?? 0].result);
  const reps = [...new Set(asked.map(({ step }) => `${step.run}:${step.rep}`))];
  return asked.flatMap(({ step, at }) =>
    step.block ? placesOf(step.block, step.wave ?? 1).flatMap(({ place, after }) =>
      lanes.map((lane) => ({ step, lane, place, from: at + after, until: at + Math.max(step.ms ?? Infinity, step.home ?? 0) + GRACE_MS, rep: `${step.run}:${step.rep}`, label: `${reps.indexOf(`${step.run}:${step.rep}`) + 1}` }))) : []);
}

/**
 * Which result a touch in a lane is: the earliest still to come whose swimmer can be back, of the last rep that each place has begun.
 * @param {Slot[]} all
 * @param {Touch[]} touches so far
 * @param {number} lane
 * @param {number} at
 * @returns {Slot | null}
 */
export function slotOf(all, touches, lane, at) {
  const has = new Set(touches.filter((touch) => touch.lane === lane).map(({ rep, place }) => `${rep} ${place}`));
  const possible = all.filter((slot) => slot.lane === lane && at - slot.from >= soonest(slot) && at < slot.until);
  /** @type {Map<number, Slot>} */
  const last = new Map();
  possible.forEach((slot) => last.set(slot.place, slot)); // of each place only its last rep: an older blank stays blank
  const open = [...last.values()].filter(({ rep, place }) => !has.has(`${rep} ${place}`));
  return open.sort((a, b) => a.from - b.from)[0] ?? null;
}

/** @param {Slot} slot */
const soonest = ({ step }) => (typeof step.target === "number" ? step.target * 1000 * SOONEST : SOONEST_MS);

/** A result in seconds to the tenth; null for a missed touch.
 * @param {Slot} slot
 * @param {Touch[]} touches */
export function resultOf(slot, touches) {
  const touch = touches.find(({ lane, place, rep }) => lane === slot.lane && place === slot.place && rep === slot.rep);
  return touch && Number.isFinite(touch.at) ? Math.round((touch.at - slot.from) / 100) / 10 : null;
}

/**
 * "Order changed": the touches of two places of a lane and rep are each other's.
 * @param {Touch[]} touches
 * @param {{lane: number, rep: string}} where
 * @param {number} one
 * @param {number} other
 */
export const swapped = (touches, { lane, rep }, one, other) =>
  touches.map((touch) => {
    const isHere = touch.lane === lane && touch.rep === rep && (touch.place === one || touch.place === other);
    return isHere ? { ...touch, place: touch.place === one ? other : one } : touch;
  });
