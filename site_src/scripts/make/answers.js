// What was typed and ticked of the questions, as a request and back. Pure.

/** @import {Data, Request} from "./types.js" */
/** @import {Done} from "./lately.js" */

/** @typedef {{minutes: string, until: string, goals: string[], gone: Set<string>, groups: string[], pool: string, lanes: Record<string, string>,
 *   heads: Record<string, string>, effort: string, adults: string, notDone: Set<string>, taught: Record<string, string>}} Answers
 *   what is typed and ticked; `gone`: gear that is not here; `notDone`: of what was planned lately */
/** @typedef {{data: Data, done: Done[], answers: Answers, squads: [id: string, title: string][]}} Known */

/** @param {Record<string, string>} typed
 * @param {(id: string) => boolean} isOther
 * @returns {Record<string, number>} */
const numbers = (typed, isOther) => Object.fromEntries(Object.entries(typed).filter(([id, value]) => value !== "" && isOther(id)).map(([id, value]) => [id, Math.trunc(Number(value)) || 0]));

/** The answers as a request.
 * @param {Known} known
 * @returns {Request} */
export function requestOf({ answers, data, done }) {
  const usual = new Map(data.squad.groups.map(([id, , lanes, heads]) => [id, [String(lanes), String(heads)]]));
  const isWhole = answers.groups.length === data.squad.groups.length;
  return {
    pool: answers.pool, minutes: Math.trunc(Number(answers.minutes)) || 0, goals: answers.goals, groups: isWhole ? [] : answers.groups,
    gear: Object.fromEntries([...answers.gone].map((id) => [id, 0])), lanes: numbers(answers.lanes, (id) => usual.get(id)?.[0] !== answers.lanes[id]),
    heads: numbers(answers.heads, (id) => usual.get(id)?.[1] !== answers.heads[id]), effort: answers.effort, adults: answers.adults === "" ? -1 : Math.max(0, Math.trunc(Number(answers.adults)) || 0),
    done: done.filter(({ id }) => !answers.notDone.has(id)).map(({ id, days }) => [id, days]), taught: numbers(answers.taught, () => true),
  };
}

/** @param {Record<string, number> | undefined} numbersOf */
const typed = (numbersOf = {}) => Object.fromEntries(Object.entries(numbersOf).map(([id, number]) => [id, String(number)]));

/** A request as answers.
 * @param {Request} request
 * @param {string[]} groups all of the squad
 * @param {Done[]} done
 * @returns {Answers} */
export function answersOf({ pool, minutes: slot, goals: wished, groups: own = [], gear: here = {}, lanes, heads, effort = "", adults = -1, done: told = [], taught: stages }, groups, done) {
  const known = new Set(told.map(([id]) => id));
  return {
    minutes: String(slot), until: "", goals: wished, gone: new Set(Object.keys(here).filter((id) => !here[id])), groups: own.length ? own : groups, pool, lanes: typed(lanes), heads: typed(heads),
    effort, adults: adults < 0 ? "" : String(adults), notDone: new Set(done.map(({ id }) => id).filter((id) => !known.has(id))), taught: typed(stages),
  };
}
