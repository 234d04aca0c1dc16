// The finder's sums: which entries answer a choice, how many each further choice would give. Pure: no page, no storage.

/**
 * @typedef {"kind" | "goal" | "fault" | "position" | "stroke" | "effort" | "level"} List a facet that an entry has words of
 * @typedef {List | "gear" | "minutes" | "words"} Facet
 * @typedef {Record<List | "gear", Set<string>> & {minutes: number | null, words: string}} Choice
 * @typedef {{pool: string, group: string}} Held the pool and lane group that minutes hold for
 * @typedef {(entry: Entry) => number | null} Minutes
 * @typedef {Map<number, number>} Scores how well the entries answer the words that were asked for
 * @typedef {Record<Facet, Record<string, number>>} Counts by facet and word
 *
 * @typedef {object} Entry
 * @property {number} number
 * @property {string} kind
 * @property {string} href
 * @property {string} title
 * @property {string} summary
 * @property {string} figure
 * @property {string} distance
 * @property {string} more
 * @property {number[][]} minutes by pool and lane group
 * @property {string[]} needs
 * @property {string[]} suits
 * @property {Record<List, string[]>} has
 *
 * @typedef {object} Data what the page carries: words once, and rows that name them by number
 * @property {string[]} columns
 * @property {any[][]} rows
 * @property {Record<List | "gear", [string, string][]>} words
 * @property {Record<string, string>} folders
 * @property {string[]} pools
 * @property {[string, string][]} groups
 * @property {Record<string, string>} also
 * @property {number[][]} first
 * @property {Record<Facet, string>} titles
 * @property {import("../lib/search.js").Synonyms} synonyms
 */

/** @type {List[]} */
const LISTS = ["kind", "goal", "fault", "position", "stroke", "effort", "level"];
/** @type {Facet[]} */
const FACETS = [...LISTS, "gear", "minutes", "words"];
const NO_GEAR = "none";

/** The entries of the finder's data, each with the words that it carries by facet.
 * @param {Data} data
 * @returns {Entry[]} */
function entriesOf(data) {
  const at = Object.fromEntries(data.columns.map((name, number) => [name, number]));
  /** @type {(name: List | "gear", numbers: number[]) => string[]} */
  const ids = (name, numbers) => numbers.map((number) => data.words[name][number][0]);
  return data.rows.map((row, number) => ({
    number,
    kind: row[at.kind],
    href: `${data.folders[row[at.kind]]}/${row[at.id]}.html`,
    title: row[at.title],
    summary: row[at.summary],
    figure: row[at.figure],
    distance: row[at.distance],
    more: row[at.more],
    minutes: row[at.minutes],
    needs: ids("gear", row[at.needs]),
    suits: ids("gear", row[at.suits]),
    has: /** @type {Record<List, string[]>} */ ({
      kind: [row[at.kind]],
      ...Object.fromEntries(LISTS.slice(1).map((name) => [name, ids(name, row[at[name]])])),
    }),
  }));
}

/**
 * What an entry takes in a pool for a lane group, in minutes: below zero where that hangs on an assumed time, 0 where it is
 * not known.
 * @param {Data} data
 * @param {Entry} entry
 * @param {Held} held
 */
const signed = (data, entry, { pool, group }) =>
  entry.minutes[data.pools.indexOf(pool)]?.[data.groups.findIndex(([id]) => id === group)] || 0;

/**
 * Minutes that an entry takes in a pool for a lane group; null where that is not known.
 * @param {Data} data
 * @param {Entry} entry
 * @param {Held} held
 */
function minutesOf(data, entry, held) {
  return Math.abs(signed(data, entry, held)) || null;
}

/**
 * The same in words: `12 min`, `12 min (assumed)`; "" where it is not known.
 * @param {Data} data
 * @param {Entry} entry
 * @param {Held} held
 */
function minutesTold(data, entry, held) {
  const takes = signed(data, entry, held);
  return takes ? `${Math.abs(takes)} min${takes < 0 ? " (assumed)" : ""}` : "";
}

/** A choice of nothing: everything is found.
 * @returns {Choice} */
function nothing() {
  const lists = Object.fromEntries([...LISTS, "gear"].map((name) => [name, new Set()]));
  return /** @type {Choice} */ ({ ...lists, minutes: null, words: "" });
}

