// What a coach would rather not have in a practice, in points: fewer are better. Pure. Of composing_costs.py, number by number.

import { COOL_DOWN, MAIN, SECOND, SKILL, UNKNOWN } from "./pieces.js";

/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./wishes.js").Sized} Sized */
/** @typedef {import("./types.js").Role} Role */

const MISSED = 2000, MISSED_FIRST = 3000;
const BY_SECOND_GOAL = 40, BY_SECOND = 60, BY_SKILL = 120, BY_RELIEF = 260;
const WHOLE = 1000, LITTLE = 10; // permille that do not serve a goal: so many cost a point
const IDLE_MAIN = 640, IDLE_SECOND = 440, IDLE_SKILL = 220;
const UNUSED_SKILL = 40, NO_SKILL = 200, SAME_WORK = 300;
const SKILL_FROM = 24000;
const EFFORT_BELOW = 90, EFFORT_ABOVE = 160, SKILL_ABOVE = 80;
const STEP_OF_SET = 25, STEP_OF_WORK = 8, STEP_OF_EASY = 4;
const STUMP = 120; // less than half of what is written, or more than twice
/** @type {Record<string, Record<string, number>>} */
const FROM = { set: {}, part: { m: 120, n: 40, s: 30 }, drill: { s: 50, m: 150 } };
const GEAR_PIECE = 15;
const FORGOTTEN = 28, A_DAY = 4, AGAIN = 25, AGAIN_DAYS = 2;
const ASIDE = 60;
const ANY = "any"; // the stroke of what is swum as one likes
const BOTH_FAST = 150, BOTH_UNDER = 150, SAME_GOAL = 30;

/** What a piece costs in a role by itself. @param {Asked} asked @param {Sized} own @param {Role} role */
export function ownCost(asked, own, role) {
  const { piece } = own, isMain = role === MAIN || role === SECOND, isWork = isMain || role === SKILL;
  const step = piece.of === "set" ? STEP_OF_SET : isWork ? STEP_OF_WORK : STEP_OF_EASY;
  const cost = GEAR_PIECE * piece.gear.length + (FROM[piece.of]?.[role] ?? 0) + own.steps * step + daysCost(asked, own, isMain) + (isWork ? stumpCost(own) : 0);
  if (isMain) {
    return cost + effortCost(asked, piece.effort);
  }
  if (role === SKILL) {
    return cost + (asked.effort === UNKNOWN ? 0 : SKILL_ABOVE * Math.max(0, piece.effort - asked.effort));
  }
  return cost + ASIDE * asked.aside.filter((goal) => !piece.goals.includes(goal)).length;
}

/** What it costs that less than half of it is left, or that it is more than twice as much. @param {Sized} own */
const stumpCost = ({ piece: { of, what, written }, number }) => ((what && number > 2 * written) || (of !== "drill" && 2 * number < written) ? STUMP : 0);

/** What it costs that a piece was done lately. @param {Asked} asked @param {Sized} own @param {boolean} isMain */
function daysCost(asked, own, isMain) {
  const days = asked.wishes.days.get(own.place) ?? UNKNOWN;
  if (days === UNKNOWN) {
    return 0;
  }
  return isMain ? A_DAY * Math.max(0, FORGOTTEN - days) : days <= AGAIN_DAYS ? AGAIN : 0;
}

/** What it costs that a main set is not as hard as was wished. @param {Asked} asked @param {number} own */
function effortCost({ effort }, own) {
  if (effort === UNKNOWN) {
    return 0;
  }
  return EFFORT_BELOW * Math.max(0, effort - own) + EFFORT_ABOVE * Math.max(0, own - effort);
}

/**
 * By wished goal what it costs that a piece serves it in a role, or misses it.
 * @param {Asked} asked
 * @param {Sized} own
 * @param {Role} role
 */
export function served(asked, { piece }, role) {
  const byRole = role === MAIN ? 0 : role === SECOND ? BY_SECOND : role === SKILL ? BY_SKILL : BY_RELIEF;
  return asked.wishes.goals.map((goal, number) => {
    const place = piece.goals.indexOf(goal);
    if (place < 0) {
      return number ? MISSED : MISSED_FIRST;
    }
    return byRole + Math.floor((WHOLE - (piece.shares[place] ?? 0)) / LITTLE) + (place ? BY_SECOND_GOAL : 0);
  });
}

/** What it costs that a piece of work serves nothing that is wished for. @param {Asked} asked @param {Sized} own @param {Role} role */
export function idleCost(asked, { piece }, role) {
  if (piece.goals.some((goal) => asked.wishes.goals.includes(goal))) {
    return 0;
  }
  return role === MAIN ? IDLE_MAIN : role === SECOND ? IDLE_SECOND : IDLE_SKILL;
}

/** What it costs that the main set has no use for the skill. @param {Asked} asked @param {Sized} skill @param {Sized} main */
export const skillCost = (asked, skill, main) => (uses(asked, skill, main) ? 0 : UNUSED_SKILL);

/** Whether a main set does a drill of the skill, or needs one first; a whole stroke is no skill. @param {Asked} asked @param {Sized} skill @param {Sized} main */
export function uses({ table }, { piece }, main) {
  return piece.drills.some((drill) => !table.strokesSwum.includes(drill) && (main.piece.drills.includes(drill) || main.piece.asks.includes(drill)));
}

