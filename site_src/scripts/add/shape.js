// From a schema to the shape of a form: fields, lists, choices between forms, and the leaves that are typed or chosen. Pure.

import { inWords } from "./names.js";
import { follow, isObject, passes } from "./schema.js";

/**
 * @typedef {import("./schema.js").Piece} Piece
 *
 * @typedef {object} Variant one form that a value may have
 * @property {Shape} shape
 * @property {string | null} key the field that its value stands under, where it does
 * @property {string[]} marks the fields that it has and other forms have not
 * @property {string | null} type the type of value that does
 * @property {boolean} inner whether its value stands under the key
 * @property {string} name
 *
 * @typedef {object} Shape what is below it is made when asked for: sets nest without end
 * @property {string} sort which editor it gets
 * @property {Piece} piece
 * @property {string[]} keys of fields
 * @property {(key: string) => Shape} field
 * @property {Record<string, string>} titles of fields that are not labelled by their key; "" for one without a frame of its own
 * @property {() => Shape} item of a list
 * @property {Variant[]} variants
 * @property {boolean} isLong whether the text takes more than a line
 * @property {boolean} isLine whether line ends are not for it
 */

const LONG_TEXT = 80; // more characters than that are typed into a box of several lines

/**
 * A piece with its `$ref` opened; its own keys win.
 * @param {Piece} root
 * @param {Piece} piece
 * @returns {Piece}
 */
export function open(root, { $ref, ...own }) {
  return $ref ? { ...open(root, follow(root, $ref)), ...own } : own;
}

/** @returns {never} */
const none = () => {
  throw new Error("this shape holds no others");
};

/**
 * @param {string} sort
 * @param {Piece} piece
 * @param {Partial<Shape>} [more]
 * @returns {Shape}
 */
export const shape = (sort, piece, more = {}) => ({
  sort, piece, keys: [], titles: {}, field: none, item: none, variants: [], isLong: false, isLine: false, ...more,
});

/** A key as a label: why_it_matters, Why it matters.
 * @param {string} key */
export function label(key) {
  const words = inWords(key);
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

/** @param {Piece} piece */
function leafSort(piece) {
  if (piece.const !== undefined) {
    return "yes";
  }
  if (piece.enum) {
    return "word";
  }
  if (piece.clock) {
    return "time";
  }
  if (piece.format === "date") {
    return "day";
  }
  return [piece.type].flat().includes("string") ? "text" : "number";
}

/**
 * The forms of an object that may hold only one of its fields: one for each field.
 * @param {Piece} root
 * @param {Piece} piece
 * @returns {Variant[]}
 */
function oneOfItsFields(root, piece) {
  return Object.entries(piece.properties ?? {}).map(([key, field]) => ({
    shape: shapeOf(root, field), key, marks: [key], type: null, inner: true, name: key,
  }));
}

/** Whether a value has one of two forms; a condition without an else is a limit of one form.
 * @param {Piece} piece */
const isChoice = (piece) => Boolean(piece.if && piece.else && !piece.properties);

/**
 * @param {Piece} root
 * @param {Piece} piece
 * @returns {Variant[]}
 */
function variantsOf(root, piece) {
  if (!isChoice(piece) || !piece.if) {
    const whole = { shape: shapeOf(root, piece), key: null, marks: [], type: null, inner: false, name: piece.title ?? "" };
    return piece.maxProperties === 1 ? oneOfItsFields(root, piece) : [whole];
  }
  const chosen = open(root, piece.then ?? {});
  const marks = piece.if.required ?? [];
  const first = {
    shape: shapeOf(root, chosen),
    key: marks[0] ?? null,
    marks,
    type: piece.if.type && !marks.length ? String(piece.if.type) : null,
    inner: false,
    name: chosen.title ?? "",
  };
  return [first, ...variantsOf(root, open(root, piece.else ?? {}))];
}

/** A form in words: `one word`, `one time`, `one for each lane group`.
 * @param {Shape} one */
function nameOf({ sort, piece }) {
  if (sort === "fields") {
    return `one for each ${inWords(piece.propertyNames?.reference ?? "field")}`;
  }
  return { word: "one word", time: "one time", list: "one for each rep" }[sort] ?? "text";
}

/** Fields whose names are words of a list: one for each word, none of them needed.
 * @param {Piece} piece */
function fieldsByWord({ additionalProperties, propertyNames }) {
  return Object.fromEntries((propertyNames?.enum ?? []).map((word) => [String(word), additionalProperties ?? {}]));
}

/**
 * The shape of a piece, the piece opened.
 * @param {Piece} root
 * @param {Piece} unopened
 * @returns {Shape}
 */
export function shapeOf(root, unopened) {
  const piece = open(root, unopened);
  if (isChoice(piece)) {
    const variants = variantsOf(root, piece).map((one) => ({ ...one, name: one.name || nameOf(one.shape) }));
    return shape("choice", piece, { variants });
  }
  if (piece.type === "array") {
    return shape("list", piece, { item: () => shapeOf(root, piece.items ?? {}) });
  }
  if (piece.properties || piece.propertyNames?.enum) {
    const fields = piece.properties ?? fieldsByWord(piece);
    return shape("fields", piece, { keys: Object.keys(fields), field: (key) => shapeOf(root, fields[key]) });
  }
  if (piece.type === "object") {
    return shape("pairs", piece, { item: () => shapeOf(root, piece.additionalProperties ?? {}) });
  }
  const isLong = (piece.maxLength ?? 0) > LONG_TEXT;
  return shape(leafSort(piece), piece, { isLong, isLine: Boolean(piece.pattern) });
}

/**
 * The branch of a condition that holds of a value.
 * @param {Piece} root
 * @param {Piece} piece
 * @param {unknown} value
 */
function branchOf(root, piece, value) {
  const branch = piece.if && (passes(root, piece.if, value) ? piece.then : piece.else);
  return branch ? open(root, branch) : null;
}

/** @type {(value: unknown, key: string) => boolean} */
const holds = (value, key) => isObject(value) && Object.hasOwn(value, key);

/**
 * The fields that a group needs as it stands: always, and by the conditions that hold of it.
 * @param {Piece} root
 * @param {Piece} piece
 * @param {unknown} value
 * @returns {string[]}
 */
export function needed(root, piece, value) {
  const beside = Object.entries(piece.dependentRequired ?? {});
  const also = beside.flatMap(([key, others]) => (holds(value, key) ? others : []));
  const branch = branchOf(root, piece, value);
  return [...(piece.required ?? []), ...also, ...(branch ? needed(root, branch, value) : [])];
}

/**
 * The fields that may not stand beside those that are there.
 * @param {Piece} root
 * @param {Piece} piece
 * @param {unknown} value
 * @returns {string[]}
 */
export function excluded(root, piece, value) {
  const own = Object.entries(piece.dependentSchemas ?? {}).flatMap(([key, { not }]) =>
    holds(value, key) ? (not?.anyOf ?? []).flatMap((one) => one.required ?? []) : [],
  );
  const branch = branchOf(root, piece, value);
  return [...own, ...(branch ? excluded(root, branch, value) : [])];
}
