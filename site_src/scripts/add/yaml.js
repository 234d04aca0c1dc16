// Writes an entry as YAML that the strict reader reads back to the same data: plain where nothing can be mistaken, else in
// double quotes; long text folded, lists of words and small groups on one line, times as on a pace clock. Pure.

import { isObject } from "./check.js";

const WIDTH = 100;
const LONGEST_WORD = 40; // of a text inside brackets: a sentence stands on a line of its own

// What some reader of YAML takes for something other than text, or for a mark.
const OTHER_WORDS = /^(true|false|null|yes|no|on|off|y|n)$/i;
const LIKE_NUMBER = /^[-+]?[.\d][\d.,_:a-fox+-]*$/i;
const TIME = /^(\d{1,2}:)?\d{1,3}:\d{2}(\.\d{1,2})?$/;
const DAY = /^\d{4}-\d{2}-\d{2}$/;
const PLAIN = /^[\p{L}\p{N}(“‘][\p{L}\p{M}\p{N}\p{So} .,;:()/'’‘“”…–—×÷±°²³%+=?!&*"_-]*$/u;
const SPECIAL = /[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff\p{Cs}]/u;
const SPECIALS = new RegExp(SPECIAL.source, "gu");
const KEY = /^[a-z][a-z0-9_-]*$/;

function isPlain(text) {
  const isMistaken = OTHER_WORDS.test(text) || (LIKE_NUMBER.test(text) && !TIME.test(text) && !DAY.test(text));
  return PLAIN.test(text) && !isMistaken && !/: |:$| $| #/.test(text);
}

function escaped(char) {
  const number = char.codePointAt(0);
  const short = { "\n": "\\n", "\t": "\\t", "\r": "\\r", "\0": "\\0" }[char];
  return short ?? (number < 0x100 ? `\\x${number.toString(16).padStart(2, "0")}` : `\\u${number.toString(16).padStart(4, "0")}`);
}

function quoted(text) {
  return `"${text.replaceAll("\\", "\\\\").replaceAll('"', '\\"').replace(SPECIALS, escaped)}"`;
}

/** A number in digits alone: the reader knows no exponent. */
function digits(number) {
  const text = String(number);
  return text.includes("e") ? number.toFixed(15).replace(/\.?0+$/, "") : text;
}

function scalar(value) {
  if (typeof value === "string") {
    return isPlain(value) ? value : quoted(value);
  }
  return typeof value === "number" ? digits(value) : String(value);
}

const key = (name) => (KEY.test(name) && name !== "null" ? name : quoted(name));

/** A value on one line in brackets, as coaches write lists of words and small groups; null where it holds more than that. */
function inBrackets(value) {
  if (Array.isArray(value)) {
    const items = value.map((item) => (typeof item === "object" && item !== null ? null : inBrackets(item)));
    return items.includes(null) ? null : `[${items.join(", ")}]`;
  }
  if (isObject(value)) {
    const pairs = Object.entries(value).map(([name, inner]) => [key(name), inBrackets(inner)]);
    return pairs.some(([, text]) => text === null) ? null : `{${pairs.map(([name, text]) => `${name}: ${text}`).join(", ")}}`;
  }
  if (typeof value !== "string") {
    return scalar(value);
  }
  const isWord = isPlain(value) && value.length <= LONGEST_WORD && !/[,?*&!]/.test(value) && (!value.includes(":") || TIME.test(value));
  return isWord ? value : null;
}

/** A text as lines of at most WIDTH, broken only at single spaces between words. */
function folded(text, indent) {
  const lines = [""];
  for (const piece of text.split(/(?<=\S) (?=\S)/)) {
    const longer = lines.at(-1) ? `${lines.at(-1)} ${piece}` : piece;
    if (lines.at(-1) && longer.length + indent.length > WIDTH) {
      lines.push(piece);
    } else {
      lines[lines.length - 1] = longer;
    }
  }
  return lines;
}

const isWhole = (text) => text === text.trim() && !/[ \t]\n|\n[ \t]/.test(text) && !SPECIAL.test(text.replaceAll("\n", ""));

/** A text after `name:` or `-`, as what follows there: on the line, or folded or kept line by line below it. */
function text(value, indent, room) {
  if (value.includes("\n") && isWhole(value)) {
    return ` |-\n${value.split("\n").map((line) => (line ? indent + line : "")).join("\n")}`;
  }
  const short = scalar(value);
  if (short.length <= room || !isWhole(value) || value.includes("\n")) {
    return ` ${short}`;
  }
  return ` >-\n${folded(value, indent).map((line) => indent + line).join("\n")}`;
}

/** What follows `name:` or `-` at a depth. */
function after(value, indent, room) {
  if (typeof value === "string") {
    return text(value, indent, room);
  }
  const onOneLine = inBrackets(value);
  const isGroup = typeof value === "object" && value !== null && Object.keys(value).length > 0;
  if (!isGroup || (onOneLine !== null && onOneLine.length <= room)) {
    return ` ${onOneLine}`;
  }
  return `\n${block(value, indent)}`;
}

function block(value, indent) {
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    return value.map((item) => `${indent}-${besideDash(after(item, deeper, WIDTH - deeper.length), deeper)}`).join("\n");
  }
  return Object.entries(value)
    .map(([name, inner]) => `${indent}${key(name)}:${after(inner, deeper, WIDTH - indent.length - name.length - 2)}`)
    .join("\n");
}

/** A group below a dash begins on the line of the dash. */
const besideDash = (following, indent) => (following.startsWith(`\n${indent}`) ? ` ${following.slice(1 + indent.length)}` : following);

/** An entry, fields in the order that they have. */
export const toYaml = (entry) => (Object.keys(entry).length ? `${block(entry, "")}\n` : "");
