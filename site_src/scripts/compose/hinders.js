// Where no practice fits, which wish hinders. Pure. Of composing/hinders.py.

import { fits } from "./choice.js";
import { COOL_DOWN, MAIN, ROLES, UNKNOWN, WARM_UP } from "./pieces.js";
import { Asked, at, inALane, MINUTES_LEAST, MINUTES_MOST } from "./wishes.js";

/** @typedef {import("./pieces.js").Table} Table */
/** @typedef {import("./wishes.js").Wishes} Wishes */
/** @typedef {{wish: string, which: number, heads?: [group: number, heads: number][], drops?: string[], instead?: Wishes}} InTheWay `heads`: of the lane
 *   groups that would then be fewer; of a role without room those that are in a lane; `drops`: what is in the way together; `instead`: what would do */

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
    .map(({ wish, which, other }) => (wish === "lanes" ? fewer(table, wishes, other) : { wish, which, instead: other }))];
  for (const minutes of nearMinutes(table, wishes)) {
    const other = { ...wishes, minutes };
    if (minutes !== wishes.minutes && fits(table, other)) {
      return [...found, { wish: "minutes", which: minutes, instead: other }];
    }
  }
  return found.some(({ instead }) => instead) ? found : [...found, ...together(table, wishes)];
}

/** The minutes that are wished, and those around them that can be, the nearest first. @param {Table} table @param {Wishes} wishes */
function nearMinutes({ squad }, { minutes }) {
  const steps = Array.from({ length: STEPS }, (_, step) => STEP * (step + 1));
  return [0, ...steps.flatMap((by) => [by, -by])].map((by) => minutes + by).filter((own) => own >= MINUTES_LEAST && own <= Math.min(MINUTES_MOST, squad.minutes));
}

/** The fewest wishes without which, all together, there would be a practice. @param {Table} table @param {Wishes} wishes @returns {InTheWay[]} */
function together(table, wishes) {
  const ways = withoutOne(table, wishes).filter(({ wish }) => wish !== "goals");
  for (const minutes of nearMinutes(table, wishes)) {
    const without = (/** @type {string[]} */ drops) => Object.assign({}, wishes, { minutes }, ...ways.filter(({ wish }) => drops.includes(wish)).map((own) => own.without));
    let drops = ways.map(({ wish }) => wish);
    if (fits(table, without(drops))) {
      for (const { wish } of ways) {
        const fewerDrops = drops.filter((own) => own !== wish);
        drops = fits(table, without(fewerDrops)) ? fewerDrops : drops;
      }
      return [{ wish: "together", which: minutes, drops, instead: without(drops) }];
    }
  }
  return [];
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
 * @param {Wishes} usually what does with as many as usual
 * @returns {InTheWay}
 */
function fewer(table, wishes, usually) {
  const { inLane } = new Asked(table, wishes), usual = table.squad.groups.map((own) => inALane(own.heads, own.lanes));
  const { groups } = wishes, end = Math.max(...groups.map((group) => at(inLane, group)));
  /** @type {InTheWay} */
  let found = { wish: "lanes", which: UNKNOWN, instead: usually };
  for (let most = Math.min(...groups.map((group) => at(usual, group))); most < end; most += 1) {
    const heads = wishes.heads.map((number, group) => Math.min(number, Math.max(most, at(usual, group)) * at(wishes.lanes, group)));
    const other = { ...wishes, heads };
    if (!fits(table, other)) {
      break;
    }
    const less = groups.filter((group) => at(heads, group) < at(wishes.heads, group));
    found = { wish: "lanes", which: most, heads: less.map((group) => [group, at(heads, group)]), instead: other };
  }
  return found;
}

/** The wishes without one of them at a time, where that makes a difference. @param {Table} table @param {Wishes} wishes */
function withoutOne(table, wishes) {
  const { groups } = table.squad, drills = table.drills.map((_, drill) => drill);
  const usual = { lanes: groups.map((own) => own.lanes), heads: groups.map((own) => own.heads) };
  const isUsual = isSame(wishes.lanes, usual.lanes) && isSame(wishes.heads, usual.heads);
  /** @type {[wish: string, differs: boolean, without: Partial<Wishes>, which?: number][]} */
  const each = [
    ["done", wishes.days.size > 0, { days: new Map() }],
    gearBack(table, wishes),
    ["adults", wishes.adults !== UNKNOWN, { adults: UNKNOWN }],
    ["effort", wishes.effort !== UNKNOWN, { effort: UNKNOWN }],
    ["taught", wishes.taught.size < drills.length, { taught: new Set(drills) }],
    ["keep", wishes.kept.length > 0, { kept: [] }],
    ["leave_out", wishes.leftOut.size > 0, { leftOut: new Set() }],
    ["lanes", !isUsual, usual],
  ];
  const found = each.filter(([, differs]) => differs).map(([wish, , without, which = UNKNOWN]) => ({ wish, which, without, other: { ...wishes, ...without } }));
  const goals = wishes.goals.length > 1 ? [...wishes.goals].reverse() : [];
  return [...found, ...goals.map((goal) => {
    const without = { goals: wishes.goals.filter((own) => own !== goal) };
    return { wish: "goals", which: goal, without, other: { ...wishes, ...without } };
  })];
}

/** With all of the one gear that is missing, where that will do; else with all gear.
 * @param {Table} table
 * @param {Wishes} wishes
 * @returns {[wish: string, differs: boolean, without: Partial<Wishes>, which?: number]} */
function gearBack(table, wishes) {
  const owned = table.gear.map((gear) => gear.owned);
  const ways = owned.map((count, place) => wishes.gear.map((here, own) => (own === place ? count : here)));
  const which = ways.findIndex((gear) => !isSame(gear, wishes.gear) && fits(table, { ...wishes, gear }));
  return ["gear", !isSame(wishes.gear, owned), { gear: ways[which] ?? owned }, which];
}

/** @param {number[]} one @param {number[]} other */
const isSame = (one, other) => one.every((number, place) => number === other[place]);
