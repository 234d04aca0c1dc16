// A proposal: a row a piece, with one button that opens what may be done with it. Nothing is dragged.

import { askedOf } from "../compose/chosen.js";
import { isHeld } from "../compose/pieces.js";
import { all, make, root, tool } from "../lib/dom.js";
import { count, many } from "../run/words.js";
import { at, minutesOf } from "./goes.js";
import { pieceOf } from "./places.js";

/** @import {Data, Part, Proposal, Request, WrittenPart} from "./types.js" */
/** @import {Chosen, Deed} from "../compose/types.js" */

/** @typedef {{own: string, written: (WrittenPart | null)[], open: string, before: Proposal | null, act: (deed: Deed) => void, onOpen: (role: string) => void}} Ways `open`: the role whose ways
 *   stand open; `before`: it before the last change; `own`: what the entry is called, whose own parts need not say so;
 *   `written`: what of it each piece is, as it stands there */

const MINUTE_S = 60;
const FOLDERS = { set: "sets", part: "practices", drill: "drills", held: "practices" };
const WHOLE = { set: "The set", part: "The whole practice", drill: "The drill", held: "Its page" };
/** @type {Record<string, string>} why nothing changes places with a part */
const STAYS = { end: "stays where it is, for it begins or ends at the far end", land: "stays where it is, for it is on land", test: "stays where it is: tests come fresh" };

/** Seconds as they are shown, a begun one whole.
 * @param {number} seconds */
export const clock = (seconds) => count(Math.ceil(seconds));

/** @param {Data} data
 * @param {Part} part */
export function often(data, part) {
  const { written } = pieceOf(data, part.piece);
  return part.of && written !== part.number ? `${many(part.number, part.of.slice(0, -1))}, written ${written}` : "";
}

/** How much longer or shorter a piece is than before the last change.
 * @param {Part} part
 * @param {Proposal | null} before */
function longer(part, before) {
  const was = before?.parts.find(({ piece }) => piece === part.piece) ?? before?.parts.find(({ as }) => as === part.as), more = part.takes_s - (was?.takes_s ?? part.takes_s);
  const seconds = Math.round(Math.abs(more));
  return seconds ? `${count(seconds)} ${more > 0 ? "longer" : "shorter"}` : "";
}

/** Where a piece stands that is done here.
 * @param {Data} data
 * @param {Part} part */
function pageOf(data, part) {
  const { of, id } = pieceOf(data, part.piece);
  return new URL(`${FOLDERS[of]}/${id}.html`, root).href;
}

/** Whether a deed may come of something, whatever the rest is: a practice begins with its warm-up, ends with its cool-down and has a main set.
 * @param {Deed["do"]} deed
 * @param {Part} part
 * @param {Part[]} parts
 * @param {Ways["written"]} written */
function canEver(deed, part, parts, written) {
  const place = parts.indexOf(part), isInside = (/** @type {number} */ one) => one > 0 && one < parts.length - 1;
  if (deed === "up" || deed === "down") {
    return [place, place + (deed === "up" ? -1 : 1)].every((one) => isInside(one) && !written[one]?.stays);
  }
  if (deed !== "out") {
    return !isHeld(part.as);
  }
  return isInside(place) && (isHeld(part.as) ? written[place]?.stays !== "end" : part.as !== "m" || parts.some(({ as }) => as === "n"));
}

/** Why a part stands as it is written.
 * @param {WrittenPart | null} written */
const heldWords = (written) => [`${written?.why || "on its page"}, and is swapped for nothing`, STAYS[written?.stays ?? ""]].filter(Boolean).join("; ");

/**
 * @param {Data} data
 * @param {Part} part
 * @param {number} minutes
 * @param {Part[]} parts
 * @param {boolean} isKept
 * @param {Ways} deeds
 */
