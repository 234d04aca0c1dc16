// How like a question is to what a page is called or asked for by, each name taken as a whole: "hips sink" is nearer to "Hips sink
// on the back" than to a page that has hips in one name and sink in another. Pure.

import { stems } from "../lib/words.js";

/** @import {Entry} from "./list.js" */
/** @typedef {{terms: string[], weight: number}} Phrase */

const SQUAD = /^\w+: /; // a practice's title begins with the squad's

export class Phrases {
  /**
   * @param {Entry[]} entries
   * @param {(entry: Entry) => string} asked what people type who look for an entry
   */
  constructor(entries, asked) {
    const own = entries.map((entry) => [entry.title.replace(SQUAD, ""), ...entry.also.split("; "), ...asked(entry).split("; ")].map((name) => [...new Set(stems(name))]));
    /** @type {Map<string, number>} in the names of how many entries a term stands */
    const spread = new Map();
    own.forEach((names) => new Set(names.flat()).forEach((term) => spread.set(term, (spread.get(term) ?? 0) + 1)));
    /** What a term tells: the rarer, the more. The last for a term that no name has.
     * @type {(term: string) => number} */
    this.weight = (term) => Math.log(1 + entries.length / (spread.get(term) ?? 0.5));
    /** @type {Phrase[][]} by entry */
    this.own = own.map((names) => names.filter((terms) => terms.length).map((terms) => ({ terms, weight: this.#whole(terms) })));
  }

  /** @param {string[]} terms */
  #whole(terms) {
    return terms.reduce((sum, term) => sum + this.weight(term), 0);
  }

  /** The likeness of terms to the name of an entry that is most like them, 0 to 1: twice what they share of what both have (Dice 1945),
   * each term by what it tells.
   * @param {string[]} terms each once
   * @param {number} number */
  likeness(terms, number) {
    const whole = this.#whole(terms);
    const shares = (this.own[number] ?? []).map((name) => 2 * this.#whole(terms.filter((term) => name.terms.includes(term))) / (whole + name.weight));
    return Math.max(0, ...shares);
  }
}
