// Searching by words: MiniSearch, with what it cannot know of a coach's English. Each word that is asked for is looked for with
// the names that mean the same; what answers more of the words stands higher, and what answers few is left out.

import MiniSearch from "minisearch";

import { begins, Terms } from "./terms.js";
import { indexed, OF_REPS, ofDistance, stem, stems, wordsOf } from "./words.js";

/** @typedef {string[][]} Synonyms lists of names for one thing, each a word or a few */
/** @typedef {{id: number, [field: string]: unknown}} Document */
/** @typedef {Exclude<import("minisearch").Query, symbol>} Query */
/** @typedef {{score: number, isNamed: boolean}} Hit how well a document answers, and whether a name of it does */
/** @typedef {{query: Query, words: number}} Way a way to ask for something, in so many words that stand together */
/** @typedef {{key: string, terms: string[], queries: Way[], title: string[]}} Wanted a word or name of a question, with all that answers it, and the title of
 *   the list that it is in */

const LEAST_COVER = 0.25; // the share of what is asked for, by weight, that an answer must have
const IN_TEXT = 0.6; // what an answer counts that only a text gives
const TELLS_IN_TEXT = 0.28; // the same of how sure an answer is: what texts alone hold, little more than a quarter
const UNKNOWN = 0.2; // what a word counts that nothing answers
const UNNAMED = 0.35; // the same that only texts hold: no page is about it
const RARE = 0.35; // how much more a rare word counts than a common one: the power of what it tells
const NAMES = ["title", "also", "asked", "tags", "summary"];
const TITLE = 0.98; // of the word that this catalogue uses, where another is asked for
const BESIDE = 0.5; // of others that mean the same
const APART = 0.2; // of a name whose words stand in several fields
const OTHER_REPS = 0.7; // of 6x50 where 8x50 is asked for
const NEAR = 0.6; // what a word that is only near counts
const MOST_ANSWERED = 100; // words whose answers are kept
const AT_ONCE = 4; // documents taken in before the page may draw again: more would keep a key waiting

/** @type {(queries: import("minisearch").Query[]) => import("minisearch").QueryCombination} */
const all = (queries) => ({ combineWith: "AND", queries });

/** Whether the words of a name stand in one field.
 * @param {import("minisearch").MatchInfo} match */
const isTogether = (match) => {
  const [first = [], ...others] = Object.values(match);
  return first.some((field) => others.every((fields) => fields.includes(field)));
};

/** Terms as they stand, typing errors no matter: "cool-down" is one word, "front crawl" are two.
 * @type {(terms: string[], boost: number) => Query} */
const exactly = (terms, boost) => ({ ...all(terms), fuzzy: false, prefix: false, boostTerm: () => boost });

/** The same where names stand: in a text a word says too little of what a page is about.
 * @type {(terms: string[], boost: number) => Query} */
const asName = (terms, boost) => ({ combineWith: "AND", queries: [exactly(terms, boost)], fields: NAMES });

/** What a name is looked for by, as it is written.
 * @param {string} name */
const parts = (name) => name.split(/\s+/).flatMap((part) => stem(wordsOf(part).join("")) ?? []);

/** How many words a name takes at the beginning of others: all of its own, or one where they are written together; else none.
 * @type {(words: string[], name: string[]) => number} */
const lengthIn = (words, name) => {
  if (name.length && name.every((term, at) => words[at] === term)) {
    return name.length;
  }
  if (name.length > 1 && words[0] === stem(name.join(""))) {
    return 1;
  }
  return words[1] && name.length === 1 && words[0] + words[1] === name[0] ? 2 : 0;
};

/** @type {(lists: string[][]) => string[][]} */
const unique = (lists) => [...new Map(lists.filter((list) => list.length).map((list) => [list.join(" "), list])).values()];

