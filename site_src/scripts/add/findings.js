// What is wrong with an entry by its schema, told beside the fields. Codes and places are those of the check on the command
// line (source/explain/keywords.py); the words are the form's own, short, because they stand beside the field. Pure.

import { dependent, missing, together, unknown } from "./finding-keys.js";
import { quote, say, says } from "./finding.js";
import { inWords } from "./names.js";
import { nearest } from "./near.js";
import { failuresOf } from "./schema.js";

/**
 * @typedef {import("./schema.js").Failure} Failure
 * @typedef {import("./finding.js").Finding} Finding
 * @typedef {import("./names.js").Names} Names
 */

const MOST_WORDS = 24;
/** @type {Record<string, string>} */
const TYPES = {
  string: "text",
  integer: "a whole number, in digits alone",
  number: "a number, in digits alone, with a point where it has parts",
  boolean: "true or false",
  array: "a list",
  object: "fields",
};

/** @param {Failure} failure */
function type(failure) {
  const wanted = [failure.piece.type ?? []].flat().map((name) => TYPES[name]);
  const noun = says(failure, "clock") ? "a time, say 1:15" : wanted.join(" or ");
  return [say(failure, "wrong-type", `this must be ${noun}`, String(says(failure, "says")))];
}

/**
 * A word or id that is none of its list.
 * @param {Failure} failure
 * @param {Names} names
 */
function choice(failure, names) {
  const { piece, value } = failure;
  if ((piece.reference || piece.vocabulary) && typeof value !== "string") {
    return []; // its type fails too
  }
  if (piece.reference) {
    return reference(failure, piece.reference, String(value), names);
  }
  const ids = (piece.enum ?? []).map(String);
  const known = names.vocabulary[piece.vocabulary ?? ""] ?? ids.map((id) => [id, id, ""]);
  const near = nearest(String(value), known);
  const hint = near ? `did you mean ${near[0]}?` : `choose ${ids.slice(0, MOST_WORDS).join(", ")}`;
  const list = piece.vocabulary ? inWords(piece.vocabulary) : "choices here";
  return [say(failure, "unknown-word", `${quote(value)} is not one of the ${list}`, hint)];
}

/**
 * @param {Failure} failure
 * @param {string} kind
 * @param {string} id
 * @param {Names} names
 */
function reference(failure, kind, id, names) {
  const moved = names.moved[kind]?.[id];
  if (moved) {
    return [say(failure, "moved-reference", `${quote(id)} has moved`, `write ${moved}`)];
  }
  const near = nearest(id, names.reference[kind] ?? []);
  const hint = near ? `did you mean ${near[0]} (${near[1]})?` : "";
  return [say(failure, "unknown-reference", `there is no ${inWords(kind)} ${quote(id)}`, hint)];
}

/** The time that a number with a point was meant to be, 1.3 as 1:30; "" where it reads as none.
 * @param {unknown} value */
function meantBy(value) {
  const [minutes, seconds = ""] = String(value).split(".");
  const whole = seconds.padEnd(2, "0");
  return typeof value === "number" && /^[0-5]\d$/.test(whole) && Number(minutes) > 0 ? `${minutes}:${whole}` : "";
}

/** A text that is not spelt as it should be: a time, a day, a line, a form of its own.
 * @param {Failure} failure */
function form(failure) {
  const text = quote(failure.value);
  if (failure.piece.clock) {
    const number = failure.piece.clock === "whole" ? "a whole number" : "a number";
    const meant = meantBy(failure.value);
    const other = `minutes and seconds as m:ss, say 1:15, or ${number} of seconds above zero`;
    const hint = meant ? `write ${meant} if that is meant; else ${other}` : `write ${other}`;
    return [say(failure, "bad-time", `${text} is no time`, hint)];
  }
  if (says(failure, "format") === "date") {
    return [say(failure, "bad-date", `${text} is no day`, "write a day that exists, from 1900 to 2199, as YYYY-MM-DD")];
  }
  if (String(failure.value).includes("\n")) {
    return [say(failure, "bad-form", "this must be one line")];
  }
  const hint = String(says(failure, "says") || says(failure, "description"));
  return [say(failure, "bad-form", `this cannot be ${text}`, hint)];
}

/** @param {Failure} failure */
function range(failure) {
  const { minimum, exclusiveMinimum, maximum, clock } = failure.piece;
  /** @type {[string, number | undefined][]} */
  const bounds = [["at least", minimum], ["more than", exclusiveMinimum], ["at most", maximum]];
  const span = bounds.filter(([, limit]) => limit !== undefined).map(([words, limit]) => `${words} ${limit}`);
  return clock ? form(failure) : [say(failure, "out-of-range", `this must be ${span.join(" and ")}`)];
}

/** @param {Failure} failure */
function step(failure) {
  const { multipleOf, clock } = failure.piece;
  return clock ? form(failure) : [say(failure, "out-of-range", `this goes in steps of ${multipleOf}`)];
}

/** Too few or too many characters, items or fields.
 * @param {Failure} failure */
function size(failure) {
  const { keyword, value } = failure;
  const limit = /** @type {Record<string, unknown>} */ (failure.piece)[keyword];
  const isText = typeof value === "string";
  const count = isText ? [...value].length : Object.keys(Object(value)).length;
  const isMin = keyword.startsWith("min");
  const code = isText ? (isMin ? "too-short" : "too-long") : isMin ? "too-few" : "too-many";
  const things = `${isText ? "character" : "item"}${limit === 1 ? "" : "s"}`;
  return [say(failure, code, `this must have ${isMin ? "at least" : "at most"} ${limit} ${things}, and has ${count}`)];
}

/** @param {Failure} failure */
function repeated(failure) {
  const texts = /** @type {unknown[]} */ (failure.value).map((item) => JSON.stringify(item));
  const again = texts.flatMap((text, number) => (texts.indexOf(text) < number ? [number] : []));
  return again.map((number) => {
    const path = [...failure.path, number];
    return say(failure, "repeated-item", "this stands twice in the list", "remove one of the two", { path });
  });
}

/** @type {Record<string, (failure: Failure, names: Names) => Finding[]>} */
const TOLD = {
  type,
  enum: choice,
  const: (failure) => [say(failure, "wrong-value", `this can only be ${failure.piece.const}`)],
  pattern: form,
  format: form,
  minimum: range,
  exclusiveMinimum: range,
  maximum: range,
  exclusiveMaximum: range,
  multipleOf: step,
  minLength: size,
  maxLength: size,
  minItems: size,
  maxItems: size,
  minProperties: size,
  maxProperties: size,
  uniqueItems: repeated,
  required: missing,
  dependentRequired: dependent,
  not: together,
  additionalProperties: unknown,
};

/** The keywords that there is something to say about. */
export const KEYWORDS = Object.keys(TOLD);

/**
 * What there is to say about an entry by its schema with notes, each mistake once.
 * @param {import("./schema.js").Piece} schema
 * @param {unknown} entry
 * @param {Names} names
 * @returns {Finding[]}
 */
export function findingsOf(schema, entry, names) {
  const found = new Map();
  for (const failure of failuresOf(schema, entry)) {
    for (const finding of TOLD[failure.keyword](failure, names)) {
      const key = JSON.stringify([finding.code, finding.at]);
      found.set(key, found.get(key) ?? finding);
    }
  }
  return [...found.values()];
}
