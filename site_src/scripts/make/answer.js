// The answer to a request, worked out once; and what can't be, in a sentence.

import { proposalOf } from "../compose/change.js";
import { practiceOf } from "../compose/chosen.js";
import { propose } from "../compose/propose.js";
import { BadWish } from "../compose/request.js";

/** @import {Asked} from "./asked.js" */
/** @import {Stand} from "./proposal.js" */
/** @import {Data, Practice, Proposal, Request} from "./types.js" */
/** @import {Answer} from "../compose/types.js" */

let last = { of: "", answer: /** @type {Answer | string} */ ("") };

/** @param {string} text */
export const sentence = (text) => (text ? `${text.charAt(0).toUpperCase()}${text.slice(1)}${text.endsWith(".") ? "" : "."}` : "");

/** @param {Data} data
 * @param {Request} request
 * @returns {Answer | string} a sentence where a wish can't be */
function worked(data, request) {
  try {
    return propose(data, request);
  } catch (problem) {
    if (problem instanceof BadWish) {
      return sentence(problem.message);
    }
    throw problem;
  }
}

/** The proposals, or the sentence that says which wish can't be.
 * @param {Data} data
 * @param {Request} request */
export function answerTo(data, request) {
  const of = JSON.stringify([data.squad.id, request]);
  if (last.of !== of) {
    last = { of, answer: worked(data, request) };
  }
  return last.answer;
}

/** The answer for a practice that is opened: nothing is proposed before it is asked for.
 * @param {Data} data
 * @param {Request} request
 * @returns {Answer} */
export const answerOf = ({ squad, pools }, { pool, minutes, goals, groups = [] }) => ({
  version: 1, squad: squad.id, groups: groups.length ? groups : squad.groups.map(([id]) => id), pool, unit: pools.find(([id]) => id === pool)?.[2].replace(/^\d+/, "") ?? "", minutes, goals,
  proposals: [], hinders: [],
});

/** A proposal as it stands in an address, and why not where it can't be followed.
 * @param {Data} data
 * @param {Asked} asked
 * @param {Proposal | undefined} own as it was proposed
 * @returns {[stand: Stand | null, told: string]} */
export function standOf(data, { request, practice }, own) {
  const found = practice && proposalOf(data, request, practice);
  const proposed = own ? { practice: practiceOf(own), proposal: own } : null;
  return found && "proposal" in found ? [{ practice: /** @type {Practice} */ (practice), proposal: found.proposal }, ""]
    : [proposed, found ? `What was changed can’t be followed here: ${found.refused}` : ""];
}
