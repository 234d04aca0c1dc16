// Which editor a shape gets.

import { choice, fields, optional } from "./groups.js";
import * as leaves from "./leaves.js";
import { list, pairs } from "./lists.js";

/**
 * @typedef {import("./schema.js").Piece} Piece
 * @typedef {import("./schema.js").Path} Path
 * @typedef {import("./shape.js").Shape} Shape
 * @typedef {import("./slots.js").Place} Place
 * @typedef {import("./slots.js").Slot} Slot
 *
 * @typedef {object} Form what the editors of a form share
 * @property {Piece} root the schema with its notes
 * @property {import("./names.js").Names} names
 * @property {HTMLElement} lists where lists of suggestions stand
 * @property {() => void} changed something was typed
 * @property {(text: string) => void} say tell a screen reader
 * @property {Maker} editor
 *
 * @typedef {object} Editor one value of an entry, on the page
 * @property {Slot} slot
 * @property {HTMLElement} element
 * @property {() => any} value as the entry holds it; undefined where nothing is filled in
 * @property {() => any} raw what was typed, for the draft
 * @property {(path: Path) => Slot} locate the place of a path
 * @property {(value: any) => void} refresh show what the value now needs
 *
 * @typedef {(form: Form, shape: Shape, raw: any, place: Place) => Editor} Maker makes an editor; `raw` is its draft
 */

/** @type {Record<string, Maker>} */
const EDITORS = { choice, fields, list, pairs, ...leaves.EDITORS };

/** The editor of a shape.
 * @type {Maker} */
export function editorOf(form, shape, raw, place) {
  const isOptionalGroup = ["fields", "pairs"].includes(shape.sort) && !place.needed && !place.bare;
  return (isOptionalGroup ? optional : EDITORS[shape.sort])(form, shape, raw, place);
}
