// What a question asks to leave out: gear that is not there, and strokes, kicks or ways to lie that are not wanted: "no fins", "not on the back". Pure.

import { stem, stems, wordsOf } from "../lib/words.js";

/**
 * @typedef {object} Unlike what is not wanted
 * @property {"stroke" | "position" | "goal" | "effort" | "kick" | "start"} facet
 * @property {string} id
 * @property {string} title
 * @property {string[]} name its terms, by which it was named
 *
 * @typedef {{unlike: Unlike | null, gear: string, terms: string[], isOn: boolean, least: number}} Name what may be left out; `isOn`: it is one only after "on" or at the end,
 *   `least` how surely it has to be left out: "no kick" is a fault, and so is "not fast"
 */

/** @type {[facet: Unlike["facet"], ids: string[] | null][]} which words of the page's choices may be named, beside efforts that count as fast; null for all */
const NAMED = [["stroke", null], ["position", ["supine", "prone", "side", "on-land"]], ["goal", ["underwater"]]];
/** @type {[facet: Unlike["facet"], title: string][]} and which lists of other words */
const LISTED = [["kick", "Kick"], ["kick", "Dolphin"], ["kick", "Flutter"], ["start", "Start"]];
const HARDEST = "Sprint"; // a list whose names mean the hardest effort, too
const IS_ONE = new Set(["back", "front", "side", "land"]); // "no back" is no way to lie, "not on the back" is one
const ANY = "any";

const PLAIN = ["no", "without", "w/o", "minus", "sans"];
const FIRM = [
  "nothing", "except for", "except", "other than", "apart from", "anything but", "everything but", "leave out", "leaving out", "rather than", "instead of",
  "don't want", "dont want", "do not want", "don't use", "dont use", "do not use", "not using", "but not", "but no",
];
const FIRM_ALONE = ["avoid", "avoiding", "skip", "skipping"]; // "avoid kicking from the knees" asks for a mend
const NEGATED = ["not", "never"];
const TELLS = new Set("is are was were be does do did can could will would should has have had am still he she they it".split(" ")); // "he is not on his back" tells what is seen
const SMALL = new Set("any a an the on in with using use of for doing do our my your their his her more need needing having to or at all work".split(" "));
const NEXT = new Set(["or", "and", "nor", "&"]);
const OF_PLACE = new Set("flag flags ledge grips block blocks pain".split(" ")); // "no backstroke flags" are flags

const IDLE_END = new Set("today tonight please now".split(" "));

const BEGINNINGS = [...PLAIN, ...FIRM, ...FIRM_ALONE, ...NEGATED].map((words) => words.split(" ")).sort((one, two) => two.length - one.length);

/** How surely a word has to be left out.
 * @type {(facet: Unlike["facet"], id: string) => number} */
const leastOf = (facet, id) => (facet === "effort" ? 1 : id === "kick" ? 2 : 0);

/** @type {(terms: string[]) => boolean} */
const isWay = (terms) => terms.length === 1 && IS_ONE.has(terms[0] ?? "");

/** The terms of a name, also as one word; none of a name that idle words are part of, but "on the back": "out of the water" is not "water".
 * @type {(name: string) => string[][]} */
function termsOf(name) {
  const terms = stems(name);
  const isWhole = terms.length > 0 && (terms.length === wordsOf(name).length || isWay(terms));
  return !isWhole ? [] : terms.length > 1 ? [terms, [stem(terms.join("")) ?? ""]] : [terms];
}

/** All that may be left out by name.
 * @param {import("./list.js").Data} data
 * @param {[string, string][]} gear each piece with a name of it
 * @returns {Name[]} the longest first */
export function namesToLeaveOut(data, gear) {
  /** @type {(title: string) => string[]} */
  const called = (title) => [...new Set([title, ...data.synonyms.filter(([first]) => first === title).flat()])];
  /** @type {typeof NAMED} */
  const named = [...NAMED, ["effort", data.fast]];
  const words = named.flatMap(([facet, ids]) => data.words[/** @type {"stroke"} */ (facet)].filter(([id]) => id !== ANY && (ids?.includes(id) ?? true)).map(([id, title]) => ({ facet, id, title })));
  const listed = LISTED.map(([facet, title]) => ({ facet, id: title.toLowerCase(), title }));
  const unlike = [...words, ...listed].flatMap((own) => [own.title, own.facet === "effort" && own.id === data.fast.at(-1) ? HARDEST : own.title].flatMap(called).flatMap(termsOf)
    .map((terms) => ({ unlike: { ...own, name: terms }, gear: "", terms, isOn: isWay(terms), least: leastOf(own.facet, own.id) })));
  const pieces = gear.map(([id, name]) => ({ unlike: null, gear: id, terms: stems(name), isOn: false, least: 0 })).filter(({ terms }) => terms.length);
  const all = new Map([...pieces, ...unlike].map((name) => [[name.gear, name.unlike?.facet, name.unlike?.id, ...name.terms].join(" "), name]));
  return [...all.values()].sort((one, two) => two.terms.length - one.terms.length);
}

