// What was done: as text to share, and as the log entry that the catalogue keeps. Never a name, never a result. Pure.

import { inSentence, many, said, timeOfDay, whose } from "./words.js";
import { standing } from "./replay.js";

/** @typedef {import("./types.js").Crew} Crew */
/** @typedef {import("./types.js").Run} Run */
/** @typedef {import("./types.js").State} State */
/** @typedef {{heads?: number, note?: string}} Asked */

const MOST_CHANGES = 12;
const LONGEST_TITLE = 60;
const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];
const NO_CHANGE = new Set(["go", "hold", "stop", "on", "back", "end"]);

/** The reps that a crew has swum to their end: not those that were sat out, swum again, or broken off.
 * @param {State} state
 * @param {Crew} crew */
const swum = (state, crew) =>
  crew.done.filter(({ step, at, undone }) =>
    step.kind === "rep" && !step.sat && !undone && (step.wave ?? 1) === 1 && at + (step.target ?? 0) * 1000 <= lastMoment(state, crew));

/** @param {State} state
 * @param {Crew} crew */
const lastMoment = (state, crew) => (crew.mode === "over" ? crew.clear : state.now);

/** Metres that one swimmer of a crew has swum.
 * @param {State} state
 * @param {Crew} crew */
export const metres = (state, crew) =>
  swum(state, crew).reduce((sum, { step }) => sum + (state.data.parts[step.part].items[step.item ?? 0].metres ?? 0) * (step.whole ? (step.reps ?? 1) : 1), 0);

/** From the first start to the last finish, in milliseconds; null where nothing began.
 * @param {State} state
 * @returns {{from: number, to: number} | null} */
export function span(state) {
  const began = state.crews.flatMap(({ done }) => done.slice(0, 1).map(({ at }) => at));
  const ended = state.crews.filter(({ done }) => done.length).map(({ clear, mode }) => (mode === "running" ? state.now : clear));
  return began.length ? { from: Math.min(...began), to: Math.max(...ended) } : null;
}

/** The changes that stand, one a line, as the log has them.
 * @param {State} state
 * @param {Run} run */
export function changeLines(state, run) {
  const all = standing(run).map((number) => run.changes[number - 1]).filter(({ do: deed }) => !NO_CHANGE.has(deed));
  const lines = all.map((change) => `${said(change, state.data)}.`);
  return lines.length > MOST_CHANGES ? [...lines.slice(0, MOST_CHANGES - 1), `And ${lines.length - MOST_CHANGES + 1} more.`] : lines;
}

/** @param {number} moment */
function dayOf(moment) {
  const day = new Date(moment);
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  return { iso: `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`, words: `${day.getDate()} ${MONTHS[day.getMonth()]}` };
}

/** @param {State} state
 * @param {Run} run */
function figures(state, run) {
  const times = span(state);
  const most = Math.max(0, ...state.crews.map((crew) => metres(state, crew)));
  return { times, most: Math.round(most), minutes: times ? Math.max(1, Math.round((times.to - times.from) / 60_000)) : 0, day: dayOf(run.begun) };
}

/**
 * What was done, to read.
 * @param {State} state
 * @param {Run} run
 * @param {Asked} [asked]
 */
export function asText(state, run, { heads, note } = {}) {
  const { times, minutes, day } = figures(state, run);
  const parts = state.data.parts.map(({ title }, p) => {
    const counts = state.crews.map((crew) =>
      swum(state, crew).filter(({ step }) => step.part === p).reduce((sum, { step }) => sum + (step.whole ? (step.reps ?? 1) : 1), 0));
    return `${title}: ${repsOf(state, counts)}`;
  });
  return [
    `${state.data.title}, ${day.words}`,
    times ? `${timeOfDay(times.from)} to ${timeOfDay(times.to)}, ${many(minutes, "minute")}` : "Nothing was begun.",
    ...state.crews.map((crew) => `${nameOf(state, crew.key)}: ${Math.round(metres(state, crew))} m`),
    ...(heads ? [many(heads, "swimmer")] : []),
    ...parts, ...changeLines(state, run), ...(note ? [note] : []),
  ].join("\n");
}

/** The reps of a part: once where all groups have done as many, else of each.
 * @param {State} state
 * @param {number[]} counts of each crew */
function repsOf({ data, crews }, counts) {
  if (counts.every((reps) => reps === counts[0])) {
    return counts[0] ? `${many(counts[0], "rep")}${counts.length > 1 ? " each" : ""}` : "not done";
  }
  return counts.map((reps, k) => `${many(reps, "rep")} (${inSentence(whose(data, crews[k].key))})`).join(", ");
}

/** @param {State} state
 * @param {string} key */
const nameOf = (state, key) => state.data.crews.find((crew) => crew.key === key)?.title ?? key;

/**
 * The log entry of a practice, with its file; null where there is none to write: a set alone, or nothing begun, or heads not told.
 * @param {State} state
 * @param {Run} run
 * @param {Asked} asked
 * @returns {{file: string, entry: Record<string, unknown>} | null}
 */
export function asEntry(state, run, { heads, note }) {
  const { times, most, minutes, day } = figures(state, run);
  if (!times || !heads || state.data.kind !== "practice") {
    return null;
  }
  const [end, groups] = [`, ${day.words}`, [...new Set(state.data.crews.filter(({ key }) => run.crews.includes(key)).map(({ group }) => group))]];
  const isAll = state.data.crews.every(({ group }) => groups.includes(group));
  const changedLines = changeLines(state, run);
  return {
    file: `plans/logs/${day.iso}-${run.id}.yml`,
    entry: {
      title: state.data.title.slice(0, LONGEST_TITLE - end.length).trim() + end, practice: run.id, on: day.iso,
      ...(isAll ? {} : { groups }), minutes, metres: most, heads,
      ...(changedLines.length ? { changed: changedLines } : {}), ...(note ? { note } : {}),
    },
  };
}
