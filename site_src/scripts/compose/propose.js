// Up to three practices for what is asked, each piece with its reason: the same as `almanac compose practice --json` tells. Pure.

import { finished } from "../lib/slices.js";
import { composing } from "./choice.js";
import { focus, titled } from "./named.js";
import { whole } from "./order.js";
import { ROLES, tableOf, TENTHS, UNKNOWN } from "./pieces.js";
import { wishesOf } from "./request.js";
import { hindering } from "./hinders.js";
import { saidHinders } from "./hinders-words.js";
import { unmet, why } from "./why.js";
import { Asked } from "./wishes.js";
import { roleWord, unmetWords, whyWords } from "./words.js";

/** @typedef {import("./types.js").Proposal} Proposal */
/** @typedef {import("./order.js").Stood} Stood */

const VERSION = 1;

/**
 * The answer to a request, from a squad's data (data/v1/compose/SQUAD.json). Throws BadWish for what cannot be.
 * @param {object} data
 * @param {import("./types.js").Request} request
 * @returns {import("./types.js").Answer}
 */
export const propose = (data, request) => finished(proposing(data, request));

/**
 * The same, a short step at a time; what is in the way where nothing fits is looked for in one, before which true is told.
 * @param {object} data
 * @param {import("./types.js").Request} request
 * @returns {Generator<true | void, import("./types.js").Answer, void>}
 */
export function* proposing(data, request) {
  const table = tableOf(data);
  yield;
  const wishes = wishesOf(table, request), asked = new Asked(table, wishes);
  yield;
  const found = yield* composing(asked);
  if (!found.length) {
    yield true;
  }
  const hinders = found.length ? [] : hindering(table, wishes);
  const proposals = [];
  for (const own of found) {
    proposals.push(told(asked, own.order, own.cost));
    yield;
  }
  return {
    version: VERSION,
    squad: table.squad.id,
    groups: wishes.groups.map((group) => table.squad.groups[group]?.id ?? ""),
    pool: wishes.pool,
    unit: table.pools.find((pool) => pool.id === wishes.pool)?.unit ?? "",
    minutes: wishes.minutes,
    goals: wishes.goals.map((goal) => table.goals[goal]?.id ?? ""),
    proposals,
    hinders: saidHinders(table, wishes, hinders).map(([own, words]) => ({ wish: own.wish, which: whichOf(table, own), words })),
  };
}

/** A practice as it is told. @param {Asked} asked @param {Stood[]} order @param {number} cost @param {string[]} [out] what was swapped or taken out @returns {Proposal} */
export function told(asked, order, cost, out = []) {
  const takes = whole(order);
  return {
    title: titled(asked, order),
    focus: focus(asked, order),
    cost,
    takes_s: takes / TENTHS,
    left_s: (asked.slot - takes) / TENTHS,
    distance: order.reduce((sum, one) => sum + one.own.size.distance, 0),
    adults: Math.max(asked.adultsLeast, ...order.map((one) => one.own.adults)),
    parts: order.map((one) => partOf(asked, order, one)),
    unmet: unmet(asked, order, out).map((own) => ({ ...own, which: whichOf(asked.table, own), words: unmetWords(asked.table, own, asked.wishes.goals.length) })),
  };
}

/** @param {Asked} asked @param {Stood[]} order @param {Stood} one @returns {import("./types.js").Part} */
function partOf(asked, order, one) {
  const { table } = asked, { piece, number, takes, size } = one.own, reason = why(asked, order, one);
  return {
    role: roleWord(table, one.role),
    as: one.role,
    piece: piece.key,
    title: piece.title,
    number,
    of: piece.what || null,
    talk_s: one.lead / TENTHS,
    takes_s: takes / TENTHS,
    distance: size.distance,
    serves: reason.goals.map((goal) => table.goals[goal]?.id ?? ""),
    days_since: reason.days === UNKNOWN ? null : reason.days,
    gear: reason.gear.map(([gear, used, here]) => ({ id: table.gear[gear]?.id ?? "", in_use: used, at_hand: here })),
    why: whyWords(table, one, reason),
  };
}

/** The id of the goal, the effort or the gear that is meant, or how many minutes. @param {import("./pieces.js").Table} table @param {{wish: string, which: number}} own */
function whichOf(table, { wish, which }) {
  if (which === UNKNOWN) {
    return null;
  }
  if (wish === "piece" || wish === "room") {
    return roleWord(table, ROLES[which] ?? "").toLowerCase();
  }
  const words = { goals: table.goals, effort: table.efforts, gear: table.gear }[wish];
  return words ? (words[which]?.id ?? null) : which;
}
