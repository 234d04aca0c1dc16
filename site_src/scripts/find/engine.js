// The search of the page: an index of titles at once, with the texts when they have come; what a question finds, and the nearest word.

import { make, root } from "../lib/dom.js";
import { WordIndex } from "../lib/search.js";
import { answers, fieldsOf, namesOfGear, WEIGHTS } from "./answers.js";
import { Phrases } from "./phrases.js";
import { questionOf } from "./question.js";

/** @import {Known} from "./answers.js" */
/** @import {Answers} from "./answers.js" */
/** @import {Data, Entry} from "./list.js" */
/** @import {Question} from "./question.js" */

/** @type {(work: () => void) => void} */
const whenIdle = (work) => (window.requestIdleCallback ?? setTimeout)(work);

/**
 * @param {Data} data
 * @param {Entry[]} entries
 */
export function engine(data, entries) {
  /** @type {import("./question.js").Names} */
  const names = { gear: namesOfGear(data), squads: data.groups.map(({ id, squad }) => [id, squad]) };
  /** @type {Known | null} titles and facts alone, until the rest is taken in */
  let known = null;
  let isRead = false;
  const read = () => (known ??= {
    words: new WordIndex(WEIGHTS, data.synonyms).add(entries.map((entry) => fieldsOf(entry))),
    phrases: new Phrases(entries, () => ""),
  });

  /** What is typed for entries and their texts, a few at a time.
   * @param {() => void} done */
  async function readTexts(done) {
    const texts = /** @type {{almanacTexts?: [string, string][]}} */ (/** @type {unknown} */ (self)).almanacTexts ?? [];
    /** @type {(entry: Entry) => [string, string]} */
    const own = (entry) => texts[entry.text] ?? ["", ""];
    const words = new WordIndex(WEIGHTS, data.synonyms);
    await words.addSlowly(entries.map((entry) => fieldsOf(entry, ...own(entry))));
    known = { words, phrases: new Phrases(entries, (entry) => own(entry)[0]) };
    isRead = true;
    done();
  }

  /** @type {(question: Question, entry: Entry) => boolean} */
  const isFree = ({ without }, { needs, kind }) =>
    data.narrowed.includes(kind) && (without.has("none") ? !needs.length : !needs.some((id) => without.has(id)));

  /** Of the last question: asked for twice a key. @type {{words: string, unknown: {word: string, near: string}[]}} */
  let last = { words: "", unknown: [] };
  /** @param {Question} question */
  function unknown({ words }) {
    if (isRead && words !== last.words) {
      last = { words, unknown: words ? read().words.unknown(words) : [] };
    }
    return isRead ? last.unknown : [];
  }

  /** A question with the nearest word in the place of each that nothing has.
   * @param {Question} question
   * @returns {Question} */
  const mended = (question) => ({
    ...question, words: unknown(question).reduce((words, { word, near }) => (near ? words.replace(word, near) : words), question.words),
  });

  return {
    /** @param {string} words */
    question: (words) => questionOf(words, names),

    /** How well entries answer; null where nothing is asked.
     * @param {Question} question
     * @returns {Answers | null} */
    answers(question) {
      const found = question.words ? answers(read(), entries, mended(question)) : null;
      const isHeard = question.minutes !== null || question.lanes !== null || question.without.size > 0;
      const own = found ?? (isHeard ? { scores: new Map(entries.map(({ number }) => [number, 1])), sure: new Set(entries.keys()) } : null);
      if (!own || !question.without.size) {
        return own;
      }
      const free = [...own.scores].filter(([number]) => isFree(question, /** @type {Entry} */ (entries[number])));
      return { ...own, scores: new Map(free) };
    },

    /** The words that nothing has, and what is looked for in their place; none before all is read.
     * @param {Question} question */
    unknown,

    /** The word that is nearest to what nothing answers, and how many hits it has; null where none is near.
     * @param {Question} question */
    nearest(question) {
      const word = read().words.terms.nearest(question.words);
      const hits = word ? (answers(read(), entries, questionOf(word, names))?.scores.size ?? 0) : 0;
      return hits ? { word, hits } : null;
    },

    /** Get ready before the first letter is typed. The texts are a script: a page opened from a folder may fetch nothing.
     * @param {() => void} done when the texts are there, too */
    warm(done) {
      whenIdle(() => {
        read();
        const texts = make("script", { src: new URL("search/texts.js", root).href });
        texts.addEventListener("load", () => whenIdle(() => { void readTexts(done); }));
        document.head.append(texts);
      });
    },
  };
}
