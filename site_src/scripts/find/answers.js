// Which pages answer a question, the best first. Pure: no page, no storage.

import { stems } from "../lib/words.js";
import { asNamed } from "./names.js";
import { isLacking, isOfNotDoing } from "./phrases.js";
import { KIND_OF, WHOLES } from "./question.js";

/** @import {WordIndex} from "../lib/search.js" */
/** @import {Phrases} from "./phrases.js" */
/** @import {Entry} from "./list.js" */
/** @import {Question} from "./question.js" */
/** @typedef {Map<number, number>} Scores how well entries answer, by number */
/** @typedef {{scores: Scores, sure: Set<number>}} Answers of all that answers, what answers most of the question */
/** @import {Ways} from "./ways.js" */
/** @import {Sentences} from "./sentences.js" */
/** @typedef {{words: WordIndex, phrases: Phrases, sentences: Sentences, ways: Ways}} Known what entries are found by */

// These and the other weights were fitted to lists of several writers, each asked with what is like its questions left out, and held to others.
export const WEIGHTS = { title: 11, also: 7, asked: 5, tags: 3, summary: 4, text: 0.35 };
const OF_KIND = { fault: 1.25, page: 1.1, formula: 0.4, practice: 0.6, block: 0.9, source: 0.4 };
const SURE = 0.35; // the share of a question, by what its words tell, that a sure answer has
const FOR_EDITORS = 0.8; // the same that a page for editors has; what has less comes last
const LAST = 0.02;
const ASKED_KIND = 3.2;
const OTHERS = new Map(Object.entries({ drill: ["set", "practice", "benchmark", "block"], set: ["drill", "practice", "block"], practice: ["drill", "set"], benchmark: ["drill"] })); // what is not meant first by who names a kind
const OF_OTHER_KIND = 0.4;
const NO_DRILL_OF_IT = 0.2; // a stroke swum whole, and its walls, where drills of the stroke are asked for
const USES = 10; // what uses the gear that is told with minutes, lanes or reps
const MAY_USE = 3;
const AS_FAR = 5; // what is about as far as it is asked to be
const ABOUT = 0.15; // the logarithm of how much more or less that is
const TIMED = 6; // what fills minutes, where minutes are asked for
const OFTEN = 0.25; // the share of the drills that use a piece of gear that lie one way, from which on it is a usual one
const OF_ONE_POSITION = 0.85; // what each that lies as one above counts less
const DRILL = "drill";
const KIND_COUNTS = 0.3; // a word that names a kind, beside one that says what
const GENERAL = new Set(stems( // words that fit nearly everything here, and those of whom it is for
  "up down position technique form swimming water pool work way better improve body problem swimmers lane race time safe sheet list" +
  " kids children child boy girl youngsters teenagers juniors minis beginners old year new always never still too much more whole put" +
  " forgot lost missing broken tonight today session left lad lass daughter son mum dad parent guy lot lots bit people anyone today idea ideas tips good nice right explain tell show describe know think find found see talk other another whole nothing" +
  " far through many sort kind type types" +
  " same different best important proper properly correct correctly normal thing things difference between common typical usual mostly mainly especially particularly plenty enough own myself yourself ourselves moment child's team friend brother sister husband wife woman girl boy man" +
  " prepare preparation preparing option options suggestion suggestions example examples advice tip tips trick tricks info information guideline guidelines month months often",
));
const GENERAL_COUNTS = 0.55;
const SQUAD_COUNTS = 0.3; // the name of a squad beside what is asked for: what is written for it counts
const FOR_SQUAD = 3;
const FOR_OTHERS = 0.4;
const SMALL_NUMBER = /^\d{1,2}$/;
const NUMBER_COUNTS = 0.6;
const NEED = "need";
const FAULT = "fault";
const LACKING = 1.25; // a fault, where it is told what somebody does not do
const GEAR_NOT_DONE = 0.3; // gear, there: what is not done is called as a verb is
const A_PART = new Set(stems("hip chin elbow head knee foot ankle toe leg hand finger thumb wrist"));
const OF_A_PART = 2; // a fault, where a part of the body is all that is told
const COMMON = 0.12; // the share of entries in whose names a word stands that says nothing of what is wrong: kick
const OF_NOTHING_WRONG = 0.3; // a fault, where such a word is all that is told
const NAMED = 0.7; // how like a name of a need is that "a boy with" asks for, where none is more like it: bent knees are a fault
const LIKE_A_NAME = 8;
const LIKELY = 1.6; // the power of the likeness
const AS_A_NAME = 15; // the same for what is said nearly as a name
const SURELY = 6;