/** @param {string} token */
const bare = (token) => token.replace(/^[("“]+|[)"”,.;!?]+$/gu, "").replace(/’/gu, "'");

/** How many words say at a place that something is left out; 0 where none do, or where both are asked for: "with or without fins".
 * @type {(tokens: string[], at: number) => number} */
function beginning(tokens, at) {
  const own = BEGINNINGS.find((words) => words.every((word, next) => bare(tokens[at + next] ?? "") === word));
  const before = bare(tokens[at - 1] ?? "");
  return !own || before === "or" || (own.length === 1 && NEGATED.includes(own[0] ?? "") && (TELLS.has(before) || before.endsWith("'s"))) ? 0 : own.length;
}

/** How surely words leave something out: 2 "anything but", 1 "no", 0 "not".
 * @param {string[]} tokens */
const surely = (tokens) => ([...FIRM, ...FIRM_ALONE].includes(tokens.map(bare).join(" ")) ? 2 : PLAIN.includes(bare(tokens[0] ?? "")) ? 1 : 0);

/** Whether nothing more is said of what is named before a place.
 * @type {(tokens: string[], to: number) => boolean} */
const isAtAnEnd = (tokens, to) => /[,.;!?]$/.test(tokens[to - 1] ?? "") || tokens.slice(to).every((token) => IDLE_END.has(bare(token)));

/** The first word from a place on that is none of the small ones.
 * @type {(tokens: string[], from: number) => number} */
function behindSmall(tokens, from) {
  const behind = tokens.slice(from).findIndex((token) => !SMALL.has(bare(token)));
  return behind < 0 ? tokens.length : from + behind;
}

/** What is named at a place, behind small words, and where the words behind it begin; null where nothing is.
 * @type {(tokens: string[], from: number, names: Name[]) => {names: Name[], to: number} | null} */
function namedAt(tokens, from, names) {
  const at = behindSmall(tokens, from);
  const isOn = at === tokens.length - 1 || tokens.slice(from, at).some((token) => bare(token) === "on");
  for (let to = Math.min(tokens.length, at + 4); to > at; to -= 1) {
    const terms = stems(tokens.slice(at, to).join(" ")).join(" ");
    const found = OF_PLACE.has(bare(tokens[to] ?? "")) ? [] : names.filter((name) => name.terms.join(" ") === terms && (isOn || !name.isOn));
    if (found.length && stems(tokens[to - 1] ?? "").length) {
      return { names: found.some(({ gear }) => gear) ? found.filter(({ gear }) => gear) : found, to };
    }
  }
  return null;
}

/** All that is named in a row, with "or" or "and" between, and where the words behind it begin; none where nothing is.
 * @type {(tokens: string[], from: number, names: Name[]) => {names: Name[], to: number}} */
function namedFrom(tokens, from, names) {
  /** @type {Name[]} */
  const all = [];
  let to = from;
  for (let found = namedAt(tokens, from, names); found;) {
    all.push(...found.names);
    to = found.to;
    const isLinked = NEXT.has(bare(tokens[to] ?? ""));
    const isMore = isLinked || tokens[to - 1]?.endsWith(",");
    found = isMore ? namedAt(tokens, to + (isLinked ? 1 : 0), names) : null;
  }
  return { names: all, to };
}

/**
 * What a text asks to leave out, and the text without it.
 * @param {string} text
 * @param {Name[]} names
 * @returns {{without: Set<string>, unlike: Unlike[], rest: string}}
 */
export function leftOut(text, names) {
  const tokens = text.split(/\s+/).filter(Boolean);
  /** @type {Name[]} */
  const out = [];
  /** @type {string[]} */
  const rest = [];
  for (let at = 0; at < tokens.length;) {
    const length = beginning(tokens, at);
    const sure = surely(tokens.slice(at, at + length));
    const found = length ? namedFrom(tokens, at + length, names.filter(({ least }) => least <= sure)) : null;
    const isMeant = found && (!FIRM_ALONE.includes(bare(tokens[at] ?? "")) || isAtAnEnd(tokens, found.to));
    if (isMeant && found.names.length) {
      out.push(...found.names);
      at = found.to;
    } else {
      rest.push(...(PLAIN.includes(bare(tokens[at] ?? "")) ? [] : tokens.slice(at, at + 1)));
      at += 1;
    }
  }
  return { without: new Set(out.flatMap(({ gear }) => gear || [])), unlike: out.flatMap((own) => own.unlike ?? []), rest: rest.join(" ") };
}

/** Whether an entry is what is not wanted: it carries the word, or is called so.
 * @param {Unlike[]} unlike
 * @returns {(entry: import("./list.js").Entry) => boolean} */
export const isUnwanted = (unlike) => (entry) => unlike.some(({ facet, id, title, name }) => {
  if (facet === "kick" || facet === "start") {
    const called = new Set(stems(`${entry.title} ${entry.also}`));
    return entry.tags.split("; ").includes(title) || name.every((term) => called.has(term));
  }
  const own = entry.has[facet];
  return facet === "effort" && entry.kind === "drill" ? own[0] === id : own.includes(id); // a drill may be done as easily as it begins
});
