// From one or two tests: the line through them, targets at an effort, send-offs, a descend ladder. Times in seconds, speeds in m/s.

import { NoAnswer, number, pairs, word } from "./numbers.js";
import { upTo } from "./rounding.js";

/** @typedef {import("./numbers.js").Club} Club */
/** @typedef {import("./numbers.js").Given} Given */
/** @typedef {{metres: number, seconds: number}} Test */
/** @typedef {{given: Given, club: Club, tests: Test[], exponent: number, sound: boolean}} Tested */

const ROUNDING = 1e-9; // of the machine, in an exponent

/**
 * The tests that were given, and the exponent of the line through them: T(D) = T₁ (D / D₁)^b.
 * @param {Given} given
 * @param {Club} club
 * @returns {Tested}
 */
function tested(given, club) {
  const unit = club.courses[word(given, "pool")][1];
  const tests = pairs(given, ["distance", "time"], ["", "-2"], "half-a-test")
    .map(([distance, seconds]) => ({ metres: distance * unit, seconds }))
    .sort((one, other) => one.metres - other.metres);
  const { single_test_exponent, least_exponent, greatest_exponent } = club.limits;
  if (tests.length < 2) {
    return { given, club, tests, exponent: single_test_exponent, sound: true };
  }
  const [shorter, longer] = tests;
  if (shorter.metres === longer.metres) {
    throw new NoAnswer("same-distance");
  }
  const exponent = Math.log(longer.seconds / shorter.seconds) / Math.log(longer.metres / shorter.metres);
  const sound = least_exponent - ROUNDING <= exponent && exponent <= greatest_exponent + ROUNDING;
  return { given, club, tests, exponent, sound };
}

/**
 * The best time over a distance: from the test that is nearest by ratio, the shorter of two as near.
 * @param {Tested} of
 * @param {number} metres
 */
function best({ tests, exponent }, metres) {
  const far = tests.map((test) => Math.abs(Math.log(metres / test.metres)));
  const test = tests[far.indexOf(Math.min(...far))];
  return metres === test.metres ? test.seconds : test.seconds * (metres / test.metres) ** exponent;
}

/**
 * The time over a distance at an effort: its share of the best speed over the distance, or over the effort's reference where that is longer.
 * @param {Tested} of
 * @param {string} effort
 * @param {number} metres
 */
function atEffort(of, effort, metres) {
  const { club, given, exponent, sound } = of;
  if (!sound) {
    const { least_exponent: least, greatest_exponent: most } = club.limits;
    throw new NoAnswer("tests-disagree", { exponent, least, most });
  }
  const level = word(given, "level");
  const { share, by_level, reference_m } = club.efforts[effort];
  const over = Math.max(metres, reference_m);
  const seconds = (best(of, over) * (metres / over)) / (by_level[level] ?? share);
  const slowest = club.slowest_afloat[level];
  if (metres < slowest * seconds) {
    throw new NoAnswer("too-slow", { slowest });
  }
  return seconds;
}

/**
 * The rest that a rule asks: so much for each 50 m, up to the most, or a share of the work.
 * @param {import("./numbers.js").Rest} rule
 * @param {number} metres
 * @param {number} seconds
 * @param {Club} club
 */
const restOf = (rule, metres, seconds, club) =>
  rule.per_50 === null ? (rule.share ?? 0) * seconds : Math.min((rule.per_50 * metres) / 50, club.limits.rest_by_distance_most);

/** @type {import("./calculators.js").Work} */
export function sendOffs(given, club) {
  const of = tested(given, club);
  const effort = word(given, "effort");
  /** @type {Record<string, number>} */
  const numbers = {};
  for (const [name, [, unit]] of Object.entries(club.courses)) {
    const metres = number(given, "rep") * unit;
    const target = atEffort(of, effort, metres);
    const { wanted, least } = club.rest[effort];
    const rest = Math.max(restOf(wanted, metres, target, club), restOf(least, metres, target, club));
    const sendOff = upTo(target + rest, club.limits.sendoff_step);
    Object.assign(numbers, { [`target-${name}`]: target, [`send-off-${name}`]: sendOff });
    if (name === given.pool) {
      Object.assign(numbers, { target, rest, "send-off": sendOff });
    }
  }
  const midPool = Object.entries(club.courses).flatMap(([name, [length]]) => (number(given, "rep") % length ? [`mid-${name}`] : []));
  return { numbers, says: ["read", ...midPool, basis(of), "other-pools"] };
}

/** @param {Tested} of */
const basis = (of) => (of.tests.length < 2 ? "one-test" : "two-tests");

/** @type {import("./calculators.js").Work} */
export function ladder(given, club) {
  const of = tested(given, club);
  const metres = number(given, "rep") * club.courses[word(given, "pool")][1];
  const reps = number(given, "reps");
  const [first, last] = ["from", "to"].map((name) => atEffort(of, word(given, name), metres));
  const step = (first - last) / (reps - 1);
  if (step < 0) {
    throw new NoAnswer("rises");
  }
  const times = Array.from({ length: reps }, (_, rep) => first + ((last - first) * rep) / (reps - 1));
  return { numbers: { times, step }, says: ["read", basis(of)] };
}
