// What may be changed of reps while a composed practice is run. Pure.

import { of as ofRep } from "../run/steps.js";

/** @import {Block} from "./types.js" */
/** @import {Each, RepBlock} from "../run/types.js" */

/** Reps of which one may be sat out: no rule of a practice asks for all of them. */
const MAY_SIT = new Set(["m", "n", "o"]);
const OFFERS = new Set(["more", "fewer", "fewest", "sit", "again"]);

/** Times with so many gaps more, each rep's own.
 * @param {Each | undefined} home
 * @param {Each | undefined} gap
 * @param {number} extra
 * @returns {Each} */
function added(home, gap, extra) {
  const later = (/** @type {number | null | undefined} */ one, /** @type {number} */ k) => (typeof one === "number" ? one + extra * (ofRep(gap, k) ?? 0) : null);
  return Array.isArray(home) ? home.map(later) : Array.isArray(gap) ? gap.map((_, k) => later(home, k)) : later(home, 0);
}

/** What may be changed on the deck: nothing that has not been held against the rules of this practice.
 * @param {RepBlock} block
 * @param {string} role
 * @param {number} extra swimmers in the fullest lane beyond the usual
 * @returns {RepBlock} */
export function fitted(block, role, extra) {
  const { sit, more } = block;
  const own = Object.fromEntries(Object.entries(block).filter(([name]) => !OFFERS.has(name)));
  const later = extra ? { home: added(block.home, block.gap, extra), in_lane: (block.in_lane ?? 1) + extra } : {};
  return { .../** @type {RepBlock} */ (own), ...(sit && MAY_SIT.has(role) ? { sit } : {}), ...(more ? { more } : {}), again: 0, ...later };
}

/** Rounds without an offer; or where they `mayGo` with that of fewer, as it was made for the piece alone, and none of more.
 * @param {Block[]} blocks
 * @param {boolean} [mayGo]
 * @returns {Block[]} */
export const withoutOffers = (blocks, mayGo = false) => blocks.map((block) => {
  if (!("rounds" in block)) {
    return block;
  }
  const { rounds, between, least, keeps_last: keepsLast } = block, number = rounds.reduce((sum, { times }) => sum + times, 0);
  const fewer = mayGo && least !== undefined && least < number ? { least, most: number, ...(keepsLast ? { keeps_last: keepsLast } : {}) } : {};
  return { rounds: rounds.map(({ times, blocks: inner }) => ({ times, blocks: withoutOffers(inner) })), ...(between ? { between } : {}), ...fewer };
});
