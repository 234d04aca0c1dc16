// Load of a session, and of a week (Foster 1998): in arbitrary units.

import { NoAnswer, number } from "./numbers.js";

const DAYS = [1, 2, 3, 4, 5, 6, 7];
const TRAINING_DAYS = 4; // with fewer, monotony counts days and tells nothing of them

/** @type {import("./calculators.js").Work} */
export const sessionLoad = (given) => ({ numbers: { load: number(given, "rating") * number(given, "minutes") }, says: ["read"] });

/** @type {import("./calculators.js").Work} */
export function weekLoad(given) {
  const days = DAYS.map((at) => dayLoad(given, at));
  const known = days.filter((load) => load !== null);
  if (!known.length) {
    throw new NoAnswer("nothing");
  }
  const total = known.reduce((whole, load) => whole + load, 0);
  const mean = total / known.length;
  const numbers = { total, mean, known: known.length };
  if (known.length < DAYS.length) {
    return { numbers, says: ["part"] };
  }
  if (known.filter((load) => load > 0).length < TRAINING_DAYS) {
    return { numbers, says: ["read", "few"] };
  }
  const deviation = Math.sqrt(known.reduce((whole, load) => whole + (load - mean) ** 2, 0) / (known.length - 1));
  if (deviation <= 1e-9 * Math.max(1, mean)) {
    return { numbers: { ...numbers, deviation }, says: ["read", "alike"] };
  }
  const monotony = mean / deviation;
  return { numbers: { ...numbers, deviation, monotony, strain: total * monotony }, says: ["read", "monotony"] };
}

/**
 * A day's load; 0 with no minutes, null where nothing is said of it.
 * @param {import("./numbers.js").Given} given
 * @param {number} at
 */
function dayLoad(given, at) {
  const [minutes, rating] = [given[`minutes-${at}`], given[`rating-${at}`]];
  if (minutes === 0) {
    return 0;
  }
  if ((minutes === undefined) !== (rating === undefined)) {
    throw new NoAnswer("half-a-day");
  }
  return typeof minutes === "number" && typeof rating === "number" ? rating * minutes : null;
}
