// Kick and stroke. A beat is one leg going one way; a cycle of a leg is two beats.

import { number } from "./numbers.js";

const MOST_SPEED = 3; // m/s; ours: more than the fastest swim
const MOST_CYCLES = 4; // of each leg in a second; ours

/** @type {import("./calculators.js").Work} */
export function kickRate(given) {
  const beats = number(given, "rate") * Number(given.kick);
  const numbers = { beats, second: beats / 60, legs: beats / 2 / 60 };
  if (given.length === undefined) {
    return { numbers, says: ["read"] };
  }
  return { numbers: { ...numbers, speed: (number(given, "length") * number(given, "rate")) / 60 }, says: ["read", "speed"] };
}

/** @type {import("./calculators.js").Work} */
export function kickCount(given) {
  const [seconds, beats] = [number(given, "time"), number(given, "beats")];
  const [speed, legs] = [number(given, "distance") / seconds, beats / 2 / seconds];
  const says = ["read", ...(speed > MOST_SPEED ? ["too-fast"] : []), ...(legs > MOST_CYCLES ? ["too-often"] : [])];
  return { numbers: { speed, minute: (beats / seconds) * 60, legs, cycle: speed / legs }, says };
}

/** From peak to peak. @type {import("./calculators.js").Work} */
export const strouhal = (given) => ({
  numbers: { strouhal: (number(given, "rate") * number(given, "height")) / number(given, "speed") },
  says: ["read"],
});
