// Pages that stand beside what is found: where a practice is asked for, the one that makes it; where no lane has room, what is done then; where it
// is asked what something is, the one that explains words. Pure.

/** @import {Asked, Entry, Fit, Group} from "./list.js" */
/** @import {Question} from "./question.js" */

const MAKES = "make.html";
const EXPLAINS = "words.html";
const WHAT_IS = /^what(?:['’]?s| is| are) (?:an? )?(?!(?:on|next|new|wrong|this|that|it|up|best|safe|allowed|happening|the|your|my|our|good|right|left|today|tonight|too|so)\b)[\p{L}/-]+(?: [\p{L}/-]+)?\s*\??$/u;
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

/** @type {(hits: Entry[], guide: Entry | undefined, at: number) => Entry[]} */
function placed(hits, guide, at) {
  const stands = guide ? hits.indexOf(guide) : -1;
  const others = hits.filter((entry) => entry !== guide);
  return guide && (stands < 0 || stands > at) ? [...others.slice(0, at), guide, ...others.slice(at)] : hits;
}

/**
 * Hits with the pages that belong beside them, where minutes, room or a meaning were asked for in words; and those pages, which are as sure as what fits.
 * @param {Entry[]} hits in order
 * @param {Entry[]} entries
 * @param {Asked} asked
 * @param {{question: Question, fit: (entry: Entry) => Fit, groups: Group[]}} heard with the lane groups of the club
 * @returns {{hits: Entry[], guides: Entry[]}}
 */
export function withGuides(hits, entries, asked, { question: { asked: text, minutes, lanes, swimmers }, fit, groups }) {
  /** @type {(href: string) => Entry[]} */
  const page = (href) => entries.filter((entry) => entry.href === href);
  if (minutes === null && lanes === null && swimmers === null) {
    const words = WHAT_IS.test(text.trim().toLowerCase()) ? page(EXPLAINS) : [];
    return { hits: placed(hits, words[0], LATEST), guides: words };
  }
  const maker = asked.isPractice ? page(MAKES) : [];
  const inLane = lanes && swimmers ? swimmers / lanes : 0;
  const isCrowded = inLane > TOO_MANY * Math.max(...groups.map((group) => group.heads / group.lanes)) || (inLane > 0 && hits.slice(0, LOOKED_AT).every((entry) => fit(entry).crowded));
  const advice = isCrowded ? page(CROWDED) : [];
  return { hits: placed(placed(hits, maker[0], behindWhatFits(hits, fit)), advice[0], 0), guides: [...maker, ...advice] };
}
