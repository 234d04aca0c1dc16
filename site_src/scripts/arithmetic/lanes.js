// The send-off of a lane: what its swimmers need, and how many fit.

import { number } from "./numbers.js";
import { upTo } from "./rounding.js";

const ROUNDING = 1e-9; // of the machine

/** @type {import("./calculators.js").Work} */
export function lane(given, { limits }) {
  const [target, heads, lengths] = [number(given, "target"), number(given, "swimmers"), number(given, "lengths")];
  const asked = number(given, "gap");
  const gap = given.side === "back" ? Math.max(asked, limits.gap_on_back) : asked;
  const sendOff = upTo(Math.max(target + number(given, "rest"), heads * gap), limits.sendoff_step);
  const rules = [...roomOf(lengths, heads, gap, target, sendOff)];
  const most = Math.min(...rules.map((rule) => rule.fit));
  const full = rules.filter((rule) => rule.fit < heads && rule.takes > rule.within);
  const told = full.slice(0, 1).map((rule) => rule.room).filter((room) => room !== "again");
  return {
    numbers: { "send-off": sendOff, left: sendOff - target, most, "gap-kept": gap, last: (heads - 1) * gap + target },
    says: [...(heads > 1 ? [...told, "read"] : ["alone"]), ...(gap > asked ? ["wider"] : [])],
  };
}

/**
 * For each rule that reps of so many lengths are under: what the lane takes, within what time, and how many fit. The leader is back at the start
 * after two lengths, and must not meet the tail; and leaves again when all have left.
 * @param {number} lengths
 * @param {number} heads
 * @param {number} gap
 * @param {number} quick the time of the quickest over a rep
 * @param {number} again when the leader leaves again
 */
function* roomOf(lengths, heads, gap, quick, again) {
  const inGaps = (/** @type {number} */ seconds) => Math.floor(seconds / gap + ROUNDING);
  if (lengths > 2) {
    const two = (quick * 2) / lengths;
    yield { room: "tail", takes: heads * gap, within: two, fit: Math.max(1, inGaps(two)) };
  } else if (lengths > 1) {
    yield { room: "back", takes: (heads - 1) * gap, within: quick, fit: Math.max(0, inGaps(quick)) + 1 };
  }
  yield { room: "again", takes: heads * gap, within: again, fit: Math.max(1, inGaps(again)) };
}
