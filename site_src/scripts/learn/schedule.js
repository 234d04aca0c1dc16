// When a question comes back that was answered wrong: by a library that reckons how long it is remembered.

import { createEmptyCard, fsrs, generatorParameters, Rating } from "ts-fsrs";

/** What is kept of a question that comes back; days as texts of ISO 8601.
 * @typedef {{due: string, stability: number, difficulty: number, elapsed_days: number, scheduled_days: number, learning_steps: number,
 *   reps: number, lapses: number, state: number, last_review?: string | undefined}} Return */

// The same for everybody, so that two phones that were told the same answers ask on the same days: no chance is put in.
const scheduler = fsrs(generatorParameters({ enable_fuzz: false, learning_steps: ["10m"], relearning_steps: ["10m"] }));

/**
 * What is kept of a question after an answer: nothing of one that was right at once; else when it comes back.
 * @param {Return | undefined} before
 * @param {boolean} right
 * @param {Date} now
 * @returns {Return | undefined}
 */
export function after(before, right, now) {
  if (!before && right) {
    return undefined;
  }
  const card = before ?? createEmptyCard(now);
  const next = scheduler.next(/** @type {import("ts-fsrs").CardInput} */ (card), now, right ? Rating.Good : Rating.Again).card;
  return { ...next, due: next.due.toISOString(), last_review: next.last_review?.toISOString() };
}
