// Pages that stand beside what is found: where a practice is asked for, the one that makes it; where no lane has room, what is done then; where it
// is asked what something is, the one that explains words; where gear is away, what is done
// without; where somebody's life is in danger, before all else what to do. Pure.

import { stems } from "../lib/words.js";
import { isInDanger } from "./alarms.js";

/** @import {Asked, Entry, Fit, Group} from "./list.js" */
/** @import {Question} from "./question.js" */

/** @typedef {{question: Question, meant: string, fit: (entry: Entry) => Fit, groups: Group[], alarms: string[]}} Heard what is asked, as it is typed and with
 *   what is misspelt mended, with the lane groups of the club, and what is typed where somebody's life is in danger */

const MAKES = "make.html";
const EXPLAINS = "words.html";
const WHAT_IS = /^what(?:['’]?s| is| are) (?:an? )?(?<what>(?!(?:on|next|new|wrong|this|that|it|up|best|safe|allowed|happening|the|your|my|our|good|right|left|today|tonight|too|so)\b)[\p{L}/-]+(?: [\p{L}/-]+)?)\s*\??$/u;
const APART = /\b(?:difference|differences) between (?<first>[\p{L}/-]+(?: [\p{L}/-]+)?) and \b|\b(?:meaning|definition) of (?:an? |the )?(?<of>[\p{L}/-]+(?: [\p{L}/-]+)?)/u;
const IN_AN_EMERGENCY = "safety.html#in-an-emergency";
const GEAR_AWAY = "otherwise.html#no-gear";
const LEFT_OVER = "otherwise.html#minutes-left";
const NARROW = "otherwise.html#half-the-pool";
const CROWDED = "otherwise.html#too-many";
const LATEST = 2; // the place, from 0, that is still among the first three
const PRACTICE = "practice";
const LOOKED_AT = 10; // the first hits, by which it is said that no lane has room
const TOO_MANY = 1.5; // how many times as many in a lane as the fullest lane group has are too many for any

/** Where a page that makes a practice stands: after practices that fit as they are and are for my groups, and still among the first three.
 * @type {(hits: Entry[], fit: (entry: Entry) => Fit) => number} */
function behindWhatFits(hits, fit) {
  const first = hits.slice(0, LATEST).findIndex((entry) => {
    const { fits, cut, isForOthers, crowded } = fit(entry);
    return entry.kind !== PRACTICE || !fits || cut || isForOthers || crowded;
  });
  return first < 0 ? Math.min(LATEST, hits.length) : first;
}

/** Where the words stand of what it is asked what it is: after pages of that name, and still among the first three.
 * @type {(hits: Entry[], what: string) => number} */
function behindItsName(hits, what) {
  const sought = stems(what);
  const other = hits.slice(0, LATEST).findIndex(({ title, also }) => !sought.every((term) => stems(`${title} ${also}`).includes(term)));
  return other < 0 ? Math.min(LATEST, hits.length) : other;
}

/** @type {(hits: Entry[], guide: Entry | undefined, at: number) => Entry[]} */
function placed(hits, guide, at) {
  const stands = guide ? hits.indexOf(guide) : -1;
  const others = hits.filter((entry) => entry !== guide);
  return guide && (stands < 0 || stands > at) ? [...others.slice(0, at), guide, ...others.slice(at)] : hits;
}

/** The page of an address, where the site has it.
 * @type {(entries: Entry[], href: string) => Entry | undefined} */
const page = (entries, href) => (href ? entries.find((entry) => entry.href === href) : undefined);

/** @typedef {[href: string, at: number]} Guide its address, "" for none, and its place from 0 */

/** The pages that minutes and room lead to.
 * @type {(hits: Entry[], asked: Asked, heard: Heard) => Guide[]} */
function ofRoom(hits, asked, { question: { lanes, swimmers }, fit, groups }) {
  const inLane = lanes && swimmers ? swimmers / lanes : 0;
  const isCrowded = inLane > TOO_MANY * Math.max(...groups.map((group) => group.heads / group.lanes)) || (inLane > 0 && hits.slice(0, LOOKED_AT).every((entry) => fit(entry).crowded));
  const isNarrow = asked.isRoomAlone && !swimmers && !hits.slice(0, LOOKED_AT).some((entry) => entry.kind === PRACTICE && fit(entry).fits);
  return [[isNarrow ? NARROW : "", Math.min(LATEST, hits.length)], [asked.isPractice ? MAKES : "", behindWhatFits(hits, fit)], [isCrowded ? CROWDED : "", 0]];
}

/** What a text asks the meaning of; "" where it does not.
 * @param {string} text */
function meaningIn(text) {
  const { what, first, of } = { ...WHAT_IS.exec(text)?.groups, ...APART.exec(text)?.groups };
  return what || first || of || "";
}

/** The page of words, where the meaning of one is asked.
 * @type {(hits: Entry[], text: string) => Guide[]} */
function ofWords(hits, text) {
  const what = meaningIn(text);
  return [[what && EXPLAINS, behindItsName(hits, what)]];
}

/**
 * Hits with the pages that belong beside them, where minutes, room, a meaning or help were asked for in words; and those pages, which are as sure as
 * what fits.
 * @param {Entry[]} hits in order
 * @param {Entry[]} entries
 * @param {Asked} asked
 * @param {Heard} heard
 * @returns {{hits: Entry[], guides: Entry[]}}
 */
export function withGuides(hits, entries, asked, heard) {
  const { asked: text, minutes, lanes, swimmers, isAway, isOver, isToMake } = heard.question, words = text.trim().toLowerCase();
  const isOfRoom = (minutes ?? lanes ?? swimmers) !== null;
  const isDanger = [words, heard.meant.toLowerCase()].some((own) => isInDanger(own, heard.alarms));
  /** @type {Guide[]} the later one stands before the others */
  const guides = [
    [isOver ? LEFT_OVER : "", Math.min(LATEST, hits.length)],
    [isAway ? GEAR_AWAY : "", Math.min(LATEST, hits.length)],
    [isToMake ? MAKES : "", 0],
    ...(isOfRoom ? ofRoom(hits, asked, heard) : ofWords(hits, words)),
    [isDanger ? IN_AN_EMERGENCY : "", 0],
  ];
  const known = guides.map(([href, at]) => /** @type {const} */ ([page(entries, href), at]));
  return { hits: known.reduce((all, [guide, at]) => placed(all, guide, at), hits), guides: known.flatMap(([guide]) => guide ?? []) };
}

/** What is shown as found, and what is told of words that nothing has: in an emergency nothing, for nothing stands before what to do.
 * @type {(own: {found: Entry[], unknown: string}, hits: Entry[], guides: Entry[]) => {shown: Entry[], unknown: string}} */
export const besideGuides = ({ found, unknown }, hits, guides) =>
  (guides.some(({ href }) => href === IN_AN_EMERGENCY) ? { shown: hits, unknown: "" } : { shown: found, unknown });
