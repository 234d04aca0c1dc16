// The deck card as it will look: what its reader must see first, from what has been filled in so far. Text is only ever text.

import { make } from "../lib/dom.js";
import { boardOf } from "./board.js";
import { isObject } from "./schema.js";
import { totalWords } from "./total.js";

/**
 * @typedef {import("./names.js").Names} Names
 * @typedef {Record<string, any>} Entry as far as it is filled in
 */

/** @type {(value: unknown) => any[]} */
const list = (value) => (Array.isArray(value) ? value : []);
/** @type {(value: unknown) => Entry[]} */
const groups = (value) => list(value).filter(isObject);
/** @param {unknown} value */
const text = (value) => (typeof value === "string" || typeof value === "number" ? String(value) : "");

/**
 * @param {Record<string, string>} attributes
 * @param {...(Node | string)} pieces
 */
const line = (attributes, ...pieces) => make("p", attributes, ...pieces.filter((piece) => piece !== ""));

/**
 * A line that begins with a word or title in bold.
 * @param {string} head
 * @param {...string} rest
 */
const marked = (head, ...rest) => line({}, make("strong", {}, head), ...rest.map((piece) => (piece ? ` ${piece}` : "")));

/**
 * The dangers that an entry names, each with what it adds of its own.
 * @param {unknown} hazards
 * @param {Names} names
 */
const dangers = (hazards, names) => groups(hazards).map(({ hazard, own, control }) => line(
  { class: "danger" },
  make("strong", {}, titled(names, "vocabulary", "hazards", hazard)),
  text(own) && ` ${text(own)}`,
  text(control) && ` ${text(control)}`,
));

/**
 * The title of a word or an id, as the form's choices have it.
 * @param {Names} names
 * @param {"vocabulary" | "reference"} keyword
 * @param {string} name
 * @param {unknown} id
 */
function titled(names, keyword, name, id) {
  return (names[keyword][name] ?? []).find(([known]) => known === id)?.[1] ?? text(id);
}

/**
 * @param {unknown} items
 * @param {Names} names
 */
function boardLines(items, names) {
  const lines = boardOf(items, names).map(({ depth, what, effort, gear, how, go, aim, result, note }) => line(
    { class: `depth-${Math.min(depth, 3)}` },
    make("span", { class: "what" }, what),
    effort && ` ${effort}`,
    gear && ` in ${gear}`,
    how && make("span", { class: "how" }, `, ${how}`),
    go && make("span", { class: "go" }, ` ${go}`),
    aim && make("span", { class: "aim" }, ` ${aim}`),
    result && make("span", { class: "result" }, ` ${result}`),
    note && make("span", { class: "note" }, text(note)),
  ));
  return lines.length ? [make("div", { class: "board" }, ...lines)] : [];
}

/** A day of a block in words.
 * @param {string} day
 * @param {Entry} held
 * @param {Names} names */
function dayWords(day, { practice, rest, other }, names) {
  const what = practice ? titled(names, "reference", "practice", practice) : text(other);
  return `${day} ${rest ? "rest" : what}`;
}

/** A part of a practice: its set or its items, and what runs apart or at stations.
 * @param {Entry} part
 * @param {Names} names
 * @returns {HTMLElement[]} */
function partOf({ part, set, items, note, apart, stations }, names) {
  const head = titled(names, "vocabulary", "practice-parts", part);
  const done = marked(head, set ? titled(names, "reference", "set", set) : "", text(note));
  const inner = groups(apart).flatMap((own) => {
    const whose = list(own.groups).map((id) => titled(names, "reference", "lane_group", id)).join(", ");
    const lead = line({ class: "whose" }, `${whose || `${text(own.half) || "…"} half of the lanes`}:`);
    return [lead, ...groups(own.parts).flatMap((one) => partOf(one, names))];
  });
  const each = groups(stations).flatMap((own, number) => {
    const where = marked(`Station ${number + 1}`, text(own.place), own.set ? titled(names, "reference", "set", own.set) : "");
    return [where, ...boardLines(own.items, names)];
  });
  return [done, ...boardLines(items, names), ...inner, ...each];
}

/** What stands on the card of a kind.
 * @type {Record<string, (entry: Entry, names: Names) => HTMLElement[]>} */
