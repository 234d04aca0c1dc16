// From a schema to the shape of a form: fields, lists, choices between forms, and the leaves that are typed or chosen. Pure.

import { follow, passes } from "./check.js";
import { told } from "./words.js";

const LONG_TEXT = 80; // more characters than that are typed into a box of several lines

/** A piece with its `$ref` opened; its own keys win. */
function open(root, piece) {
  return piece.$ref ? { ...open(root, follow(root, piece.$ref)), ...piece, $ref: undefined } : piece;
}

/** A key as a label: why_it_matters, Why it matters. */
const label = (key) => {
  const words = told(key);
  return words.slice(0, 1).toUpperCase() + words.slice(1);
};

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

/** One form that a value may have. `key` is the field that marks it, `type` the type of value that does; neither for the last. */
const form = (shape, mark) => ({ shape, key: null, type: null, inner: false, ...mark });

/** The forms of an object that may hold only one of its fields: one for each field. */
function oneOfItsFields(root, piece) {
  return Object.entries(piece.properties).map(([key, field]) => form(shapeOf(root, field), { key, inner: true, name: key }));
}

function formsOf(root, piece) {
  if (!piece.if || piece.properties) {
    return piece.maxProperties === 1 ? oneOfItsFields(root, piece) : [form(shapeOf(root, piece), { name: piece.title ?? "" })];
  }
  const chosen = open(root, piece.then);
  const mark = { key: piece.if.required?.[0] ?? null, type: piece.if.type ?? null };
  return [form(shapeOf(root, chosen), { ...mark, name: chosen.title ?? "" }), ...formsOf(root, open(root, piece.else))];
}

/** A choice between forms, named in words: `reps`, `one word`, `one time`, `one for each lane group`. */
function choiceShape(root, piece) {
  const forms = formsOf(root, piece).map((one) => ({ ...one, name: one.name || nameOf(one.shape) }));
  return { sort: "choice", piece, forms };
}

function nameOf(shape) {
  if (shape.sort === "fields") {
    return `one for each ${told(shape.piece.propertyNames?.reference ?? "field")}`;
  }
  return { word: "one word", time: "one time" }[shape.sort] ?? "text";
}

/** Fields whose names are words of a list: one for each word, none of them needed. */
function fieldsByWord(piece) {
  const { additionalProperties, propertyNames } = piece;
  return Object.fromEntries(propertyNames.enum.map((word) => [word, additionalProperties]));
}

/** The shape of a piece: its sort, the piece opened, and what is below it, made when asked for (sets nest without end). */
function shapeOf(root, unopened) {
  const piece = open(root, unopened);
  if (piece.if && !piece.properties) {
    return choiceShape(root, piece);
  }
  if (piece.type === "array") {
    return { sort: "list", piece, item: () => shapeOf(root, piece.items) };
  }
  if (piece.properties || piece.propertyNames?.enum) {
    const fields = piece.properties ?? fieldsByWord(piece);
    return { sort: "fields", piece, keys: Object.keys(fields), field: (key) => shapeOf(root, fields[key]) };
  }
  if (piece.type === "object") {
    return { sort: "pairs", piece, item: () => shapeOf(root, piece.additionalProperties) };
  }
  return { sort: leafSort(piece), piece, isLong: (piece.maxLength ?? 0) > LONG_TEXT, isLine: Boolean(piece.pattern) };
}

/** The fields that a group needs as it stands: always, and by the conditions that hold of it. */
function needed(root, piece, value) {
  const own = piece.required ?? [];
  const also = Object.entries(piece.dependentRequired ?? {}).flatMap(([key, others]) => (Object.hasOwn(value, key) ? others : []));
  const branch = piece.if ? (passes(root, piece.if, value) ? piece.then : piece.else) : null;
  return [...own, ...also, ...(branch ? needed(root, open(root, branch), value) : [])];
}

/** The fields that may not stand beside those that are there. */
function excluded(root, piece, value) {
  const own = Object.entries(piece.dependentSchemas ?? {}).flatMap(([key, { not }]) =>
    Object.hasOwn(value, key) ? (not?.anyOf ?? []).flatMap((one) => one.required ?? []) : [],
  );
  const branch = piece.if ? (passes(root, piece.if, value) ? piece.then : piece.else) : null;
  return [...own, ...(branch ? excluded(root, open(root, branch), value) : [])];
}

export { shapeOf as of, label, needed, excluded };
