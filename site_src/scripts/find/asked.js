// All that is asked for at once: what is chosen and what is heard in the words. Pure.

import { A_PRACTICE } from "./list.js";
import { isOfAnEnd } from "./question.js";

/** @import {Asked, Choice} from "./list.js" */
/** @import {Held} from "./fit.js" */
/** @import {Question} from "./question.js" */

/**
 * @param {Choice} choice
 * @param {Question} question
 * @param {Held} held minutes, lanes and swimmers of both
 * @param {{isLeft: boolean, sure: Set<number> | null}} how whether the minutes are what is left of a practice; what answers the words, by number
 * @returns {Asked}
 */
export function askedFor(choice, question, { minutes, lanes, swimmers }, { isLeft, sure }) {
  const isPractice = question.kinds.has("practice") || (!question.kinds.size && !isLeft && (question.minutes ?? 0) >= A_PRACTICE);
  return {
    ...choice,
    isLeft,
    nearly: !choice.minutes && question.minutes && (question.words || isPractice) ? sure : null,
    isEnd: isOfAnEnd(question.words),
    isRoomAlone: Boolean(!minutes && (lanes || swimmers) && !question.words),
    isPractice,
    minutes,
    lanes,
    swimmers,
    gear: new Set([...choice.gear, ...question.gear]),
  };
}

/** Whether what fits was asked for in words alone: pages that answer these then stay beside what fits.
 * @type {(choice: Choice, question: Question) => boolean} */
export const isHeardAlone = ({ minutes, lanes, swimmers }, { words }) => Boolean(words) && !minutes && !lanes && !swimmers;