function row(data, part, minutes, parts, isKept, deeds) {
  const id = `make-ways-${part.as}`;
  const isOpen = deeds.open === part.as;
  /** @type {[Deed["do"], string][]} */
  const every = [["swap", "Swap"], isKept ? ["free", "Free"] : ["keep", "Keep"], ["up", "Up"], ["down", "Down"], ["out", "Take out"]];
  const ways = every.filter(([deed]) => canEver(deed, part, parts, deeds.written));
  const panel = make("div", { class: "make-ways", id }, ...ways.map(([deed, title]) => tool(title, () => deeds.act({ do: deed, role: part.as }), { "data-do": deed, "aria-label": `${title}: ${part.title}` })),
    make("a", { class: "tool", href: pageOf(data, part) }, WHOLE[pieceOf(data, part.piece).of]));
  panel.hidden = !isOpen;
  const opener = tool("Change", () => {
    const opens = panel.hidden;
    for (const other of all("[data-role]", /** @type {HTMLElement} */ (own.parentElement))) { // one at a time
      const isNow = opens && other === own;
      other.classList.toggle("is-open", isNow);
      all("[aria-expanded]", other)[0].setAttribute("aria-expanded", String(isNow));
      all(".make-ways", other)[0].hidden = !isNow;
    }
    deeds.onOpen(opens ? part.as : "");
  }, { "aria-expanded": String(isOpen), "aria-controls": id, "aria-label": `Change ${part.role.toLowerCase()}: ${part.title}` });
  const changed = longer(part, deeds.before), title = part.title.replace(` of “${deeds.own}”`, "");
  const here = deeds.written[parts.indexOf(part)];
  const why = isHeld(part.as) ? `${part.role}: ${heldWords(here)}` : here ? `As on its page${isKept ? "; kept" : ""}` : `${part.role}: ${[often(data, part), ...part.why, isKept ? "kept" : ""].filter(Boolean).join("; ")}`;
  const own = make("li", { "data-role": part.as, class: isOpen ? "is-open" : "" },
    make("span", { class: "make-minutes" }, String(minutes), make("span", { class: "unseen" }, minutes === 1 ? " minute" : " minutes")),
    make("span", { class: "make-what" }, make("b", {}, title)), opener, make("div", { class: "make-swim" }), make("span", { class: "about" }, ...(changed ? [make("span", { class: "make-size" }, `${changed}. `)] : []), why), panel);
  return own;
}

/**
 * The rows of a proposal.
 * @param {Data} data
 * @param {Proposal} proposal
 * @param {Chosen[]} chosen
 * @param {Ways} deeds
 */
export function rows(data, proposal, chosen, deeds) {
  const minutes = minutesOf(proposal.parts);
  return make("ol", { class: "make-rows", "aria-label": "Pieces, with their minutes" }, ...proposal.parts.map((part, place) => row(data, part, minutes[place], proposal.parts, Boolean(chosen.find(({ role }) => role === part.as)?.kept), deeds)));
}

/** The adults that it takes, and what for: for so many heads in the water, or, where more are at work at one moment, for what is done.
 * @param {Data} data
 * @param {Request} request
 * @param {Proposal} proposal */
function adultsWords(data, request, { adults }) {
  const asked = askedOf(data, request);
  const heads = asked.wishes.groups.reduce((sum, group) => sum + asked.wishes.heads[group], 0);
  return `takes ${many(adults, "adult")} ${adults > asked.adultsLeast ? "at the same moment" : `for ${many(heads, "head")}`}`;
}

/** What of the slot it takes, when it ends, how far, and who is needed.
 * @param {Data} data
 * @param {{request: Request, start: string}} asked
 * @param {Proposal} proposal
 * @param {string} unit */
export const total = (data, { request, start }, proposal, unit) => [
  `${clock(proposal.takes_s)} of ${request.minutes} min`, ...(start ? [`ends ${at(start, MINUTE_S * Math.ceil(proposal.takes_s / MINUTE_S))}`] : []),
  `${proposal.distance} ${unit}`, adultsWords(data, request, proposal),
].join(" · ");
