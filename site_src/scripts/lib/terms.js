// The terms that an index knows, and which of them was meant by a word that it does not know: begun, misspelt, or two in one. Pure.

import { PLAIN } from "./plain-words.js";
import { distance, mistakes, stem, wordsOf } from "./words.js";

const LONG = 9; // letters from which three may be wrong
const MOST_WRONG = 3;
const LONG_PAIR = 7; // letters from which two words may be one that is misspelt
const IN_TEXTS_ONLY = 0.5; // what a term that no name has is farther off
const OF_ITS_LENGTH = 0.05; // the same of one with another letter in the place of one: left out or doubled is likelier, "snaped" is snap and not shape
const LEAST_IN_RUN = 3; // letters of a word that is written together with others
const LEAST_IN_WRONG = 4; // the same where one of two is misspelt
const LOST = ["", "e", "er", "ing", "ion"]; // what its last word has lost as an ending
// Keys beside each letter on the usual keyboards: a wet thumb's first letter is one of these.
const BESIDE = Object.fromEntries("qwas wqes ewrds retdf trygf ytuhg uyijh iuokj oipkl pol aqswz sawedxz dserfcx fdrtgvc gftyhbv hgyujnb jhuikmn kjiolm lkop zasx xzsdc cxdfv vcfgb bvghn nbhjm mnjk".split(" ").map((keys) => [keys[0] ?? "", [...keys.slice(1)]]));

/** Whether a word is the beginning of another; of a number, never: 10 is not the beginning of 100.
 * @param {string} term */
export const begins = (term) => term.length > 2 && !/^\d/.test(term);

/** Each term with the words that it was made of. */
export class Terms {
  constructor() {
    /** @type {Map<string, Set<string>>} */
    this.words = new Map();
    /** @type {Set<string>} those that stand in a name */
    this.named = new Set();
    /** @type {Map<string, number>} and how often they do: of two that are as near the usual one is meant */
    this.often = new Map();
    /** @type {Map<string, string[]>} by their first letter: far fewer to look through at each key */
    this.begun = new Map();
    /** @type {Map<string, {terms: string[], near: string, isRun: boolean}>} what terms that are not known were taken for: asked for several times a key */
    this.asked = new Map();
  }

  /** Take in a word.
   * @param {string} word
   * @param {boolean} [isName] */
  take(word, isName = false) {
    const term = stem(word);
    const known = term && this.words.get(term);
    if (term) {
      this.words.set(term, (known || new Set()).add(word));
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
      this.often.set(term, (this.often.get(term) ?? 0) + 1);
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

  /** The term that a word with letters wrong is nearest to, of names before texts; "" where it is near none. Its first letter is right,
   * else, where that leads nowhere, beside the right one or swapped with the second.
   * @param {string} term
   * @param {number} [most] */
  near(term, most = term.length < LONG ? mistakes(term) : MOST_WRONG) {
    if (!most || /\d/.test(term)) {
      return "";
    }
    const [first = "", second = ""] = term;
    const others = term.length > 3 ? new Set([...(BESIDE[first] ?? []), second]) : [];
    return this.#nearest(term, most, [first]) || this.#nearest(term, 1, others);
  }

  /** How many letters a misspelt word is from a term, or from the nearest word that it was made of: "vertcal" has kept an ending that its term has not.
   * @type {(term: string, other: string, most: number) => number} */
  #apart(term, other, most) {
    return [...(this.words.get(other) ?? [])].reduce((least, form) => Math.min(least, distance(term, form, most)), distance(term, other, most));
  }

  /** @type {(term: string, most: number, firsts: Iterable<string>) => string} */
  #nearest(term, most, firsts) {
    let best = { term: "", far: most + 1, often: 0 };
    for (const other of [...firsts].flatMap((first) => this.begun.get(first) ?? [])) {
      const letters = this.#apart(term, other, Math.floor(best.far));
      const far = letters + (this.named.has(other) ? 0 : IN_TEXTS_ONLY) + (term.length === other.length ? OF_ITS_LENGTH : 0);
      const often = this.often.get(other) ?? 0;
      best = letters <= most && (far < best.far || (far === best.far && often > best.often)) ? { term: other, far, often } : best;
    }
    return best.term;
  }

