// What a piece is run by, done so often: its run as it is written, and what the build tells of this pool and this size. Pure.

/** @import {Data, Difference, Item, Piece, PieceRun, PoolRuns, RunData, Sources} from "./types.js" */
/** @import {RepBlock} from "../run/types.js" */

import { applied } from "./apply.js";
import { withoutOffers } from "./offers.js";
import { counted, each } from "./often.js";
import { packed, unpacked } from "./packed.js";
import { courseOf, fileOf, keyOf } from "./places.js";

/** What differs in this pool, and of a size from the first there; undefined where it is none of the piece's sizes, or nothing of this pool is here.
 * @param {PoolRuns | null} here
 * @param {Piece} piece
 * @param {number} number
 * @returns {{as: Difference | PieceRun | undefined, size: Difference} | undefined} */
function told(here, piece, number) {
  const { from = piece.written, as, sizes = {} } = here?.pieces[keyOf(piece)] ?? {};
  const size = piece.what && number !== from ? sizes[number] : {};
  return here && size ? { as, size } : undefined;
}

/** What a piece is run by; null where nothing is known of it. `isTimed`: not where only its lines are, of a run in another pool or another
 * size.
 * @param {Data} data
 * @param {Piece} piece
 * @param {number} number
 * @param {string} pool
 * @param {Sources} sources
 * @param {PoolRuns | null} here
 * @returns {(PieceRun & {isTimed: boolean}) | null} */
export function sourceOf(data, piece, number, pool, sources, here) {
  const own = told(here, piece, number);
  if (piece.of === "drill") {
    return own?.as ? { ...changed(/** @type {PieceRun} */ (own.as), own.size, data), hazards: data.drill_hazards[piece.id], isTimed: true } : null;
  }
  const run = sources[fileOf({ piece: keyOf(piece) })], isHome = run?.course === courseOf(data, pool), base = partOf(run, piece);
  return base && (own ? asTold(base, own, isHome, data) : { ...base, isTimed: isHome && isWritten(piece, number) });
}

/** @param {Piece} piece
 * @param {number} number */
const isWritten = ({ what, written }, number) => !what || number === written;

/** @param {PieceRun} base
 * @param {NonNullable<ReturnType<typeof told>>} own
 * @param {boolean} isHome
 * @param {Data} data */
function asTold(base, { as = {}, size }, isHome, data) {
  const first = changed(isHome ? base : unoffered(base), /** @type {Difference} */ (as), data);
  return { ...changed(first, size, data), hazards: base.hazards ?? [], isTimed: true };
}

/** A part as the run of its set or practice has it.
 * @param {RunData | undefined} run
 * @param {Piece} piece
 * @returns {PieceRun | null} */
function partOf(run, piece) {
  const part = run?.parts.find(({ number }) => piece.of === "set" || number === (piece.part ?? 0) + 1);
  if (!part) {
    return null;
  }
  const halves = Object.entries(part.crews).map(([key, crew]) => /** @type {const} */ ([key.split("/")[0], crew]));
  return { items: part.items, crews: Object.fromEntries(halves), hazards: run?.hazards ?? [] };
}

/** A run with what differs from it.
 * @param {PieceRun} run
 * @param {Difference} difference
 * @param {Data} data
 * @returns {PieceRun} */
function changed({ items, crews }, { items: others = {}, all = {}, each: own }, { squad }) {
  const differences = own ?? Object.fromEntries(squad.groups.flatMap(([id]) => (crews[id] ? [[id, all]] : [])));
  return {
    items: applied(items, others).map((/** @type {Item & {n?: number}} */ { n, ...item }) => (n ? counted(item, n) : item)),
    crews: Object.fromEntries(Object.entries(differences).map(([id, difference]) => [id, { blocks: each(applied(crews[id] && each(crews[id].blocks, packed), difference), unpacked) }])),
  };
}

/** What was held against the rules in one pool is not offered in another: a round of 150 m ends where it began in 25 m, and at the far end in 50 m.
 * @param {PieceRun} run
 * @returns {PieceRun} */
const unoffered = ({ items, crews }) => ({
  items, crews: Object.fromEntries(Object.entries(crews).map(([id, { blocks }]) => [id, { blocks: withoutOffers(each(blocks, (block) => without(block, ["more", "sit"]))) }])),
});

/** @template {Item | RepBlock} T
 * @param {T} own
 * @param {string[]} names
 * @returns {T} */
const without = (own, names) => /** @type {T} */ (Object.fromEntries(Object.entries(own).filter(([name]) => !names.includes(name))));

/** The items of a piece without what was said of them on another evening.
 * @param {Item[]} items
 * @param {Piece} piece
 * @returns {Item[]} */
export const unsaid = (items, { of }) => (of === "part" ? items.map((item) => without(item, ["note"])) : items);
