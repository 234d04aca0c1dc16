// Parts of a practice that is opened, done more or less often than there. Pure.

import { pieceOf } from "./places.js";

/** @import {Data, File, Otherwise, Practice} from "./types.js" */

/** Of each part that is a part of the opened practice, but done more or less often than there, which part that is, and how; null of another.
 * @param {Data} data
 * @param {File} file
 * @param {Practice["parts"]} chosen
 * @param {number[]} places which part of it each part is, as it stands there, -1 of another
 * @returns {(Otherwise | null)[]} */
export const otherwiseOf = (data, file, chosen, places) => chosen.map((own, place) => {
  const part = places[place] < 0 ? file.parts.findIndex(({ as }) => as === own.piece) : -1, { of, what, written = 1, scaled = [] } = pieceOf(data, own.piece);
  return part >= 0 && what ? { part, of, what, number: own.number, isWritten: own.number === written, scaled } : null;
});
