// What this device keeps of what somebody has answered: up to four progresses, each under a shape that was chosen, never under a name.

import { read, write } from "../lib/storage.js";
import { isRound, rounds, setRounds } from "../judge/results.js";
import { isDue } from "./due.js";

/** @typedef {import("./schedule.js").Return} Return */
/** The last answer to a question, the day, and when it comes back where it was ever wrong.
 * @typedef {{right: boolean, on: string, back?: Return | undefined}} Answered */
/** @typedef {{answers: Record<string, Answered>}} Progress */
/** @typedef {Progress & {rounds?: import("../judge/results.js").Round[]}} TakenAlong a progress with the rounds of Judge it */
/** @typedef {{shape: string, of: Record<string, Progress>}} Kept */

export const SHAPES = ["circle", "square", "triangle", "star"];
const SUBJECT = "learn";
const CODE = "L1-";

/** @returns {Kept} */
export function kept() {
  const found = read(SUBJECT, /** @type {Partial<Kept>} */ ({}));
  const shape = SHAPES.includes(found.shape ?? "") ? /** @type {string} */ (found.shape) : SHAPES[0];
  return { shape, of: found.of ?? {} };
}

/** The progress of the shape that is chosen.
 * @returns {Progress} */
export const mine = () => progressOf(kept());

/** @param {Kept} all
 * @returns {Progress} */
const progressOf = (all) => ({ answers: all.of[all.shape]?.answers ?? {} });

/**
 * Go on under another shape.
 * @param {string} shape
 */
export const choose = (shape) => write(SUBJECT, { ...kept(), shape });

/**
 * Keep a progress under the shape that is chosen. False where the browser keeps nothing.
 * @param {Progress} progress
 */
export function put(progress) {
  const all = kept();
  return write(SUBJECT, { ...all, of: { ...all.of, [all.shape]: progress } });
}

/** Forget all that is kept under the shape that is chosen, the rounds of Judge it too. */
export function clear() {
  setRounds(kept().shape, []);
  return put({ answers: {} });
}

/**
 * Of some questions: those answered, those right at the last, those that come back by now.
 * @param {string[]} questions
 * @param {Date} now
 * @param {Progress} [progress]
 */
export function counts(questions, now, { answers } = mine()) {
  const own = questions.filter((question) => answers[question]);
  return {
    answered: own.length,
    right: own.filter((question) => answers[question].right).length,
    due: own.filter((question) => isDue(answers[question].back, now)),
  };
}

/** The progress to take along: as text of a file, which is also the code. */
export const takeAlong = () => CODE + btoa(JSON.stringify({ ...mine(), rounds: rounds(kept().shape) }));

/**
 * Put in what was taken along: of a question that both know, the later answer counts. Says what is wrong with it, or "" .
 * @param {string} text
 */
export function bring(text) {
  const brought = decoded(text.trim());
  if (!brought) {
    return "This is no progress of this site: take it along again, whole.";
  }
  const { answers } = mine();
  for (const [question, answer] of Object.entries(brought.answers)) {
    if (!answers[question] || answers[question].on < answer.on) {
      answers[question] = answer;
    }
  }
  const own = rounds(kept().shape);
  const others = (brought.rounds ?? []).filter((round) => !own.some(({ on, right }) => on === round.on && right === round.right));
  const all = [...own, ...others].sort((one, other) => one.on.localeCompare(other.on));
  return put({ answers }) && setRounds(kept().shape, all) ? "" : "This browser keeps nothing, so it could not be put in.";
}

/** @param {string} text
 * @returns {TakenAlong | null} */
function decoded(text) {
  try {
    const found = JSON.parse(atob(text.startsWith(CODE) ? text.slice(CODE.length).replace(/\s/g, "") : ""));
    return isProgress(found) ? found : null;
  } catch {
    return null;
  }
}

/** @param {any} found */
const isProgress = (found) =>
  typeof found?.answers === "object" &&
  Object.entries(found.answers).every(([question, answer]) => /^[0-9a-f]+$/.test(question) && isAnswered(answer)) &&
  (found.rounds === undefined || (Array.isArray(found.rounds) && found.rounds.every(isRound)));

/** @param {any} answer */
const isAnswered = (answer) =>
  typeof answer?.right === "boolean" && isDay(answer.on) && (answer.back === undefined || (isDay(answer.back.due) && Number.isFinite(answer.back.stability)));

/** @param {unknown} text */
const isDay = (text) => typeof text === "string" && !Number.isNaN(Date.parse(text));
