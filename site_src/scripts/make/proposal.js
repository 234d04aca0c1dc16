// What was proposed, as it is shown: what is in the way before all else, then the rows, the dangers, and what may be done with it.

import { all, make, tool } from "../lib/dom.js";
import { today } from "../lib/today.js";
import { sentence } from "./answer.js";
import { slotUntil, wayPast, without } from "./asked.js";
import { at } from "./goes.js";
import { whose } from "./names.js";
import { titleNow } from "./deeds.js";
import { rows, total } from "./rows.js";
import { adultsOf, isEntry, placesOf } from "./opened.js";

/** @import {Asked} from "./asked.js" */
/** @import {Data, File, Practice, Proposal, Request} from "./types.js" */
/** @import {Answer, Deed} from "../compose/types.js" */

/** @typedef {{minutes: number, start?: string}} Slot */
/** @typedef {{practice: Practice, proposal: Proposal}} Stand a proposal as it stands after changes */
/** @typedef {{said: string, besides: string, way: "" | "back" | "ok", before?: Proposal, out?: () => void}} Told what the last change moved, or why it could not be; `besides`: what of it
 *   the row shows as well; `way`: of a change the way back, of what could not be none but to have read it; `before`: the proposal before it; `out`: to take out what is too long */
/** @typedef {{data: Data, asked: Asked, answer: Answer, stand: Stand | null, file: File | null, told: Told, open: string, isOwn: boolean, unopened: string}} Shown
 *   `open`: the role whose ways stand open; `isOwn`: whether it came changed; `file`: the practice that
 *   was opened; `unopened`: why an entry is not what is shown */
/** @typedef {{ask: (request: Request) => void, show: (number: number) => void, change: (deed: Deed) => void, fit: (slot: Slot) => void, takeBack: () => void, read: () => void, onOpen: (role: string) => void,
 *   again: () => void, run: () => void, print: () => void, save: () => void, hand: () => void}} Deeds */

/** @type {Map<string, string>} the wish that is no longer met where a role is taken out */
const GONE = new Map([["s", "skill"], ["e", "relief"]]);
const MINUTE_S = 60, MINUTE_STEP = 5;
const LONG = 70; // letters of what moved that stand beside Take back in two lines of a phone

/** @param {Data} data */
const goalTitle = (data) => (/** @type {string} */ goal) => data.goals.find(([id]) => id === goal)?.[1] ?? goal;

/** Wishes that are not met, in a word each.
 * @param {Data} data
 * @param {Proposal["unmet"]} unmet */
export function shortUnmet(data, unmet) {
  /** @type {Record<string, string>} */
  const words = { skill: "a skill", relief: "relief", slot: "the whole slot" };
  const word = (/** @type {Proposal["unmet"][number]} */ { wish, which }) => words[wish] ?? [...data.goals, ...data.efforts].find(([id]) => id === which)?.[1].toLowerCase() ?? wish;
  return unmet.map(word).join(", ");
}

/** A wish that is not met, whatever is in its way.
 * @param {Proposal["unmet"][number]} own */
const keyOf = ({ wish, which }) => `${wish} ${which}`;

/** What a change moved: in view as short as can be, for what is told of a row that stands open is read there.
 * @param {Data} data
 * @param {Proposal} before
 * @param {import("../compose/types.js").Changed} changed
 * @param {Partial<Deed>} [deed] none where it was given other minutes
 * @returns {Told} */
export function movedWords(data, before, { proposal, words }, { do: deed, role } = {}) {
  const another = `${proposal.parts.find(({ as }) => as === role)?.role.toLowerCase()} now `;
  const told = words.filter((own) => deed !== "swap" || !own.startsWith(another));
  const known = before.unmet.map(keyOf);
  const gone = deed === "out" ? GONE.get(role ?? "") : ""; // told as taken out
  const missed = shortUnmet(data, proposal.unmet.filter((own) => own.wish !== "slot" && own.wish !== gone && !known.includes(keyOf(own))));
  const whole = [...told, ...(missed ? [`not met now: ${missed}`] : [])];
  const short = whole.join("; ").length > LONG ? whole.filter((own) => !/ (longer|shorter)$/.test(own)) : whole;
  return { said: sentence(short.join("; ")), besides: sentence(words.filter((own) => !short.includes(own)).join("; ")), way: "back", before };
}

