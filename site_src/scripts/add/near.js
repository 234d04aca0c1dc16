// The word or id of a list that is spelt most like another, typing errors forgiven. Pure.

import MiniSearch from "minisearch";

/** @typedef {import("./names.js").Known} Known */

const ALIKE = { fuzzy: 0.25, maxFuzzy: 4 }; // of a whole id, the part of its letters that may differ

/** A text as one word, whatever joins its parts.
 * @param {string} text */
const joined = (text) => text.normalize("NFD").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "");

/** @param {Known[]} known */
function indexOf(known) {
  const index = new MiniSearch({ fields: ["joined", "title"], idField: "number" });
  index.addAll(known.map(([id, title], number) => ({ number, joined: joined(id), title })));
  return index;
}

/**
 * The one whose id is spelt nearly the same; null where there is none.
 * @param {string} text
 * @param {Known[]} known
 * @returns {Known | null}
 */
export function nearestId(text, known) {
  const [best] = indexOf(known).search(joined(text), { fields: ["joined"], ...ALIKE });
  return best ? known[best.id] : null;
}

/**
 * The one that is meant, by its id or by words of its title; null where nothing is near.
 * @param {string} text
 * @param {Known[]} known
 * @returns {Known | null}
 */
export function nearest(text, known) {
  const [best] = indexOf(known).search(text, { fields: ["title"], combineWith: "AND", fuzzy: 0.3, prefix: true });
  return nearestId(text, known) ?? (best ? known[best.id] : null);
}
