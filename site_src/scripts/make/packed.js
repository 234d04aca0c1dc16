// Reps as they are told by what differs (`report/reps_packed.py`): when the last is home by how much later than the target (`tail`), the rest
// by how much less than what the target leaves (`less`). Only sums. Pure.

/** @import {Each, RepBlock} from "../run/types.js" */

/** @typedef {RepBlock & {tail?: Each, less?: Each}} Packed */

const TENTHS = 10;

/** What holds for each rep; null where that is not known of one.
 * @param {Each | undefined} own
 * @param {number} reps
 * @returns {number[] | null} */
function eachOf(own, reps) {
  const each = Array.isArray(own) ? own : Array.from({ length: reps }, () => own ?? null);
  return each.includes(null) ? null : /** @type {number[]} */ (each);
}

/** One value for all reps, or one for each where they differ.
 * @param {number[]} first
 * @param {(value: number, rep: number) => number} make */
function once(first, make) {
  const each = first.map((value, rep) => Math.round(TENTHS * make(value, rep)) / TENTHS);
  return each.every((value) => value === each[0]) ? each[0] : each;
}

/** @param {RepBlock} block
 * @returns {Packed} */
export function packed({ rest, home, ...block }) {
  const [every, target, rests, homes] = [block.every, block.target, rest, home].map((own) => eachOf(own, block.reps));
  return {
    ...block,
    ...(target && homes ? { tail: once(homes, (value, rep) => value - target[rep]) } : home === undefined ? {} : { home }),
    ...(every && target && rests ? { less: once(every, (value, rep) => value - target[rep] - rests[rep]) } : rest === undefined ? {} : { rest }),
  };
}

/** @param {Packed} block
 * @returns {RepBlock} */
export function unpacked({ tail, less, ...block }) {
  const [every, target, tails, lesses] = [block.every, block.target, tail, less].map((own) => eachOf(own, block.reps));
  return {
    ...block,
    ...(target && tails ? { home: once(target, (value, rep) => value + tails[rep]) } : {}),
    ...(every && target && lesses ? { rest: once(every, (value, rep) => value - target[rep] - lesses[rep]) } : {}),
  };
}
