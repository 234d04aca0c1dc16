// How much later what does not fit the minutes stands. Pure.

/** @import {Asked, Entry, Fit} from "./list.js" */

const MAY_BE_CUT = 0.5; // still before what fits and is of another kind
const TOO_LONG = 1.5;
const NOT_MEANT = 0.7; // what fits and hardly answers the words, behind those that answer and may be cut

/** @type {(entry: Entry, asked: Asked, isMeant: boolean) => boolean} */
const isToBeCut = ({ kind }, { isPractice, isEnd }, isMeant) => (isPractice ? kind === "practice" : Boolean(isEnd) && isMeant && kind === "set");

/** How much later an entry stands where minutes are asked for: too long for them, a practice where one is asked for still before a set that fits, for it may
 * be cut on the deck, and so a set that opens or closes a practice, where that is asked for, before what fits and hardly answers.
 * @param {Entry} entry
 * @param {Asked} asked
 * @param {Fit} own
 * @param {boolean} isMeant whether it answers the words about as well as the best of its kind
 */
export function tooLong(entry, asked, own, isMeant) {
  if (!asked.minutes || own.seconds === null) {
    return 0;
  }
  if (own.fits) {
    return !isMeant && ((asked.isEnd && entry.kind === "set") || (asked.isPractice && entry.kind === "practice")) ? NOT_MEANT : 0;
  }
  return isToBeCut(entry, asked, isMeant) ? MAY_BE_CUT : TOO_LONG;
}
