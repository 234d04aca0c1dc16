// What is swum of a piece, in its row: the first lines of its board, so often as it is done here. Pure.

import { count } from "../run/words.js";
import { go } from "./goes.js";

/** @import {Block, Item, RunData} from "./types.js" */
/** @import {Part} from "../run/types.js" */

/** @typedef {{said: string, goes: string, depth: number}} Line a rep-group with its send-off, or a line over rounds, without one; `depth`: in how
 *   many rounds it stands */
/** @typedef {{whose: string, lines: Line[], more: number}} Swim `whose`: of which lane groups, "" of all; `more`: rep-groups that are not shown */

const MOST = 2; // rep-groups that a row shows

/** The line over rounds that are alike.
 * @param {number} number of them
 * @param {number} before those that come before them
 * @param {number} all
 * @param {number} between pause in seconds
 * @param {number} depth */
function roundsLine(number, before, all, between, depth) {
  const which = number === all ? `${all} rounds` : number === 1 ? `Round ${before + 1} of ${all}` : `Rounds ${before + 1} to ${before + number} of ${all}`;
  return { said: between && number > 1 ? `${which}, ${count(Math.round(between))} between` : which, goes: "", depth, isRep: false };
}

/** The lines of the board: what rounds hold stands under their number.
 * @param {Block[]} blocks
 * @param {Item[]} items
 * @param {number} [depth]
 * @returns {(Line & {isRep: boolean})[]} */
const lines = (blocks, items, depth = 0) => blocks.flatMap((block) => {
  if ("rounds" in block) {
    const { rounds, between = 0 } = block;
    const before = rounds.map((_, k) => rounds.slice(0, k).reduce((sum, { times }) => sum + times, 0));
    const all = rounds.reduce((sum, { times }) => sum + times, 0);
    return rounds.flatMap(({ times, blocks: inner }, k) => [...(all > 1 ? [roundsLine(times, before[k], all, between, depth)] : []), ...lines(inner, items, all > 1 ? depth + 1 : depth)]);
  }
  if ("wait" in block) {
    return [];
  }
  const { what, line, effort } = items[block.item];
  const whole = (what ?? line).replace(/^1 × /, "");
  const said = block.reps > 1 && !/^\d+ × /.test(whole) ? `${block.reps} × ${whole}` : whole;
  return [{ said: what && effort ? `${said}, ${effort}` : said, goes: go(block), depth, isRep: true }];
});

/** The first of them, and how many more there are.
 * @param {(Line & {isRep: boolean})[]} all */
function first(all) {
  const reps = all.filter(({ isRep }) => isRep);
  const last = all.indexOf(reps[MOST - 1] ?? reps[reps.length - 1]);
  return { lines: all.slice(0, last + 1).map(({ said, goes, depth }) => ({ said, goes, depth })), more: Math.max(0, reps.length - MOST) };
}

/**
 * What is swum of a part: once where all lane groups swim the same, with the send-offs of each, else of those that do.
 * @param {Part} part
 * @param {RunData["crews"]} crews
 * @returns {Swim[]}
 */
export function swimOf(part, crews) {
  const known = crews.filter(({ key }) => part.crews[key]).map(({ key, title }) => ({ title, all: lines(part.crews[key].blocks, part.items) }));
  const alike = new Map(known.map(({ all }) => [all.map(({ said }) => said).join("\n"), /** @type {typeof known} */ ([])]));
  known.forEach((own) => alike.get(own.all.map(({ said }) => said).join("\n"))?.push(own));
  return [...alike.values()].map((own) => {
    const all = own[0].all.map((line, k) => ({ ...line, goes: [...new Set(own.map((one) => one.all[k].goes))].filter(Boolean).join(" · ") }));
    return { whose: alike.size > 1 ? own.map(({ title }) => title).join(" and ") : "", ...first(all) };
  });
}
