// The whiteboard of a set that is being written: its lines in the words of the set's page (board.py). What is not filled in
// yet stands as "…". Pure.

import { isObject } from "./check.js";
import * as times from "./times.js";

const OPEN = "…";

const text = (value) => (value === undefined || value === null || typeof value === "object" ? OPEN : String(value));
const list = (value) => (Array.isArray(value) ? value : []);

/** An effort in words: `steady`, `descend steady to fast`. */
function effortWords(effort, told) {
  if (!isObject(effort)) {
    return effort === undefined ? "" : told.effort(effort);
  }
  const [[form, words]] = Object.entries(effort);
  return form === "rotate" ? `in turn ${list(words).map(told.effort).join(", ")}` : `${form} ${told.effort(words?.[0])} to ${told.effort(words?.[1])}`;
}

function sendoffWords(sendoff) {
  const told = isObject(sendoff) ? Object.entries(sendoff).map(([group, time]) => `${times.tidy(time)} ${group}`) : [times.tidy(sendoff)];
  return `on ${told.join(", ")}`;
}

/** What a board needs of the catalogue: the titles of efforts, drills and gear. */
function titles(names) {
  const known = (listed) => new Map((listed ?? []).map(([id, title]) => [id, title]));
  const [efforts, drills, gear] = [known(names.vocabulary.efforts), known(names.reference.drill), known(names.reference.gear)];
  return {
    effort: (id) => efforts.get(id)?.toLowerCase() ?? text(id),
    drill: (id) => drills.get(id) ?? text(id),
    gear: (ids) => list(ids).map((id) => (gear.get(id) ?? text(id)).toLowerCase()).join(" and "),
  };
}

function partWords(part, told) {
  const worn = list(part.gear).length ? ` in ${told.gear(part.gear)}` : "";
  return `${text(part.distance)} ${told.drill(part.do)} (${effortWords(part.effort, told) || OPEN})${worn}`;
}

function repsLine(item, told, depth) {
  const parts = list(item.parts).filter(isObject);
  const whole = parts.reduce((sum, part) => sum + part.distance, 0);
  const each = item.time === undefined ? text(item.distance) : times.tidy(item.time);
  const go = item.sendoff !== undefined ? sendoffWords(item.sendoff) : item.rest !== undefined ? `${times.tidy(item.rest)} rest` : "";
  return {
    depth,
    what: parts.length
      ? `${text(item.reps)} × ${whole || OPEN} as ${parts.map((part) => partWords(part, told)).join(", then ")}`
      : `${text(item.reps)} × ${each} ${told.drill(item.do)}`,
    effort: parts.length ? "" : effortWords(item.effort, told),
    gear: told.gear(item.gear),
    go,
    note: item.note ?? "",
  };
}

function* lines(items, told, depth = 0) {
  for (const item of list(items).filter(isObject)) {
    const line = { depth, effort: "", gear: "", go: "", note: item.note ?? "" };
    if (Object.hasOwn(item, "pause")) {
      yield { ...line, what: `Pause ${times.tidy(item.pause)}` };
    } else if (Object.hasOwn(item, "rounds") || Object.hasOwn(item, "items")) {
      const go = item.pause_between === undefined ? "" : `${times.tidy(item.pause_between)} between rounds`;
      yield { ...line, what: `${text(item.rounds)} rounds of`, go };
      yield* lines(item.items, told, depth + 1);
    } else if (Object.keys(item).length) {
      yield repsLine(item, told, depth);
    }
  }
}

/** The lines of a set's items, in order: `{depth, what, effort, gear, go, note}`. */
export const boardOf = (items, names) => [...lines(items, titles(names))];
