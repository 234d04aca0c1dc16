// Which progression is next: the one that was begun last and is not through, else the first that is not begun, easiest first.

import { counts } from "./progress.js";

/**
 * The place in the list, -1 where all have been answered.
 * @param {string[][]} progressions the questions of each, in the order of the list
 * @param {Date} now
 * @param {import("./progress.js").Progress} progress
 */
export function nextOf(progressions, now, progress) {
  const last = (/** @type {string[]} */ questions) => questions.map((question) => progress.answers[question]?.on ?? "").sort().at(-1) ?? "";
  const open = progressions.flatMap((questions, at) => (counts(questions, now, progress).answered < questions.length ? [at] : []));
  const begun = open.filter((at) => last(progressions[at])).sort((one, other) => last(progressions[other]).localeCompare(last(progressions[one])));
  return begun[0] ?? open[0] ?? -1;
}
