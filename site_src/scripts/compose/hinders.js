// Where no practice fits, which wish hinders. Pure. Of composing_hinders.py.

import { fits } from "./choice.js";
import { COOL_DOWN, MAIN, ROLES, UNKNOWN, WARM_UP } from "./pieces.js";
import { Asked, at, inALane, MINUTES_LEAST, MINUTES_MOST } from "./wishes.js";

/** @typedef {import("./pieces.js").Table} Table */
/** @typedef {import("./wishes.js").Wishes} Wishes */
/** @typedef {{wish: string, which: number, heads?: [group: number, heads: number][]}} InTheWay `heads`: of the lane groups that would then be
 *   fewer; of a role without room those that are in a lane */

const STEP = 5, STEPS = 6; // minutes more or fewer that are tried, and how often

/**
 * Where nothing fits, what there is no piece for at all; else each wish that by itself is in the way, and of minutes the nearest that would do.
 * @param {Table} table
 * @param {Wishes} wishes
 * @returns {InTheWay[]}
 */
export function hindering(table, wishes) {
  const asked = new Asked(table, wishes), roles = new Set(asked.offers.flatMap(({ piece }) => [...asked.rolesOf(piece)]));
  const lacking = [WARM_UP, MAIN, COOL_DOWN].filter((role) => !roles.has(role));
  if (lacking.length) {
    return lacking.map((role) => ({ wish: "piece", which: ROLES.indexOf(role) }));
  }
  const found = [...withoutRoom(asked), ...withoutOne(table, wishes).filter(({ other }) => fits(table, other))
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
    const reasons = new Set(asked.offers.filter(({ piece }) => asked.rolesOf(piece).includes(role)).map((offer) => asked.whyNot(offer, role)));
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