/** Whether a term names a set or a practice.
 * @param {string} term */
const isWhole = (term) => WHOLES.has(KIND_OF.get(term) ?? "");

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

/** What terms say beside kinds, the terms of squads that are named beside it, and how much an answer to each term counts.
 * @type {(terms: string[], named: Set<string>) => {squads: Set<string>, weight: (term: string) => number, sought: string}} */
function weighing(terms, named) {
  const says = terms.some((term) => !KIND_OF.has(term) && !GENERAL.has(term));
  const isOfWhole = !says && terms.some(isWhole) && terms.some((term) => KIND_OF.has(term) && !isWhole(term)); // a test day
  const saysWhat = says || isOfWhole;
  /** @type {(term: string) => boolean} */
  const isKind = (term) => saysWhat && (isOfWhole ? isWhole(term) : KIND_OF.has(term));
  const squads = new Set(saysWhat && terms.some((term) => !named.has(term) && !KIND_OF.has(term)) ? named : []);
  return {
    squads, sought: terms.filter((term) => !isKind(term)).join(" "),
    weight: (term) => (squads.has(term) ? SQUAD_COUNTS : isKind(term) ? KIND_COUNTS : GENERAL.has(term) ? GENERAL_COUNTS : SMALL_NUMBER.test(term) ? NUMBER_COUNTS : 1),
  };
}

/** How much more or less faults and gear are meant by how something is told.
 * @type {(phrases: Phrases, told: {terms: string[], sought: string, isLack: boolean, asked: string}) => Record<string, number>} */
function ofKinds(phrases, { terms, sought, isLack, asked }) {
  if (isLack) {
    return { [FAULT]: LACKING, gear: isOfNotDoing(asked) ? GEAR_NOT_DONE : 1 };
  }
  const isCommon = terms.length === 1 && (phrases.spread.get(sought) ?? 0) > COMMON * phrases.documents;
  return { [FAULT]: A_PART.has(sought) ? OF_A_PART : isCommon ? OF_NOTHING_WRONG : 1 };
}

/**
 * Scores of what answers a question; null where it holds no words.
 * @param {Known} known
 * @param {Entry[]} entries
 * @param {Question} question
 * @returns {Answers | null}
 */
export function answers({ words, phrases, ways }, entries, question) {
  const terms = stems(question.words);
  const { squads, weight, sought } = weighing(terms, question.squads);
  const hits = words.search(question.words, weight);
  if (!hits) {
    return null;
  }
  const meant = words.meant(question.words);
  const isLack = isLacking(question.asked) && [...question.kinds].every((kind) => kind === FAULT) && !question.without.size && !question.unlike.length;
  const likeness = phrases.likenesses([...meant.filter((term) => !squads.has(term)), ...(isLack ? phrases.missing(question.asked) : [])]);
  /** @param {number} id */
  const alike = (id) => {
    const like = likeness.get(id) ?? 0;
    return 1 + LIKE_A_NAME * like ** LIKELY + AS_A_NAME * like ** SURELY;
  };
  const [need, other] = [true, false].map((isNeed) => Math.max(0, ...[...likeness].filter(([id]) => (entries[id]?.kind === NEED) === isNeed).map(([, like]) => like)));
  const isNeedNamed = need >= NAMED && need >= other;
  const weighed = isNeedNamed ? question : { ...question, kinds: new Set([...question.kinds].filter((kind) => kind !== NEED)) };
  const agrees = ways.agreement(question.words);
  /** @type {(id: number) => number} */
  const least = (id) => (entries[id]?.kind === "editors" ? FOR_EDITORS : SURE);
  const byKind = ofKinds(phrases, { terms, sought, isLack, asked: question.asked });
  const isOfStroke = weighed.kinds.has(DRILL) && ways.isStroke(sought);
  const scored = hits.map(({ id, score, tells }) => {
    const place = entries[id]?.kind === "editors" && tells < FOR_EDITORS ? LAST : 1;
    return /** @type {const} */ ([id, score * favour(entries[id], weighed, { sought, terms }) * (byKind[entries[id]?.kind ?? ""] ?? 1) * alike(id) * place * agrees(entries[id]) * (isOfStroke && isAroundStroke(entries[id]) ? NO_DRILL_OF_IT : 1)]);
  });
  const sure = hits.filter(({ id, tells }) => tells >= least(id));
  return { scores: new Map(scored.sort(([, one], [, two]) => two - one)), sure: new Set(sure.map(({ id }) => id)) };
}

/** Whether an entry is a stroke swum whole, or of the walls.
 * @param {Entry | undefined} entry */
