// What calculators share: the shapes that go in and come out, and the reason why there is no answer.

/** @typedef {Record<string, number | string | number[]>} Given */
/** @typedef {{numbers: Record<string, number | number[]>, says: string[]}} Answer */
/** Rest in seconds for each 50 m, or as a share of the work. @typedef {{per_50: number | null, share: number | null}} Rest */
/** What of the club's own numbers calculators go by; a course is its length and the metres of its unit.
 * @typedef {{
 *   courses: Record<string, [number, number]>,
 *   efforts: Record<string, {share: number, by_level: Record<string, number>, reference_m: number}>,
 *   rest: Record<string, {least: Rest, wanted: Rest}>,
 *   limits: Record<string, number>,
 *   slowest_afloat: Record<string, number>,
 *   chutes: [number, number][],
 * }} Club */

/** Nothing can be worked out from what was given: the name of the sentence that says why, and the numbers in it. */
export class NoAnswer extends Error {
  /**
   * @param {string} why
   * @param {Record<string, number>} [numbers]
   */
  constructor(why, numbers = {}) {
    super(why);
    this.why = why;
    this.numbers = numbers;
  }
}

/**
 * A number that was given.
 * @param {Given} given
 * @param {string} name
 */
export const number = (given, name) => /** @type {number} */ (given[name]);

/**
 * A word that was chosen.
 * @param {Given} given
 * @param {string} name
 */
export const word = (given, name) => /** @type {string} */ (given[name]);

/**
 * Pairs that were given, each field with its ends; where only one of a pair is there, it is half of something.
 * @param {Given} given
 * @param {[string, string]} names
 * @param {string[]} ends
 * @param {string} half
 * @returns {[number, number][]}
 */
export function pairs(given, [first, second], ends, half) {
  /** @type {[number, number][]} */
  const found = [];
  for (const end of ends) {
    const [one, other] = [given[first + end], given[second + end]];
    if ((one === undefined) !== (other === undefined)) {
      throw new NoAnswer(half);
    }
    if (typeof one === "number" && typeof other === "number") {
      found.push([one, other]);
    }
  }
  return found;
}