const BODIES = {
  drill: ({ cues, safety, goes_wrong }, names) => [
    make("ul", { class: "cues" }, ...list(cues).map((cue) => make("li", {}, text(cue)))),
    ...dangers(safety, names),
    ...groups(goes_wrong).map(({ see, say }) => marked(text(see), text(say) && `Say: ${text(say)}`)),
  ],
  fault: ({ see, causes, refer_on }, names) => [
    ...groups(see).map(({ from, what }) => marked(`${titled(names, "vocabulary", "viewpoints", from)}:`, text(what))),
    ...groups(causes).map(({ cause, tell_apart, mended_by, gear, needs }, number) => {
      const drills = list(mended_by).map((id) => titled(names, "reference", "drill", id)).join(", ");
      const things = [...list(gear).map((id) => titled(names, "reference", "gear", id)), ...list(needs).map(text)].join(", ").toLowerCase();
      return marked(`${number + 1}. ${text(cause)}`, text(tell_apart), things && `Needs: ${things}.`, drills && `Drills: ${drills}.`);
    }),
    line({ class: "danger" }, text(refer_on)),
  ],
  gear: ({ hazards, not_for, care }, names) => [
    ...dangers(hazards, names),
    ...list(not_for?.people).map((whom) => marked("Not for:", text(whom))),
    ...(care ? [marked("Care:", text(care))] : []),
  ],
  benchmark: ({ distance, protocol = {}, safety }, names) => {
    const pool = text(distance) && `${text(distance)} in a ${text(protocol.course) || "…"} pool.`;
    return [
      line({}, pool, text(protocol.start) && ` ${text(protocol.start)}`),
      ...list(protocol.steps).map((step, number) => marked(`${number + 1}.`, text(step))),
      ...dangers(safety, names),
    ];
  },
  progression: ({ stages }) =>
    groups(stages).map(({ title, aim, move_on_when: next }, number) =>
      marked(`${number + 1}. ${text(title)}.`, text(aim), text(next) && `On when: ${text(next)}`),
    ),
  set: ({ items, course, safety }, names) => {
    const total = totalWords(items, course, names);
    return [...boardLines(items, names), ...(total ? [line({ class: "total" }, total)] : []), ...dangers(safety, names)];
  },
  practice: ({ slot = {}, parts, safety }, names) => [
    line({}, text(slot.start) && `${text(slot.start)}, ${text(slot.minutes) || "…"} minutes.`),
    ...groups(parts).flatMap((part) => partOf(part, names)),
    ...dangers(safety, names),
  ],
  block: ({ weeks }, names) =>
    groups(weeks).map(({ focus, days = {}, taper }, number) => {
      const told = Object.entries(days).map(([day, held]) => dayWords(day, held ?? {}, names));
      return marked(`Week ${number + 1}${taper ? ", taper" : ""}:`, text(focus), told.join("; "));
    }),
  log: ({ practice, on, start, groups: whose, minutes, metres, heads, rating, changed, note }, names) => [
    line({}, [titled(names, "reference", "practice", practice), text(on), text(start)].filter(Boolean).join(", ")),
    line({}, list(whose).map((id) => titled(names, "reference", "lane_group", id)).join(", ")),
    line({}, [[minutes, "minutes"], [metres, "metres"], [heads, "swimmers"], [rating, "of 10"]]
      .filter(([value]) => text(value)).map(([value, what]) => `${value} ${what}`).join(", ")),
    ...list(changed).map((what) => marked("Changed:", text(what))),
    line({}, text(note)),
  ],
};

/**
 * Show the card of an entry of a kind in `place`.
 * @param {Element} place
 * @param {string} kind
 * @param {Entry} entry
 * @param {Names} names
 */
export function showCard(place, kind, entry, names) {
  const head = make(
    "div",
    { class: "add-card-head" },
    line({ class: "add-card-kind" }, names.kinds[kind].title),
    line({ class: "add-card-title" }, text(entry.title) || "…"),
  );
  const lead = text(entry.summary) ? [line({ class: "lead" }, text(entry.summary))] : [];
  place.replaceChildren(head, ...lead, ...BODIES[kind](entry, names).filter((part) => part.textContent));
}
