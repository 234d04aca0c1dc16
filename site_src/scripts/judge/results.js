// Rounds of ten that were judged, and whether they make somebody ready for the deck.

import { read, write } from "../lib/storage.js";
import { inWords } from "../lib/today.js";

/** @typedef {{on: string, right: number}} Round */
const SUBJECT = "judge";
const KEPT = 20;
export const ROUND = 10;
const ENOUGH = 8;
const APART_DAYS = 2;
const DAY_MS = 86_400_000;

/** @param {string} shape
 * @returns {Round[]} */
export const rounds = (shape) => read(SUBJECT, /** @type {Record<string, Round[]>} */ ({}))[shape] ?? [];

/** Keep a round of ten; false where the browser keeps nothing.
 * @param {string} shape
 * @param {Round} round */
export const keep = (shape, round) => setRounds(shape, [...rounds(shape), round]);

/** Keep these rounds, the last of them, and no others; false where the browser keeps nothing.
 * @param {string} shape
 * @param {Round[]} all */
export const setRounds = (shape, all) =>
  write(SUBJECT, { ...read(SUBJECT, /** @type {Record<string, Round[]>} */ ({})), [shape]: all.slice(-KEPT) });

/** Whether what was taken along is a round. @param {any} found */
export const isRound = (found) =>
  /^\d{4}-\d\d-\d\d$/.test(found?.on) && !Number.isNaN(Date.parse(found.on)) && Number.isInteger(found.right) && found.right >= 0 && found.right <= ROUND;

/** Whether eight of ten were right on two days, one at least two days after the other.
 * @param {Round[]} all */
export function isReady(all) {
  const days = all.filter((round) => round.right >= ENOUGH).map((round) => Date.parse(`${round.on}T12:00Z`));
  return days.length > 1 && Math.max(...days) - Math.min(...days) >= APART_DAYS * DAY_MS;
}

/** What stands under Ready for the deck.
 * @param {Round[]} all */
export function readyWords(all) {
  if (!all.length) {
    return "No round of ten yet.";
  }
  const last = all[all.length - 1];
  const told = `Last round: ${last.right} of ${ROUND} on ${inWords(last.on)}.`;
  return isReady(all) ? `${told} Ready for the deck.` : `${told} Not ready yet.`;
}
