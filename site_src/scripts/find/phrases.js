// How like a question is to what a page is called or asked for by, each name taken as a whole: "hips sink" is nearer to "Hips sink
// on the back" than to a page that has hips in one name and sink in another. Pure.

import { stem, stems, wordsOf } from "../lib/words.js";

/** @import {Entry} from "./list.js" */
/** @typedef {{entry: number, weight: number}} Phrase a name of an entry, and what its terms tell */

const SMALL_NUMBER = /^\d{1,2}$/; // tells little: lane 3, 8 years, 15 minutes late
const NUMBER_TELLS = 0.5;
const LACK_TELLS = 2; // and what is not there much
const SQUAD = /^\w+: /; // a practice's title begins with the squad's

const NOT = new Set("no not without never nor dont doesnt isnt arent cant wont didnt lack lacks lacking missing hardly barely".split(" "));

/** What a text says is not there or not done, each a term of its own: "no wall" is -wall, and "off the wall" is not.
 * @param {string} text
 * @returns {string[]} */
function lacks(text) {
  const words = wordsOf(text);
  return words.flatMap((word, at) => (NOT.has(word) ? words.slice(at + 1).flatMap((next) => (next.length > 2 ? stem(next) ?? [] : [])).slice(0, 1).map((term) => `-${term}`) : []));
}

/** Whether a text says that something is not there, or not done.
 * @param {string} text */
export const isLacking = (text) => lacks(text).length > 0;

const CANNOT = /(?:^|[^\p{L}])(?:can(?: ?not|['’]?t)|won['’]?t|will not|do(?:es)?(?:n['’]?t| not))\s+\p{L}/u;

/** Whether a text says what somebody does not do: what stands there is a verb, and no gear that is called so: "cannot float".
 * @param {string} text */
export const isOfNotDoing = (text) => CANNOT.test(text.toLowerCase());

export class Phrases {
  constructor() {
    this.documents = 0;
    /** @type {Map<string, number>} in the names of how many entries a term stands */
    this.spread = new Map();
    /** @type {Phrase[]} */
    this.names = [];
    /** @type {Map<string, number[]>} the names that hold a term, by number */
    this.holding = new Map();
  }

  /** Take in entries, a step each; known when all of them are.
   * @param {Entry[]} entries
   * @param {(entry: Entry) => string} asked what people type who look for an entry */
  *taking(entries, asked) {
    this.documents = entries.length;
    /** @type {string[][][]} */
    const own = [];
    for (const entry of entries) {
      const names = [entry.title.replace(SQUAD, ""), ...entry.also.split("; "), ...asked(entry).split("; ")].map((name) => [...new Set([...stems(name), ...lacks(name)])]);
      new Set(names.flat()).forEach((term) => this.spread.set(term, (this.spread.get(term) ?? 0) + 1));
      yield own.push(names.filter((terms) => terms.length));
    }
    for (const [entry, names] of own.entries()) {
      yield names.forEach((terms) => this.#hold(terms, this.names.push({ entry, weight: this.#whole(terms) }) - 1));
    }
  }

  /** @type {(terms: string[], name: number) => void} */
  #hold(terms, name) {
    for (const term of terms) {
      const holding = this.holding.get(term) ?? [];
      holding.push(name);
      this.holding.set(term, holding);
    }
  }

  /** What a term tells: the rarer, the more. The most by one that no name has.
   * @param {string} term */
  weight(term) {
    return (SMALL_NUMBER.test(term) ? NUMBER_TELLS : term.startsWith("-") ? LACK_TELLS : 1) * Math.log(1 + this.documents / (this.spread.get(term) ?? 0.5));
  }

  /** @param {string[]} terms */
  #whole(terms) {
    return terms.reduce((sum, term) => sum + this.weight(term), 0);
  }

  /** Of what a text says is not there what some name says, too.
   * @param {string} text */
  missing(text) {
    return lacks(text).filter((term) => this.spread.has(term));
  }

  /** By entry the likeness of terms to the name that is most like them, 0 to 1: twice what they share of what both have (Dice 1945), each
   * term by what it tells.
   * @param {string[]} terms each once
   * @returns {Map<number, number>} */
  likenesses(terms) {
    const whole = this.#whole(terms);
    /** @type {Map<number, number>} by name */
    const shared = new Map();
    for (const term of terms) {
      const weight = this.weight(term);
      this.holding.get(term)?.forEach((name) => shared.set(name, (shared.get(name) ?? 0) + weight));
    }
    /** @type {Map<number, number>} */
    const best = new Map();
    for (const [number, own] of shared) {
      const { entry, weight } = /** @type {Phrase} */ (this.names[number]);
      best.set(entry, Math.max(best.get(entry) ?? 0, 2 * own / (whole + weight)));
    }
    return best;
  }
}
