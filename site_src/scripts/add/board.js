// The whiteboard of a set that is being written: its lines in the words of the set's page (whiteboard.py). Pure.

import { OPEN, aimWords, doWords, goWords, howHard, list, partsWords, roundsWords, text, titles } from "./board_words.js";
import { isObject } from "./schema.js";
import { tidy } from "./times.js";

/**
 * @typedef {import("./names.js").Names} Names
 * @typedef {import("./board_words.js").Item} Item
 * @typedef {import("./board_words.js").Titles} Titles
 * @typedef {{depth: number, what: string, effort: string, gear: string, how: string, go: string, aim: string, result: string,
 *   note: string}} Line
 */

/** What a change makes of reps, with their number and distance where either is another (`_how_many` of whiteboard.py).
 * @param {Item} item
 * @param {Item} change
 * @param {Titles} told */
function changeWords(item, change, told) {
  const bare = Array.isArray(change.gear) && !change.gear.length ? "without gear" : "";
  const done = change.parts ? partsWords(list(change.parts).filter(isObject), told) : change.do === undefined ? "" : doWords(change.do, told);
  return [[countWords(item, change), done].filter(Boolean).join(" "), bare].filter(Boolean).join(", ");
}

/** How many and how far, where a change of reps says either.
 * @param {Item} item
 * @param {Item} change */
function countWords(item, change) {
  if (item.reps === undefined || ["reps", "distance", "time"].every((key) => change[key] === undefined)) {
    return "";
  }
  const own = changed(item, change);
  const each = own.time === undefined ? text(own.distance ?? farOf(own)) : tidy(own.time);
  return change.reps !== undefined || !item.by_group ? `${text(own.reps)} × ${each}` : `${each} each`;
}

/** How far a rep is by its parts.
 * @param {Item} item */
const farOf = ({ parts }) => list(parts).filter(isObject).reduce((sum, part) => sum + Number(part.distance), 0) || undefined;

/** @param {unknown} changes
 * @returns {[string, Item][]} */
const changesOf = (changes) =>
  isObject(changes) ? Object.entries(changes).flatMap(([who, change]) => (isObject(change) ? [[who, change]] : [])) : [];

/**
 * What is different in a round, a line each.
 * @param {Item} item
 * @param {Titles} told
 * @param {number} depth
 * @returns {Generator<Line>}
 */
function* roundLines(item, told, depth) {
  for (const [round, change] of changesOf(item.by_round)) {
    const who = round === "last" ? "Last round" : `Round ${round}`;
    const what = changeWords(item, change, told);
    yield {
      depth, what: what ? `${who}: ${what}` : who, effort: howHard(change, told), gear: told.gear(change.gear),
      go: goWords(change, told), how: told.how(change), aim: aimWords(change.aim, told), result: "", note: change.note ?? "",
    };
  }
}

/** What one key of a change takes the place of, beside itself.
 * @type {Record<string, string[]>} */
const INSTEAD = { parts: ["time", "do", "effort", "distance"], distance: ["time"], time: ["distance"], sendoff: ["rest"], rest: ["sendoff"] };

/** Reps or rounds with a change laid over them.
 * @param {Item} item
 * @param {Item} change
 * @returns {Item} */
export function changed(item, change) {
  const gone = Object.keys(change).flatMap((key) => INSTEAD[key] ?? []);
  const kept = Object.entries(item).filter(([key]) => !gone.includes(key));
  const isAnother = ["distance", "time", "do", "parts"].some((key) => change[key] !== undefined);
  const aim = isAnother && !isObject(item.aim) ? { aim: undefined } : {};
  const { do: what = undefined, effort = undefined } = change;
  const told = Object.entries({ do: what, effort }).filter(([, value]) => value !== undefined);
  const parts = list(item.parts).map((part) => (isObject(part) ? { ...part, ...Object.fromEntries(told) } : part));
  return { ...Object.fromEntries(kept), ...(parts.length ? { parts } : {}), ...aim, ...change };
}

/**
 * An item's line; where it differs by lane group or variant, one for each, then one for the others.
 * @param {Item} item
 * @param {Titles} told
 * @param {(own: Item) => Line} line
 * @returns {Generator<Line>}
 */
function* ways(item, told, line) {
  const own = [...changesOf(item.by_group), ...changesOf(item.by_variant)];
  for (const [group, change] of own) {
    const then = changed(item, change);
    const isOut = Number(then.reps ?? then.rounds) === 0;
    const shown = isOut ? { ...line({}), what: "Wait", effort: "", go: "" } : line(then);
    yield { ...shown, what: `${told.group(group)}: ${shown.what}` };
  }
  const shown = line(item);
  yield own.length ? { ...shown, what: `Others: ${shown.what}` } : shown;
}

/**
 * @param {Item} item
 * @param {Titles} told
 * @param {number} depth
 * @returns {Line}
 */
function repsLine(item, told, depth) {
  const parts = list(item.parts).filter(isObject);
  const whole = item.distance ?? farOf(item);
  const each = item.time === undefined ? text(item.distance) : tidy(item.time);
  const swum = partsWords(parts, told);
  const shared = list(item.do?.split);
  const share = `${text(item.distance)}, ${Math.round((10 * item.distance) / shared.length) / 10 || OPEN} each of`;
  const alone = shared.length ? `${share} ${shared.map(told.drill).join(", ")}` : `${each} ${doWords(item.do, told)}`;
  return {
    depth,
    what: `${text(item.reps)} × ${parts.length ? `${whole || OPEN} ${swum}` : alone}`,
    effort: howHard({ ...item, parts: parts.length ? parts : undefined }, told),
    gear: told.gear(item.gear),
    how: told.how(item),
    go: goWords(item, told),
    aim: aimWords(item.aim, told),
    result: item.note_result === undefined ? "" : `note the ${text(item.note_result)}`,
    note: item.note ?? "",
  };
}

/**
 * @param {unknown} items
 * @param {Titles} told
 * @param {number} depth
 * @returns {Generator<Line>}
 */
function* lines(items, told, depth = 0) {
  for (const item of /** @type {Item[]} */ (list(items).filter(isObject))) {
    const line = { depth, effort: "", gear: "", how: "", go: "", aim: "", result: "", note: item.note ?? "" };
    if (Object.hasOwn(item, "pause")) {
      yield { ...line, what: `Pause ${tidy(item.pause)}` };
    } else if (Object.hasOwn(item, "rounds") || Object.hasOwn(item, "items")) {
      yield* ways(item, told, ({ rounds, pause_between: pause }) => {
        const go = pause === undefined || Number(rounds) === 1 ? "" : `${tidy(pause)} between rounds`;
        return { ...line, what: roundsWords(rounds), go };
      });
      yield* lines(item.items, told, depth + 1);
      yield* roundLines(item, told, depth + 1);
    } else if (Object.keys(item).length) {
      yield* ways(item, told, (own) => repsLine(own, told, depth));
      yield* roundLines(item, told, depth + 1);
    }
  }
}

/**
 * The lines of a set's items, in order.
 * @param {unknown} items
 * @param {Names} names
 */
export const boardOf = (items, names) => [...lines(items, titles(names))];
