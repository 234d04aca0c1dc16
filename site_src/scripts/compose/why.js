// Why each piece of a composed practice stands there, what is not met, and where nothing fits which wish hinders. Pure. Of composing_why.py.

import { fits } from "./choice.js";
import { areLegsTired, SKILL_FROM } from "./costs.js";
import { SLACK_MOST, whole } from "./order.js";
import { COOL_DOWN, EASY, MAIN, ROLES, SECOND, SKILL, TENTHS, UNKNOWN, WARM_UP } from "./pieces.js";
import { Asked, at, inALane, isWork, MINUTES_LEAST, MINUTES_MOST } from "./wishes.js";

/** @typedef {import("./pieces.js").Table} Table */
/** @typedef {import("./wishes.js").Wishes} Wishes */
/** @typedef {import("./order.js").Stood} Stood */
/** @typedef {{goals: number[], days: number, gear: [gear: number, used: number, here: number][]}} Why */
/** @typedef {{wish: string, which: number, because: string}} NotMet */
/** @typedef {{wish: string, which: number, heads?: [group: number, heads: number][]}} InTheWay `heads`: of the lane groups that would then be
 *   fewer; of a role without room those that are in a lane */

const STEP = 5, STEPS = 6; // minutes more or fewer that are tried, and how often

/** Why a piece stands there. @param {Asked} asked @param {Stood} one @returns {Why} */
export function why(asked, { own: { piece } }) {
  const { wishes } = asked, used = asked.usedAtOnce(piece);
  return {
    goals: wishes.goals.filter((goal) => piece.goals.includes(goal)),
    days: wishes.days.get(piece.place) ?? UNKNOWN,
    gear: piece.gear.map((gear) => [gear, used, at(wishes.gear, gear)]),
  };
}

/** What a practice could not meet, and which wish to drop for it. @param {Asked} asked @param {Stood[]} order @returns {NotMet[]} */
export function unmet(asked, order) {
  const { wishes } = asked, roles = order.map((one) => one.role), left = asked.slot - whole(order);
  const because = left > SLACK_MOST ? "time-left" : "minutes";
  const isMain = (/** @type {Stood} */ one) => one.role === MAIN || one.role === SECOND;
  const found = wishes.goals
    .filter((goal) => !order.some((one) => one.own.piece.goals.includes(goal)))
    .map((goal) => ({ wish: "goals", which: goal, because: inTheWay(asked, goal) }));
  if (wishes.effort !== UNKNOWN && !order.some((one) => isMain(one) && one.own.piece.hardest === wishes.effort)) {
    found.push({ wish: "effort", which: wishes.effort, because: "goals" });
  }
  if (!roles.includes(SKILL) && asked.slot >= SKILL_FROM) {
    found.push({ wish: "skill", which: UNKNOWN, because });
  }
  const work = order.filter((one) => isMain(one) || one.role === SKILL).map((one) => one.own);
  if (!roles.includes(EASY) && areLegsTired(work)) {
    found.push({ wish: "relief", which: UNKNOWN, because });
  }
  if (because === "time-left") { // only after something was taken out
    found.push({ wish: "slot", which: Math.floor(left / TENTHS), because });
  }
  return found;
}

/** What keeps every piece of work that serves a goal from standing: a wish, or the time. @param {Asked} asked @param {number} goal */
function inTheWay(asked, goal) {
  const found = [];
  for (const offer of asked.offers.filter(({ piece }) => piece.goals.includes(goal) && isWork(piece))) {
    const reason = asked.whyNot(offer, offer.piece.roles.includes(MAIN) ? MAIN : SKILL);
    if (!reason) {
      return offer.piece.asks.every((drill) => asked.wishes.taught.has(drill)) ? "minutes" : "taught";
    }
    found.push(reason);
  }
  return found.find((reason) => reason !== "groups") ?? "groups";
}

/**
 * Where nothing fits, what there is no piece for at all; else each wish that by itself is in the way, and of minutes the nearest that would do.
 * @param {Table} table
 * @param {Wishes} wishes
 * @returns {InTheWay[]}
 */
