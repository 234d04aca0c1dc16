// An answer is kept, with the day on which its question comes back.

import { mine, put } from "./progress.js";
import { after } from "./schedule.js";

/**
 * Keep an answer. False where the browser keeps nothing.
 * @param {string} question
 * @param {boolean} right
 * @param {Date} now
 */
export function answered(question, right, now) {
  const { answers } = mine();
  return put({ answers: { ...answers, [question]: { right, on: now.toISOString(), back: after(answers[question]?.back, right, now) } } });
}
