// What a coach would rather not have in a practice, in points: fewer are better. Pure. Of composing/costs.py, number by number.

import { isHeld, MAIN, MAINS, SKILL, UNKNOWN } from "./pieces.js";
import { REPEATED_AFTER } from "./wishes.js";

/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./wishes.js").Sized} Sized */
/** @typedef {import("./types.js").Role} Role */

const MISSED = 2000, MISSED_FIRST = 3000;
const BY_SECOND_GOAL = 40, BY_SECOND = 60, BY_SKILL = 120, BY_RELIEF = 260;
const CHIEF_BY_SKILL = 40; // more: what is wished for most is what the main set is for
const WHOLE = 1000, LITTLE = 10; // permille that do not serve a goal: so many cost a point
const IDLE_MAIN = 640, IDLE_SECOND = 260, IDLE_SKILL = 220;
const HARD_SKILL = 40, FAST_BEFORE_FAST = 100, HARD_IDLE = 30; // the first and the last for each word of effort beyond gentle
const NO_MAIN = 200; // of what may stand as relief, where neither rest nor a gentle effort is wished for
const UNUSED_SKILL = 40, SAME_WORK = 900;
export const NO_SKILL = 200, SKILL_FROM = 24000;
const EFFORT_BELOW = 90, EFFORT_ABOVE = 160, SKILL_ABOVE = 80;
const STEP_OF_SET = 25, STEP_OF_WORK = 8, STEP_OF_EASY = 4;
const STUMP = 120; // less than half of what is written, or more than twice
/** @type {Record<string, Record<string, number>>} */
const FROM = { set: {}, part: { m: 120, n: 40, o: 40, s: 30 }, drill: { s: 50, m: 150 } };
const GEAR_PIECE = 15;
const FORGOTTEN = 28, A_DAY = 4, AGAIN = 25, AGAIN_DAYS = 2, SET_AGAIN = 80;
const ASIDE = 60;
const ANY = "any"; // the stroke of what is swum as one likes
const FAST_WORK = 100; // metres from which a part that is held is fast, as a test is
const BOTH_FAST = 150, BOTH_UNDER = 150, SAME_GOAL = 30;

/** What a piece costs in a role by itself. @param {Asked} asked @param {Sized} own @param {Role} role */
export function ownCost(asked, own, role) {
  const { piece } = own, isMain = MAINS.includes(role), isWork = isMain || role === SKILL;
  const step = piece.of === "set" ? STEP_OF_SET : isWork ? STEP_OF_WORK : STEP_OF_EASY;
  const cost = GEAR_PIECE * piece.gear.length + (FROM[piece.of]?.[role] ?? 0) + own.steps * step + daysCost(asked, own, role) + (isWork ? stumpCost(own) : 0);
  if (isMain) {
    return cost + mainCost(asked, piece);
  }
  if (role === SKILL) {
    return cost + HARD_SKILL * beyondGentle(asked, own) + (asked.effort === UNKNOWN ? 0 : SKILL_ABOVE * Math.max(0, piece.effort - asked.effort));
  }
  return cost + ASIDE * asked.aside.filter((goal) => !piece.goals.includes(goal)).length;
}

/** By how many words its effort is beyond gentle. @param {Asked} asked @param {Sized} own */
const beyondGentle = ({ table }, { piece }) => Math.max(0, piece.effort - table.gentle);

/** What it costs that less than half of it is left, or that it is more than twice as much. @param {Sized} own */
const stumpCost = ({ piece: { of, what, written }, number }) => ((what && number > 2 * written) || (of !== "drill" && 2 * number < written) ? STUMP : 0);

/** What it costs that a piece was done lately. @param {Asked} asked @param {Sized} own @param {Role} role */
function daysCost(asked, own, role) {
  const days = asked.wishes.days.get(own.place) ?? UNKNOWN;
  if (days === UNKNOWN) {
    return 0;
  }
  if (role === SKILL && own.piece.of === "set" && days < REPEATED_AFTER) {
    return SET_AGAIN;
  }
  return MAINS.includes(role) ? A_DAY * Math.max(0, FORGOTTEN - days) : days <= AGAIN_DAYS ? AGAIN : 0;
}

