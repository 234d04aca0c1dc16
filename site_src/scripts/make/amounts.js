// How far a crew swims in a part of a composed practice. Pure.

import { METRES_PER_YARD } from "../arithmetic/pools.js";

/** @import {Block, Item} from "./types.js" */

/** @typedef {{far: number, unknown: number}} Swum how far in the pool's unit, and how many reps are swum by time beside it, nobody knows how far */

const HALVES = 2;

/** A rep in the pool's unit, as it is written: data tell metres to the tenth, and nobody writes less than half a yard.
 * @param {number} metres
 * @param {string} unit */
const written = (metres, unit) => (unit === "yd" ? Math.round(HALVES * metres / METRES_PER_YARD) / HALVES : metres);

/** @param {(Swum | null)[]} each
 * @returns {Swum | null} null where nothing is known of one */
export const sumOf = (each) => each.reduce((sum, own) => sum && own && { far: sum.far + own.far, unknown: sum.unknown + own.unknown }, { far: 0, unknown: 0 });

/** @param {Block[]} blocks
 * @param {Item[]} items
 * @param {string} unit
 * @returns {Swum | null} */
function swum(blocks, items, unit) {
  return sumOf(blocks.map((block) => {
    if ("rounds" in block) {
      return sumOf(block.rounds.map(({ times, blocks: inner }) => {
        const own = swum(inner, items, unit);
        return own && { far: times * own.far, unknown: times * own.unknown };
      }));
    }
    if ("wait" in block) {
      return { far: 0, unknown: 0 };
    }
    const { metres } = items[block.item];
    return metres === undefined ? null : metres === null ? { far: 0, unknown: block.reps } : { far: block.reps * written(metres, unit), unknown: 0 };
  }));
}

/** What one swimmer of a crew swims in a part; null where nothing tells it.
 * @param {{items: Item[], crews: Record<string, {blocks: Block[]}>}} part
 * @param {string} crew its key
 * @param {string} unit m or yd
 * @returns {Swum | null} */
export const swumOf = ({ items, crews }, crew, unit) => swum(crews[crew].blocks, items, unit);

/** In words: what is swum by time is not silently none.
 * @param {Swum} swum
 * @param {string} unit */
export const swumWords = ({ far, unknown }, unit) => `${far} ${unit}${unknown ? ` and ${unknown} by time` : ""}`;