export function hindering(table, wishes) {
  const roles = new Set(new Asked(table, wishes).offers.flatMap(({ piece }) => [...piece.roles]));
  const lacking = [WARM_UP, MAIN, COOL_DOWN].filter((role) => !roles.has(role));
  if (lacking.length) {
    return lacking.map((role) => ({ wish: "piece", which: ROLES.indexOf(role) }));
  }
  const found = [...withoutRoom(new Asked(table, wishes)), ...withoutOne(table, wishes).filter(({ other }) => fits(table, other))
    .map(({ wish, which }) => (wish === "lanes" ? fewer(table, wishes) : { wish, which }))];
  for (let step = 1; step <= STEPS; step += 1) {
    for (const minutes of [wishes.minutes + STEP * step, wishes.minutes - STEP * step]) {
      const canBe = minutes >= MINUTES_LEAST && minutes <= Math.min(MINUTES_MOST, table.squad.minutes);
      if (canBe && fits(table, { ...wishes, minutes })) {
        return [...found, { wish: "minutes", which: minutes }];
      }
    }
  }
  return found;
}

/** What every practice has, and no piece stands as because its lanes are too full. @param {Asked} asked @returns {InTheWay[]} */
function withoutRoom(asked) {
  const fullest = Math.max(...asked.wishes.groups.map((group) => at(asked.inLane, group)));
  return [WARM_UP, MAIN, COOL_DOWN].filter((role) => {
    const reasons = new Set(asked.offers.filter(({ piece }) => piece.roles.includes(role)).map((offer) => asked.whyNot(offer, role)));
    return reasons.has("lanes") && !reasons.has("");
  }).map((role) => ({ wish: "room", which: ROLES.indexOf(role), heads: [[UNKNOWN, fullest]] }));
}

/**
 * The most in a lane with whom something fits, from the usual on, and the heads that are then fewer.
 * @param {Table} table
 * @param {Wishes} wishes
 * @returns {InTheWay}
 */
function fewer(table, wishes) {
  const { inLane } = new Asked(table, wishes), usual = table.squad.groups.map((own) => inALane(own.heads, own.lanes));
  const { groups } = wishes, end = Math.max(...groups.map((group) => at(inLane, group)));
  /** @type {InTheWay} */
  let found = { wish: "lanes", which: UNKNOWN };
  for (let most = Math.min(...groups.map((group) => at(usual, group))); most < end; most += 1) {
    const heads = wishes.heads.map((number, group) => Math.min(number, Math.max(most, at(usual, group)) * at(wishes.lanes, group)));
    if (!fits(table, { ...wishes, heads })) {
      break;
    }
    const less = groups.filter((group) => at(heads, group) < at(wishes.heads, group));
    found = { wish: "lanes", which: most, heads: less.map((group) => [group, at(heads, group)]) };
  }
  return found;
}

/** The wishes without one of them at a time, where that makes a difference. @param {Table} table @param {Wishes} wishes */
function withoutOne(table, wishes) {
  const { groups } = table.squad, owned = table.gear.map((gear) => gear.owned), drills = table.drills.map((_, drill) => drill);
  const usual = { lanes: groups.map((own) => own.lanes), heads: groups.map((own) => own.heads) };
  const isUsual = isSame(wishes.lanes, usual.lanes) && isSame(wishes.heads, usual.heads);
  /** @type {[wish: string, differs: boolean, without: Partial<Wishes>][]} */
  const each = [
    ["done", wishes.days.size > 0, { days: new Map() }],
    ["gear", !isSame(wishes.gear, owned), { gear: owned }],
    ["adults", wishes.adults !== UNKNOWN, { adults: UNKNOWN }],
    ["effort", wishes.effort !== UNKNOWN, { effort: UNKNOWN }],
    ["taught", wishes.taught.size < drills.length, { taught: new Set(drills) }],
    ["keep", wishes.kept.length > 0, { kept: [] }],
    ["leave_out", wishes.leftOut.size > 0, { leftOut: new Set() }],
    ["lanes", !isUsual, usual],
  ];
  const found = each.filter(([, differs]) => differs).map(([wish, , without]) => ({ wish, which: UNKNOWN, other: { ...wishes, ...without } }));
  const goals = wishes.goals.length > 1 ? [...wishes.goals].reverse() : [];
  return [...found, ...goals.map((goal) => ({ wish: "goals", which: goal, other: { ...wishes, goals: wishes.goals.filter((own) => own !== goal) } }))];
}

/** @param {number[]} one @param {number[]} other */
const isSame = (one, other) => one.every((number, place) => number === other[place]);
