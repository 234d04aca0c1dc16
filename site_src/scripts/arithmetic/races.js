// What timed swims tell: critical speed, fade, points.

import { NoAnswer, number, pairs } from "./numbers.js";

/** @type {import("./calculators.js").Work} */
export function criticalSpeed(given) {
  const trials = pairs(given, ["distance", "time"], ["", "-2"], "half-a-test").sort((one, other) => one[0] - other[0]);
  const [[near, nearS], [far, farS]] = trials;
  if (near === far) {
    throw new NoAnswer("same-distance");
  }
  if (farS <= nearS) {
    throw new NoAnswer("no-slower");
  }
  const speed = (far - near) / (farS - nearS);
  const reserve = (near + far) / 2 - (speed * (nearS + farS)) / 2;
  if (reserve <= 0) {
    throw new NoAnswer("no-reserve");
  }
  return { numbers: { speed, pace: 100 / speed, reserve }, says: ["read", "reserve"] };
}

/** @param {number[]} values */
const sum = (values) => values.reduce((whole, value) => whole + value, 0);

/** @type {import("./calculators.js").Work} */
export function fade(given) {
  const laps = /** @type {number[]} */ (given.laps);
  if (laps.length < 3) {
    throw new NoAnswer("few");
  }
  const middle = laps.slice(1, -1);
  const numbers = { last: 100 * (laps[laps.length - 1] / (sum(middle) / middle.length) - 1), total: sum(laps) };
  if (laps.length % 2) {
    return { numbers, says: ["read", "odd"] };
  }
  const [first, second] = [sum(laps.slice(0, laps.length / 2)), sum(laps.slice(laps.length / 2))];
  return { numbers: { ...numbers, half: 100 * (second / first - 1), "half-s": second - first }, says: ["read", "halves"] };
}

/** In whole hundredths, so that a whole number of points is never missed by a rounding of the machine.
 * @type {import("./calculators.js").Work} */
export function points(given) {
  const [base, time] = ["base", "time"].map((name) => BigInt(Math.round(number(given, name) * 100)));
  return { numbers: { points: Number((1000n * base ** 3n) / time ** 3n) }, says: ["read"] };
}
