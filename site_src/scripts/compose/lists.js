// The pieces that are tried in each role, best first, and of each a few sizes. Pure. Of composing/lists.py.

import { idleCost, ownCost, served } from "./costs.js";
import { COOL_DOWN, EASY, MAIN, MAINS, SECOND, SKILL, THIRD, UNKNOWN, WARM_UP } from "./pieces.js";

/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./wishes.js").Sized} Sized */
/** @typedef {import("./types.js").Role} Role */
/** @typedef {{warmUps: Sized[], skills: Sized[], mains: Sized[][], seconds: Sized[], thirds: Sized[], easies: Sized[], coolDowns: Sized[]}} Lists */

/** @type {Record<string, number>} */
const A_GOAL = { m: 9, s: 5, n: 4, o: 4 };
/** @type {Record<string, number>} */
const BESIDE = { m: 5, s: 3, n: 3, o: 3 };
const EASIES = 12, SIZES = 4;
const SHORTEST = 3000, SHORT = 1800; // tenths that a main set lasts at least; one that serves a wished goal

/** The lists for some wishes; mains by piece, all sizes of one together. Before a warm-up nothing is taught. @param {Asked} asked @returns {Lists} */
export function lists(asked) {
  const warmUps = ofRole(asked, WARM_UP).filter(([first]) => first?.piece.asks.every((drill) => asked.wishes.taught.has(drill)));
  const seconds = chosen(asked, SECOND), thirds = asked.wishes.kept.some((own) => own.role === SECOND) ? chosen(asked, THIRD) : seconds;
  return {
    warmUps: flat(asked, warmUps.map(some), WARM_UP),
    skills: flat(asked, chosen(asked, SKILL).map(some), SKILL),
    mains: chosen(asked, MAIN).map(some),
    seconds: flat(asked, seconds.map(some), SECOND),
    thirds: flat(asked, thirds.map(some), THIRD),
    easies: flat(asked, ranked(asked, EASY).slice(0, EASIES).map(some), EASY),
    coolDowns: flat(asked, ofRole(asked, COOL_DOWN), COOL_DOWN),
  };
}

/** Whether there is something to begin with, to do and to end with. @param {Lists} known */
export const isEnough = ({ warmUps, mains, coolDowns }) => warmUps.length > 0 && mains.length > 0 && coolDowns.length > 0;

/** @param {Asked} asked @param {Sized[][]} each @param {Role} role */
function flat(asked, each, role) {
  const found = each.flat().map((own) => ({ own, cost: ownCost(asked, own, role) }));
  found.sort((a, b) => a.cost - b.cost || a.own.place - b.own.place || a.own.number - b.own.number);
  return found.map(({ own }) => own);
}

/**
 * The pieces that may stand in a role, with their sizes; where one is kept there, it alone. What opens, eases or closes is done without gear.
 * @param {Asked} asked
 * @param {Role} role
 * @returns {Sized[][]}
 */
export function ofRole(asked, role) {
  const letter = MAINS.includes(role) ? MAIN : role;
  const kept = asked.wishes.kept.find((own) => own.role === role);
  const elsewhere = asked.wishes.kept.filter((own) => own.role !== role && own.piece !== kept?.piece).map((own) => own.piece);
  const isMain = MAINS.includes(role);
  let found = asked.offers
    .filter(({ piece }) => (kept ? piece.roles : asked.rolesOf(piece)).includes(letter) && (isMain || role === SKILL || !piece.gear.length) && !elsewhere.includes(piece.place))
    .filter((offer) => !asked.whyNot(offer, role))
    .map((offer) => asked.sized(offer));
  if (kept) {
    found = found
      .filter(([first]) => first?.place === kept.piece)
      .map((sizes) => sizes.filter((own) => kept.number === UNKNOWN || own.number === kept.number));
  } else if (isMain) {
    found = found.map((sizes) => sizes.filter(({ takes, piece }) => takes >= (piece.goals.some((goal) => asked.wanted.includes(goal)) ? SHORT : SHORTEST)));
  }
  return found.filter((sizes) => sizes.length);
}

/** A few sizes, from the least to the most, and the one that is written. @param {Sized[]} sizes */
export function some(sizes) {
  const last = sizes.length - 1, places = Array.from({ length: SIZES }, (_, number) => Math.floor((number * last) / (SIZES - 1)));
  return sizes.filter((own, place) => places.includes(place) || !own.steps);
}

/** By what a piece costs at its cheapest; then by its place. @param {Asked} asked @param {Role} role */
function ranked(asked, role) {
  const found = ofRole(asked, role).map((sizes) => {
    const first = /** @type {Sized} */ (sizes[0]);
    let cost = Math.min(...sizes.map((own) => ownCost(asked, own, role)));
    if (MAINS.includes(role) || role === SKILL) {
      cost += idleCost(asked, first, role) + (asked.wanted.length ? Math.min(...served(asked, first, role)) : 0);
    }
    return { sizes, place: first.place, cost };
  });
  return found.sort((a, b) => a.cost - b.cost || a.place - b.place).map(({ sizes }) => sizes);
}

/** For each goal the best that serve it, and the best of all; in the order of their rank. @param {Asked} asked @param {Role} role */
function chosen(asked, role) {
  const every = ranked(asked, role);
  const found = new Set(every.slice(0, BESIDE[role]));
  for (const goal of asked.wanted) {
    for (const own of every.filter(([first]) => first?.piece.goals.includes(goal)).slice(0, A_GOAL[role])) {
      found.add(own);
    }
  }
  return every.filter((own) => found.has(own));
}
