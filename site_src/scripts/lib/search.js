// Searching by words, for the header and for the finder: MiniSearch, with what it cannot know of a coach's English.

import MiniSearch from "minisearch";

/** @typedef {string[][]} Synonyms lists of names for one thing, each a word or a few */
/** @typedef {{id: number, [field: string]: unknown}} Document */

const IDLE = new Set(
  (
    "a an and are as at by do for from had has have her his i in is it its my of on or out she so that the their they" +
    " to too when with"
  ).split(" "),
);
const NUMBERS = "zero one two three four five six seven eight nine ten eleven twelve".split(" ");
const COMPOUND = /[\p{L}\p{N}]+(?:['’-][\p{L}\p{N}]+)+/gu;

/** @param {string} text */
const plain = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

/**
 * The words of a text, without accents, in small letters.
 * @param {string} text
 * @returns {string[]}
 */
export const wordsOf = (text) => plain(text).match(/[\p{L}\p{N}]+/gu) ?? [];

/** Words as they stand in the index; "warm-up" also as "warmup".
 * @param {string} text */
const indexed = (text) => {
  const compounds = plain(text).match(COMPOUND) ?? [];
  return [...wordsOf(text), ...compounds.map((word) => wordsOf(word).join(""))];
};

/**
 * A word without the endings that people change: knees, kicking and 100s are knee, kick and 100; six is 6. Idle words are none.
 * @param {string} word
 * @returns {string | null}
 */
export function stem(word) {
  if (IDLE.has(word)) {
    return null;
  }
  const number = NUMBERS.indexOf(word);
  if (number > 0) {
    return String(number);
  }
  if (/^\d/.test(word)) {
    return word.replace(/(?<=\d)(s|m|th|x)$/, "");
  }
  const singular = /[^s]s$/.test(word) && word.length > 3 ? word.slice(0, -1) : word;
  const bare = singular.replace(/(?<=[aeiouy][^aeiou]+)ing$/, "");
  return bare.length > 2 ? bare.replace(/([bdgmnpt])\1$/, "$1") : singular;
}

/** The words of a question that are worth looking for.
 * @param {string} text */
const asked = (text) => wordsOf(text).filter((word) => stem(word) !== null);

/** @type {(queries: import("minisearch").Query[]) => import("minisearch").QueryCombination} */
const all = (queries) => ({ combineWith: "AND", queries });

/** @type {(queries: import("minisearch").Query[]) => import("minisearch").Query} */
const either = (queries) => ({ combineWith: "OR", queries });

/** What a name is looked for by, as it is written: "cool-down" is one word, "front crawl" are two; typing errors are no matter.
 * @param {string} name */
const sought = (name) => ({
  ...all(name.split(/\s+/).map((part) => wordsOf(part).join("")).filter((word) => stem(word) !== null)),
  fuzzy: false,
  prefix: false,
  boostTerm: () => 3,
});

/** @type {(words: string[], name: string[]) => boolean} */
const startsWith = (words, name) => name.length > 0 && name.every((word, at) => stem(words[at] ?? "") === stem(word));

/** Letters that may be wrong: none in a number or a very short word; one in "kik", two from six letters on: swapped letters are two.
 * @param {string} term */
const mistakes = (term) => (/^\d/.test(term) || term.length < 3 ? false : term.length < 6 ? 1 : 2);

/** Whether a word is the beginning of another; of a number, never: 10 is not the beginning of 100.
 * @param {string} term */
const begins = (term) => term.length > 1 && !/^\d/.test(term);

/** An index of documents by weighted fields. */
export class WordIndex {
  /**
   * @param {Record<string, number>} weights each field with its weight
   * @param {Synonyms} synonyms
   * @param {Document[]} documents each with a number as `id`, and its fields as text
   */
  constructor(weights, synonyms, documents) {
    this.synonyms = synonyms.map((names) => names.map((name) => ({ words: asked(name), query: sought(name) })));
    this.index = new MiniSearch({
      fields: Object.keys(weights),
      tokenize: indexed,
      processTerm: stem,
      searchOptions: {
        boost: weights, prefix: begins, fuzzy: mistakes, weights: { prefix: 0.6, fuzzy: 0.3 }, tokenize: wordsOf,
      },
    });
    this.index.addAll(documents);
  }

  /**
   * What answers every word, the best first; then, where that is little and `any` is set, what answers some.
   * @param {string} text
   * @param {boolean} [any]
   * @returns {{id: number, score: number}[] | null} null where nothing is asked
   */
  search(text, any = false) {
    const words = asked(text);
    if (!words.length) {
      return null;
    }
    const wanted = this.#alternatives(words);
    const whole = this.index.search(all(wanted));
    if (!any || whole.length > 2) {
      return whole;
    }
    const found = new Set(whole.map((hit) => hit.id));
    return [...whole, ...this.index.search(either(wanted)).filter((hit) => !found.has(hit.id))];
  }

  /** Each word, or the longest run of words that is a name with others beside it, as any of those names.
   * @param {string[]} words
   * @returns {import("minisearch").Query[]} */
  #alternatives(words) {
    const queries = [];
    for (let at = 0; at < words.length;) {
      const here = this.synonyms.flat().filter((name) => startsWith(words.slice(at), name.words));
      const length = Math.max(1, ...here.map((name) => name.words.length));
      const longest = new Set(here.filter((name) => name.words.length === length));
      const names = this.synonyms.filter((list) => list.some((name) => longest.has(name))).flat();
      queries.push(either([all(words.slice(at, at + length)), ...names.map((name) => name.query)]));
      at += length;
    }
    return queries;
  }
}
