// A practice that was changed by hand, fitted into its slot again: as few as can be of its other pieces are cut or lengthened. Pure.
// Of composing/fit.py.

import { A_POINT, SPARE } from "./around.js";
import { heldCost, ownCost } from "./costs.js";
import { heartCost } from "./hearts.js";
import { some } from "./lists.js";
import { laid, SLACK_MOST, unsafe, whole } from "./order.js";
import { COOL_DOWN, EASY, isHeld, MAINS, SKILL, TENTHS, WARM_UP } from "./pieces.js";
import { coolDownCost, endsCost, reliefCost, warmUpCost, workOf } from "./shape.js";

/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./wishes.js").Sized} Sized */
/** @typedef {import("./order.js").Standing} Standing */
/** @typedef {import("./around.js").Found} Found */
/** @typedef {{role: import("./types.js").Role, now: Sized, others: Sized[]}} Slot `others`: the other ways that its piece may be done */

/**
 * The practice with as few changes as will do, of those numbers that are told; null where none will.
 * @param {Asked} asked
 * @param {Slot[]} slots
 * @param {number[]} changes
 * @param {boolean} [leaves] whether more than two minutes may be left where nothing fills the slot: then what leaves the least
 * @returns {Found | null}
 */
export function fitted(asked, slots, changes, leaves = false) {
  for (const count of changes) {
    const found = cheapest(asked, slots, count, SLACK_MOST);
    if (found) {
      return found;
    }
  }
  /** @type {Found | null} */
  let best = null;
  for (const count of leaves ? changes : []) {
    const found = cheapest(asked, slots, count, asked.slot);
    if (found && (!best || whole(found.order) > whole(best.order))) {
      best = found;
    }
  }
  return best;
}

/**
 * The cheapest with so many pieces done more or less often; where more than two minutes may be left, what leaves the least.
 * @param {Asked} asked
 * @param {Slot[]} slots
 * @param {number} count
 * @param {number} slack
 * @returns {Found | null}
 */
function cheapest(asked, slots, count, slack) {
  /** @type {(Found & {left: number}) | null} */
  let best = null;
  const takes = whole(laid(asked, slots.map(({ role, now }) => [role, now])));
  for (const order of ways(slots, count, asked.slot - takes, slack)) {
    const cost = costOf(asked, order);
    const left = slack > SLACK_MOST ? -order.reduce((sum, [, own]) => sum + own.takes, 0) : 0;
    if (best && (left - best.left || cost - best.cost) >= 0) {
      continue;
    }
    const stood = laid(asked, order);
    if (!unsafe(asked, stood)) {
      best = { order: stood, cost, left };
    }
  }
  return best && { order: best.order, cost: best.cost };
}

/**
 * Every way to do so many of the pieces more or less often that leaves no more than `slack` of the slot, of which `left` is left now.
 * @param {Slot[]} slots
 * @param {number} count
 * @param {number} left
 * @param {number} slack
 * @returns {Standing[][]}
 */
function ways(slots, count, left, slack) {
  /** @type {Standing[][]} */
  const found = [];
  for (const places of chosen(slots.flatMap((slot, place) => (slot.others.length ? [place] : [])), count)) {
    const sizes = places.map((place) => (count === 1 ? slots[place]?.others : some(slots[place]?.others ?? [])) ?? []);
    for (const own of product(sizes)) {
      const more = own.reduce((sum, size, at) => sum + size.takes - (slots[places[at] ?? 0]?.now.takes ?? 0), 0);
      if (left - more >= 0 && left - more <= slack) {
        found.push(slots.map(({ role, now }, place) => [role, own[places.indexOf(place)] ?? now]));
      }
    }
  }
  return found;
}

/** So many of some places, in order; none or one or two. @param {number[]} places @param {number} count @returns {number[][]} */
function chosen(places, count) {
  if (!count) {
    return [[]];
  }
  return places.flatMap((place, at) => chosen(places.slice(at + 1), count - 1).map((others) => [place, ...others]));
}

/** One of each, in every way, the last changing first. @param {Sized[][]} each @returns {Sized[][]} */
const product = (each) =>
  each.reduce((/** @type {Sized[][]} */ found, sizes) => found.flatMap((before) => sizes.map((own) => [...before, own])), [[]]);

/**
 * What a practice costs in whatever order it stands: as it is reckoned where it is composed. What is held costs nothing, for it is no choice, but that
 * other work is as fast; nor does what is not there of a practice that is written.
 * @param {Asked} asked
 * @param {Standing[]} order
 */
export function costOf(asked, order) {
  const own = order.filter(([role]) => !isHeld(role)), heart = own.filter(([role]) => role === SKILL || MAINS.includes(role));
  const roles = new Map(own), [warmUp, relief, coolDown] = [WARM_UP, EASY, COOL_DOWN].map((role) => roles.get(/** @type {import("./types.js").Role} */ (role)) ?? null);
  let cost = own.reduce((sum, [role, sized]) => sum + ownCost(asked, sized, role), 0) + heldCost(asked, order);
  if (heart.length) {
    const work = workOf(asked, heart.map(([, sized]) => sized));
    cost += heartCost(asked, heart) + (warmUp ? warmUpCost(asked, warmUp, work) : 0) + reliefCost(asked, relief ?? null, work);
  }
  cost += endsCost(asked, warmUp ?? null, relief ?? null, coolDown ?? null);
  const stood = laid(asked, order), before = whole(stood.slice(0, -1)), end = whole(stood.slice(-1));
  const slack = Math.floor((asked.slot - before) / TENTHS) - Math.ceil(end / TENTHS);
  return cost + (coolDown ? coolDownCost(asked, coolDown) : 0) + Math.floor(Math.abs(slack - SPARE) / A_POINT);
}
