// Why each piece of a composed practice stands there, and what is not met. Pure. Of composing/why.py and composing/unmet.py.

import { uses } from "./costs.js";
import { SLACK_MOST, whole } from "./order.js";
import { COOL_DOWN, EASY, isHeld, MAIN, MAINS, SKILL, TENTHS, UNKNOWN, WARM_UP } from "./pieces.js";
import { areLegsFirst, areLegsTired, CALM_LEGS, wantsSkill } from "./shape.js";
import { at, isWork } from "./wishes.js";

/** @typedef {import("./order.js").Stood} Stood */
/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./wishes.js").Sized} Sized */
/** @typedef {import("./pieces.js").Piece} Piece */
/** @typedef {{does: "warms" | "legs" | "comes-up" | "carries" | "after" | "used" | "as-wished" | "trains" | "stands" | "no-other", which: number[],
 *   because: string}} Note what a piece does where it stands, and of what: strokes, an effort, the goal that it trains, the goals that nothing else serves
 *   there, and because of what */
/** @typedef {{goals: number[], notes: Note[], days: number, gear: [gear: number, used: number, here: number][]}} Why */
/** @typedef {{wish: string, which: number, because: string}} NotMet */

const isMain = (/** @type {Stood} */ { role }) => MAINS.includes(role);
const workIn = (/** @type {Stood[]} */ order) => order.filter((one) => isMain(one) || one.role === SKILL).map((one) => one.own);

/** Why a piece stands there. @param {Asked} asked @param {Stood[]} order @param {Stood} one @returns {Why} */
export function why(asked, order, one) {
  const { wishes } = asked, { piece } = one.own, used = asked.usedAtOnce(piece), goals = wishes.goals.filter((goal) => piece.goals.includes(goal));
  return {
    goals,
    notes: notes(asked, order, one, goals.length > 0),
    days: wishes.days.get(piece.place) ?? UNKNOWN,
    gear: piece.gear.map((gear) => [gear, used, at(wishes.gear, gear)]),
  };
}

/** @param {Note["does"]} does @param {number[]} [which] @param {string} [because] @returns {Note} */
const note = (does, which = [], because = "") => ({ does, which, because });

/** @param {Asked} asked @param {Stood[]} order @param {Stood} one @param {boolean} serves */
function notes(asked, order, one, serves) {
  const { role, own } = one, work = workIn(order);
  if (role === WARM_UP) {
    return warming(asked, own, work);
  }
  if (role === EASY) {
    return [easing(own, work)];
  }
  if (role === COOL_DOWN || isHeld(role)) {
    return [note("stands")];
  }
  return working(asked, order, one, serves);
}

/** What work does there; where it serves no goal, what is in the way of what would. @param {Asked} asked @param {Stood[]} order @param {Stood} one @param {boolean} serves */
function working(asked, order, one, serves) {
  const { role, own } = one, { piece } = own, { goals, effort } = asked.wishes, isSkill = role === SKILL;
  const found = [];
  if (isSkill && order.slice(order.indexOf(one) + 1).some((other) => isMain(other) && uses(asked, own, other.own))) {
    found.push(note("used"));
  } else if (!serves) {
    found.push(!isSkill && piece.goals.length ? note("trains", piece.goals.slice(0, 1)) : note("stands"));
  }
  if (!serves && goals.length) {
    found.push(note("no-other", goals, noOther(asked, order, role)));
  }
  return !isSkill && piece.effort === effort ? [...found, note("as-wished", [effort])] : found;
}

/** What keeps anything else for the goals from standing in a role. @param {Asked} asked @param {Stood[]} order @param {import("./types.js").Role} role */
function noOther(asked, order, role) {
  const letter = MAINS.includes(role) ? MAIN : role, stood = order.map((other) => other.own.place);
  return inTheWay(asked, asked.wishes.goals, (piece) => (asked.rolesOf(piece).includes(letter) && !stood.includes(piece.place) ? role : null));
}

/** Tired legs carried into a stroke of the work, or what it is after it. @param {Sized} own @param {Sized[]} work */
function easing(own, work) {
  const both = shared(own, work), carries = both.length && areLegsTired(work) && own.piece.kick <= CALM_LEGS;
  return carries ? note("carries", both) : note("after", [own.piece.hardest]);
}

