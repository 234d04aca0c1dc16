// What was done lately: what was kept as done, what a block of the squad had planned, and what this phone has run.

import { read, write } from "../lib/storage.js";

/** @import {Data} from "./types.js" */
/** @typedef {{id: string, title: string, days: number}} Done a practice of the squad, or a piece, by its key */

export const SUBJECT = "make-done";
const LATELY = 28;
const DAY_MS = 86_400_000;

/** Days from one to another, both YYYY-MM-DD.
 * @param {string} from
 * @param {string} to */
export const daysBetween = (from, to) => Math.round((Date.parse(`${to}T12:00Z`) - Date.parse(`${from}T12:00Z`)) / DAY_MS);

/** @typedef {{on: string, key: string}} Ran a piece that was run on this phone */

/** @returns {Ran[]} */
const kept = () => read(SUBJECT, /** @type {Ran[]} */ ([])).filter((own) => typeof own?.on === "string" && typeof own.key === "string");

/** Note what is run now; what is older than four weeks goes.
 * @param {string} on
 * @param {string[]} keys */
export const noteRun = (on, keys) =>
  write(SUBJECT, [...kept().filter((own) => daysBetween(own.on, on) <= LATELY && !(own.on === on && keys.includes(own.key))), ...keys.map((key) => ({ on, key }))]);

/** What was done in the four weeks before a day, the latest first, each once.
 * @param {Data} data
 * @param {[on: string, practice: string][]} logged days that were kept
 * @param {string} on
 * @returns {Done[]} */
export function lately(data, logged, on) {
  const planned = data.blocks.flatMap(([, , starts, days]) => days.map(([after, place]) => {
    const [id, title] = data.practices[place];
    return { id, title, days: daysBetween(starts, on) - after };
  })).filter(({ days }) => days > 0);
  const names = new Map(data.practices.map(([id, title]) => [id, title]));
  const done = logged.flatMap(([day, id]) => (names.has(id) ? [{ id, title: `${names.get(id)}, kept as done`, days: daysBetween(day, on) }] : [])).filter(({ days }) => days > 0);
  const titles = new Map(data.pieces.map(({ of, id, part = 0, title }) => [of === "part" ? `${of}/${id}/${part}` : `${of}/${id}`, title]));
  const ran = kept().flatMap(({ on: day, key }) => (titles.has(key) ? [{ id: key, title: `${titles.get(key)}, run on this phone`, days: daysBetween(day, on) }] : []));
  const all = [...done, ...planned, ...ran].filter(({ days }) => days >= 0 && days <= LATELY).sort((one, other) => one.days - other.days);
  return all.filter(({ id }, k) => all.findIndex((other) => other.id === id) === k);
}
