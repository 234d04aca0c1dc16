// Writes an entry as YAML as coaches do: long text folded, lists of words and small groups on one line, times as on a pace
// clock. Every text that some reader of YAML would take for something else stands in quotes. Pure.

import { Document, isMap, isScalar, isSeq, visit } from "yaml";

const WIDTH = 100;
const LONGEST_LINE = 88; // of text or of a list, that stands beside its name
const LONGEST_WORD = 40; // in a list on one line: a sentence stands on a line of its own
const TIME = /^(\d{1,2}:)?\d{1,3}:\d{2}(\.\d{1,2})?$/;
const DAY = /^\d{4}-\d{2}-\d{2}$/;
const LIKE_NUMBER = /^[-+.]?\d[\d.,_:a-fox+-]*$/i;
const WORD = /^[\p{L}\p{N}][\p{L}\p{M}\p{N} ._’'()/+-]*$/u;
const IN_CURLY = /^[“„‘«][^“”„‘’«»]*[”“’»]$/u; // which the reader takes for a slip where nothing stands round them
const UNSEEN = /[\p{Cc}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/gu;
/** What YAML 1.1 reads as something other than text: `yes`, `0x1f`, `1:15` ... */
const OTHER = new Document(null, { version: "1.1" }).schema.tags.flatMap((tag) => (tag.default && "test" in tag && tag.test) || []);

/** Whether a reader of YAML 1.1 or 1.2 takes a text without quotes for something else. Ours takes times and days for text.
 * @param {string} text */
function isMistaken(text) {
  const isOurs = TIME.test(text) || DAY.test(text);
  return !isOurs && (LIKE_NUMBER.test(text) || OTHER.some((test) => test.test(text)));
}

/** @param {string} text */
const isPlain = (text) => WORD.test(text) && !isMistaken(text);

/** @param {string} text */
function escaped(text) {
  const code = (/** @type {string} */ char) => `\\u${char.charCodeAt(0).toString(16).padStart(4, "0")}`;
  return text.replace(UNSEEN, (char) => (char === "\n" ? char : code(char)));
}

/** How a text is written: nothing where the library may choose.
 * @param {string} text
 * @returns {"QUOTE_DOUBLE" | "BLOCK_LITERAL" | "BLOCK_FOLDED" | null} */
function styleOf(text) {
  const isSpaced = /^\s|\s$|\s\s|\s\n|\n\s/.test(text.replaceAll("\n\n", "\n"));
  if (isMistaken(text) || isSpaced || IN_CURLY.test(text) || text.replaceAll("\n", "").search(UNSEEN) >= 0) {
    return "QUOTE_DOUBLE";
  }
  if (text.includes("\n")) {
    return "BLOCK_LITERAL";
  }
  return text.length > LONGEST_LINE ? "BLOCK_FOLDED" : null;
}

/** The length of a node on one line in brackets; Infinity where it holds more than words and numbers.
 * @param {unknown} node
 * @returns {number} */
function lengthInBrackets(node) {
  if (isScalar(node)) {
    const text = String(node.value);
    const isWord = typeof node.value !== "string" || TIME.test(text) || (isPlain(text) && text.length <= LONGEST_WORD);
    return isWord ? text.length + 2 : Infinity;
  }
  if (isMap(node)) {
    return node.items.reduce((sum, { key, value }) => sum + String(key).length + lengthInBrackets(value), 2);
  }
  return isSeq(node) && node.items.every(isScalar)
    ? node.items.reduce((sum, item) => sum + lengthInBrackets(item), 2)
    : Infinity;
}

/**
 * An entry as text, fields in the order that they have.
 * @param {import("./schema.js").Fields} entry
 */
export function toYaml(entry) {
  if (!Object.keys(entry).length) {
    return "";
  }
  const document = new Document(entry, { aliasDuplicateObjects: false });
  visit(document, {
    Scalar(role, node) {
      const isText = role !== "key" && typeof node.value === "string"; // our keys are never mistaken: `on` is a key
      const style = isText ? styleOf(String(node.value)) : null;
      if (style) {
        node.type = style;
      }
    },
    Collection(_, node, path) {
      node.flow = path.length > 1 && lengthInBrackets(node) <= LONGEST_LINE;
    },
  });
  return escaped(document.toString({ lineWidth: WIDTH, flowCollectionPadding: false, singleQuote: false }));
}
