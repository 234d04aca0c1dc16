// A piece done more or less often than it is written: its lines with so many reps, and what is done of it by taps. Pure.

/** @import {Block, Item, Piece, PieceRun} from "./types.js" */
/** @import {RepBlock, RoundsBlock} from "../run/types.js" */

/** @param {Block[]} blocks
 * @param {(block: RepBlock) => RepBlock} change
 * @returns {Block[]} */
export const each = (blocks, change) => blocks.map((block) => {
  if ("rounds" in block) {
    return { ...block, rounds: block.rounds.map(({ times, blocks: inner }) => ({ times, blocks: each(inner, change) })) };
  }
  return "reps" in block ? change(block) : block;
});

/** Without times: one tap for all reps of an item.
 * @param {Block[]} blocks
 * @param {Piece} piece
 * @param {number} number
 * @returns {Block[]} */
export function byTap(blocks, { what, written = 1 }, number) {
  const untimed = each(blocks, ({ item, reps }) => ({ item, reps: what === "reps" && reps === written ? number : reps, every: null }));
  if (what !== "rounds" || number === written) {
    return untimed;
  }
  const [own] = /** @type {RoundsBlock[]} */ (untimed.filter((block) => "rounds" in block));
  return untimed.map((block) => (block === own ? { ...own, rounds: roundsOf(own, number) } : block));
}

/** So many rounds: each as it is written, more than these as the first, and what is said of the last of the one that is then last.
 * @param {RoundsBlock} block
 * @param {number} number */
function roundsOf({ rounds, keeps_last: keepsLast }, number) {
  const all = rounds.flatMap(({ times, blocks }) => Array.from({ length: times }, () => blocks));
  const last = keepsLast ? all.splice(-1) : [];
  const first = Array.from({ length: number - last.length }, (_, k) => all[k] ?? all[0] ?? last[0]);
  /** @type {{times: number, blocks: Block[]}[]} */
  const found = [];
  for (const blocks of [...first, ...last]) {
    const before = found[found.length - 1];
    if (before?.blocks === blocks) {
      before.times += 1;
    } else {
      found.push({ times: 1, blocks });
    }
  }
  return found;
}

const LONGEST_LINE = 34;

/** An item done so often.
 * @param {Item} item
 * @param {number} number
 * @returns {Item} */
export function counted(item, number) {
  const [line, told] = [item.line.replace(/^\d+ × /, ""), item.what ?? ""], often = number > 1 ? `${number} × ${line}` : line;
  return { ...item, line: often.length > LONGEST_LINE ? line : often, ...(told ? { what: told.replace(/^\d+ × /, `${number} × `) } : {}) };
}

/** A piece by taps.
 * @param {PieceRun} run as it is written
 * @param {Piece} piece
 * @param {number} number
 * @returns {PieceRun} */
export const byTaps = ({ items, crews }, piece, number) => ({
  items: itemsByTap(items, crews, piece, number),
  crews: Object.fromEntries(Object.entries(crews).map(([id, { blocks }]) => [id, { blocks: byTap(blocks, piece, number) }])),
});

/** The items of a piece by taps: those that are as often done as it is written are done as often as it.
 * @param {Item[]} items
 * @param {PieceRun["crews"]} crews
 * @param {Piece} piece
 * @param {number} number
 * @returns {Item[]} */
export function itemsByTap(items, crews, { what, written = 1 }, number) {
  /** @type {Set<number>} */
  const often = new Set();
  Object.values(crews).forEach(({ blocks }) => each(blocks, (block) => (block.reps === written ? often.add(block.item) && block : block)));
  return what === "reps" && number !== written ? items.map((item, place) => (often.has(place) ? counted(item, number) : item)) : items;
}
