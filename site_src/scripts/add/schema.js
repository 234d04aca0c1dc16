// What fails in a value by a published schema. The library interprets schemas: code made from them would need `eval`, which
// the policy of the pages forbids. Pure.

import { dereference, validate } from "@cfworker/json-schema";

/**
 * @typedef {object} Piece a piece of a published schema, with the notes that form.json lays back over it
 * @property {string} [$ref]
 * @property {string} [title]
 * @property {string} [description]
 * @property {string | string[]} [type]
 * @property {unknown[]} [enum]
 * @property {unknown} [const]
 * @property {string} [format]
 * @property {string} [pattern]
 * @property {number} [minLength]
 * @property {number} [maxLength]
 * @property {number} [minimum]
 * @property {number} [exclusiveMinimum]
 * @property {number} [maximum]
 * @property {number} [minItems]
 * @property {number} [maxItems]
 * @property {number} [minProperties]
 * @property {number} [maxProperties]
 * @property {string[]} [required]
 * @property {Record<string, Piece>} [properties]
 * @property {Piece & false} [additionalProperties]
 * @property {Piece} [propertyNames]
 * @property {Piece} [items]
 * @property {Piece} [if]
 * @property {Piece} [then]
 * @property {Piece} [else]
 * @property {Piece} [not]
 * @property {Piece[]} [anyOf]
 * @property {Record<string, Piece>} [$defs]
 * @property {Record<string, Piece>} [dependentSchemas]
 * @property {Record<string, string[]>} [dependentRequired]
 * @property {string} [vocabulary] the vocabulary that its words are of
 * @property {string} [reference] the kind of entry that its ids are of
 * @property {number} [multipleOf]
 * @property {boolean | "whole"} [clock] a time as on a pace clock, or one in whole seconds
 * @property {boolean} [sorted] a list that stands in the order of the alphabet
 * @property {string[]} [seldom] fields that stand below "More"
 * @property {string} [says] what to write, where the description does not say it
 *
 * @typedef {(string | number)[]} Path
 * @typedef {Record<string, unknown>} Fields
 *
 * @typedef {object} Failure one keyword that a value fails
 * @property {string} keyword
 * @property {Path} path to the value; where a key fails, to what stands under it
 * @property {unknown} value
 * @property {Piece} piece that holds the keyword
 * @property {Piece[]} around the pieces that the value answers to, nearest first
 * @property {string} because the field that asks for the piece by being there; "" where none does
 */

/** Keywords that fail because another one does, further in. */
const OUTER = new Set(["$ref", "properties", "items", "propertyNames", "if", "dependentSchemas", "anyOf", "false"]);
/** Keywords that lead to another value. */
const INWARD = new Set(["items", "additionalProperties", "propertyNames"]);

/** @type {WeakMap<Piece, ReturnType<typeof dereference>>} */
const lookups = new WeakMap();

/** @param {unknown} value
 * @returns {value is Fields} */
export const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * The piece that a `$ref` into the same schema names.
 * @param {Piece} root
 * @param {string} reference
 * @returns {Piece}
 */
export const follow = (root, reference) =>
  reference.slice(2).split("/").reduce((/** @type {any} */ piece, step) => piece[step], root);

/**
 * @param {Piece} root
 * @param {Piece} piece
 * @param {unknown} value
 */
function results(root, piece, value) {
  const lookup = lookups.get(root) ?? dereference(/** @type {any} */ (root));
  lookups.set(root, lookup);
  return validate(value, /** @type {any} */ (piece), "2020-12", lookup, false);
}

/**
 * Whether a value passes a piece of a schema.
 * @param {Piece} root
 * @param {Piece} piece
 * @param {unknown} value
 */
export const passes = (root, piece, value) => results(root, piece, value).valid;

/** @param {string} pointer as the library writes it: #/a/0 */
const stepsOf = (pointer) =>
  pointer.split("/").slice(1).map((step) => decodeURIComponent(step).replaceAll("~1", "/").replaceAll("~0", "~"));

/**
 * The way through a schema to a keyword that failed.
 * @param {Piece} root
 * @param {string[]} steps without the keyword itself
 */
function walk(root, steps) {
  /** @type {any} */
  let piece = root;
  let around = [root];
  let because = "";
  for (let at = 0; at < steps.length; at += 1) {
    const step = steps[at];
    const isNamed = step === "properties" || step === "dependentSchemas"; // a name follows, not a keyword
    const held = step === "$ref" ? follow(root, piece.$ref) : piece[step];
    at += isNamed ? 1 : 0;
    piece = isNamed ? held[steps[at]] : held;
    because = step === "dependentSchemas" ? steps[at] : because;
    around = step === "properties" || INWARD.has(step) ? [piece] : [piece, ...around];
  }
  return { piece, around, because };
}

/**
 * The value at a path, and the path with numbers where lists have them.
 * @param {unknown} value
 * @param {string[]} steps
 */
function reach(value, steps) {
  /** @type {any} */
  let found = value;
  const path = steps.map((step) => {
    const key = Array.isArray(found) ? Number(step) : step;
    found = found[key];
    return key;
  });
  return { found, path };
}

/**
 * Everything that fails in a value, in the order of the schema.
 * @param {Piece} schema
 * @param {unknown} value
 * @returns {Failure[]}
 */
export function failuresOf(schema, value) {
  const inner = results(schema, schema, value).errors.filter(({ keyword }) => !OUTER.has(keyword));
  return inner.flatMap(({ keyword, keywordLocation, instanceLocation }) => {
    const steps = stepsOf(keywordLocation).slice(0, -1);
    const { piece, around, because } = walk(schema, steps);
    const { found, path } = reach(value, stepsOf(instanceLocation));
    const isOuter = keyword === "additionalProperties" && isObject(piece.additionalProperties);
    const own = steps.includes("propertyNames") ? path.at(-1) : found;
    return isOuter ? [] : [{ keyword, path, value: own, piece, around, because }];
  });
}

/**
 * A published schema with the notes of form.json laid back over it, by their pointers.
 * @param {Piece} schema
 * @param {Record<string, Partial<Piece>>} notes
 */
export function withNotes(schema, notes) {
  const noted = structuredClone(schema);
  for (const [pointer, note] of Object.entries(notes)) {
    Object.assign(follow(noted, `#${pointer}`), note);
  }
  return noted;
}