/** An index of documents by weighted fields. */
export class WordIndex {
  /**
   * @param {Record<string, number>} weights each field with its weight
   * @param {Synonyms} synonyms
   */
  constructor(weights, synonyms) {
    const lists = synonyms.map((names) => names.map((name) => ({ terms: stems(name), parts: parts(name) })));
    /** @type {Map<string, {terms: string[], names: string[][]}[]>} by its first word, and as one word, each name with those beside it */
    this.synonyms = new Map();
    for (const list of lists) {
      const names = list.map((name) => name.parts);
      for (const { terms } of list.filter((name) => name.terms.length)) {
        for (const first of new Set([terms[0] ?? "", stem(terms.join("")) ?? ""])) {
          this.synonyms.set(first, [...(this.synonyms.get(first) ?? []), { terms, names }]);
        }
      }
    }
    this.terms = new Terms();
    /** @type {Map<string, Map<number, Hit>>} what answered a word: the words before it are asked for again at each key */
    this.answered = new Map();
    this.index = new MiniSearch({
      fields: Object.keys(weights),
      tokenize: indexed,
      processTerm: (word, field) => this.terms.take(word, NAMES.includes(field ?? "")),
      searchOptions: {
        boost: weights, weights: { prefix: 0.5, fuzzy: 0.35 }, bm25: { k: 1.2, b: 0.4, d: 0.5 }, tokenize: (text) => [text], processTerm: (term) => term,
      },
    });
  }

  /** @param {Document[]} documents */
  add(documents) {
    this.index.addAll(documents);
    return this;
  }

  /** The same a few at a time, so that keys are heard meanwhile.
   * @param {Document[]} documents */
  async addSlowly(documents) {
    await this.index.addAllAsync(documents, { chunkSize: AT_ONCE });
    return this;
  }

  /**
   * What answers the words that are asked for, the best first, each with the share that it answers: in full where it is named
   * so, in part where only its text says it.
   * @param {string} text
   * @param {(term: string) => number} [weight] how much an answer to a word counts
   * @returns {{id: number, score: number, cover: number, tells: number}[] | null} null where nothing is asked; `tells` is the
   *   share with each word counted by how rare it is
   */
  search(text, weight = () => 1) {
    const terms = stems(text);
    if (!terms.length) {
      return null;
    }
    /** @type {Map<number, {score: number, share: number, told: number}>} */
    const found = new Map();
    let [whole, wholeTold] = [0, 0];
    for (const wanted of this.#wanted(terms)) {
      const hits = this.#hits(wanted);
      const weighs = Math.max(...wanted.terms.map(weight));
      const tells = Math.log(1 + this.index.documentCount / (hits.size || 0.5));
      const known = [...hits.values()].some(({ isNamed }) => isNamed) ? 1 : UNNAMED;
      const counts = weighs * (hits.size ? known : UNKNOWN) * tells ** RARE;
      const rare = weighs * tells;
      whole += counts;
      wholeTold += rare;
      for (const [id, hit] of hits) {
        const own = found.get(id) ?? { score: 0, share: 0, told: 0 };
        const part = hit.isNamed ? 1 : IN_TEXT;
        found.set(id, { score: own.score + counts * Math.sqrt(hit.score), share: own.share + part * counts, told: own.told + (hit.isNamed ? 1 : TELLS_IN_TEXT) * rare });
      }
    }
    const answers = [...found].map(([id, { score, share, told }]) => {
      const cover = share / whole;
      return { id, score: (score * cover) ** 2, cover, tells: told / wholeTold };
    });
    return answers.filter(({ cover }) => cover >= LEAST_COVER).sort((one, two) => two.score - one.score);
  }

