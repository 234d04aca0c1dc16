// A piece done more or less often than it is written: its blocks and its lines with so many rounds or reps. A round or a rep more is one like
// those that are there; what is not alike can't be told, and is done by taps. Pure.

/** @import {Block, Item, Piece, PieceRun} from "./types.js" */
/** @import {RepBlock, RoundsBlock} from "../run/types.js" */

const LASTING = /** @type {const} */ (["every", "target", "rest", "home", "aim", "gap", "does"]);

/** How many reps it takes until all comes again as it was, where that was seen twice; 0 where it was not.
 * @param {unknown[][]} lists of what each rep has
 * @param {number} reps */
function periodOf(lists, reps) {
  const all = Array.from({ length: Math.floor(reps / 2) }, (_, k) => k + 1);
  return all.find((period) => lists.every((list) => list.every((own, k) => k < period || own === list[k - period]))) ?? 0;
}

/** A block with so many reps; null where it can't be told from it how those would be.
 * @param {RepBlock} block
 * @param {number} reps
 * @returns {RepBlock | null} */
function repsOf(block, reps) {
  const lists = LASTING.flatMap((name) => (Array.isArray(block[name]) ? [/** @type {const} */ ([name, /** @type {unknown[]} */ (block[name])])] : []));
  if (!lists.length) {
    return { ...block, reps };
  }
  const period = periodOf(lists.map(([, list]) => list), block.reps);
  if (period || ("does" in block && reps < block.reps)) { // in turn, over and over; of drills in turn the first
    return { ...block, reps, ...Object.fromEntries(lists.map(([name, list]) => [name, Array.from({ length: reps }, (_, k) => list[period ? k % period : k])])) };
  }
  const isLastAlone = lists.every(([name, list]) => name === "every" && list.slice(0, -1).every((own) => own === list[0]));
  return isLastAlone && block.reps > 2 ? // what comes after the last takes it another time
    { ...block, reps, ...Object.fromEntries(lists.map(([name, list]) => [name, [...Array.from({ length: reps - 1 }, () => list[0]), list[list.length - 1]]])) } : null;
}

/** @param {Block[]} blocks
 * @param {(block: RepBlock) => RepBlock} change
 * @returns {Block[]} */
export const each = (blocks, change) => blocks.map((block) => {
  if ("rounds" in block) {
    return { ...block, rounds: block.rounds.map(({ times, blocks: inner }) => ({ times, blocks: each(inner, change) })) };
  }
  return "reps" in block ? change(block) : block;
});

/** @param {RoundsBlock} block */
const timesOf = ({ rounds }) => rounds.reduce((sum, { times }) => sum + times, 0);

/** Blocks with so many rounds or reps in place of those that are written; null where that can't be told from them.
 * @param {Block[]} blocks
 * @param {Item[]} items
 * @param {Piece} piece
 * @param {number} number
 * @returns {Block[] | null} */
export function often(blocks, items, { what, written = 1 }, number) {
  if (!what || number === written) {
    return blocks;
  }
  if (what === "rounds") {
    const known = /** @type {RoundsBlock[]} */ (blocks.filter((block) => "rounds" in block));
    const [own] = known;
    const isAlike = known.length === 1 && own.rounds.length === 1 && timesOf(own) === written;
    return isAlike ? blocks.map((block) => (block === own ? { ...own, rounds: [{ times: number, blocks: own.rounds[0].blocks }] } : block)) : null;
  }
  const chief = chiefItem(blocks, items);
  /** @type {(RepBlock | null)[]} */
  const made = [];
  const changed = each(blocks, (block) => {
    if (block.item !== chief) {
      return block;
    }
    made.push(block.reps === written ? repsOf(block, number) : null);
    return made[made.length - 1] ?? block;
  });
  return made.length && !made.includes(null) ? changed : null;
}

/** The item of which there are fewer or more: that with the greatest distance, of those done more than once where there are any; the
 * first of two alike.
 * @param {Block[]} blocks
 * @param {Item[]} items */
function chiefItem(blocks, items) {
  /** @type {Map<number, [isOften: boolean, metres: number]>} */
  const far = new Map();
  const count = (/** @type {Block[]} */ some, /** @type {number} */ times) => some.forEach((block) => {
    if ("rounds" in block) {
      block.rounds.forEach((round) => count(round.blocks, times * round.times));
    } else if ("reps" in block) {
      const [isOften, metres] = far.get(block.item) ?? [false, 0];
      far.set(block.item, [isOften || block.reps > 1, metres + times * block.reps * (items[block.item].metres ?? 0)]);
    }
  });
  count(blocks, 1);
  const isAnyOften = [...far.values()].some(([isOften]) => isOften);
  const known = [...far].filter(([, [isOften]]) => isOften || !isAnyOften).sort(([first, [, one]], [next, [, other]]) => other - one || first - next);
  return known[0]?.[0];
}

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

/** The items of a piece with how often the one is done of which there are fewer or more; what was said of them on another evening is not said.
 * @param {Item[]} items
 * @param {PieceRun["crews"]} crews
 * @param {Piece} piece
 * @param {number} number
 * @returns {Item[]} */
export function itemsOf(items, crews, { of, what, written }, number) {
  const chief = what === "reps" && number !== written ? chiefItem(Object.values(crews)[0]?.blocks ?? [], items) : undefined;
  return items.map((item, place) => {
    const own = { ...item };
    if (of === "part") {
      delete own.note;
    }
    if (place !== chief) {
      return own;
    }
    const [line, told] = [own.line.replace(/^\d+ × /, ""), own.what ?? ""];
    const counted = number > 1 ? `${number} × ${line}` : line;
    return { ...own, line: counted.length > LONGEST_LINE ? line : counted, ...(told ? { what: told.replace(/^\d+ × /, `${number} × `) } : {}) };
  });
}
