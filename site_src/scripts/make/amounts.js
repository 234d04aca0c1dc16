// How far a crew swims in a part of a composed practice. Pure.

import { METRES_PER_YARD } from "../arithmetic/pools.js";

/** @import {Block, Item} from "./types.js" */

const HALVES = 2;

/** A rep in the pool's unit, as it is written: data tell metres to the tenth, and nobody writes less than half a yard.
 * @param {number} metres
 * @param {string} unit */
const written = (metres, unit) => (unit === "yd" ? Math.round(HALVES * metres / METRES_PER_YARD) / HALVES : metres);

/** @param {Block[]} blocks
 * @param {Item[]} items
 * @param {string} unit
 * @returns {number | null} null where it is not known of one */
function far(blocks, items, unit) {
  const each = blocks.map((block) => {
    if ("rounds" in block) {
      const rounds = block.rounds.map(({ times, blocks: inner }) => [times, far(inner, items, unit)]);
      return rounds.some(([, own]) => own === null) ? null : rounds.reduce((sum, [times, own]) => sum + Number(times) * Number(own), 0);
    }
    if ("wait" in block) {
      return 0;
    }
    const { metres } = items[block.item];
    return typeof metres === "number" ? block.reps * written(metres, unit) : null;
  });
  return each.includes(null) ? null : each.reduce((sum, own) => Number(sum) + Number(own), 0);
}

/** What one swimmer of a crew swims in a part, in the pool's unit; null where that is not known.
 * @param {{items: Item[], crews: Record<string, {blocks: Block[]}>}} part
 * @param {string} crew its key
 * @param {string} unit m or yd */
export const swumOf = ({ items, crews }, crew, unit) => far(crews[crew].blocks, items, unit);
