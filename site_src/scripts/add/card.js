// The deck card as it will look: what its reader must see first, from what has been filled in so far. Text is only ever text.

import { make } from "../lib/dom.js";
import { boardOf } from "./board.js";
import { isObject } from "./check.js";

const list = (value) => (Array.isArray(value) ? value : []);
const groups = (value) => list(value).filter(isObject);
const text = (value) => (typeof value === "string" || typeof value === "number" ? String(value) : "");

function line(attributes, ...pieces) {
  return make("p", attributes, ...pieces.filter((piece) => piece !== ""));
}

/** A line that begins with a word or title in bold. */
const marked = (head, ...rest) => line({}, make("strong", {}, head), ...rest.map((piece) => (piece ? ` ${piece}` : "")));

function danger({ hazard, control }) {
  return line({ class: "danger" }, make("strong", {}, text(hazard)), text(control) && ` ${text(control)}`);
}

/** The title of a word or an id, as the form's choices have it. */
function titled(names, keyword, name, id) {
  return (names[keyword][name] ?? []).find(([known]) => known === id)?.[1] ?? text(id);
}

function boardLines(items, names) {
  const lines = boardOf(items, names).map(({ depth, what, effort, gear, go, note }) => {
    const pieces = [make("span", { class: "what" }, what), effort && ` ${effort}`, gear && ` in ${gear}`];
    return line({ class: `depth-${Math.min(depth, 3)}` }, ...pieces, go ? make("span", { class: "go" }, ` ${go}`) : "", note ? make("span", { class: "note" }, text(note)) : "");
  });
  return lines.length ? [make("div", { class: "board" }, ...lines)] : [];
}

const BODIES = {
  drill: ({ cues, safety, goes_wrong }) => [
    make("ul", { class: "cues" }, ...list(cues).map((cue) => make("li", {}, text(cue)))),
    ...groups(safety).map(danger),
    ...groups(goes_wrong).map(({ see, say }) => marked(text(see), text(say) && `Say: ${text(say)}`)),
  ],
  fault: ({ see, causes, refer_on }, names) => [
    ...groups(see).map(({ from, what }) => marked(`${titled(names, "vocabulary", "viewpoints", from)}:`, text(what))),
    ...groups(causes).map(({ cause, tell_apart, mended_by }, number) => {
      const drills = list(mended_by).map((id) => titled(names, "reference", "drill", id)).join(", ");
      return marked(`${number + 1}. ${text(cause)}`, text(tell_apart), drills && `Drills: ${drills}.`);
    }),
    line({ class: "danger" }, text(refer_on)),
  ],
  gear: ({ hazards, not_for, care }) => [
    ...groups(hazards).map(danger),
    ...list(not_for).map((whom) => marked("Not for:", text(whom))),
    ...(care ? [marked("Care:", text(care))] : []),
  ],
  benchmark: ({ distance, protocol = {}, safety }) => [
    line({}, text(distance) && `${text(distance)} in a ${text(protocol.course) || "…"} pool.`, text(protocol.start) && ` ${text(protocol.start)}`),
    ...list(protocol.steps).map((step, number) => marked(`${number + 1}.`, text(step))),
    ...groups(safety).map(danger),
  ],
  progression: ({ stages }) =>
    groups(stages).map(({ title, aim, move_on_when }, number) => marked(`${number + 1}. ${text(title)}.`, text(aim), text(move_on_when) && `On when: ${text(move_on_when)}`)),
  set: ({ items, safety }, names) => [...boardLines(items, names), ...groups(safety).map(danger)],
  practice: ({ slot = {}, parts, safety }, names) => [
    line({}, text(slot.start) && `${text(slot.start)}, ${text(slot.minutes) || "…"} minutes.`),
    ...groups(parts).flatMap(({ part, set, items, note }) => [
      marked(titled(names, "vocabulary", "practice-parts", part), set ? titled(names, "reference", "set", set) : "", text(note)),
      ...boardLines(items, names),
    ]),
    ...groups(safety).map(danger),
  ],
  block: ({ weeks }, names) =>
    groups(weeks).map(({ focus, days = {}, taper }, number) => {
      const told = Object.entries(days).map(([day, { practice, rest, other } = {}]) => `${day} ${rest ? "rest" : practice ? titled(names, "reference", "practice", practice) : text(other)}`);
      return marked(`Week ${number + 1}${taper ? ", taper" : ""}:`, text(focus), told.join("; "));
    }),
};

/** Show the card of an entry of a kind in `place`. */
export function showCard(place, kind, entry, names) {
  const head = make("div", { class: "add-card-head" }, line({ class: "add-card-kind" }, names.kinds[kind].title), line({ class: "add-card-title" }, text(entry.title) || "…"));
  const lead = text(entry.summary) ? [line({ class: "lead" }, text(entry.summary))] : [];
  place.replaceChildren(head, ...lead, ...BODIES[kind](entry, names).filter((part) => part.textContent));
}
