// Where a piece stands in the data of a squad, and where its run does. Pure.

/** @import {Data, Piece} from "./types.js" */

/** The file that a piece is run by, below data/v1/run/; "" of a drill, which is run by the data that it was composed from.
 * @param {{piece: string}} part */
export function fileOf({ piece }) {
  const [of, id] = piece.split("/");
  return of === "set" ? `sets/${id}` : of === "part" || of === "held" ? `practices/${id}` : "";
}

/** @param {Data} data
 * @param {string} key */
export const pieceOf = (data, key) => /** @type {Piece} */ (data.pieces.find((piece) => key === keyOf(piece)));

/** @param {Piece} piece */
export const keyOf = ({ of, id, part = 0 }) => (of === "part" || of === "held" ? `${of}/${id}/${part}` : `${of}/${id}`);

/** @param {Data} data
 * @param {string} pool */
export const courseOf = ({ pools }, pool) => pools.find(([id]) => id === pool)?.[2];