/** What it costs that a main set is not as hard as was wished, or is rather relief. @param {Asked} asked @param {import("./pieces.js").Piece} piece */
function mainCost(asked, piece) {
  const { effort } = asked, cost = asked.asksWork && asked.onlyEases(piece) ? NO_MAIN : 0;
  return effort === UNKNOWN ? cost : cost + EFFORT_BELOW * Math.max(0, effort - piece.effort) + EFFORT_ABOVE * Math.max(0, piece.effort - effort);
}

/**
 * By wanted goal what it costs that a piece serves it in a role, or misses it.
 * @param {Asked} asked
 * @param {Sized} own
 * @param {Role} role
 */
export function served(asked, { piece }, role) {
  const byRole = role === MAIN ? 0 : role === SKILL ? BY_SKILL : MAINS.includes(role) ? BY_SECOND : BY_RELIEF;
  return asked.wanted.map((goal, number) => {
    const place = piece.goals.indexOf(goal);
    if (place < 0) {
      return number ? MISSED : MISSED_FIRST;
    }
    const chief = role === SKILL && !number ? CHIEF_BY_SKILL : 0;
    return byRole + chief + Math.floor((WHOLE - (piece.shares[place] ?? 0)) / LITTLE) + (place ? BY_SECOND_GOAL : 0);
  });
}

/** What it costs that a piece of work serves nothing that is wished for. @param {Asked} asked @param {Sized} own @param {Role} role */
export function idleCost(asked, own, role) {
  if (own.piece.goals.some((goal) => asked.wanted.includes(goal))) {
    return 0;
  }
  return HARD_IDLE * beyondGentle(asked, own) + (role === MAIN ? IDLE_MAIN : role === SKILL ? IDLE_SKILL : IDLE_SECOND);
}

/** What it costs that the main set has no use for the skill. @param {Asked} asked @param {Sized} skill @param {Sized} main */
export const skillCost = (asked, skill, main) => (uses(asked, skill, main) ? 0 : UNUSED_SKILL);

/** Whether a main set does a drill of the skill, or needs one first; a whole stroke is no skill. @param {Asked} asked @param {Sized} skill @param {Sized} main */
export function uses({ table }, { piece }, main) {
  return piece.drills.some((drill) => !table.strokesSwum.includes(drill) && (main.piece.drills.includes(drill) || main.piece.asks.includes(drill)));
}

/** What it costs that main sets are fast where a part that is held is: a test, or stations. @param {Asked} asked @param {import("./order.js").Standing[]} order */
export function heldCost({ table }, order) {
  const isFast = order.some(([role, own]) => isHeld(role) && own.size.fast >= FAST_WORK);
  return isFast ? BOTH_FAST * order.filter(([role, own]) => MAINS.includes(role) && own.piece.hardest >= table.fast).length : 0;
}

/** What two main sets in one evening cost. @param {Asked} asked @param {Sized} one @param {Sized} other */
export function pairCost(asked, one, other) {
  const fast = Math.min(one.piece.hardest, other.piece.hardest) >= asked.table.fast;
  const same = one.piece.goals[0] === other.piece.goals[0];
  const under = one.size.under > 0 && other.size.under > 0;
  const again = isAgain(asked, one, other) && isAgain(asked, other, one);
  return (fast ? BOTH_FAST : 0) + (under ? BOTH_UNDER : 0) + (same ? SAME_GOAL : 0) + (again ? SAME_WORK : 0);
}

/** What it costs that main sets only do a skill again, or are fast like it. @param {Asked} asked @param {Sized} skill @param {Sized[]} mains */
export function againCost(asked, skill, mains) {
  const areFast = skill.piece.hardest >= asked.table.fast && mains.some((main) => main.piece.hardest >= asked.table.fast);
  return (mains.some((main) => isAgain(asked, skill, main)) ? SAME_WORK : 0) + (areFast ? FAST_BEFORE_FAST : 0);
}

/**
 * Whether a piece has the drills of another and brings them into no stroke more; where both only swim, pace tells them apart.
 * @param {Asked} asked
 * @param {Sized} one
 * @param {Sized} other
 */
export function isAgain({ table }, one, other) {
  const taught = (/** @type {Sized} */ { piece }) => piece.drills.filter((drill) => !table.strokesSwum.includes(drill));
  const drills = taught(one), others = taught(other);
  const same = drills.length > 0 && drills.length === others.length && drills.every((drill) => others.includes(drill));
  return same && other.piece.strokes.every((stroke) => table.strokes[stroke]?.id === ANY || one.piece.strokes.includes(stroke));
}
