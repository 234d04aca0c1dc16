// What is swum of a piece, in its row: the first lines of its board, so often as it is done here; where lane groups differ, the lines in which
// they do, under the name of each. Pure.

import { crewName } from "../run/words.js";
import { boardLines } from "./board.js";

/** @import {RunData} from "./types.js" */
/** @import {Part} from "../run/types.js" */

/** @typedef {{whose: string, said: string, goes: string, depth: number}} Line a rep-group with its send-off, or a line over rounds, without one;
 *   `whose`: of which lane groups, "" of all; `depth`: in how many rounds */
/** @typedef {{lines: Line[], more: number}} Swim `more`: rep-groups that are not shown, of the lane group that has the most of them */
/** @typedef {{said: string, goes: string, depth: number, isRep: boolean}} Own a line of one lane group */
/** @typedef {{names: string[], lines: Own[]}} Way what lane groups that swim the same swim */

const MOST = 2; // rep-groups that a row shows
const REST = " rest";

/** What a lane group swims.
 * @param {Part} part
 * @param {string} key
 * @returns {Own[]} */
const ownLines = ({ items, crews }, key) => boardLines(crews[key].blocks, items).flatMap(({ said, goes, depth, reps }) => {
  const { what, effort } = reps ? items[reps.item] : {};
  return reps || !goes ? [{ said: what && effort ? `${said}, ${effort}` : said, goes, depth, isRep: Boolean(reps) }] : []; // no pauses
});

/** The first rep-groups, with the rounds that they stand in.
 * @param {Own[]} all */
function first(all) {
  const places = all.flatMap(({ isRep }, k) => (isRep ? [k] : []));
  return all.slice(0, (places[MOST - 1] ?? places[places.length - 1] ?? -1) + 1);
}

/** @param {Own[]} lines */
const reps = (lines) => lines.filter(({ isRep }) => isRep).length;

/** The send-offs of a line, those alike once; of rests the word once.
 * @param {Own[]} each */
function goesOf(each) {
  const known = [...new Set(each.map(({ goes }) => goes))].filter(Boolean);
  return (known.every((goes) => goes.endsWith(REST)) ? known.map((goes, k) => (k < known.length - 1 ? goes.slice(0, -REST.length) : goes)) : known).join(" · ");
}

/** Lane groups by what they do, those that do the same together.
 * @template T
 * @param {T[]} every
 * @param {(own: T) => string} same
 * @returns {T[][]} */
function alike(every, same) {
  const found = new Map(every.map((own) => [same(own), /** @type {T[]} */ ([])]));
  every.forEach((own) => found.get(same(own))?.push(own));
  return [...found.values()];
}

/** A line of all, or of each way under the name of who swims it.
 * @param {Way[]} ways
 * @param {number} k
 * @returns {Line[]} */
function merged(ways, k) {
  const each = alike(ways, ({ lines }) => lines[k].said);
  return each.map((own) => ({ whose: each.length > 1 ? own.flatMap(({ names }) => names).join(" and ") : "", said: own[0].lines[k].said, goes: goesOf(own.map(({ lines }) => lines[k])), depth: own[0].lines[k].depth }));
}

/** The lines of ways that are not as long: what begins alike once, then the rest of each under its name.
 * @param {Way[]} ways
 * @returns {Line[]} */
function apart(ways) {
  const other = ways[0].lines.findIndex(({ said }, k) => ways.some(({ lines }) => lines[k]?.said !== said));
  const head = other < 0 ? ways[0].lines.length : other;
  const begin = Array.from({ length: head }, (_, k) => merged(ways, k)).flat();
  return [...begin, ...ways.flatMap(({ names, lines }) => lines.slice(head).map(({ said, goes, depth }, k) => ({ whose: k ? "" : names.join(" and "), said, goes, depth })))];
}

/**
 * What is swum of a part that has more rows than one, stations and what is done apart: of each the first lines, under the name of who begins there.
 * @param {Part[]} rows
 * @param {RunData["crews"]} crews
 * @returns {Swim}
 */
export function swimOfPart(rows, crews) {
  if (rows.length < 2) {
    return rows.length ? swimOf(rows[0], crews) : { lines: [], more: 0 };
  }
  const begin = rows.filter(({ turn = 1 }) => turn === 1);
  const lines = begin.flatMap((row) => swimOf(row, crews).lines.map((line, k) => ({ ...line, whose: line.whose || (k ? "" : crews.filter(({ key }) => row.crews[key]).map(crewName).join(" and ")) })));
  return { lines, more: Math.max(0, ...begin.map((row) => swimOf(row, crews).more)) };
}

/**
 * What is swum of a part: what all lane groups swim once, with the send-offs of each, what they do not under their names.
 * @param {Part} part
 * @param {RunData["crews"]} crews
 * @returns {Swim}
 */
export function swimOf(part, crews) {
  const known = crews.filter(({ key }) => part.crews[key]).map((crew) => ({ names: [crewName(crew)], lines: ownLines(part, crew.key) }));
  const shown = known.map(({ names, lines }) => ({ names, lines: first(lines) }));
  const ways = alike(shown, ({ lines }) => lines.map(({ said }) => said).join("\n"));
  const isInStep = new Set(shown.map(({ lines }) => lines.map(({ depth, isRep }) => `${depth}${isRep}`).join())).size === 1;
  const lines = isInStep ? (shown[0]?.lines ?? []).flatMap((_, k) => merged(shown, k))
    : apart(ways.map((own) => ({ names: own.flatMap(({ names }) => names), lines: own[0].lines.map((line, k) => ({ ...line, goes: goesOf(own.map((one) => one.lines[k])) })) })));
  return { lines, more: Math.max(0, ...known.map((own, k) => reps(own.lines) - reps(shown[k].lines))) };
}