  /** By document how well it answers what is wanted.
   * @param {Wanted} wanted */
  #hits({ key, queries }) {
    const hits = this.answered.get(key) ?? this.#best(queries);
    if (this.answered.size >= MOST_ANSWERED) {
      this.answered.clear();
    }
    this.answered.set(key, hits);
    return hits;
  }

  /** By document the best of several ways to ask for one thing.
   * @param {Way[]} queries */
  #best(queries) {
    /** @type {Map<number, Hit>} */
    const best = new Map();
    for (const { query, words } of queries) {
      for (const { id, score, match } of this.index.search(query)) {
        const own = (words < 2 || isTogether(match) ? score : APART * score) / words;
        const known = best.get(id) ?? { score: 0, isNamed: false };
        const isNamed = known.isNamed || Object.values(match).flat().some((field) => NAMES.includes(field));
        best.set(id, { score: Math.max(own, known.score), isNamed });
      }
    }
    return best;
  }

  /** Each word, or the longest run of words that is a name with others beside it, as any of those names.
   * @param {string[]} terms
   * @returns {Wanted[]} */
  #wanted(terms) {
    const wanted = [];
    for (let at = 0; at < terms.length;) {
      const rest = terms.slice(at);
      const keys = [rest[0] ?? "", (rest[0] ?? "") + (rest[1] ?? "")];
      const here = keys.flatMap((key) => this.synonyms.get(key) ?? []).filter((name) => lengthIn(rest, name.terms));
      const length = Math.max(1, ...here.map((name) => lengthIn(rest, name.terms)));
      const written = rest[1] ? this.terms.joined(rest[0] ?? "", rest[1]) : "";
      const joined = written ? [written] : null;
      const own = rest.slice(0, Math.max(length, joined ? 2 : 1));
      const lists = here.filter((name) => lengthIn(rest, name.terms) === length).map((name) => name.names);
      const titles = lists.flatMap(([title = []]) => [title]);
      const names = lists.flatMap(([, ...others]) => others);
      const isLast = at + own.length >= terms.length;
      /** @type {Way[]} */
      const queries = [
        { query: all(own.map((term) => this.#term(term, isLast))), words: own.length },
        ...own.filter((term) => OF_REPS.test(term)).map((term) => ({ query: exactly([ofDistance(term)], OTHER_REPS), words: 1 })),
        ...(joined ? [{ query: exactly([...joined, ...own.slice(2)], 1.2), words: own.length - 1 }] : []),
        ...this.#answering(titles).map((name) => ({ query: asName(name, TITLE), words: name.length })),
        ...this.#answering(names).map((name) => ({ query: asName(name, BESIDE), words: name.length })),
      ];
      wanted.push({ key: [...own, isLast, written].join(" "), terms: own, queries, title: titles[0] ?? [] });
      at += own.length;
    }
    return wanted;
  }

  /** Of some names each once, without those that hold a term which no document has in a name.
   * @param {string[][]} names */
  #answering(names) {
    return unique(names).filter((name) => name.every((term) => this.terms.named.has(term)));
  }

  /** The terms that a text means, each once: of a name that no entry has the title of its list.
   * @param {string} text */
  meant(text) {
    const meant = this.#wanted(stems(text)).flatMap(({ terms, title }) =>
      (title.length && !terms.every((term) => this.terms.has(term)) ? title : terms.flatMap((term) => this.terms.meant(term))));
    return [...new Set(meant)];
  }

  /** A term that is known as it stands and as the beginning of others; one that is not, in two words or with letters mended.
   * @param {string} term
   * @param {boolean} isLast which may still be typed: of others the beginning is looked for where they are no term themselves
   * @returns {Query} */
  #term(term, isLast) {
    const own = { ...all([term]), prefix: begins(term) && (isLast || !this.terms.has(term)), fuzzy: false };
    if (this.terms.has(term) || this.terms.isBegun(term)) {
      return own;
    }
    const { terms, isRun } = this.terms.taken(term);
    return exactly(terms, isRun ? 1 : NEAR);
  }

  /** The words of a text that nothing here has, each with what is looked for in its place, "" where nothing is near; `isRun` where they were only
   * written together.
   * @param {string} text
   * @returns {{word: string, near: string, isRun: boolean}[]} */
  unknown(text) {
    const terms = stems(text);
    const known = new Set(this.#wanted(terms).flatMap(({ terms: own, queries }) => (queries.length > 1 ? own : [])));
    const words = wordsOf(text);
    const pairs = words.map((word, at) => this.terms.inPair(stem(word) ?? "", stem(words[at + 1] ?? "") ?? ""));
    return words.flatMap((word, at) => {
      const term = stem(word);
      if (pairs[at]) {
        return [{ word: `${word} ${words[at + 1]}`, near: pairs[at] ?? "", isRun: false }];
      }
      if (pairs[at - 1]) {
        return [];
      }
      const taken = !term || /^\d/.test(term) || known.has(term) || this.terms.isKnown(term) ? null : this.terms.taken(term);
      return taken ? [{ word, near: this.terms.shown(taken, word), isRun: taken.isRun }] : [];
    });
  }
}
