// Units, and what a set becomes in another pool.

import { number, word } from "./numbers.js";
import { upTo } from "./rounding.js";

export const METRES_PER_YARD = 0.9144; // exact: international yard and pound agreement, 1959

/** @type {import("./calculators.js").Work} */
export function units(given) {
  const distance = number(given, "distance");
  return given.unit === "yd"
    ? { numbers: { metres: distance * METRES_PER_YARD }, says: ["metres"] }
    : { numbers: { yards: distance / METRES_PER_YARD }, says: ["yards"] };
}

/** @type {import("./calculators.js").Work} */
export function otherPool(given, { courses, limits }) {
  const [[, here], [length, there]] = [courses[word(given, "from")], courses[word(given, "to")]];
  const [reps, rep, sendOff] = [number(given, "reps"), number(given, "rep"), number(given, "send-off")];
  const nearest = Math.max(1, Math.floor((2 * rep + length) / (2 * length))) * length;
  const moved = upTo(sendOff * ((nearest * there) / (rep * here)), limits.sendoff_step);
  return {
    numbers: {
      "rep-there": nearest,
      "send-off-there": moved,
      metres: reps * rep * here,
      "metres-there": reps * nearest * there,
      clock: reps * sendOff,
      "clock-there": reps * moved,
    },
    says: ["read", nearest === rep ? "same" : "nearest", "turns"],
  };
}
