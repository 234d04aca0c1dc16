// What the strict reader of files refuses whatever the schema says (reader.py, stream.py): characters that cannot be seen,
// a file too large, nesting too deep. Pure.

/** @typedef {import("./finding.js").Finding} Finding */
/** @typedef {import("./schema.js").Path} Path */

const CONTROL = /(?![\t\n])[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/u;
// Blanks, and what has no shape of its own (tree.py): nothing of a text of these can be seen.
const UNSEEN = /^[\s\p{Cc}\p{Default_Ignorable_Code_Point}\u2800\ufff9-\ufffb]+$/u;

/**
 * Every text in a value with its path, keys of free names among them.
 * @param {unknown} value
 * @param {Path} path
 * @returns {Generator<[string, Path]>}
 */
function* texts(value, path = []) {
  if (typeof value === "string") {
    yield [value, path];
  } else if (typeof value === "object" && value !== null) {
    for (const [key, inner] of Object.entries(value)) {
      const below = [...path, Array.isArray(value) ? Number(key) : key];
      if (!Array.isArray(value)) {
        yield [key, below];
      }
      yield* texts(inner, below);
    }
  }
}

/** @type {(value: unknown) => number} */
const depthOf = (value) =>
  typeof value === "object" && value !== null ? 1 + Math.max(0, ...Object.values(value).map(depthOf)) : 0;

/**
 * Findings on an entry and on its YAML.
 * @param {unknown} entry
 * @param {string} yaml
 * @param {{bytes: number, depth: number}} limits
 * @returns {Finding[]}
 */
export function limitFindings(entry, yaml, { bytes, depth }) {
  const whole = { path: [], at: [] };
  const found = [...texts(entry)].flatMap(([text, path]) => {
    const [char] = CONTROL.exec(text) ?? [];
    const number = char?.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0");
    const message = `a control character, U+${number}, stands here`;
    return char === undefined ? [] : [{ code: "control-character", path, at: path, message, hint: "delete it" }];
  });
  for (const [, path] of [...texts(entry)].filter(([text]) => UNSEEN.test(text))) {
    const message = "nothing can be seen in this text: it is blanks, or characters without a shape";
    found.push({ code: "blank-text", path, at: path, message, hint: "write the text" });
  }
  if (new TextEncoder().encode(yaml).length > bytes) {
    const most = `${bytes.toLocaleString("en")} bytes (${bytes / 1024} KiB)`;
    const message = `the file has more than ${most}, the most that an entry may have`;
    found.push({ ...whole, code: "file-too-large", message, hint: "split the entry, or shorten its text" });
  }
  if (depthOf(entry) > depth) {
    const message = `nested more than ${depth} deep`;
    found.push({ ...whole, code: "too-deep", message, hint: "flatten it: an entry never needs as much" });
  }
  return found;
}
