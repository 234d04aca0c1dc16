// What the shape of a practice costs, in points: how long each of its parts is, what warms up for the work, what eases and closes after it. Pure.
// Of composing/shape.py, number by number.

import { NO_SKILL, SKILL_FROM } from "./costs.js";
import { COOL_DOWN } from "./pieces.js";

/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./wishes.js").Sized} Sized */

// How much of a slot each part may take at no cost, in permille, and however long the slot is in tenths.
const WARM_LEAST = 140, WARM_MOST = 250, WARM_SOONEST = 2700, WARM_LONGEST = 12000;
const COOL_LEAST = 60, COOL_MOST = 110, COOL_SOONEST = 1200, COOL_LONGEST = 6000;
const EASY_MOST = 120, EASY_LONGEST = 7200;
const CLOSING_MOST = 160, CLOSING_LONGEST = 9600, CLOSING_SOON = 3000; // relief and cool-down together
const MAIN_LEAST = 280, MAIN_AT_ALL = 200, NO_REAL_MAIN = 2000; // under so much they are none, whatever goals they are for
const SKILL_MOST = 200, SKILL_LONGEST = 7200, SKILL_SOON = 4800;
const CHIEF_SKILL_MOST = 250, CHIEF_SKILL_LONGEST = 9000; // where it is what is wished for most
const IDLE_SKILL_LONGEST = 3600; // where it serves nothing
const STROKE_COLD = 40, COLD = 30, HOT = 60, LEGS = 500, LEGS_COLD = 60;
const NO_REST = 150, ALL_EVENING = 60;
export const CALM_LEGS = 300;
const TIRED = 150, NO_NEED = 30, OTHER_STROKE = 40;
const SCRAP = 90, SCRAP_UNDER = 1800, MORE_KICK = 60, ENDS_TWICE = 200;
const SAME_SWIM = 120;

/** Two points for each permille of the slot below the least or above the most. @param {number} share @param {number} least @param {number} most */
const outside = (share, least, most) => 2 * Math.max(0, least - share, share - most);

/**
 * The same for what opens or closes, which is never sooner done nor longer than so many tenths.
 * @param {Asked} asked
 * @param {number} takes
 * @param {[number, number]} shares
 * @param {[number, number]} tenths
 */
function outsideOf(asked, takes, shares, tenths) {
  const least = Math.max(shares[0], shareOf(asked, tenths[0])), most = Math.max(least, Math.min(shares[1], shareOf(asked, tenths[1])));
  return outside(shareOf(asked, takes), least, most);
}

/** @param {Asked} asked @param {number} takes */
const shareOf = (asked, takes) => Math.floor((1000 * takes) / asked.slot);

/** @typedef {{strokes: number[], hardest: number, tired: boolean, legsFirst: boolean, again: number[]}} Work of an evening: its strokes, its hardest effort,
 *   whether it leaves tired legs, whether legs work hard before any other kick of it, the drills that more than one piece of it does */

/** What warm-up and relief have to know of the work. @param {Asked} asked @param {Sized[]} heart @returns {Work} */
export const workOf = (asked, heart) => ({
  strokes: [...new Set(heart.flatMap((own) => own.piece.strokes))],
  hardest: Math.max(...heart.map((own) => own.piece.hardest)),
  tired: areLegsTired(heart),
  legsFirst: areLegsFirst(asked, heart),
  again: againAndAgain(asked, heart),
});

/** The drills that more than one piece of the work does, whole strokes aside. @param {Asked} asked @param {Sized[]} heart */
function againAndAgain({ table }, heart) {
  const every = heart.flatMap((own) => own.piece.drills).filter((drill) => !table.strokesSwum.includes(drill));
  return [...new Set(every.filter((drill, place) => every.indexOf(drill) < place))];
}

/** Whether legs work hard, from a word below fast on, before any other kick of the work. @param {Asked} asked @param {Sized[]} heart */
export function areLegsFirst({ table }, heart) {
  const first = heart.find((own) => own.piece.kick);
  return first !== undefined && first.piece.kick > LEGS && first.piece.hardest >= table.fast - 1;
}

/** Whether more than half of the metres of the work are kick. @param {Sized[]} heart */
export function areLegsTired(heart) {
  const distance = heart.reduce((sum, own) => sum + own.size.distance, 0);
  return heart.reduce((sum, own) => sum + own.size.distance * own.piece.kick, 0) > LEGS * distance;
}

/**
 * What a warm-up costs before the work: its length, twice where it is too long, strokes or legs that come cold, a speed that comes suddenly, or one
 * beyond what follows.
 * @param {Asked} asked
 * @param {Sized} warmUp
 * @param {Work} work
 */
export function warmUpCost(asked, { piece, takes }, { strokes, hardest, legsFirst, again }) {
  const { gentle } = asked.table, share = shareOf(asked, takes);
  const least = Math.max(WARM_LEAST, shareOf(asked, WARM_SOONEST)), most = Math.max(least, Math.min(WARM_MOST, shareOf(asked, WARM_LONGEST)));
  let cost = outside(share, least, most) + outside(share, 0, most) + (legsFirst && !piece.kick ? LEGS_COLD : 0);
  if (hardest > gentle) {
    cost += STROKE_COLD * strokes.filter((stroke) => !piece.strokes.includes(stroke)).length;
  } else if (piece.hardest > gentle) {
    cost += NO_REST;
  }
  cost += again.some((drill) => piece.drills.includes(drill)) ? ALL_EVENING : 0;
  return cost + COLD * Math.max(0, hardest - 1 - piece.hardest) + HOT * Math.max(0, piece.hardest - hardest);
}

