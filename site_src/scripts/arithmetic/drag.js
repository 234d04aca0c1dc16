// What gear pulls with: from two times, by a measured table, a hanging mass, a cord's readings. Forces in newtons.

import { NoAnswer, number, pairs } from "./numbers.js";

const GRAVITY = 9.80665; // m/s², by definition (CGPM 1901)
// The swimmer's own drag: N at 1 m/s, and the exponent of speed. Narita et al. 2017, J Biomech 54:123-8.
const PASSIVE = [23.5, 2.0];
const ACTIVE = [32.2, 3.3];

/** @type {import("./calculators.js").Work} */
export function addedDrag(given) {
  const ratio = number(given, "resisted") / number(given, "plain");
  const numbers = { power: 100 * (ratio ** 3 - 1), thrust: 100 * (ratio ** 2 - 1) };
  return { numbers, says: numbers.thrust > 0 ? ["read"] : ["none"] };
}

/** @type {import("./calculators.js").Work} */
export function parachute(given, { chutes }) {
  const speed = number(given, "speed");
  const k = between(chutes, number(given, "area"));
  const own = [PASSIVE, ACTIVE].map(([atOne, exponent]) => atOne * speed ** exponent);
  return { numbers: { force: k * speed ** 2, k, least: Math.min(...own), most: Math.max(...own) }, says: ["read", "own"] };
}

/** @type {import("./calculators.js").Work} */
export const pulley = (given) => ({
  numbers: { force: number(given, "mass") * GRAVITY * (given.rope === "doubled" ? 0.5 : 1) },
  says: ["read"],
});

/** @type {import("./calculators.js").Work} */
export function cord(given) {
  const readings = pairs(given, ["stretch", "force"], ["", "-2", "-3"], "half-a-reading");
  if (new Set(readings.map(([stretch]) => stretch)).size < readings.length) {
    throw new NoAnswer("same-stretch");
  }
  return { numbers: { force: between(readings, number(given, "at")) }, says: ["read"] };
}

/**
 * Linear between rows of what was measured, never beyond them.
 * @param {[number, number][]} rows
 * @param {number} at
 */
function between(rows, at) {
  const ordered = [...rows].sort((one, other) => one[0] - other[0]);
  const [low, high] = [ordered[0][0], ordered[ordered.length - 1][0]];
  if (at < low || at > high) {
    throw new NoAnswer("outside", { low, high });
  }
  const after = Math.max(1, ordered.findIndex(([x]) => x >= at));
  const [[x0, y0], [x1, y1]] = [ordered[after - 1], ordered[after]];
  return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
}
