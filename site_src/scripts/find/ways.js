// Which strokes a question names and which way to lie, and how far an entry agrees with it. Pure.

import { stems } from "../lib/words.js";

/** @import {Data, Entry} from "./list.js" */
/** @typedef {{other: number, titles: string[], any: string, names: [string, string[]][]}} Facet its titles, that of anything, and the terms of each name */

const OTHER = { stroke: 0.6, position: 0.4, level: 0.6 }; // of what is of another stroke than the question names, lies otherwise, or is for others
const OTHER_END = 0.3; // of what closes a practice, where it is asked what opens one
const ENDS = [["warm-up", "Warm-up"], ["recovery", "Cool-down"]]; // goals, each with the list of its other words
const ANY = "any";

/** Whether terms stand one after another among others.
 * @type {(terms: string[], name: string[]) => boolean} */
const holds = (terms, name) => name.length > 0 && terms.some((_, at) => name.every((term, next) => terms[at + next] === term));

export class Ways {
  /** @param {Data} data */
  constructor(data) {
    /** @type {(list: string) => string[]} a title of a list with the other words of it */
    const others = (list) => [list, ...data.synonyms.filter(([first]) => first === list).flat()];
    /** @type {Facet[]} */
    const ways = /** @type {const} */ (["stroke", "position", "level"]).map((name) => {
      const words = data.words[name];
      const titles = words.filter(([id]) => id !== ANY).map(([, title]) => title);
      return {
        other: OTHER[name], titles, any: words.find(([id]) => id === ANY)?.[1] ?? "",
        names: titles.flatMap((title) => others(title).map((own) => /** @type {[string, string[]]} */ ([title, stems(own)]))),
      };
    });
    const ends = ENDS.map(([id = "", list = ""]) => ({ list, title: data.words.goal.find(([goal]) => goal === id)?.[1] ?? list }));
    this.facets = [...ways, {
      other: OTHER_END, titles: ends.map(({ title }) => title), any: "",
      names: ends.flatMap(({ list, title }) => others(list).map((own) => /** @type {[string, string[]]} */ ([title, stems(own)]))),
    }];
    /** @type {WeakMap<Entry, Set<string>>} titles of the words that an entry carries */
    this.carried = new WeakMap();
  }

  /** @param {Entry} entry */
  #carriedBy(entry) {
    const carried = this.carried.get(entry) ?? new Set(entry.tags.split("; "));
    this.carried.set(entry, carried);
    return carried;
  }

  /** Whether terms name a stroke, and no more.
   * @param {string} terms */
  isStroke(terms) {
    return Boolean(this.facets[0]?.names.some(([, name]) => name.join(" ") === terms));
  }

  /** How much less an entry counts that is of other strokes, or lies otherwise, than a question names; one that tells of none agrees.
   * @param {string} text
   * @returns {(entry: Entry | undefined) => number} */
  agreement(text) {
    const terms = stems(text);
    const named = this.facets.map((facet) => ({ ...facet, asked: new Set(facet.names.filter(([, name]) => holds(terms, name)).map(([title]) => title)) }));
    const told = named.filter(({ asked }) => asked.size);
    return (entry) => {
      const carried = entry ? this.#carriedBy(entry) : new Set();
      const against = told.filter(({ titles, any, asked }) => !carried.has(any) && titles.some((title) => carried.has(title)) && ![...asked].some((title) => carried.has(title)));
      return against.reduce((less, { other }) => less * other, 1);
    };
  }
}
