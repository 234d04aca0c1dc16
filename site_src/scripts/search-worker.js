// The search in the header, in a worker. It speaks the theme's four messages; the documents are fetched at the first search.

import { WordIndex, wordsOf } from "./lib/search.js";

/** @typedef {{synonyms: import("./lib/search.js").Synonyms, columns: string[], rows: string[][]}} Documents */

const scope = /** @type {DedicatedWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const SETUP = 0;
const READY = 1;
const RESULT = 3;
const MOST = 40;
const WEIGHTS = { title: 8, also: 6, tags: 3, summary: 3, text: 1 };

/** @type {Promise<(words: string) => object[]> | null} */
let loading = null;

/** The theme puts what it gets into the page as HTML.
 * @param {string} text */
const safe = (text) => text.replace(/[&<>"']/g, (letter) => `&#${letter.charCodeAt(0)};`);

async function load() {
  const response = await fetch(new URL("../search/documents.json", scope.location.href));
  /** @type {Documents} */
  const { synonyms, columns, rows } = await response.json();
  const documents = rows.map((row, id) => {
    const fields = columns.map((name, at) => [name, row[at] ?? ""]);
    return { id, ...Object.fromEntries(fields) };
  });
  const index = new WordIndex(WEIGHTS, synonyms, documents);
  /** @param {string} words */
  return (words) => {
    const terms = Object.fromEntries(wordsOf(words).map((word) => [word, true]));
    return (index.search(words, true) ?? []).slice(0, MOST).map(({ id, score }) => {
      const document = /** @type {Record<string, string>} */ (/** @type {unknown} */ (documents[id]));
      const text = [document.kind, document.summary].filter(Boolean).join(": ");
      return [{ location: document.location, title: safe(document.title ?? ""), text: safe(text), tags: [], score, terms }];
    });
  };
}

scope.addEventListener("message", async ({ data: { type, data } }) => {
  if (type === SETUP) {
    scope.postMessage({ type: READY });
    return;
  }
  let items = /** @type {object[]} */ ([]);
  if (data) {
    try {
      loading ??= load();
      items = (await loading)(String(data));
    } catch (problem) {
      loading = null; // no signal, say: the next key tries again
      console.warn(`The search did not come: ${/** @type {Error} */ (problem).message}`);
    }
  }
  scope.postMessage({ type: RESULT, data: { items } });
});
