// Which pages answer a question, the best first. Pure: no page, no storage.

import { stems } from "../lib/words.js";
import { KIND_OF } from "./question.js";

/** @import {WordIndex} from "../lib/search.js" */
/** @import {Phrases} from "./phrases.js" */
/** @import {Entry} from "./list.js" */
/** @import {Question} from "./question.js" */
/** @typedef {Map<number, number>} Scores how well entries answer, by number */
/** @typedef {{words: WordIndex, phrases: Phrases}} Known what entries are found by */

export const WEIGHTS = { title: 8, also: 7, asked: 7, tags: 3, summary: 3, text: 0.35 };
const OF_KIND = { fault: 1.25, page: 0.85, practice: 0.85, block: 0.9 };
const ASKED_KIND = 2.5;
const KIND_COUNTS = 0.15; // a word that names a kind, beside one that says what
const GENERAL = new Set(stems("up down position technique form swimming water pool work way better improve body problem swimmers lane race time"));
const GENERAL_COUNTS = 0.5; // words that fit nearly everything here
const WHOLE_NAME = 3;
const ALL_IN_NAME = 1.4;
const LIKE_A_NAME = 3;

/** Each piece of gear with every name that it has; "none" with the names of gear as such.
 * @param {import("./list.js").Data} data
 * @returns {[string, string][]} */
export function namesOfGear(data) {
  /** @type {[string, string][]} */
  const named = data.words.gear.flatMap(([id, title]) => {
    const others = data.synonyms.filter(([first]) => first === title).flat();
    return [title, ...others].map((name) => /** @type {[string, string]} */ ([id, name]));
  });
  return [...named, ["none", "gear"], ["none", "kit"], ["none", "equipment"]];
}

/** What an entry is found by.
 * @param {Entry} entry
 * @param {string} [asked] what people type who look for it
 * @param {string} [text] */
export const fieldsOf = (entry, asked = "", text = "") => ({
  id: entry.number, title: entry.title, also: entry.also, asked, summary: entry.summary, text,
  tags: [entry.tags, ...entry.distance].join("; ").replace(/(\d),(\d)/g, "$1$2"),
});

/**
 * Scores of what answers a question; null where it holds no words.
 * @param {Known} known
 * @param {Entry[]} entries
 * @param {Question} question
 * @returns {Scores | null}
 */
export function answers({ words, phrases }, entries, question) {
  const terms = stems(question.words);
  const tells = terms.some((term) => !KIND_OF.has(term));
  const hits = words.search(question.words, (term) => (tells && KIND_OF.has(term) ? KIND_COUNTS : GENERAL.has(term) ? GENERAL_COUNTS : 1));
  if (!hits) {
    return null;
  }
  const sought = terms.filter((term) => !tells || !KIND_OF.has(term)).join(" ");
  const meant = [...new Set(terms.flatMap((term) => words.terms.meant(term)))];
  /** @param {number} id */
  const alike = (id) => 1 + LIKE_A_NAME * phrases.likeness(meant, id) ** 2;
  const scored = hits.map(({ id, score }) => /** @type {const} */ ([id, score * favour(entries[id], question, sought) * alike(id)]));
  return new Map(scored.sort(([, one], [, two]) => two - one));
}

/** @type {WeakMap<Entry, string[][]>} */
const NAMES = new WeakMap();

/** The words of an entry's title and other names.
 * @param {Entry} entry */
function namesOf(entry) {
  const names = NAMES.get(entry) ?? [entry.title, ...entry.also.split("; ")].map((name) => stems(name));
  NAMES.set(entry, names);
  return names;
}

/**
 * How much more, or less, an entry is likely to be meant.
 * @param {Entry | undefined} entry
 * @param {Question} question
 * @param {string} sought
 */
function favour(entry, { kinds, minutes }, sought) {
  if (!entry) {
    return 0;
  }
  const names = namesOf(entry);
  const isWhole = names.some((name) => name.join(" ") === sought);
  const isWithin = names.some((name) => sought.split(" ").every((term) => name.includes(term)));
  const usual = OF_KIND[/** @type {keyof typeof OF_KIND} */ (entry.kind)] ?? 1;
  const ofKind = kinds.size ? (kinds.has(entry.kind) ? ASKED_KIND : 1) : usual;
  const timed = minutes && (entry.kind === "set" || entry.kind === "practice") ? ASKED_KIND : 1;
  return timed * ofKind * (isWhole ? WHOLE_NAME : isWithin ? ALL_IN_NAME : 1);
}
