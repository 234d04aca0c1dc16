// When a rep goes and what it is meant to take, in a word, and when a part begins or ends: on a sheet and in a row. Pure.

import { count, timeOfDay } from "../run/words.js";

/** @import {Each, RepBlock} from "../run/types.js" */

const MOST_TIMES = 3, SECOND_MS = 1000, MINUTE_S = 60;

/** A time of day, with its seconds where there are any.
 * @param {string} start HH:MM
 * @param {number} seconds after */
export function at(start, seconds) {
  const [hours, minutes] = start.split(":").map(Number);
  return timeOfDay(new Date(2000, 0, 1, hours, minutes).getTime() + Math.ceil(seconds) * SECOND_MS, true).replace(/:00$/, "");
}

/** Whole minutes of pieces, each from where the one before it ends, so that they add up to those of all together; none has less than one.
 * @param {{talk_s: number, takes_s: number}[]} parts */
export function minutesOf(parts) {
  let [ends, told] = [0, 0];
  return parts.map(({ talk_s: talk, takes_s: takes }) => {
    ends += talk + takes;
    const minutes = Math.max(1, Math.round(ends / MINUTE_S) - told);
    told += minutes;
    return minutes;
  });
}

/** The times of reps, in words.
 * @param {Each | undefined} each */
const inWords = (each) => (Array.isArray(each) ? each : [each]).map((own) => (typeof own === "number" ? count(Math.round(own)) : ""));

/** Times of reps in a word: one, or those that differ.
 * @param {Each | undefined} each */
function times(each) {
  const all = [...new Set(inWords(each))].filter(Boolean);
  return all.length > MOST_TIMES ? `${all[0]} and others` : all.join(" / ");
}

/** Each rep's own time, until they come again in the same order.
 * @param {Each | undefined} each */
export function eachTime(each) {
  const all = inWords(each), again = all.findIndex((_, k) => k > 0 && all.every((own, place) => own === all[place % k]));
  return all.slice(0, again < 0 ? all.length : again).filter(Boolean).join(" / ");
}

/** When a rep goes: on a send-off, or after a rest.
 * @param {RepBlock} block */
export function go({ every, rest, go: how }) {
  return how === "straight" ? "straight on" : how === "rest" ? (times(rest) && `${times(rest)} rest`) : times(every);
}
