// The finder's sums: which entries answer a choice, how many each further choice would give. Pure: no page, no storage.

/**
 * @typedef {"goal" | "fault" | "position" | "stroke" | "effort" | "level" | "whom"} List a facet that an entry has words of
 * @typedef {List | "kind" | "gear" | "minutes" | "lanes" | "words"} Facet
 * @typedef {Record<List | "kind" | "gear", Set<string>> & {minutes: number | null, lanes: number | null, swimmers: number | null,
 *   untimed: boolean, words: string}} Choice
 * @typedef {import("./answers.js").Scores} Scores
 * @typedef {Record<Facet, Record<string, number>>} Counts by facet and word
 * @typedef {import("./fit.js").Fit} Fit
 *
 * @typedef {object} Entry
 * @property {number} number
 * @property {string} kind
 * @property {string} href
 * @property {string} title
 * @property {string} also
 * @property {string} tags
 * @property {string} summary
 * @property {string} fact
 * @property {number} text the place of its text
 * @property {string} figure
 * @property {string[]} distance
 * @property {number} lanes
 * @property {number} adults that are needed at one moment; 0 where it does not say
 * @property {string} ownPool
 * @property {string[]} meant lane groups
 * @property {number[][][]} takes by pool and lane group
 * @property {[number, string, number[][], string[]][]} cuts each with what it takes, and how far it then is
 * @property {number} gearS
 * @property {string[]} needs
 * @property {string[]} suits
 * @property {Record<List | "kind", string[]>} has
 *
 * @typedef {object} Group
 * @property {string} id
 * @property {string} title
 * @property {string} squad
 * @property {number} lanes
 * @property {number} heads
 * @property {number} gap_s
 *
 * @typedef {object} Data what the page carries: words once, and rows that name them by number
 * @property {string[]} columns
 * @property {any[][]} rows
 * @property {Record<List | "gear", [string, string][]>} words
 * @property {string[]} fast the efforts that count as fast, the hardest last
 * @property {[string, string, string][]} kinds each with its title and that of many
 * @property {string[]} narrowed the kinds that choices narrow
 * @property {string[]} pools
 * @property {Group[]} groups
 * @property {number} lanes of the widest pool
 * @property {number[]} owned
 * @property {number} talk_s
 * @property {number[][]} first
 * @property {Record<Facet, string>} titles
 * @property {import("../lib/search.js").Synonyms} synonyms
 * @property {string[]} alarms what is typed where somebody's life is in danger
 */

import { tooLong } from "./late.js";

/** @type {List[]} */
const LISTS = ["goal", "fault", "position", "stroke", "effort", "level", "whom"];
/** @type {Facet[]} */
const FACETS = ["kind", ...LISTS, "gear", "minutes", "lanes", "words"];
const NO_GEAR = "none";
const SURELY = 1.5; // how much better than all that fits a guide has to answer the words
const GUIDES = ["page", "danger"]; // kinds that tell what is done
const A_PRACTICE = 40; // minutes
const DRY = 4; // the place of what is done on land where lanes are asked for
const MEANT = { set: 0.15, practice: 0.3 }; // the share of the best one's score from which on another answers the words
const MAY_BE_CUT = 1.6; // how much longer than the minutes that were heard what is meant may be
/** @type {Facet[]} */
const IN_ONE = ["effort", "whom"]; // several words of it are asked for in one entry; of any other facet one is enough

/** The entries of the finder's data, each with the words that it carries by facet.
 * @param {Data} data
 * @returns {Entry[]} */
function entriesOf(data) {
  const at = Object.fromEntries(data.columns.map((name, number) => [name, number]));
  /** @type {(name: List | "gear", numbers: number[]) => string[]} */
  const ids = (name, numbers) => numbers.map((number) => data.words[name][number]?.[0] ?? "");
  return data.rows.map((row, number) => ({
    number,
    kind: row[at.kind],
    href: row[at.href],
    title: row[at.title],
    also: row[at.also],
    tags: row[at.tags],
    summary: row[at.summary],
    fact: row[at.fact],
    text: row[at.text],
    figure: row[at.figure],
    distance: row[at.distance],
    lanes: row[at.lanes],
    adults: row[at.adults],
    ownPool: row[at.own_pool],
    meant: row[at.meant].map((/** @type {number} */ group) => data.groups[group]?.id),
    takes: row[at.takes],
    cuts: row[at.cuts],
    gearS: row[at.gear_s],
    needs: ids("gear", row[at.needs]),
    suits: ids("gear", row[at.suits]),
    has: /** @type {Record<List | "kind", string[]>} */ ({
      kind: [row[at.kind]],
      ...Object.fromEntries(LISTS.map((name) => [name, ids(name, row[at[name]])])),
    }),
  }));
}

/** A choice of nothing: everything is found.
 * @returns {Choice} */
function nothing() {
  const lists = Object.fromEntries(["kind", ...LISTS, "gear"].map((name) => [name, new Set()]));
  return /** @type {Choice} */ ({ ...lists, minutes: null, lanes: null, swimmers: null, untimed: false, words: "" });
}

