// What of a composed practice may go while it runs, by the rules that hold of a whole practice (`checks/run_rules.py`): the warm-up and the cool-down
// stay, so that something gentle comes before fast work and something easy after it; nothing goes where somebody goes under water, for the
// time between may be needed; and no part goes that a later one learns from. In which order: as `report/run/cuts.py` has it. Pure.

import { pieceOf } from "./places.js";

/** @import {Data, Proposal, Request} from "./types.js" */
/** @import {Block, Cut, Part as RunPart} from "../run/types.js" */

const RUNS = 3, LIMITED = 4, UNDER = 3; // their places: in an offer, in a size, and in what of a size counts against the limits of a practice

/** Whether a piece has any work under water, in whatever size.
 * @param {Data} data
 * @param {string} pool
 * @param {string} piece */
function dives(data, pool, piece) {
  const own = pieceOf(data, piece), offer = data.squad.offers[pool]?.find(([place]) => data.pieces[place] === own), runs = /** @type {any[][]} */ (offer?.[RUNS] ?? []);
  return !offer || runs.some(([first, , each]) => [first, each].some((size) => size?.[LIMITED]?.[UNDER]));
}

/** By part whether it may go; null where nothing may be cut.
 * @param {Data} data
 * @param {Request} request
 * @param {Proposal} proposal
 * @returns {boolean[] | null} */
export function mayGo(data, { pool, taught }, { parts }) {
  if (parts.some(({ piece }) => dives(data, pool, piece))) {
    return null;
  }
  const known = new Set(Object.keys(taught ?? {}).length ? [] : data.squad.taught), last = parts.length - 1;
  return parts.map(({ piece }, place) => {
    const { drills = [] } = pieceOf(data, piece), later = new Set(parts.slice(place + 1).flatMap((own) => pieceOf(data, own.piece).asks ?? []));
    return place > 0 && place < last && !drills.some((drill) => later.has(drill) && !known.has(drill));
  });
}

/** @param {Block[]} blocks */
function roundsToSpare(blocks) {
  for (const block of blocks) {
    if ("rounds" in block && block.least !== undefined) {
      return block.rounds.reduce((sum, { times }) => sum + times, 0) - block.least;
    }
  }
  return 0;
}

/** How many rounds every lane group of a part may leave out.
 * @param {RunPart} part */
const allSpare = ({ crews }) => Object.values(crews).reduce((/** @type {number | null} */ one, { blocks }) => Math.min(one ?? Infinity, roundsToSpare(blocks)), null) ?? 0;

/** How long a part lasts for those who take longest.
 * @param {RunPart} part */
const lasts = ({ crews, starts_s: starts }) => Math.max(0, ...Object.values(crews).map(({ ends_s: ends }) => ends ?? 0)) - (starts ?? 0);

/** The steps by which a run ends sooner, in order: a round of each part that has some to spare, the last first, and again; then whole parts, the
 * last first, but the longest.
 * @param {RunPart[]} parts
 * @returns {Cut[]} */
export function cutsOf(parts) {
  const spare = parts.map((own, part) => ({ part, left: allSpare(own) })).reverse();
  const most = Math.max(0, ...spare.map(({ left }) => left)), inside = parts.slice(1, -1);
  const rounds = Array.from({ length: most }, (_, k) => spare.filter(({ left }) => left > k)).flat().map(({ part }) => ({ part, do: /** @type {const} */ ("round") }));
  const longest = inside.reduce((/** @type {RunPart | undefined} */ one, own) => (one && lasts(one) >= lasts(own) ? one : own), undefined);
  return [...rounds, ...parts.flatMap((part, place) => (part.skip && part !== longest ? [{ part: place, do: /** @type {const} */ ("skip") }] : [])).reverse()];
}
