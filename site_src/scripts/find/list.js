// The finder's sums: which entries answer a choice, how many each further choice would give. Pure: no page, no storage.

const LISTS = ["kind", "goal", "fault", "position", "stroke", "effort", "level"];
const FACETS = [...LISTS, "gear", "minutes", "words"];
const NO_GEAR = "none";

/** The entries of the finder's data, each with the words that it carries by facet. */
function entriesOf(data) {
  const at = Object.fromEntries(data.columns.map((name, number) => [name, number]));
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
    has: {
      kind: [row[at.kind]],
      ...Object.fromEntries(LISTS.slice(1).map((name) => [name, ids(name, row[at[name]])])),
    },
  }));
}

/** Minutes that an entry takes in a pool for a lane group; null where that is not known. */
function minutesOf(data, entry, { pool, group }) {
  const inPool = entry.minutes[data.pools.indexOf(pool)];
  return inPool?.[data.groups.findIndex(([id]) => id === group)] || null;
}

/** A choice of nothing: everything is found. */
function nothing() {
  return { ...Object.fromEntries([...LISTS, "gear"].map((name) => [name, new Set()])), minutes: null, words: "" };
}

function isChosen(choice, facet) {
  const chosen = choice[facet];
  return chosen instanceof Set ? chosen.size > 0 : Boolean(chosen);
}

const within = (needs, gear, also) => needs.every((id) => gear.has(id) || id === also);

/** The facets of a choice, each with the question whether an entry passes it. */
function questions(choice, minutes, scores) {
  const asked = [];
  for (const facet of LISTS) {
    if (choice[facet].size) {
      asked.push([facet, (entry) => entry.has[facet].some((word) => choice[facet].has(word))]);
    }
  }
  if (choice.gear.size) {
    asked.push(["gear", (entry) => within(entry.needs, choice.gear)]);
  }
  if (choice.minutes) {
    asked.push(["minutes", (entry) => minutes(entry) !== null && minutes(entry) <= choice.minutes]);
  }
  if (scores) {
    asked.push(["words", (entry) => scores.has(entry.number)]);
  }
  return asked;
}

function count(counts, facet, word) {
  counts[facet][word] = (counts[facet][word] ?? 0) + 1;
}

/** An entry into the counts of one facet: the words of it that would find this entry. */
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
    const takes = minutes(entry);
    steps.filter((step) => takes !== null && takes <= step).forEach((step) => count(counts, facet, step));
  } else if (facet !== "words") {
    entry.has[facet].forEach((word) => count(counts, facet, word));
  }
}

/** What a choice finds; for each facet and word, what that word would give; and what dropping a facet would give. */
function sift(entries, choice, { minutes, scores, steps }) {
  const asked = questions(choice, minutes, scores);
  const counts = Object.fromEntries(FACETS.map((facet) => [facet, {}]));
  const without = Object.fromEntries(asked.map(([facet]) => [facet, 0]));
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

/** The found in the order to show them: best words first, what mends the fault first, what uses the gear first. */
function inOrder(found, choice, scores, firstFor) {
  const fault = choice.fault.size === 1 ? firstFor([...choice.fault][0]) : [];
  const uses = (entry) => (entry.needs.some((id) => choice.gear.has(id)) ? 2 : entry.suits.some((id) => choice.gear.has(id)) ? 1 : 0);
  const place = (entry) => (fault.includes(entry.number) ? fault.indexOf(entry.number) : fault.length);
  const keys = found.map((entry) => [-(scores?.get(entry.number) ?? 0), place(entry), -uses(entry), entry.number, entry]);
  keys.sort((one, other) => one[0] - other[0] || one[1] - other[1] || one[2] - other[2] || one[3] - other[3]);
  return keys.map((key) => key[4]);
}

export { FACETS, entriesOf, minutesOf, nothing, isChosen, sift, inOrder };
