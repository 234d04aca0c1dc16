// The answer to a request, worked out once, and begun before it is asked for; and what can't be, in a sentence.

import { proposalOf } from "../compose/change.js";
import { practiceOf } from "../compose/chosen.js";
import { inMinutes } from "../compose/minutes.js";
import { proposing } from "../compose/propose.js";
import { BadWish } from "../compose/request.js";
import { atOnce, inSlices } from "../lib/slices.js";

/** @import {Asked} from "./asked.js" */
/** @import {Stand} from "./proposal.js" */
/** @import {Data, Proposal, Request} from "./types.js" */
/** @import {Answer} from "../compose/types.js" */

/** @typedef {{of: string, steps: ReturnType<typeof proposing> | null, isLong: boolean, answer: Answer | BadWish}} Work `steps`: those that are left; null once there is an
 *   answer; `isLong`: whether the next would keep whoever types waiting */

const EMPTY = /^(""|\[]|\{}|-1)$/; // as if it was left out
/** @type {Work} */
const NONE = { of: "", steps: null, isLong: false, answer: new BadWish("") };
let last = NONE;

/** @param {string} text */
export const sentence = (text) => (text ? `${text.charAt(0).toUpperCase()}${text.slice(1)}${text.endsWith(".") ? "" : "."}` : "");

/** The work on a request: what is under way, or new.
 * @param {Data} data
 * @param {Request} request */
function workOn(data, request) {
  const told = Object.entries(request).filter(([, own]) => !EMPTY.test(JSON.stringify(own))); // an address has it in another order
  const of = JSON.stringify([data.squad.id, ...told.sort()]);
  if (last.of !== of) {
    last = { of, steps: proposing(data, request), isLong: false, answer: NONE.answer };
  }
  return last;
}

/** What is left of some work, until other work is asked for.
 * @param {Work} own
 * @param {boolean} [isSoon] whether nobody waits for it yet */
function* left(own, isSoon = false) {
  while (own.steps && own === last && !(isSoon && own.isLong)) {
    try {
      const step = own.steps.next();
      own.isLong = step.value === true;
      if (step.done) {
        [own.steps, own.answer] = [null, step.value];
      }
    } catch (problem) {
      if (!(problem instanceof BadWish)) {
        last = NONE;
        throw problem;
      }
      [own.steps, own.answer] = [null, new BadWish(sentence(problem.message), problem.field)];
    }
    yield;
  }
}

/** The proposals, or the sentence that says which wish can't be.
 * @param {Data} data
 * @param {Request} request */
export function answerTo(data, request) {
  const own = workOn(data, request);
  atOnce(left(own));
  return own.answer;
}

/** The same before it is asked for, in slices; null where something else was asked for meanwhile, or nothing fits.
 * @param {Data} data
 * @param {Request} request */
export async function answerSoon(data, request) {
  const own = workOn(data, request);
  await inSlices(left(own, true));
  return own === last && !own.steps ? own.answer : null;
}

/** The answer for a practice that is opened: nothing is proposed before it is asked for.
 * @param {Data} data
 * @param {Request} request
 * @returns {Answer} */
export const answerOf = ({ squad, pools }, { pool, minutes, goals, groups = [] }) => ({
  version: 1, squad: squad.id, groups: groups.length ? groups : squad.groups.map(([id]) => id), pool, unit: pools.find(([id]) => id === pool)?.[2].replace(/^\d+/, "") ?? "", minutes, goals,
  proposals: [], hinders: [],
});

/** A proposal as it stands in an address, cut to its minutes where it is longer; and what was, or why it can’t be followed.
 * @param {Data} data
 * @param {Asked} asked
 * @param {Proposal | undefined} own as it was proposed
 * @returns {[stand: Stand | null, told: string, isFollowed: boolean]} */
export function standOf(data, { request, practice }, own) {
  const found = practice && proposalOf(data, request, practice);
  if (!practice || !found) {
    return [own ? { practice: practiceOf(own), proposal: own } : null, "", false];
  }
  if ("proposal" in found) {
    return [{ practice, proposal: found.proposal }, "", true];
  }
  const cut = inMinutes(data, request, practice);
  return "refused" in cut ? [own ? { practice: practiceOf(own), proposal: own } : null, `What was changed can’t be followed here: ${cut.refused}`, false]
    : [cut, `Made to fit ${request.minutes} minutes: ${sentence(cut.words.join("; "))}`, true];
}
