// A composed practice on paper: a sheet for each lane group, with its send-offs, its gear, and every danger.

import { make } from "../lib/dom.js";
import { count, crewName, laneList } from "../run/words.js";
import { sumOf, swumOf, swumWords } from "./amounts.js";
import { boardLines } from "./board.js";
import { at, eachTime } from "./goes.js";

/** @import {Block, Data, Item, Proposal, RunData, WrittenPart} from "./types.js" */
/** @import {Part, RepBlock} from "../run/types.js" */

/** @typedef {{focus: string, where: string, day: string, gear: string[], adults: number, printed: string, unit: string, isKnown: (part: number) => boolean,
 *   titles: Map<string, string>}} Told `isKnown`: whether the distance of a part is, in this pool; `titles`: of gear */

const DEEPEST = 3, MINUTE_S = 60;

/** What is said of reps beside their line: how hard, with what that it does not name, in what time; then the note.
 * @param {RepBlock} reps
 * @param {Item} item
 * @param {string} said
 * @param {Told["titles"]} titles */
function besides(reps, { effort = "", gear = [], how = "", note = "" }, said, titles) {
  const target = eachTime(reps.target), unsaid = gear.map((id) => titles.get(id) ?? id).filter((title) => !said.toLowerCase().includes(title));
  const told = [effort, ...unsaid, how, target && `in ${target}`].filter(Boolean).join(", ");
  return [told ? `, ${told}` : "", ...(note ? [make("span", { class: "note" }, note)] : [])];
}

/** The lines of a part.
 * @param {Block[]} blocks
 * @param {Item[]} items
 * @param {Told["titles"]} titles */
const lines = (blocks, items, titles) => boardLines(blocks, items).map(({ said, goes, depth, reps }) =>
  make("div", { class: `make-line depth-${Math.min(depth, DEEPEST)}` },
    make("span", {}, reps || !goes ? make("b", {}, said) : said, ...(reps ? besides(reps, items[reps.item], said, titles) : [])),
    ...(goes ? [make("span", { class: "make-go-at" }, goes)] : [])));

/** How far and how long a part is for a crew, and when it ends; what is not known is left out.
 * @param {string} start
 * @param {Part} part
 * @param {string} key of the crew
 * @param {import("./amounts.js").Swum | null} swum
 * @param {string} unit */
function facts(start, { starts_s: begins, crews }, key, swum, unit) {
  const ends = crews[key].ends_s;
  const isTimed = typeof begins === "number" && typeof ends === "number";
  return [swum ? swumWords(swum, unit) : "", isTimed ? `${Math.max(1, Math.round((ends - begins) / MINUTE_S))} min, to ${at(start, ends)}` : ""].filter(Boolean).join(", ");
}

/** What is said of a part that stands as it is written: where and who leads it, whose lanes, who is needed, what else.
 * @param {Part} part
 * @param {string} key of the crew */
function besidesOf({ place, led_by: leads, note, helpers = [], crews }, key) {
  const { lanes = [], waits_s: waits = 0 } = crews[key], where = [place, lanes.length ? `lanes ${laneList(lanes)}` : "", leads ? `led by ${leads.toLowerCase()}` : "", ...helpers, waits >= MINUTE_S ? `then waits ${count(Math.round(waits))}` : ""].filter(Boolean).join("; ");
  return [...(where ? [make("div", { class: "make-line" }, where)] : []), ...(note ? [make("div", { class: "make-line" }, make("span", { class: "note" }, note))] : [])];
}

/** A sheet.
 * @param {Omit<RunData, "version">} run
 * @param {RunData["crews"][number]} crew
 * @param {Told} told */
function sheet(run, crew, { focus, where, day, gear, adults, printed, unit, isKnown, titles }) {
  const start = run.start ?? "";
  const parts = run.parts.filter(({ crews }) => crews[crew.key]);
  const swum = parts.map((part) => (isKnown(part.number - 1) ? swumOf(part, crew.key, unit) : null));
  const whole = sumOf(swum);
  const ends = typeof run.ends_s === "number" ? [`done ${at(start, run.ends_s)}`] : [];
  return make("section", { class: "make-sheet" },
    make("h2", {}, run.title),
    make("p", { class: "make-printed" }, printed),
    make("p", {}, make("b", {}, focus)),
    make("p", {}, make("b", {}, crewName(crew)), ["", where, `${day}, ${start} to ${at(start, MINUTE_S * (run.minutes ?? 0))}`, ...(whole ? [swumWords(whole, unit)] : []), ...ends, adults === 1 ? "1 adult" : `${adults} adults`].join(" · ")),
    ...(gear.length ? [make("p", {}, make("b", {}, "Gear: "), gear.join(", "))] : []),
    ...parts.map((part, k) => make("div", { class: "make-part" },
      make("h3", {}, make("time", {}, at(start, part.starts_s ?? 0)), ` ${part.title}`, make("span", { class: "make-facts" }, facts(start, part, crew.key, swum[k], unit))), ...besidesOf(part, crew.key), ...lines(part.crews[crew.key].blocks, part.items, titles))),
    make("ul", { class: "dangers" }, ...(run.hazards ?? []).map(({ title, control }) => make("li", {}, make("strong", {}, title), control ? ` ${control}` : ""))));
}

const pages = new CSSStyleSheet();

/** Whose a page is and which of these, at its foot, where a browser writes there: `counter(page)` would count over the sheets of all.
 * @param {Omit<RunData, "version">} run */
function tellPages({ crews, title }) {
  const text = (/** @type {string} */ words) => `"${words.replace(/["\\\n]/g, "\\$&")}"`, style = "font: 11pt sans-serif; vertical-align: top";
  pages.replaceSync(crews.map((crew, k) => `.make-sheet:nth-child(${k + 1}) { page: sheet-${k}; }
    @page sheet-${k} { counter-increment: sheet-${k}; margin-bottom: 13mm; @bottom-left { content: ${text(`${crewName(crew)} · ${title}`)}; ${style}; } @bottom-right { content: "page " counter(sheet-${k}); ${style}; } }`).join("\n"));
  if (!document.adoptedStyleSheets.includes(pages)) {
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, pages];
  }
}

/** What is in use at once, of each piece of gear the most that a part asks for.
 * @param {{data: Data, proposal: Proposal, written: (WrittenPart | null)[]}} own */
export function gearWords({ data, proposal, written }) {
  /** @type {Map<string, number>} */
  const most = new Map();
  const needs = (/** @type {string} */ title, /** @type {number} */ used) => most.set(title, Math.max(most.get(title) ?? 0, used));
  proposal.parts.forEach(({ gear }, place) => {
    gear.forEach(({ id, in_use: used }) => needs(data.gear.find(([known]) => known === id)?.[1] ?? id, used));
    written[place]?.gear?.forEach(([known, used]) => needs(data.gear[known][1], used));
  });
  return [...most].map(([title, used]) => `${used} × ${title.toLowerCase()}`);
}

/**
 * The sheets, one for each crew.
 * @param {Omit<RunData, "version">} run
 * @param {Told} told
 * @returns {HTMLElement[]}
 */
export function sheets(run, told) {
  tellPages(run);
  return run.crews.map((crew) => sheet(run, crew, told));
}
