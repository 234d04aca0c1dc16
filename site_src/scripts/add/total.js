// What a set that is being written comes to: how far each lane group goes, and for how long what goes by time. Pure.

import { changed } from "./board.js";
import { list, titles } from "./board_words.js";
import { isObject } from "./schema.js";
import { secondsOf, tidy } from "./times.js";

/**
 * @typedef {import("./names.js").Names} Names
 * @typedef {import("./board_words.js").Item} Item
 * @typedef {{far: number, seconds: number}} Total in the course's unit, and of work by time; NaN where something is still open
 */

const MOST_ROUNDS = 99; // a slip of the hand is not walked through

/** @param {unknown} items
 * @returns {Item[]} */
const objects = (items) => list(items).filter(isObject);

/**
 * Reps as a lane group does them, round by round; what is said of a group holds first, then of the last round, or else of its number.
 * @param {unknown} items
 * @param {string} group
 * @param {string[]} round the names of the round around them
 * @returns {Generator<Item>}
 */
function* repsOf(items, group, round = []) {
  for (const item of objects(items)) {
    const own = item.by_group?.[group];
    if (item.rounds !== undefined || item.items !== undefined) {
      const rounds = Number({ ...item, ...own }.rounds ?? NaN);
      if (!(rounds <= MOST_ROUNDS)) {
        yield {}; // not known yet
      }
      for (let number = 1; number <= Math.min(rounds, MOST_ROUNDS); number += 1) {
        yield* repsOf(item.items, group, [...(number === rounds ? ["last"] : []), String(number)]);
      }
    } else if (item.pause === undefined && Object.keys(item).length) {
      const changes = [own, round.map((name) => item.by_round?.[name]).find(isObject)].filter(isObject);
      yield changes.reduce(changed, item);
    }
  }
}

/** How far one rep is: as written, else by its parts.
 * @param {Item} item */
function farOf({ distance, parts }) {
  const each = objects(parts).map((part) => Number(part.distance ?? NaN));
  return Number(distance ?? (each.length ? each.reduce((sum, one) => sum + one) : NaN));
}

/**
 * @param {unknown} items
 * @param {string} group
 * @returns {Total}
 */
export function totalOf(items, group) {
  const total = { far: 0, seconds: 0 };
  for (const item of repsOf(items, group)) {
    const reps = Number(item.reps ?? NaN);
    total.seconds += item.time === undefined ? 0 : reps * secondsOf(item.time);
    total.far += item.time === undefined ? reps * farOf(item) : 0 * reps;
  }
  return total;
}

/** @param {unknown} items
 * @returns {string[]} */
const groupsIn = (items) => [...new Set(objects(items).flatMap((item) => [...Object.keys(item.by_group ?? {}), ...groupsIn(item.items)]))];

/**
 * The total in words, a lane group apart where it has another; "" where it is not known yet.
 * @param {unknown} items
 * @param {unknown} course
 * @param {Names} names
 */
export function totalWords(items, course, names) {
  const unit = course === "25yd" ? "yd" : "m";
  /** @param {string} group */
  const words = (group) => {
    const { far, seconds } = totalOf(items, group);
    return Number.isNaN(far + seconds) ? "" : [far && `${far} ${unit}`, seconds && `${tidy(seconds)} by time`].filter(Boolean).join(" and ");
  };
  const usual = words("");
  const others = groupsIn(items).map((id) => [titles(names).group(id), words(id)]).filter(([, own]) => own && own !== usual);
  return usual && `In all ${[usual, ...others.map((pair) => pair.join(": "))].join("; ")}`;
}