/**
 * What relief costs after the work, or that there is none: tired legs are carried into the stroke that was trained.
 * @param {Asked} asked
 * @param {Sized | null} relief
 * @param {Work} work
 */
export function reliefCost(asked, relief, { strokes, tired, hardest }) {
  if (!relief) {
    return tired ? TIRED : 0;
  }
  const { piece, takes } = relief;
  let cost = tired ? 0 : NO_NEED;
  cost += tired && piece.kick > CALM_LEGS ? TIRED : 0;
  cost += takes < SCRAP_UNDER ? SCRAP : 0;
  cost += piece.roles.includes(COOL_DOWN) ? ENDS_TWICE : 0;
  cost += strokes.length && !strokes.some((stroke) => piece.strokes.includes(stroke)) ? OTHER_STROKE : 0;
  cost += HOT * Math.max(0, piece.hardest - hardest);
  return cost + 2 * outside(shareOf(asked, takes), 0, Math.min(EASY_MOST, shareOf(asked, EASY_LONGEST)));
}

/** What a cool-down costs: its length, twice where it is too long, and kicking home. @param {Asked} asked @param {Sized} coolDown */
export function coolDownCost(asked, { piece, takes }) {
  const most = Math.max(shareOf(asked, COOL_SOONEST), Math.min(COOL_MOST, shareOf(asked, COOL_LONGEST)), COOL_LEAST);
  const length = outsideOf(asked, takes, [COOL_LEAST, COOL_MOST], [COOL_SOONEST, COOL_LONGEST]) + outside(shareOf(asked, takes), 0, most);
  return (piece.kick > LEGS ? MORE_KICK : 0) + length;
}

/**
 * What warm-up, relief and cool-down cost beside each other: the same swimming again, and that it is long until all are out after the work.
 * @param {Asked} asked
 * @param {Sized | null} warmUp
 * @param {Sized | null} relief
 * @param {Sized | null} coolDown
 */
export function endsCost(asked, warmUp, relief, coolDown) {
  const same = isSameSwim(warmUp, relief) + isSameSwim(warmUp, coolDown) + isSameSwim(relief, coolDown);
  if (!relief || !coolDown) {
    return SAME_SWIM * same;
  }
  const most = Math.max(Math.min(CLOSING_MOST, shareOf(asked, CLOSING_LONGEST)), shareOf(asked, CLOSING_SOON));
  return SAME_SWIM * same + 2 * outside(shareOf(asked, relief.takes + coolDown.takes), 0, most);
}

/** 1 where two pieces are the same swimming, however often: drills and effort; else 0. @param {Sized | null} one @param {Sized | null} other */
function isSameSwim(one, other) {
  if (!one || !other || one.piece.hardest !== other.piece.hardest || one.piece.drills.length !== other.piece.drills.length) {
    return 0;
  }
  return Number(one.piece.drills.every((drill, place) => other.piece.drills[place] === drill));
}

/** What the length of the main sets costs. @param {Asked} asked @param {number} takes */
export function mainsCost(asked, takes) {
  const share = shareOf(asked, takes);
  return outside(share, MAIN_LEAST, 1000) + (share < MAIN_AT_ALL ? NO_REAL_MAIN : 0);
}

/** What the length of the skill costs, or that there is none: it is short before other work. @param {Asked} asked @param {Sized | null} skill */
export function lengthCost(asked, skill) {
  const none = wantsSkill(asked) ? NO_SKILL : 0;
  return skill ? 2 * outside(shareOf(asked, skill.takes), 0, skillMost(asked, skill)) : none;
}

/** Whether a practice ought to have a skill: there is time for one, and it is for no rest. @param {Asked} asked */
export const wantsSkill = (asked) => asked.slot >= SKILL_FROM && !asked.isRest;

/** The permille of the slot up to which the length of a skill costs nothing. @param {Asked} asked @param {Sized} skill */
function skillMost(asked, { piece }) {
  const { wanted } = asked;
  if (!piece.goals.some((goal) => wanted.includes(goal))) {
    return Math.min(SKILL_MOST, shareOf(asked, IDLE_SKILL_LONGEST));
  }
  const isChief = wanted.slice(0, 1).some((goal) => piece.goals.includes(goal));
  const [most, longest] = isChief ? [CHIEF_SKILL_MOST, CHIEF_SKILL_LONGEST] : [SKILL_MOST, SKILL_LONGEST];
  return Math.max(shareOf(asked, SKILL_SOON), Math.min(most, shareOf(asked, longest)));
}

/** What it costs that a skill is longer than the work that it is for. @param {Asked} asked @param {Sized} skill @param {number} takes of the main sets */
export const longerCost = (asked, skill, takes) => outside(shareOf(asked, skill.takes), 0, shareOf(asked, takes));