/** A wish that is in the way, and the button without it.
 * @param {string} words
 * @param {import("./asked.js").Way | null} way
 * @param {Deeds} deeds */
const hindering = (words, way, deeds) => make("li", {}, make("p", {}, words), ...(way ? [tool(way.title, () => deeds.ask(way.request))] : []));

/** @param {Shown} shown
 * @param {Deeds} deeds */
function nothing({ data, asked, answer }, deeds) {
  const found = answer.hinders.map((own) => hindering(own.words, without(asked.request, own, goalTitle(data), data.squad.groups), deeds));
  return [make("div", { class: "make-hinders" }, make("p", { role: "alert" }, make("b", {}, "Nothing fits.")), make("ul", {}, ...found)), make("p", { class: "tools" }, tool("Questions", deeds.again))];
}

/** Wishes that are not met; of an entry nobody wished for anything, and only a slot that a change has left is told.
 * @param {{asked: Asked, stand: Stand | null}} shown */
const unmetOf = ({ asked, stand }) => (stand?.proposal.unmet ?? []).filter(({ wish }) => !isEntry(asked) || (wish === "slot" && Boolean(stand?.practice.out.length)));

/** @param {Shown} shown
 * @param {Deeds} deeds */
function hinders({ data, asked, stand, unopened }, deeds) {
  const unmet = unmetOf({ asked, stand }).map((own) => hindering(own.words, wayPast(asked.request, own, goalTitle(data)), deeds)) ?? [];
  const found = [...(unopened ? [hindering(unopened, null, deeds)] : []), ...unmet];
  return found.length ? [make("div", { class: "make-hinders" }, make("ul", {}, ...found))] : [];
}

/** @param {Shown} shown
 * @param {Deeds} deeds */
function moved({ told: { said, besides: more, way, out } }, deeds) {
  const words = make("p", { class: "make-moved", role: "status" }, said, ...(more ? [make("span", { class: "unseen" }, ` ${more}`)] : []));
  const button = way === "back" ? [tool("Take back", deeds.takeBack, { "data-back": "" })] : way === "ok" ? [...(out ? [tool("Take out", out)] : []), tool("OK", deeds.read, { "data-back": "" })] : [];
  return make("div", { class: said ? "make-told is-told" : "make-told" }, words, ...button);
}

/** Shorter or longer, by minutes or until a time of day.
 * @param {Asked} asked
 * @param {Deeds} deeds */
function slot({ request: { minutes }, on, start }, deeds) {
  const until = make("input", { type: "time", id: "make-end", autocomplete: "off", value: start && at(start, MINUTE_S * minutes) });
  const by = (/** @type {string} */ title, /** @type {number} */ more, /** @type {string} */ words) => tool(title, () => deeds.fit({ minutes: minutes + more }), { "data-do": title, "aria-label": words });
  return make("p", { class: "make-field make-slot", "data-role": "slot" }, by("−5", -MINUTE_STEP, "Five minutes less"), by("+5", MINUTE_STEP, "Five minutes more"),
    make("label", { for: "make-end" }, "until"), until, tool("Fit", () => deeds.fit(slotUntil(new Date(), { start, isToday: on === today, until: until.value, minutes })), { "data-do": "fit" }));
}

/** What is not met, in a word each, where it is run, printed or saved: the sentences are above the rows and out of view by then.
 * @param {Shown} shown */
function notMet({ data, asked, stand }) {
  const words = shortUnmet(data, unmetOf({ asked, stand }));
  return words ? [make("p", { class: "make-unmet" }, tool(`Not met: ${words}`, () => all(".make-hinders")[0]?.scrollIntoView({ block: "start" })))] : [];
}

/** @param {Shown} shown
 * @param {Deeds} deeds */