  /** A word that is known ones written together, as few as may be: "kickonback".
   * @param {string} term
   * @returns {string[] | null} the terms; idle words among them are none */
  inParts(term) {
    /** @type {(string[] | null)[]} the parts of each beginning; null where it is no run of words */
    const runs = [[]];
    for (let to = 1; to <= term.length; to += 1) {
      const ways = runs.flatMap((before, at) => {
        const part = before && to - at < term.length ? this.#part(term.slice(at, to), to === term.length) : undefined;
        return before && part !== undefined ? [[...before, part]] : [];
      });
      runs.push(ways.sort((one, other) => one.length - other.length)[0] ?? null);
    }
    const parts = runs[term.length] ?? [];
    const terms = parts.filter(Boolean);
    const isNamed = terms.some((own) => this.named.has(own)) && terms.every((own) => own.length > LEAST_IN_RUN || this.named.has(own));
    return parts.length > 1 && isNamed ? terms : null;
  }

  /** A word that is two written together, one of them a name and the other with letters wrong: "bakckick".
   * @param {string} term
   * @returns {string[] | null} */
  inWrongParts(term) {
    for (let at = term.length - LEAST_IN_WRONG; at >= LEAST_IN_WRONG; at -= 1) {
      const [first, last] = [stem(term.slice(0, at)) ?? "", stem(term.slice(at)) ?? ""];
      const [before, after] = [this.named.has(first) ? first : "", this.named.has(last) ? last : ""];
      const pair = [before || this.near(first, 1), after || this.near(last, 1)];
      if ((before || after) && pair.every(Boolean)) {
        return pair;
      }
    }
    return null;
  }

  /** A part of a run of words as its term, "" for an idle word; undefined where it is none. The last has lost its ending.
   * @param {string} part
   * @param {boolean} isLast */
  #part(part, isLast) {
    const own = stem(part);
    if (own === null && part.length > 1) {
      return "";
    }
    const whole = (isLast ? LOST : [""]).map((ending) => `${part}${ending}`).filter((word) => word.length >= LEAST_IN_RUN);
    return whole.map((word) => stem(word)).find((one) => one && this.has(one)) || undefined;
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
    return first && next && !this.isKnown(first) ? this.#nearestForm(this.joined(first, next), first + next) : "";
  }

  /** What a term that is not known is taken for: the one that is a letter off, two that are written together, else the nearest.
   * @param {string} term
   * @returns {{terms: string[], near: string, isRun: boolean}} `near` is the word that stands in its place, "" where it is none; `isRun`
   *   that it was only written together */
  taken(term) {
    const found = this.asked.get(term) ?? (PLAIN.has(term) ? { terms: [term], near: "", isRun: false } : this.#taken(term));
    this.asked.set(term, found);
    return found;
  }

  /** @param {string} term */
  #taken(term) {
    const once = term.replace(/(.)\1+/gu, "$1"); // a key that was hit twice
    const close = once.length > 2 && this.has(once) ? once : this.near(term, Math.min(1, mistakes(term)));
    const nearest = close || (this.inParts(term) ? "" : this.near(term));
    const parts = close ? null : this.inParts(term) ?? (nearest ? null : this.inWrongParts(term));
    const near = parts ? [] : [nearest].filter(Boolean);
    const terms = parts ?? (near.length ? near : [term]);
    return { terms, near: [...(parts ?? near)].map((own) => this.#nearestForm(own, own)).join(" "), isRun: parts !== null };
  }

  /** The words of a term's that a word was taken for: snapped, and not snap, for snaped.
   * @type {(taken: {terms: string[], near: string, isRun: boolean}, word: string) => string} */
  shown({ terms, near, isRun }, word) {
    return near && !isRun && terms.length === 1 ? this.#nearestForm(terms[0] ?? "", word) : near;
  }

  /** Of the words that a term was made of the one that is most like another; "" where it was made of none.
   * @type {(term: string, word: string) => string} */
  #nearestForm(term, word) {
    const far = (/** @type {string} */ form) => distance(form, word, word.length) + form.length / 100;
    return [...(this.words.get(term) ?? [])].sort((one, other) => far(one) - far(other))[0] ?? "";
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
    for (const asked of wordsOf(text).filter((word) => !this.has(stem(word) ?? "") && !PLAIN.has(stem(word) ?? ""))) {
      const most = Math.max(2, Math.floor(0.4 * asked.length));
      for (const word of [...this.words.values()].flatMap((forms) => [...forms])) {
        const far = distance(asked, word, most) + (word[0] === asked[0] ? 0 : 0.5);
        if (word.length > 2 && far <= most && far < best.far) {
          Object.assign(best, { word, far });
        }
      }
    }
    return best.word;
  }
}