/**
 * @param {Choice} choice
 * @param {Facet} facet
 */
function isChosen(choice, facet) {
  const chosen = choice[facet];
  return chosen instanceof Set ? chosen.size > 0 : Boolean(chosen);
}

/** @type {(needs: string[], gear: Set<string>, also?: string) => boolean} */
const within = (needs, gear, also) => needs.every((id) => gear.has(id) || id === also);

/**
 * The facets of a choice, each with the question whether an entry passes it.
 * @param {Choice} choice
 * @param {Minutes} minutes
 * @param {Scores | null} scores
 */
function questions(choice, minutes, scores) {
  /** @type {[Facet, (entry: Entry) => boolean][]} */
  const asked = [];
  for (const facet of LISTS) {
    if (choice[facet].size) {
      asked.push([facet, (entry) => entry.has[facet].some((word) => choice[facet].has(word))]);
    }
  }
  if (choice.gear.size) {
    asked.push(["gear", (entry) => within(entry.needs, choice.gear)]);
  }
  const most = choice.minutes;
  if (most) {
    asked.push(["minutes", (entry) => (minutes(entry) ?? Infinity) <= most]);
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
 * @param {Minutes} minutes
 * @param {number[]} steps
 */
function countIn(counts, facet, entry, choice, minutes, steps) {
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
    const takes = minutes(entry) ?? Infinity;
    steps.filter((step) => takes <= step).forEach((step) => count(counts, facet, step));
  } else if (facet !== "words") {
    entry.has[facet].forEach((word) => count(counts, facet, word));
  }
}

/**
 * What a choice finds; for each facet and word, what that word would give; and what dropping a facet would give.
 * @param {Entry[]} entries
 * @param {Choice} choice
 * @param {{minutes: Minutes, scores: Scores | null, steps: number[]}} known
 */
function sift(entries, choice, { minutes, scores, steps }) {
  const asked = questions(choice, minutes, scores);
  const counts = /** @type {Counts} */ (Object.fromEntries(FACETS.map((facet) => [facet, {}])));
  /** @type {Record<string, number>} */
  const without = Object.fromEntries(asked.map(([facet]) => [facet, 0]));
  /** @type {Entry[]} */
  const found = [];
  let untimed = 0;
  for (const entry of entries) {
    const failed = asked.filter(([, passes]) => !passes(entry)).map(([facet]) => facet);
    if (!failed.length) {
      found.push(entry);
      FACETS.forEach((facet) => countIn(counts, facet, entry, choice, minutes, steps));
      asked.forEach(([facet]) => { without[facet] += 1; });
    } else if (failed.length === 1) {
      countIn(counts, failed[0], entry, choice, minutes, steps);
      without[failed[0]] += 1;
      untimed += failed[0] === "minutes" && minutes(entry) === null ? 1 : 0;
    }
  }
  return { found, counts, without, untimed };
}

/**
 * The found in the order to show them: best words first, what mends the fault first, what uses the gear first.
 * @param {Entry[]} found
 * @param {Choice} choice
 * @param {Scores | null} scores
 * @param {(fault: string) => number[]} firstFor the entries that mend a fault, in order
 */
function inOrder(found, choice, scores, firstFor) {
  const fault = choice.fault.size === 1 ? firstFor([...choice.fault][0]) : [];
  /** @type {(ids: string[]) => boolean} */
  const isAtHand = (ids) => ids.some((id) => choice.gear.has(id));
  /** @type {(entry: Entry) => number} */
  const uses = (entry) => (isAtHand(entry.needs) ? 2 : isAtHand(entry.suits) ? 1 : 0);
  /** @type {(entry: Entry) => number} */
  const place = (entry) => (fault.includes(entry.number) ? fault.indexOf(entry.number) : fault.length);
  const keyed = found.map((entry) => {
    const keys = [-(scores?.get(entry.number) ?? 0), place(entry), -uses(entry), entry.number];
    return { entry, keys };
  });
  keyed.sort(({ keys: one }, { keys: two }) => one.map((key, at) => key - two[at]).find(Boolean) ?? 0);
  return keyed.map(({ entry }) => entry);
}

export { FACETS, entriesOf, minutesOf, minutesTold, nothing, isChosen, sift, inOrder };
