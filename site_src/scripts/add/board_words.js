// What of a set that is being written is said in words: how hard, when to go, marks, with whom. What is not filled in yet
// stands as "…". Pure.

import { isObject } from "./schema.js";
import { tidy } from "./times.js";

/**
 * @typedef {import("./names.js").Names} Names
 * @typedef {Record<string, any>} Item of a set, as far as it is filled in
 * @typedef {Record<"drill" | "effort" | "gear" | "group" | "how", (id: any) => string>} Titles of an id, of a list of gear, of an item's
 *   start, partner and team
 */

export const OPEN = "…";
/** @type {Record<string, string>} */
const TO_MARK = {
  wall: "to the wall", flags: "to the flags", "near-flags": "to the first flags",
  middle: "to the middle", "15m": "to 15 m", end: "to the end",
};

/** @param {unknown} value */
export const text = (value) => (value === undefined || value === null || typeof value === "object" ? OPEN : String(value));
/** @type {(value: unknown) => any[]} */
export const list = (value) => (Array.isArray(value) ? value : []);

/**
 * An effort in words: `steady`, `descend steady to fast`.
 * @param {unknown} effort
 * @param {Titles} told
 */
function effortWords(effort, told) {
  if (!isObject(effort)) {
    return effort === undefined ? "" : told.effort(effort);
  }
  const each = Object.entries(effort).map(([form, words]) => {
    const efforts = list(words).map(told.effort);
    return form === "rotate" ? `in turn ${efforts.join(", ")}` : `${form} ${efforts[0] ?? OPEN} to ${efforts[1] ?? OPEN}`;
  });
  return each.sort((one, other) => Number(other.startsWith("descend")) - Number(one.startsWith("descend"))).join(", each ");
}

/** Who swims while who rests: `in 2 waves`, `2 at a time`.
 * @param {unknown} waves */
function wavesWords(waves) {
  if (!isObject(waves)) {
    return "";
  }
  return waves.number === undefined ? `${text(waves.swimmers)} at a time` : `in ${text(waves.number)} waves`;
}

/** How hard, and in how many waves.
 * @param {Item} item
 * @param {Titles} told */
export const howHard = ({ effort, parts, waves }, told) =>
  [parts ? "" : effortWords(effort, told), wavesWords(waves)].filter(Boolean).join(", ");

/** @param {unknown} rounds */
export const roundsWords = (rounds) => `${text(rounds)} ${Number(rounds) === 1 ? "round" : "rounds"}`;

/** One time, or one for each rep.
 * @param {unknown} times */
const timesWords = (times) => (Array.isArray(times) ? times.map(tidy).join(", ") : tidy(times));

/** @param {unknown} sendoff
 * @param {Titles} told */
function sendoffWords(sendoff, told) {
  if (!isObject(sendoff)) {
    return `on ${timesWords(sendoff)}`;
  }
  const times = Object.entries(sendoff).map(([group, time]) => [told.group(group), timesWords(time)]);
  const isOne = times.length > 1 && new Set(times.map(([, time]) => time)).size === 1;
  return isOne ? `on ${times[0][1]}` : times.map(([group, time]) => `${group} on ${time}`).join("; ");
}

/** What a board needs of the catalogue: the titles of efforts, drills and gear.
 * @param {Names} names
 * @returns {Titles} */
export function titles({ vocabulary, reference }) {
  /** @type {(known: import("./names.js").Known[] | undefined, id: unknown) => string} */
  const titled = (known, id) => known?.find(([own]) => own === id)?.[1] ?? text(id);
  return {
    effort: (id) => titled(vocabulary.efforts, id).toLowerCase(),
    drill: (id) => titled(reference.drill, id),
    group: (id) => titled(reference.lane_group, id),
    how: ({ start, partner, team }) =>
      [["starts", start], ["partners", partner], ["teams", team]]
        .filter(([, word]) => word !== undefined)
        .map(([list_, word]) => titled(vocabulary[list_], word))
        .map((title) => title.slice(0, 1).toLowerCase() + title.slice(1)).join(", "),
    gear: (ids) => list(ids).map((id) => titled(reference.gear, id).toLowerCase()).join(" and "),
  };
}

/** @type {Record<string, string>} */
const ORDERS = {
  rotate: "in turn", medley: "in medley order", reverse_medley: "in reverse medley order",
};

/** What is done: a drill, or several in turn.
 * @param {unknown} what
 * @param {Titles} told */
export function doWords(what, told) {
  if (!isObject(what)) {
    return told.drill(what);
  }
  const [[order, drills] = ["", []]] = Object.entries(what);
  return `${ORDERS[order] ?? OPEN}: ${list(drills).map(told.drill).join(", ")}`;
}

/** The time to hold.
 * @param {unknown} aim
 * @param {Titles} told */
export function aimWords(aim, told) {
  if (aim === undefined) {
    return "";
  }
  const times = isObject(aim) ? Object.entries(aim).map(([group, time]) => `${tidy(time)} ${told.group(group)}`) : [tidy(aim)];
  return `hold ${times.join(", ")}`;
}

/**
 * @param {Item} part
 * @param {Titles} told
 * @param {boolean} isTold what is done stands before all of them
 */
function partWords(part, told, isTold) {
  const worn = list(part.gear).length ? ` with ${told.gear(part.gear)}` : "";
  const passing = part.in_passing === undefined ? "" : ", gear changed in passing";
  const rest = part.rest === undefined ? "" : `, ${tidy(part.rest)} rest`;
  const what = isTold ? "" : doWords(part.do, told);
  const swum = (part.to === undefined ? [text(part.distance), what] : [what, TO_MARK[part.to] ?? OPEN]).filter(Boolean).join(" ");
  return `${swum} (${effortWords(part.effort, told) || OPEN})${worn}${passing}${rest}`;
}

/** The parts of a rep, those alike in a row once; what is done in all of them stands before them.
 * @param {Item[]} parts
 * @param {Titles} told */
export function partsWords(parts, told) {
  /** @type {{words: string, each: string, count: number}[]} */
  const rows = [];
  const [done, ...others] = new Set(parts.map((part) => doWords(part.do, told)));
  for (const part of parts) {
    const words = partWords(part, told, !others.length);
    const last = rows.at(-1);
    if (last?.words === words) {
      last.count += 1;
    } else {
      rows.push({ words, each: part.rest === undefined ? "" : " each", count: 1 });
    }
  }
  const all = rows.map(({ words, each, count }) => (count > 1 ? `${count} times ${words}${each}` : words)).join(", then ");
  return others.length ? `as ${all}` : all && `${done}: ${all}`;
}

/** @param {Item} item
 * @param {Titles} told */
export function goWords({ sendoff, rest }, told) {
  if (sendoff !== undefined) {
    return sendoffWords(sendoff, told);
  }
  return rest === undefined ? "" : `${tidy(rest)} rest`;
}