/**
 * @param {Choice} choice
 * @param {Facet} facet
 */
function isChosen(choice, facet) {
  const chosen = choice[facet];
  return chosen instanceof Set ? chosen.size > 0 : Boolean(chosen);
}

/** Whether nothing is asked for.
 * @param {Choice} choice */
const isNothing = (choice) => !choice.swimmers && !FACETS.some((facet) => isChosen(choice, facet));

/** @type {(needs: string[], gear: Set<string>, also?: string) => boolean} */
const within = (needs, gear, also) => needs.every((id) => gear.has(id) || id === also);

/**
 * The facets of a choice, each with the question whether an entry passes it.
 * @param {Asked} choice
 * @param {Known} known
 */
function questions(choice, { fit, scores, narrowed, sure }) {
  /** @type {[Facet, (entry: Entry) => boolean][]} */
  const asked = [];
  /** @type {(test: (entry: Entry) => boolean) => (entry: Entry) => boolean} */
  const narrow = (test) => (entry) => narrowed.includes(entry.kind) && test(entry);
  if (choice.kind.size) {
    asked.push(["kind", (entry) => choice.kind.has(entry.kind)]);
  }
  for (const name of LISTS.filter((list) => choice[list].size)) {
    const words = [...choice[name]];
    const own = IN_ONE.includes(name) ? "every" : "some";
    asked.push([name, narrow((entry) => words[own]((word) => entry.has[name].includes(word)))]);
  }
  if (choice.gear.size) {
    asked.push(["gear", narrow((entry) => within(entry.needs, choice.gear))]);
  }
  if (choice.minutes || choice.lanes || choice.swimmers) {
    const facet = choice.minutes ? "minutes" : "lanes";
    const fits = narrow((entry) => (fit(entry).seconds === null ? choice.untimed : fit(entry).fits || isNearly(entry, choice, fit(entry))));
    asked.push([facet, (entry) => fits(entry) || Boolean(sure && !narrowed.includes(entry.kind) && (sure.has(entry.number) || GUIDES.includes(entry.kind)))]);
  }
  if (scores) {
    asked.push(["words", (entry) => scores.has(entry.number)]);
  }
  return asked;
}

/**
 * @param {Counts} counts
 * @param {Facet} facet
 * @param {string | number} word
 */
function count(counts, facet, word) {
  counts[facet][word] = (counts[facet][word] ?? 0) + 1;
}

/**
 * An entry into the counts of one facet: the words of it that would find this entry.
 * @param {Counts} counts
 * @param {Facet} facet
 * @param {Entry} entry
 * @param {Choice} choice
 * @param {Known} known
 */
function countIn(counts, facet, entry, choice, { fit, steps }) {
  if (facet === "gear") {
    if (!entry.needs.length) {
      count(counts, facet, NO_GEAR);
    }
    for (const id of new Set([...entry.needs, ...entry.suits])) {
      if (within(entry.needs, choice.gear, id)) {
        count(counts, facet, id);
      }
    }
  } else if (facet === "minutes") {
    const takes = fit(entry).least ?? Infinity;
    steps.filter((step) => takes <= 60 * step).forEach((step) => count(counts, facet, step));
  } else if (IN_ONE.includes(facet)) {
    const others = [...choice[/** @type {List} */ (facet)]];
    const own = entry.has[/** @type {List} */ (facet)];
    own.filter((word) => others.every((other) => other === word || own.includes(other))).forEach((word) => count(counts, facet, word));
  } else if (facet !== "words" && facet !== "lanes") {
    entry.has[facet].forEach((word) => count(counts, facet, word));
  }
}

/** Whether something that is meant is a little longer than the minutes that were heard: it may be cut to them on the deck.
 * @type {(entry: Entry, choice: Asked, own: Fit) => boolean} */
const isNearly = ({ number, kind }, { nearly, isPractice, minutes }, { least }) => {
  const isMeant = nearly?.has(number) || (isPractice && kind === "practice");
  return Boolean(nearly && isMeant && minutes && least !== null && least <= MAY_BE_CUT * 60 * minutes);
};

/** Whether something is done on land alone: it asks for no lane and no pool.
 * @param {Entry} entry */
const isOnLand = ({ has: { position } }) => position.length > 0 && position.every((way) => way === "on-land");

/** Where minutes are asked for: sets before drills, and practices first where the minutes are a practice's and not what is left of one; where
 * room alone is, practices first.
 * @type {(entry: Entry, choice: Asked) => number} */
function kindPlace(entry, { minutes, lanes, isLeft, isRoomAlone, isPractice: isSaid }) {
  const isPractice = minutes ? isSaid || (!isLeft && minutes >= A_PRACTICE) : isRoomAlone;
  if (lanes && isOnLand(entry)) {
    return DRY;
  }
  return minutes || isRoomAlone ? (isPractice ? ["practice", "set"] : ["set", "drill"]).indexOf(entry.kind) + 1 || 3 : 0;
}

