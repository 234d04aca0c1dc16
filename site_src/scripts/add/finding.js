// One thing to say about a field of an entry: what is wrong, where the check puts it, what to write instead.

/**
 * @typedef {import("./schema.js").Failure} Failure
 * @typedef {import("./schema.js").Path} Path
 *
 * @typedef {object} Finding
 * @property {string} code
 * @property {Path} path where the check puts it
 * @property {Path} at the field that it is shown beside
 * @property {string} message
 * @property {string} hint what to write instead
 */

const MOST_SHOWN = 60;

/** @param {unknown} value */
export function quote(value) {
  const letters = [...String(value)];
  return `“${letters.length > MOST_SHOWN ? `${letters.slice(0, MOST_SHOWN - 1).join("")}…` : letters.join("")}”`;
}

/**
 * What the nearest piece around the value has under a keyword.
 * @param {Failure} failure
 * @param {"says" | "description" | "format" | "clock"} keyword
 */
export const says = ({ around }, keyword) => around.find((piece) => piece[keyword])?.[keyword] ?? "";

/**
 * @param {Failure} failure
 * @param {string} code
 * @param {string} message
 * @param {string} [hint]
 * @param {{path?: Path, at?: Path}} [places]
 * @returns {Finding}
 */
export function say({ path: own }, code, message, hint = "", { path = own, at = path } = {}) {
  return { code, path, at, message, hint };
}
