// The terms that an index knows, and which of them was meant by a word that it does not know: begun, misspelt, or two in one. Pure.

import { distance, mistakes, stem, wordsOf } from "./words.js";

const LONG = 9; // letters from which three may be wrong
const MOST_WRONG = 3;
const LONG_PAIR = 7; // letters from which two words may be one that is misspelt
const IN_TEXTS_ONLY = 0.5; // what a term that no name has is farther off

/** Whether a word is the beginning of another; of a number, never: 10 is not the beginning of 100.
 * @param {string} term */
export const begins = (term) => term.length > 2 && !/^\d/.test(term);

/** Each term with the shortest word that it was made of. */
export class Terms {
  constructor() {
    /** @type {Map<string, string>} */
    this.words = new Map();
    /** @type {Set<string>} those that stand in a name */
    this.named = new Set();
    /** @type {Map<string, string[]>} by their first letter: far fewer to look through at each key */
    this.begun = new Map();
    /** @type {Map<string, {terms: string[], near: string}>} what terms that are not known were taken for: asked for several times a key */
    this.asked = new Map();
  }

  /** Take in a word.
   * @param {string} word
   * @param {boolean} [isName] */
  take(word, isName = false) {
    const term = stem(word);
    const known = term && this.words.get(term);
    if (term && (!known || word.length < known.length)) {
      this.words.set(term, word);
    }
    if (term && !known) {
      this.asked.clear();
      const first = term[0] ?? "";
      const others = this.begun.get(first) ?? [];
      others.push(term);
      this.begun.set(first, others);
    }
    if (term && isName) {
      this.named.add(term);
    }
    return term;
  }

  /** @param {string} term */
  has(term) {
    return this.words.has(term);
  }

  /** Whether a term is one, or the beginning of one.
   * @param {string} term */
  isKnown(term) {
    return this.has(term) || this.isBegun(term);
  }

  /** Whether a word is being typed: some term goes on from it.
   * @param {string} term */
  isBegun(term) {
    return begins(term) && (this.begun.get(term[0] ?? "") ?? []).some((other) => other.startsWith(term));
  }

  /** The term that a word with letters wrong is nearest to, its first letter right, of names before texts; "" where it is near none.
   * @param {string} term
   * @param {number} [most] */
  near(term, most = term.length < LONG ? mistakes(term) : MOST_WRONG) {
    let best = { term: "", far: most + 1 };
    for (const other of most && !/\d/.test(term) ? this.begun.get(term[0] ?? "") ?? [] : []) {
      const far = distance(term, other, Math.floor(best.far)) + (this.named.has(other) ? 0 : IN_TEXTS_ONLY);
      best = far < best.far && far < most + 1 ? { term: other, far } : best;
    }
    return best.term;
  }

  /** A word that is two known ones written together.
   * @param {string} term
   * @returns {string[] | null} */
  inTwo(term) {
    for (let at = term.length - 3; at > 2; at -= 1) {
      const first = stem(term.slice(0, at));
      const second = [term.slice(at), `${term.slice(at)}e`].map((end) => stem(end)).find((end) => end && this.has(end)); // "glid" of gliding
      if (first && second && this.has(first)) {
        return [first, second];
      }
    }
    return null;
  }

  /** The term that two terms are one after another, where they are one; misspelt, too, where the first is no word: "strem line"; else "".
   * @param {string} first
   * @param {string} next */
  joined(first, next) {
    const written = [first + next, stem(first + next) ?? ""].find((term) => this.has(term));
    return written ?? (this.isKnown(first) || (first + next).length < LONG_PAIR ? "" : this.near(stem(first + next) ?? "", 2));
  }

  /** The word that was meant by two of which the first is none; "" where there is no such word.
   * @param {string} first
   * @param {string} next */
  inPair(first, next) {
    return first && next && !this.isKnown(first) ? this.words.get(this.joined(first, next)) ?? "" : "";
  }

  /** What a term that is not known is taken for: the one that is a letter off, two that are written together, else the nearest.
   * @param {string} term
   * @returns {{terms: string[], near: string}} `near` is the word that stands in its place, "" where it is none */
  taken(term) {
    const found = this.asked.get(term) ?? this.#taken(term);
    this.asked.set(term, found);
    return found;
  }

  /** @param {string} term */
  #taken(term) {
    const close = this.near(term, Math.min(1, mistakes(term)));
    const two = close ? null : this.inTwo(term);
    const near = two ? "" : close || this.near(term);
    return { terms: two ?? [near || term], near: this.words.get(near) ?? "" };
  }

  /** The terms that a term was meant for.
   * @param {string} term */
  meant(term) {
    const isKnown = this.has(term) || /^\d/.test(term) || term.length < 4;
    return isKnown || this.isBegun(term) ? [term] : this.taken(term).terms;
  }

  /** The word that is nearest to one that nothing answers; "" where none is near.
   * @param {string} text */
  nearest(text) {
    const best = { word: "", far: Infinity };
    for (const asked of wordsOf(text).filter((word) => !this.has(stem(word) ?? ""))) {
      const most = Math.max(2, Math.floor(0.4 * asked.length));
      for (const word of this.words.values()) {
        const far = distance(asked, word, most) + (word[0] === asked[0] ? 0 : 0.5);
        if (word.length > 2 && far <= most && far < best.far) {
          Object.assign(best, { word, far });
        }
      }
    }
    return best.word;
  }
}
