// The lines of a part as they stand on a board: rounds over what they hold, reps with their send-off, pauses. Pure.

import { count } from "../run/words.js";
import { go } from "./goes.js";

/** @import {Block, Item} from "./types.js" */
/** @import {RepBlock, RoundsBlock} from "../run/types.js" */

/** @typedef {{said: string, goes: string, depth: number, reps: RepBlock | null}} BoardLine `depth`: in how many rounds it stands; `reps` null of
 *   rounds and of a pause */

/** What reps are: how many, how far and what.
 * @param {RepBlock} block
 * @param {Item[]} items */
function repsSaid({ item, reps }, items) {
  const whole = (items[item].what ?? items[item].line).replace(/^1 × /, "");
  return reps > 1 && !/^\d+ × /.test(whole) ? `${reps} × ${whole}` : whole;
}

/** The line over rounds that are alike.
 * @param {number} number of them
 * @param {number} before those that come before them
 * @param {number} all
 * @param {number} between pause in seconds */
function roundsSaid(number, before, all, between) {
  const which = number === all ? `${all} rounds` : number === 1 ? `Round ${before + 1} of ${all}` : `Rounds ${before + 1} to ${before + number} of ${all}`;
  return between && number > 1 ? `${which}, ${count(Math.round(between))} between` : which;
}

/** Rounds, each with what it holds; a single one has no line of its own.
 * @param {RoundsBlock} block
 * @param {Item[]} items
 * @param {number} depth
 * @returns {BoardLine[]} */
function roundsLines({ rounds, between = 0 }, items, depth) {
  const all = rounds.reduce((sum, { times }) => sum + times, 0);
  return rounds.flatMap(({ times, blocks }, k) => {
    const before = rounds.slice(0, k).reduce((sum, own) => sum + own.times, 0);
    return all > 1 ? [{ said: roundsSaid(times, before, all, between), goes: "", depth, reps: null }, ...boardLines(blocks, items, depth + 1)] : boardLines(blocks, items, depth);
  });
}

/**
 * The lines of the board.
 * @param {Block[]} blocks
 * @param {Item[]} items
 * @param {number} [depth]
 * @returns {BoardLine[]}
 */
export const boardLines = (blocks, items, depth = 0) => blocks.flatMap((block) => {
  if ("rounds" in block) {
    return roundsLines(block, items, depth);
  }
  return "wait" in block ? [{ said: block.note ?? (block.why === "gear" ? "gear" : "pause"), goes: count(Math.round(block.wait)), depth, reps: null }]
    : [{ said: repsSaid(block, items), goes: go(block), depth, reps: block }];
});