/** What of the work is warm after a warm-up; that it eases in, where it is no stroke of it. @param {Asked} asked @param {Sized} own @param {Sized[]} work */
function warming(asked, own, work) {
  const both = shared(own, work), { hardest } = own.piece, reached = Math.max(...work.map(({ piece }) => piece.hardest));
  const found = [both.length ? note("warms", both) : note("stands")];
  if (own.piece.kick && areLegsFirst(asked, work)) {
    found.push(note("legs"));
  }
  if (hardest > asked.table.gentle && hardest >= reached - 1) {
    found.push(note("comes-up", [hardest]));
  }
  return found;
}

/** The strokes of a piece that the work has too. @param {Sized} own @param {Sized[]} work */
const shared = ({ piece }, work) => piece.strokes.filter((stroke) => work.some((each) => each.piece.strokes.includes(stroke)));

/** What a practice could not meet, and which wish to drop for it. @param {Asked} asked @param {Stood[]} order @param {string[]} out keys of what was taken out @returns {NotMet[]} */
export function unmet(asked, order, out) {
  const gone = out.map((key) => asked.table.pieces[asked.table.pieceOf.get(key) ?? -1]?.roles).join();
  const { wishes } = asked, roles = order.map((one) => one.role), left = asked.slot - whole(order);
  const because = left > SLACK_MOST ? "time-left" : "minutes";
  const found = wishes.goals
    .filter((goal) => !order.some((one) => one.own.piece.goals.includes(goal)))
    .map((goal) => ({ wish: "goals", which: goal, because: inTheWay(asked, [goal], (piece) => worksAs(asked, piece)) }));
  found.push(...otherEffort(asked, order));
  if (!roles.includes(SKILL) && wantsSkill(asked)) {
    found.push({ wish: "skill", which: UNKNOWN, because: because === "time-left" || gone.includes(SKILL) ? "time-left" : noSkill(asked) });
  }
  if (!roles.includes(EASY) && areLegsTired(workIn(order))) {
    found.push({ wish: "relief", which: UNKNOWN, because: gone.includes(EASY) ? "time-left" : because });
  }
  if (because === "time-left") { // only after something was taken out
    found.push({ wish: "slot", which: Math.floor(left / TENTHS), because });
  }
  return found;
}

/** What keeps every skill that serves what is wished for from standing: a wish, or the time. @param {Asked} asked */
const noSkill = (asked) => inTheWay(asked, asked.wanted.length ? asked.wanted : asked.wishes.goals, (piece) => (asked.rolesOf(piece).includes(SKILL) ? SKILL : null));

/** That no main set is of the effort that was wished, or that some work is harder. @param {Asked} asked @param {Stood[]} order @returns {NotMet[]} */
function otherEffort({ wishes: { effort } }, order) {
  if (effort === UNKNOWN) {
    return [];
  }
  if (!order.some((one) => isMain(one) && one.own.piece.effort === effort)) {
    return [{ wish: "effort", which: effort, because: "goals" }];
  }
  return workIn(order).some(({ piece }) => piece.effort > effort) ? [{ wish: "effort", which: effort, because: "harder" }] : [];
}

/** What a piece stands as where it is work, a main set before a skill. @param {Asked} asked @param {Piece} piece */
const worksAs = (asked, piece) => (!isWork(piece) ? null : asked.rolesOf(piece).includes(MAIN) ? MAIN : SKILL);

/**
 * What keeps every piece of work that serves a goal from standing in its role: a wish, or the time.
 * @param {Asked} asked
 * @param {number[]} goals
 * @param {(piece: Piece) => import("./types.js").Role | null} standsAs
 */
function inTheWay(asked, goals, standsAs) {
  const found = [];
  for (const offer of asked.offers) {
    const role = goals.some((goal) => offer.piece.goals.includes(goal)) && standsAs(offer.piece);
    const reason = role ? asked.whyNot(offer, role) : "groups";
    if (!reason) {
      return offer.piece.asks.every((drill) => asked.wishes.taught.has(drill)) ? "minutes" : "taught";
    }
    found.push(reason);
  }
  return found.find((reason) => reason !== "groups") ?? "groups";
}