/** @typedef {Choice & {isLeft?: boolean, isRoomAlone?: boolean, isPractice?: boolean, isEnd?: boolean, nearly?: Set<number> | null}} Asked `isLeft`: its minutes are what is left of a practice;
 *   `isRoomAlone`: only lanes or heads are asked for, by which a practice is told from others; `isPractice`: the words ask for a practice, `isEnd` for what opens or closes one;
 *   `nearly`: what the words mean, by number, which may be a little longer than the minutes that they say */

/** @typedef {{fit: (entry: Entry) => Fit, scores: Scores | null, steps: number[], narrowed: string[], sure?: Set<number> | null}} Known `sure`: what
 *   stays beside what fits, pages that answer the words, where minutes and room were heard in these */

/**
 * What a choice finds; for each facet and word, what that word would give; and what dropping a facet would give.
 * @param {Entry[]} entries
 * @param {Asked} choice
 * @param {Known} known
 */
function sift(entries, choice, known) {
  const asked = questions(choice, known);
  const counts = /** @type {Counts} */ (Object.fromEntries(FACETS.map((facet) => [facet, {}])));
  /** @type {Record<string, number>} */
  const without = Object.fromEntries(asked.map(([facet]) => [facet, 0]));
  /** @type {Entry[]} */
  const found = [];
  let untimed = 0;
  for (const entry of entries) {
    const failed = asked.filter(([, passes]) => !passes(entry)).map(([facet]) => facet);
    const isNarrowed = known.narrowed.includes(entry.kind);
    if (!failed.length) {
      found.push(entry);
      (isNarrowed ? FACETS : /** @type {Facet[]} */ (["kind"])).forEach((facet) => countIn(counts, facet, entry, choice, known));
      asked.forEach(([facet]) => { without[facet] = (without[facet] ?? 0) + 1; });
    } else if (failed.length === 1) {
      const [facet] = /** @type {[Facet]} */ (failed);
      if (isNarrowed || facet === "kind") {
        countIn(counts, facet, entry, choice, known);
      }
      without[facet] = (without[facet] ?? 0) + 1;
      untimed += isNarrowed && (facet === "minutes" || facet === "lanes") && known.fit(entry).seconds === null ? 1 : 0;
    }
  }
  return { found, counts, without, untimed };
}

/**
 * The found in the order to show them: best words first, what mends the fault first, what is for my groups, what uses the gear,
 * what fills the minutes best.
 * @param {Entry[]} found
 * @param {Asked} choice
 * @param {Scores | null} scores
 * @param {{firstFor: (fault: string) => number[], fit: (entry: Entry) => Fit}} known the entries that mend a fault, in order
 */
function inOrder(found, choice, scores, { firstFor, fit }) {
  const fault = choice.fault.size === 1 ? firstFor([...choice.fault][0] ?? "") : [];
  /** @type {(ids: string[]) => boolean} */
  const isAtHand = (ids) => ids.some((id) => choice.gear.has(id));
  /** @type {(entry: Entry) => number} */
  const uses = (entry) => (isAtHand(entry.needs) ? 2 : isAtHand(entry.suits) ? 1 : 0);
  /** @type {(entry: Entry) => number} */
  const place = (entry) => (fault.includes(entry.number) ? fault.indexOf(entry.number) : fault.length);
  /** @type {(of: string) => number} */
  const bestOf = (of) => Math.max(0, ...found.filter(({ kind }) => kind === of).map(({ number }) => scores?.get(number) ?? 0));
  const least = { set: MEANT.set * bestOf("set"), practice: MEANT.practice * bestOf("practice") };
  const best = Math.max(0, ...found.filter(({ kind }) => !GUIDES.includes(kind)).map(({ number }) => scores?.get(number) ?? 0));
  /** @type {(entry: Entry) => number} what tells what to do stands before what fits where it answers the words better */
  const first = (entry) => (GUIDES.includes(entry.kind) && !choice.gear.size && (scores?.get(entry.number) ?? 0) > SURELY * best ? 0 : kindPlace(entry, choice));
  const keyed = found.map((entry) => {
    const own = fit(entry);
    const fills = choice.minutes ? [own.cut ? 1 : 0, -(own.seconds ?? 0)] : [0, 0];
    const mine = [own.isForOthers ? 1 : 0, own.crowded ? 1 : 0];
    const late = tooLong(entry, choice, own, (scores?.get(entry.number) ?? 0) >= (entry.kind === "practice" ? least.practice : least.set));
    const keys = [scores ? first(entry) + late : late, -(scores?.get(entry.number) ?? 0), place(entry), -uses(entry), kindPlace(entry, choice), ...mine, ...fills, entry.number];
    return { entry, keys };
  });
  keyed.sort(({ keys: one }, { keys: two }) => {
    const at = one.findIndex((key, number) => key !== two[number]);
    return at < 0 ? 0 : (one[at] ?? 0) - (two[at] ?? 0);
  });
  return keyed.map(({ entry }) => entry);
}

export { A_PRACTICE, FACETS, LISTS, entriesOf, isNothing, isOnLand, nothing, sift, inOrder };
