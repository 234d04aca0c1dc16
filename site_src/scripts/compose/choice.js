// Of all that the table offers, what costs a coach the least: by enumeration, in a stated order. Pure. Of composing/best.py.

import { finished } from "../lib/slices.js";
import { Around } from "./around.js";
import { isAgain } from "./costs.js";
import { Hearts, orderOf } from "./hearts.js";
import { isEnough, lists } from "./lists.js";
import { tooMuch } from "./order.js";
import { MAIN, MAINS, SECOND, SKILL, WARM_UP } from "./pieces.js";
import { Asked } from "./wishes.js";

/** @typedef {import("./around.js").Found} Found */

const PROPOSALS = 3;
const TRIED = 400; // so many hearts that fit are tried for a proposal
const SAME_SKILL = 60, OTHER_PLACE = 250, SAME_DRILLS = 150; // the same as before it: the skill, work in another place, a main set's drills
const WORSE = 900; // an answer that costs so much more than the first is none

/**
 * Up to so many practices, the cheapest first; none of them has a main set of one before it. Each step is short.
 * @param {Asked} asked
 * @param {number} [most]
 * @returns {Generator<void, Found[], void>}
 */
export function* composing(asked, most = PROPOSALS) {
  const known = lists(asked);
  /** @type {Found[]} */
  const found = [];
  if (!isEnough(known)) {
    return found;
  }
  yield;
  const around = new Around(asked, known), hearts = new Hearts(asked, known, ...around.bounds);
  while (found.length < most) {
    const best = yield* cheapest(asked, around, hearts, found);
    if (!best || (found[0] && best.cost - found[0].cost >= WORSE)) {
      break;
    }
    found.push(best);
  }
  return found;
}

/** The same at once. @param {import("./pieces.js").Table} table @param {import("./wishes.js").Wishes} wishes @param {number} [most] */
export const compose = (table, wishes, most) => finished(composing(new Asked(table, wishes), most));

/** Whether there is a practice at all. @param {import("./pieces.js").Table} table @param {import("./wishes.js").Wishes} wishes */
export function fits(table, wishes) {
  const asked = new Asked(table, wishes), known = lists(asked);
  if (!isEnough(known)) {
    return false;
  }
  const around = new Around(asked, known);
  return finished(cheapest(asked, around, new Hearts(asked, known, ...around.bounds), [], true)) !== null;
}

/**
 * The cheapest practice with other main sets than those before it; one that is not dear where it stops with the first heart that has one.
 * @param {Asked} asked
 * @param {Around} around
 * @param {Hearts} hearts
 * @param {Found[]} before
 * @param {boolean} [stops]
 * @returns {Generator<void, Found | null, void>}
 */
function* cheapest(asked, around, hearts, before, stops = false) {
  const stood = before.flatMap((own) => own.order);
  const placed = (/** @type {string} */ roles) => new Set(stood.filter((one) => roles.includes(one.role)).map((one) => one.own.place));
  const used = placed(MAIN + SECOND), warm = placed(WARM_UP);
  const serves = before.some((own) => doServe(asked, own.order));
  const least = stops ? Infinity : around.least; // what stands around a heart costs at least
  /** @type {Found | null} */
  let plain = null;
  /** @type {Found | null} */
  let best = null;
  let tried = 0;
  for (const heart of hearts) {
    if (!heart) {
      yield;
      continue;
    }
    if (tried >= TRIED || (plain && heart.cost + least >= plain.cost)) {
      break; // and no later one costs less
    }
    const order = orderOf(heart);
    if (heart.mains.places.some((place) => used.has(place)) || !canBe(asked, around, order, serves)) {
      continue;
    }
    tried += 1;
    const found = around.fill(order, heart.takes, heart.cost + again(asked, order, stood), plain, warm);
    yield;
    if (found && found !== plain) {
      plain = found;
      best = yield* longer(asked, around, hearts.withThird(heart), { stood, used, warm }, cheaper(best, found));
    }
  }
  return best;
}

/** The one that costs less; alike, the one that was found before. @param {Found | null} best @param {Found} found */
const cheaper = (best, found) => (best && best.cost <= found.cost ? best : found);

/**
 * The cheapest with a third main set that costs less than `best`; else that one.
 * @param {Asked} asked
 * @param {Around} around
 * @param {ReturnType<Hearts["withThird"]>} thirds
 * @param {{stood: import("./order.js").Stood[], used: Set<number>, warm: Set<number>}} before what stands in earlier proposals
 * @param {Found} best
 * @returns {Generator<void, Found, void>}
 */
function* longer(asked, around, thirds, { stood, used, warm }, best) {
  let found = best;
  for (const { order, places, takes, cost } of thirds) {
    if (!places.some((place) => used.has(place)) && !tooMuch(asked, order.map(([, own]) => own))) {
      found = around.fill(order, takes, cost + again(asked, order, stood), found, warm) ?? found;
      yield;
    }
  }
  return found;
}

/** What it costs that a heart has work of earlier proposals. @param {Asked} asked @param {import("./order.js").Standing[]} heart @param {import("./order.js").Stood[]} stood */
function again(asked, heart, stood) {
  const work = stood.filter(({ role }) => role === SKILL || MAINS.includes(role));
  return heart.reduce((cost, [role, own]) => {
    const same = work.filter((one) => one.own.place === own.place);
    if (same.length) {
      return cost + (role === SKILL && same.every((one) => one.role === SKILL) ? SAME_SKILL : OTHER_PLACE);
    }
    return cost + (role !== SKILL && work.some((one) => one.role !== SKILL && isAgain(asked, own, one.own)) ? SAME_DRILLS : 0);
  }, 0);
}

/** Whether a main set is for something that is wished for. @param {Asked} asked @param {{role: import("./types.js").Role, own: import("./wishes.js").Sized}[]} order */
const doServe = ({ wanted }, order) =>
  order.some(({ role, own }) => MAINS.includes(role) && own.piece.goals.some((goal) => wanted.includes(goal)));

/**
 * Whether a heart breaks nothing by itself; where it has to serve a goal, whether a main set does.
 * @param {Asked} asked
 * @param {Around} around
 * @param {import("./order.js").Standing[]} heart
 * @param {boolean} serves
 */
function canBe(asked, around, heart, serves) {
  const does = !serves || doServe(asked, heart.map(([role, own]) => ({ role, own })));
  return does && !tooMuch(asked, heart.map(([, own]) => own)) && around.canTeach(heart);
}
