// What the run data of a proposal tell: what is swum of each piece, in its row; the dangers; what is run by taps.

import { all, make, one } from "../lib/dom.js";
import { many } from "../run/words.js";
import { sumOf, swumOf } from "./amounts.js";
import { whose as forWhom } from "./names.js";
import { swimOfPart } from "./swim.js";

/** @import {Hazard, Proposal, RunData} from "./types.js" */

const DEEPEST = 2;

/** A line of what is swum, and who swims it where not all do.
 * @param {{whose?: string, said: string, goes?: string, depth?: number}} line `depth`: in how many rounds */
const swimLine = ({ whose = "", said, goes = "", depth = 0 }) =>
  make("span", { class: `depth-${Math.min(depth, DEEPEST)}` }, make("span", {}, ...(whose ? [make("span", { class: "make-whose" }, `${whose}:`), " "] : []), said), goes ? make("span", { class: "make-goes" }, goes) : "");

/** Show in each row what is swum.
 * @param {HTMLElement} box
 * @param {Omit<RunData, "version">} run
 * @param {Proposal} proposal */
function showSwims(box, { parts, crews }, proposal) {
  all(".make-swim", box).forEach((own, place) => {
    const { lines, more } = swimOfPart(parts.filter(({ number }) => number === place + 1), crews);
    const shown = [...lines.map(swimLine), ...(more ? [swimLine({ said: `and ${many(more, "line")} more` })] : [])];
    own.replaceChildren(...(lines.some(({ said, whose }) => whose || said !== proposal.parts[place].title) ? shown : []));
  });
}

/** Beside the distance of the whole what of it is swum by time, so that nobody knows how far: of who has most of it.
 * @param {Omit<RunData, "version">} run */
function byTimeWords({ parts, crews }) {
  const most = Math.max(0, ...crews.map(({ key }) => sumOf(parts.filter((part) => part.crews[key]).map((part) => swumOf(part, key, "m")))?.unknown ?? 0));
  return most ? ` · and ${most} by time, of unknown distance` : "";
}

/** The dangers, the gravest open.
 * @param {Hazard[]} hazards */
function dangers([first, ...others]) {
  if (!first) {
    return [];
  }
  const line = (/** @type {Hazard} */ { title, gravity, control }) => make("li", {}, make("strong", {}, title), gravity ? make("span", { class: "from" }, ` ${gravity}`) : "", control ? ` ${control}` : "");
  const more = others.length ? [make("details", {}, make("summary", {}, `and ${others.length} more`), make("ul", {}, ...others.map(line)))] : [];
  return [make("section", { class: "danger", "aria-label": "Danger" }, make("p", {}, make("strong", {}, first.title), ` ${first.control ?? ""}`), ...more)];
}

/** What is run without times, and why.
 * @param {import("./between.js").Made} made */
function tappedWords({ tapped, isRead }) {
  const [whose, they] = tapped.length === 1 ? ["its", "it is"] : ["their", "they are"];
  const why = isRead ? `So often, ${whose} times are not known.` : `What ${they} run by could not be fetched: make the practice again with a signal, or keep the site on this phone.`;
  return tapped.length ? `Run by taps, without times: ${tapped.map(({ title }) => title).join(", ")}. ${why}` : "";
}

/** Where it is not yet, what the file is, and for whom it was made where that is not the whole squad.
 * @param {Pick<import("./between.js").Told["make-made"], "data" | "asked" | "file">} own */
function savedWords({ data, asked, file }) {
  const has = file ? `The head coach’s repository has “${file.title}” as it was, and nothing that is changed here. The file is a new entry, with what was not changed word for word,`
    : "The head coach’s repository does not have this practice yet. The file is an entry", { groups = [] } = asked.request, isPartly = groups.length > 0 && groups.length < data.squad.groups.length;
  return `${has} for plans/practices: who looks after the repository puts it there${
    isPartly ? `; it was made for ${forWhom(data, { ...asked, start: "" }).split(" · ")[0]} alone, and check says whether it suits the others of ${data.squad.title}` : ""}.`;
}

/** Show it.
 * @param {import("./between.js").Told["make-made"]} own */
export function showMade({ box, made, proposal, ...own }) {
  one("[data-saved]", box).textContent = savedWords(own);
  const { run, tapped } = made;
  showSwims(box, run, proposal);
  one("[data-by-time]", box).textContent = byTimeWords(run);
  one("[data-danger]", box).replaceChildren(...dangers(run.hazards ?? []));
  const told = one("[data-tapped]", box);
  told.textContent = tappedWords(made);
  told.hidden = !tapped.length;
}
