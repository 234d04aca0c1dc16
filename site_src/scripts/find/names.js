// How an entry is called, and how much more it is meant where a question is one of its names. Pure.

import { stems } from "../lib/words.js";
import { isOfAnEnd } from "./question.js";

/** @import {Entry} from "./list.js" */

const OF_A_COMPOUND = 0.45; // catch, of what is called so as a part of catch-up alone
const WHOLE_NAME = 3;
const WHOLE_TITLE = 4.5;
const ALL_IN_NAME = 1.4;
const FIRST_PART = /[\p{L}\p{N}]+-(?=\p{L})/gu;

/** Whether terms are an entry's whole title.
 * @type {(entry: Entry, terms: string[]) => boolean} */
export const isTitle = (entry, terms) => namesOf(entry)[0]?.whole === terms.join(" ");

/** @type {WeakMap<Entry, {whole: string, words: Set<string>, own: Set<string>}[]>} */
const NAMES = new WeakMap();

/** An entry's title and other names, each whole and by its words; its own are those that do not begin another, as catch does catch-up.
 * @param {Entry} entry */
function namesOf(entry) {
  const names = NAMES.get(entry) ?? [entry.title, ...entry.also.split("; ")].map((name) => ({ whole: stems(name).join(" "), words: new Set(stems(name)), own: new Set(stems(name.replace(FIRST_PART, " "))) }));
  NAMES.set(entry, names);
  return names;
}

/** Whether a word that is asked for alone only begins others in the names that have it.
 * @type {(names: {words: Set<string>, own: Set<string>}[], asked: string[]) => boolean} */
const isOfCompound = (names, [term = "", ...others]) => {
  const having = others.length || isOfAnEnd(`${term} up`) ? [] : names.filter(({ words }) => words.has(term));
  return having.length > 0 && having.every(({ own }) => !own.has(term));
};

/** How much more what is asked for is meant by its names: called so, in one of them, or only as a part of a compound.
 * @type {(entry: Entry, sought: string) => number} */
export function asNamed(entry, sought) {
  const names = namesOf(entry);
  const asked = sought.split(" ");
  const at = names.findIndex(({ whole }) => whole === sought);
  if (at >= 0) {
    return at ? WHOLE_NAME : WHOLE_TITLE;
  }
  return isOfCompound(names, asked) ? OF_A_COMPOUND : names.some(({ words }) => asked.every((term) => words.has(term))) ? ALL_IN_NAME : 1;
}