const isAroundStroke = (entry) => Boolean(entry?.has.goal.includes("walls") || entry?.has.stroke.includes(entry.title.toLowerCase()));

/** Whether words name kinds, and none that an entry of this kind is meant by.
 * @type {(kind: string, terms: string[]) => boolean} */
export function isOfOtherKind(kind, terms) {
  const named = terms.flatMap((term) => KIND_OF.get(term) ?? []);
  return !named.includes(kind) && named.some((own) => OTHERS.get(own)?.includes(kind));
}

/** How much more likely what is about as far as it is asked to be is meant.
 * @type {(entry: Entry, metres: number | null) => number} */
function asFar({ distance }, metres) {
  const apart = distance.map((told) => Math.abs(Math.log(Number(told.replace(/\D/g, "")) / (metres ?? Infinity))));
  return metres && Math.min(Infinity, ...apart) < ABOUT ? AS_FAR : 1;
}

/** How much more what is written for a squad that a question names is meant, and less what is for others.
 * @type {(entry: Entry, groups: string[]) => number} */
function forSquad({ meant }, groups) {
  if (!groups.length || !meant.length) {
    return 1;
  }
  return meant.some((group) => groups.includes(group)) ? FOR_SQUAD : FOR_OTHERS;
}

/**
 * How much more, or less, an entry is likely to be meant.
 * @param {Entry | undefined} entry
 * @param {Question} question
 * @param {{sought: string, terms: string[]}} asked the terms that are asked for, without and with those of kinds
 */
function favour(entry, { kinds, minutes, gear, metres, groups }, { sought, terms }) {
  if (!entry) {
    return 0;
  }
  const usual = OF_KIND[/** @type {keyof typeof OF_KIND} */ (entry.kind)] ?? 1;
  const ofKind = kinds.has(entry.kind) ? ASKED_KIND : isOfOtherKind(entry.kind, terms) ? usual * OF_OTHER_KIND : usual;
  const timed = minutes && (entry.kind === "set" || entry.kind === "practice") ? TIMED : 1;
  /** @type {(ids: string[]) => boolean} */
  const isHere = (ids) => ids.some((id) => gear.has(id));
  const uses = isHere(entry.needs) ? USES : isHere(entry.suits) ? MAY_USE : 1;
  return forSquad(entry, groups) * uses * timed * asFar(entry, metres) * ofKind * asNamed(entry, sought);
}

/** Scores of what is of a kind that is asked for by its metres alone, what is about as far first.
 * @param {Entry[]} entries
 * @param {Question} question
 * @returns {Scores} */
export const farOf = (entries, { kinds, metres }) => new Map(entries.filter(({ kind }) => kinds.has(kind)).map((entry) => [entry.number, asFar(entry, metres)]));

/** Scores of all entries where no words are asked for: alike, but where gear is said not to be there, what is like the work that it is used in: of
 * each way to lie in which it is much used the best come first.
 * @param {Entry[]} entries
 * @param {Set<string>} without gear
 * @returns {Scores} */
export function inPlaceOf(entries, without) {
  /** @type {Map<string, number>} how often a word is told of drills that use the gear */
  const told = new Map();
  /** @type {(entry: Entry) => string[]} */
  const words = ({ has: { goal, position, stroke } }) => [...goal, ...position, ...stroke];
  /** @type {(own: "needs" | "suits") => Entry[]} */
  const drillsThat = (own) => entries.filter((entry) => entry.kind === DRILL && entry[own].some((id) => without.has(id)));
  const needing = drillsThat("needs");
  const using = needing.length ? needing : drillsThat("suits");
  using.flatMap(words).forEach((word) => told.set(word, (told.get(word) ?? 0) + 1));
  /** @type {(entry: Entry) => number} */
  const like = (entry) => (entry.kind === DRILL ? 2 : 1) * words(entry).reduce((sum, word) => sum + (told.get(word) ?? 0), 0) / (words(entry).length || 1);
  const ranked = entries.map((entry) => ({ entry, score: 1 + like(entry) })).sort((one, two) => two.score - one.score);
  /** @type {Map<string, number>} how many that lie so stand above */
  const above = new Map();
  return new Map(ranked.map(({ entry, score }) => {
    const [position = ""] = entry.has.position;
    const many = above.get(position) ?? 0;
    above.set(position, many + 1);
    const isUsual = (told.get(position) ?? 0) >= OFTEN * using.length;
    return [entry.number, using.length ? score * (isUsual ? OF_ONE_POSITION ** many : 1 - OFTEN) : 1];
  }));
}