/** What two main sets in one evening cost. @param {Asked} asked @param {Sized} one @param {Sized} other */
export function pairCost(asked, one, other) {
  const fast = Math.min(one.piece.hardest, other.piece.hardest) >= asked.table.fast;
  const same = one.piece.goals[0] === other.piece.goals[0];
  const under = one.size.under > 0 && other.size.under > 0;
  const again = isAgain(asked, one, other) && isAgain(asked, other, one);
  return (fast ? BOTH_FAST : 0) + (under ? BOTH_UNDER : 0) + (same ? SAME_GOAL : 0) + (again ? SAME_WORK : 0);
}

/** What it costs that a main set only does a skill again. @param {Asked} asked @param {Sized} skill @param {Sized} main */
export const againCost = (asked, skill, main) => (isAgain(asked, skill, main) ? SAME_WORK : 0);

/**
 * Whether a piece has the drills of another and brings them into no stroke more; where both only swim, pace tells them apart.
 * @param {Asked} asked
 * @param {Sized} one
 * @param {Sized} other
 */
function isAgain({ table }, one, other) {
  const taught = (/** @type {Sized} */ { piece }) => piece.drills.filter((drill) => !table.strokesSwum.includes(drill));
  const drills = taught(one), others = taught(other);
  const same = drills.length > 0 && drills.length === others.length && drills.every((drill) => others.includes(drill));
  return same && other.piece.strokes.every((stroke) => table.strokes[stroke]?.id === ANY || one.piece.strokes.includes(stroke));
}

const WARM_LEAST = 140, WARM_MOST = 250;
const COOL_LEAST = 60, COOL_MOST = 110;
const WARM_SOONEST = 2700, WARM_LONGEST = 12000, COOL_SOONEST = 1200, COOL_LONGEST = 6000; // tenths, however long the slot is
const MAIN_LEAST = 280, EASY_MOST = 120, EASY_LONGEST = 7200;
const SKILL_MOST = 200, SKILL_LONGEST = 7200, SKILL_SOON = 4800;
const CHIEF_SKILL_MOST = 250, CHIEF_SKILL_LONGEST = 9000; // where it is what is wished for most
const STROKE_COLD = 40, COLD = 30, HOT = 60, LEGS = 500, LEGS_COLD = 60;
export const CALM_LEGS = 300;
const TIRED = 150, NO_NEED = 30, OTHER_STROKE = 40;
const SCRAP = 90, SCRAP_UNDER = 1800, MORE_KICK = 60, ENDS_TWICE = 200;

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

/** @typedef {{strokes: number[], hardest: number, tired: boolean, legsFirst: boolean}} Work of an evening: its strokes, its hardest effort, whether it leaves
 *   tired legs, whether legs work hard before any other kick of it */

/** What warm-up and relief have to know of the work. @param {Asked} asked @param {Sized[]} heart @returns {Work} */
export const workOf = (asked, heart) => ({
  strokes: [...new Set(heart.flatMap((own) => own.piece.strokes))],
  hardest: Math.max(...heart.map((own) => own.piece.hardest)),
  tired: areLegsTired(heart),
  legsFirst: areLegsFirst(asked, heart),
});

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
 * What a warm-up costs before the work: strokes or legs that come cold, a speed that comes suddenly, or one beyond what follows.
 * @param {Asked} asked
 * @param {Sized} warmUp
 * @param {Work} work
 */
export function warmUpCost(asked, { piece, takes }, { strokes, hardest, legsFirst }) {
  let cost = outsideOf(asked, takes, [WARM_LEAST, WARM_MOST], [WARM_SOONEST, WARM_LONGEST]) + (legsFirst && !piece.kick ? LEGS_COLD : 0);
  for (const stroke of strokes) {
    cost += piece.strokes.includes(stroke) ? 0 : STROKE_COLD;
  }
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

/** What the length of the main sets costs. @param {Asked} asked @param {number} takes */
export const mainsCost = (asked, takes) => outside(shareOf(asked, takes), MAIN_LEAST, 1000);

/** What the length of the skill costs, or that there is none: it is short before other work. @param {Asked} asked @param {Sized | null} skill */
export function lengthCost(asked, skill) {
  const none = wantsSkill(asked) ? NO_SKILL : 0;
  return skill ? 2 * outside(shareOf(asked, skill.takes), 0, skillMost(asked, skill)) : none;
}

/** Whether a practice ought to have a skill: there is time for one, and it is for no rest. @param {Asked} asked */
export const wantsSkill = (asked) => asked.slot >= SKILL_FROM && !asked.isRest;

/** The permille of the slot up to which the length of a skill costs nothing. @param {Asked} asked @param {Sized} skill */
function skillMost(asked, { piece }) {
  const isChief = asked.wishes.goals.slice(0, 1).some((goal) => piece.goals.includes(goal));
  const [most, longest] = isChief ? [CHIEF_SKILL_MOST, CHIEF_SKILL_LONGEST] : [SKILL_MOST, SKILL_LONGEST];
  return Math.max(shareOf(asked, SKILL_SOON), Math.min(most, shareOf(asked, longest)));
}

/** What it costs that a skill is longer than the work that it is for. @param {Asked} asked @param {Sized} skill @param {number} takes of the main sets */
export const longerCost = (asked, skill, takes) => outside(shareOf(asked, skill.takes), 0, shareOf(asked, takes));
