// What the page says of a choice and of a hit, in words. Pure.

import { timeTold } from "./fit.js";

/** @import {Choice, Data, Entry, Facet, Fit} from "./list.js" */
/** @import {Held} from "./fit.js" */

/** @type {(number: number, single: string, more: string) => string} */
export const many = (number, single, more) => `${number} ${number === 1 ? single : more}`;

/** @param {Data} data */
const titlesOf = (data) => /** @type {Record<string, Record<string, string>>} */ (
  Object.fromEntries(Object.entries(data.words).map(([facet, words]) => [facet, Object.fromEntries(words)]))
);

/** @param {Data} data */
export function teller(data) {
  const titles = titlesOf(data);
  const kinds = new Map(data.kinds.map(([id, single, more]) => [id, { one: single, many: more }]));
  /** @type {(id: string) => string} */
  const gear = (id) => titles.gear?.[id]?.toLowerCase() ?? "gear";
  /** @param {string[]} groups */
  const mine = (groups) => data.groups.filter(({ id }) => groups.includes(id));

  /** @type {(choice: Choice, until: string) => string} */
  const time = ({ minutes }, until) => (minutes ? (until ? `until ${until} (${minutes} min)` : `${minutes} min`) : "");
  /** @param {Choice} choice */
  const room = ({ lanes, swimmers }) => [
    lanes ? many(lanes, "lane", "lanes") : "",
    swimmers ? many(swimmers, "swimmer", "swimmers") : "",
  ].filter(Boolean).join(", ");

  /** How far an entry goes, cut as it is, for the first of my groups that it is meant for.
   * @type {(entry: Entry, fit: Fit, groups: string[]) => string} */
  const far = ({ distance: whole, meant }, { cut }, groups) => {
    const distance = cut?.[2] ?? whole;
    const at = meant.findIndex((group) => groups.includes(group));
    return distance[distance.length > 1 ? Math.max(at, 0) : 0] ?? "";
  };

  /** @type {(entry: Entry, held: Held) => string} */
  const lanes = (entry, held) => {
    const own = entry.kind === "practice" ? entry.lanes : held.lanes ?? mine(held.groups).reduce((sum, group) => sum + group.lanes, 0);
    return entry.ownPool && own ? many(own, "lane", "lanes") : "";
  };

  /** @type {(entry: Entry, held: Held) => string} */
  const carried = ({ needs }, { swimmers }) => needs.map((id) => {
    const owned = data.owned[data.words.gear.findIndex(([name]) => name === id)] ?? 0;
    return `${gear(id)}${swimmers && owned < swimmers ? ` (${owned} owned)` : ""}`;
  }).join(", ") || "no gear";

  return {
    kinds,

    /** What is chosen in a facet.
     * @type {(choice: Choice, facet: Facet, until: string) => string} */
    choice(choice, facet, until) {
      switch (facet) {
        case "minutes":
          return time(choice, until);
        case "lanes":
          return room(choice);
        case "words":
          return choice.words;
        case "kind":
          return [...choice.kind].map((kind) => kinds.get(kind)?.many).join(", ");
        default:
          return [...choice[facet]].map((word) => (word === "none" ? "nothing" : titles[facet]?.[word])).join(", ");
      }
    },

    /** What was heard in a question beside its words.
     * @param {import("./question.js").Question} question */
    heard: ({ minutes, lanes: wide, swimmers, adults, gear: atHand, without, unlike }) => [
      minutes ? `${minutes} min` : "", wide ? many(wide, "lane", "lanes") : "", swimmers ? many(swimmers, "swimmer", "swimmers") : "",
      adults ? many(adults, "adult", "adults") : "",
      ...[...atHand].map((id) => `with ${gear(id)}`), ...[...without].map((id) => `without ${gear(id)}`),
      ...new Set(unlike.map(({ title }) => `not ${title.toLowerCase()}`)),
    ].filter(Boolean).join(", "),

    /** How many there are, for what, and how many of them are less sure.
     * @type {(found: Entry[], unsure: number, question: import("./question.js").Question) => string} */
    total(found, unsure, question) {
      const heard = this.heard(question);
      const less = unsure && unsure < found.length ? `, ${unsure} of them less sure` : "";
      return `${many(found.length, "hit", "hits")}${heard ? ` for ${heard}` : ""}${less}.`;
    },

    /** The words that nothing has, each with what is looked for in its place.
     * @param {{word: string, near: string, isRun: boolean}[]} words */
    unknown: (words) => words.filter(({ isRun }) => !isRun).map(({ word, near }) => `Nothing for “${word}”${near ? `; nearest: “${near}”` : ""}.`).join(" "),

    /** The first hit, for a listener.
     * @param {Entry} entry */
    first: ({ title, kind }) => `First: ${title}, ${kinds.get(kind)?.one.toLowerCase()}.`,

    /** Whose times these are, and what goes before them.
     * @param {Held} held */
    whose({ groups }) {
      if (!groups.length) {
        return "Times for its slowest group, talk and gear in.";
      }
      const own = mine(groups).map(({ title }) => title);
      const slowest = own.length > 1 ? "the slowest of " : "";
      return `Times for ${slowest}${own.join("; ")}; ${Math.round(data.talk_s / 6) / 10} min to explain and for gear counted in.`;
    },

    /** What a hit shows beside its kind: one fact, or minutes, metres, gear and lanes.
     * @type {(entry: Entry, fit: Fit, held: Held) => string} */
    hit(entry, fit, held) {
      const clock = timeTold(data, entry, fit, held);
      if (entry.kind !== "set" && entry.kind !== "practice") {
        return [held.minutes ? clock : "", entry.fact].filter(Boolean).join(" · ");
      }
      const squads = [...new Set(mine(entry.meant).map(({ squad }) => squad))].join(", ");
      return [
        clock || (fit.isForOthers ? "" : "no computed time"), far(entry, fit, held.groups), carried(entry, held), lanes(entry, held),
        fit.crowded, squads && (fit.isForOthers || !held.groups.length) ? `for ${squads}` : "",
      ].filter(Boolean).join(" · ");
    },
  };
}
