// What a question asks for beside its words: minutes, gear that is not there, a kind of page. Pure.

import { stems, wordsOf } from "../lib/words.js";

/** @typedef {{words: string, minutes: number | null, without: Set<string>, kinds: Set<string>}} Question */

/** Words that name a kind of page: what is of that kind stands higher, and the word itself counts little. */
const KIND_WORDS = Object.entries({
  drill: "drill exercise activity",
  set: "set series",
  practice: "practice session workout training lesson class evening night morning day",
  benchmark: "test benchmark trial",
  fault: "fix correct cure fault problem mistake error wrong stop help",
  block: "block cycle season plan",
  gear: "gear equipment kit",
  progression: "progression stage teach teaching learn introduce",
});
/** @type {Map<string, string>} */
export const KIND_OF = new Map(KIND_WORDS.flatMap(([kind, words]) => words.split(" ").flatMap((word) => stems(word).map((term) => [term, kind]))));

const HOURS = { "half an hour": "30 min", "half hour": "30 min", "quarter of an hour": "15 min", "an hour": "60 min", "one hour": "60 min", "1 hour": "60 min", "three quarters of an hour": "45 min" };
const MINUTES = /(\d+)\s*-?\s*(?:minutes?|mins?|['′])(?![\p{L}\p{N}])/u;
const WITHOUT = /(?:^|[^\p{L}])(?:no|without|w\/o|minus)\s+((?:[\p{L}-]+\s*){1,3})/u;

/**
 * @param {string} text
 * @param {[string, string][]} names each piece of gear with a name of it
 * @returns {Question}
 */
export function questionOf(text, names) {
  let words = Object.entries(HOURS).reduce((so, [long, short]) => so.replace(long, short), text.toLowerCase());
  const numbered = wordsOf(words).length ? words.replace(/[\p{L}]+(?=\s*-?\s*min)/u, (word) => stems(word)[0] ?? word) : words;
  const minutes = MINUTES.exec(numbered);
  words = minutes ? numbered.replace(minutes[0], " ") : words;
  /** @type {Set<string>} */
  const without = new Set();
  for (let found = WITHOUT.exec(words); found; found = WITHOUT.exec(words)) {
    const rest = stems(found[1] ?? "");
    const named = names.filter(([, name]) => starts(rest, stems(name)));
    const longest = Math.max(0, ...named.map(([, name]) => stems(name).length));
    const own = named.filter(([, name]) => stems(name).length === longest);
    own.forEach(([id]) => without.add(id));
    const gone = own.length ? wordsOf(found[1] ?? "").slice(0, longest).join(" ") : "";
    words = words.replace(found[0], ` ${wordsOf(found[1] ?? "").join(" ").replace(gone, "")} `);
  }
  const kinds = new Set(stems(words).flatMap((term) => KIND_OF.get(term) ?? []));
  return { words: words.trim(), minutes: minutes ? Number(minutes[1]) : null, without, kinds };
}

/** @type {(terms: string[], name: string[]) => boolean} */
const starts = (terms, name) => name.length > 0 && name.every((term, at) => terms[at] === term);
