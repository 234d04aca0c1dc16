// What is done while nobody waits: the answer to the questions as they stand, before it is asked for; sheets, after the rows are drawn.

import { BadWish } from "../compose/request.js";
import { answerSoon } from "./answer.js";
import { readRuns } from "./deeds.js";

/** @import {Asked} from "./asked.js" */
/** @import {Told} from "./between.js" */
/** @import {Data, File} from "./types.js" */

/** Work out what may be asked next, and read what its first proposal is run by; without a goal any will do, since what a browser does for the first
 * time it does at a third of the speed.
 * @param {Told["make-soon"]} own */
async function work({ data, request }) {
  const goals = request.goals.length ? request.goals : data.goals.slice(0, 1).map(([id]) => id);
  const answer = await answerSoon(data, { ...request, goals });
  if (request.goals.length && answer && !(answer instanceof BadWish)) {
    await Promise.all(answer.proposals.slice(0, 1).map((own) => readRuns(data, request, own)));
  }
}

/** The same; what goes wrong is told where it is asked for.
 * @param {Told["make-soon"]} own */
export const ahead = (own) => { work(own).catch(() => { /* told then */ }); };

/** What Others shows of a practice that is opened, as its address will ask for it.
 * @param {Data} data of the squad, without what is opened
 * @param {{asked: Asked, file: File | null} | null} shown */
export function beforeOthers(data, shown) {
  if (shown?.file) {
    answerSoon(data, shown.asked.request).catch(() => { /* told then */ });
  }
}

/** Once a frame has been drawn. */
export const drawnNow = () => new Promise((resolve) => { requestAnimationFrame(() => { setTimeout(resolve); }); });