function besides({ data, asked, stand, file }, deeds) {
  const named = stand ? [make("p", { class: "make-named" }, "Saved, it is called ", make("b", {}, titleNow({ data, asked, stand, file })), ". Every lane hears: ", make("b", {}, file?.focus ?? stand.proposal.focus))] : [];
  return [
    ...named, make("div", { class: "tools" }, tool("Run", deeds.run, { class: "tool is-main", "data-run": "" }), tool("Print", deeds.print), tool("Save as a file", deeds.save), tool("Hand on", deeds.hand)),
    make("div", { "data-handed": "" }),
    make("p", { class: "hint", "data-saved": "" }),
  ];
}

/** What of the practice that is opened each part is, as it stands there.
 * @param {Pick<Shown, "data" | "file"> & {stand: Stand}} shown */
export const writtenOf = ({ data, file, stand }) => placesOf(data, file, stand.practice).map((part) => file?.parts[part] ?? null);

/** The page of one proposal.
 * @param {Shown} shown
 * @param {Deeds} deeds
 * @returns {Node[]} */
export function page(shown, deeds) {
  const { data, asked, answer, stand, file } = shown;
  const count = answer.proposals.length;
  const head = [make("p", { class: "lead" }, whose(data, asked)), ...file ? [] : [make("p", { class: "make-asked" }, `${asked.request.minutes} minutes: ${asked.request.goals.map(goalTitle(data)).join(", ").toLowerCase()}`)]];
  if (!stand) {
    return [...head, ...nothing(shown, deeds)];
  }
  const own = file?.title ?? "";
  const turn = (/** @type {string} */ title, /** @type {number} */ to) => (to >= 1 && to <= count ? [tool(title, () => deeds.show(to))] : []);
  return [
    ...head, ...hinders(shown, deeds),
    make("div", { class: "make-head" }, make("h2", { tabindex: "-1" }, own || (count > 1 ? `${asked.number} of ${count}` : "The one that fits")),
      make("span", { class: "make-turn" }, tool("Questions", deeds.again), ...(own ? [tool("Others", () => deeds.show(1))] : [...turn("Previous", asked.number - 1), ...turn("Next", asked.number + 1)]))),
    make("p", { class: "make-total" }, total(data, asked, { ...stand.proposal, adults: adultsOf(data, asked.request, file, stand) }, answer.unit), make("span", { "data-by-time": "" })),
    slot(asked, deeds), rows(data, stand.proposal, stand.practice.parts, { own, written: writtenOf({ data, file, stand }), open: shown.open, before: shown.told.before ?? null, act: deeds.change, onOpen: deeds.onOpen }), moved(shown, deeds),
    make("p", { class: "hint", "data-tapped": "", hidden: "" }), make("div", { "data-danger": "" }), ...notMet(shown), ...besides(shown, deeds),
  ];
}

/** Bring a row that is open into view with its ways, above what stands at the foot.
 * @param {HTMLElement} box */
export function bringOpen(box) {
  const [told] = all(".make-told", box), [row] = all(".make-rows > .is-open", box);
  box.style.setProperty("--told", `${told?.offsetHeight ?? 0}px`);
  row?.scrollIntoView({ block: "nearest" });
  all(".make-ways", row)[0]?.scrollIntoView({ block: "nearest" }); // of a row that is taller than the screen, its end
}

/** Where the focus was, by what it was on; it goes there again after the page is drawn anew.
 * @param {HTMLElement} box */
export function focusOf(box) {
  const own = document.activeElement;
  const role = own?.closest("[data-role]")?.getAttribute("data-role");
  const deed = own?.getAttribute("data-do");
  return () => {
    const ways = role ? [`[data-role="${role}"] [data-do="${deed}"]`, ...(deed ? [`[data-role="${role}"] [data-do=${deed === "keep" ? "free" : "keep"}]`] : []), `[data-role="${role}"] button`, "[data-back]"] : own?.hasAttribute("data-back") ? ["[data-back]", ".make-rows button"] : [];
    ways.flatMap((way) => all(way, box))[0]?.focus();
  };
}
