// What the form of a new entry begins with, and the id that its title gives it.

import { slug } from "./identity.js";

/**
 * @typedef {import("./names.js").Names} Names
 * @typedef {import("./schema.js").Piece} Piece
 */

/** @param {Date} date */
const day = (date) =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((part) => String(part).padStart(2, "0")).join("-");

/** What a new entry begins with: a review today and again in a year, where the kind needs one.
 * @param {Piece} piece */
export function beginning({ required = [] }) {
  const today = new Date();
  const again = new Date(today.getFullYear() + 1, today.getMonth(), Math.min(today.getDate(), 28));
  return required.includes("review") ? { review: { on: day(today), again: day(again) } } : {};
}

/**
 * @param {{title?: string}} entry
 * @param {Names} names
 */
export const idFrom = ({ title = "" }, names) => slug(title).slice(0, names.limits.id).replace(/-$/, "");

/** What an entry holds, beside the stub of one that has moved, where its kind has such stubs.
 * @param {Piece} root */
export const besideStub = (root) => (root.properties ? root : root.else ?? root);
