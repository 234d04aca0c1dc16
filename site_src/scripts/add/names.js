// What the form knows of the catalogue: data/v1/form.json.

/**
 * @typedef {[id: string, title: string, more: string]} Known a word with what it means, or an id with its file
 *
 * @typedef {object} Kind
 * @property {string} title
 * @property {string} folder
 * @property {boolean} in_families
 * @property {string} pages the folder of its pages, "" where it has none
 * @property {Record<string, Partial<import("./schema.js").Piece>>} notes
 *
 * @typedef {object} Names
 * @property {string} repository
 * @property {Record<string, Kind>} kinds
 * @property {string[]} families
 * @property {{id: number, bytes: number, depth: number}} limits
 * @property {Record<string, Known[]>} vocabulary
 * @property {Record<string, Known[]>} reference
 * @property {Record<string, Record<string, string>>} moved
 */

/**
 * The name of a list, a kind or a field in words.
 * @param {string} name
 */
export const inWords = (name) => name.replaceAll("-", " ").replaceAll("_", " ");
