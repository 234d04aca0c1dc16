// What a coach changes of a proposal: a piece swapped for the next best, kept, moved or taken out. What was not touched stays where it is, the
// others are cut or lengthened where the slot asks for it, and what breaks a limit is refused in a sentence. Pure. Of composing/changes.py.

import { askedOf, refuse, sizedOf, slotsOf, standing } from "./chosen.js";
import { fitted } from "./fit.js";
import { ofRole } from "./lists.js";
import { laid, unsafe } from "./order.js";
import { COOL_DOWN, isHeld, MAIN, MAINS, SECOND, WARM_UP } from "./pieces.js";
import { told } from "./propose.js";
import { BadWish } from "./request.js";
import { Asked } from "./wishes.js";
import { changeWords, roleWord } from "./words.js";

/** @typedef {import("./types.js").Practice} Practice */
/** @typedef {import("./types.js").Chosen} Chosen */
/** @typedef {import("./types.js").Request} Request */
/** @typedef {import("./types.js").Refused} Refused */
/** @typedef {import("./wishes.js").Sized} Sized */
/** @typedef {import("./fit.js").Slot} Slot */
/** @typedef {import("./around.js").Found} Found */

const DEEDS = new Map([["swap", 0], ["keep", 0], ["free", 0], ["up", -1], ["down", 1], ["out", 0]]); // and how many places it moves a piece
const A_FEW = [0, 1, 2];
const SWAPS = [[0, 1], [2]]; // how many other pieces are changed: at most one where that does, else two

/**
 * A practice as a proposal; refused where it cannot be. Throws BadWish for a request that cannot be.
 * @param {object} data
 * @param {Request} request
 * @param {Practice} practice
 * @returns {{proposal: import("./types.js").Proposal} | Refused}
 */
export function proposalOf(data, request, practice) {
  const asked = askedOf(data, request);
  return orRefused(() => {
    const { order, cost } = standing(asked, practice);
    return { proposal: told(asked, order, cost, practice.out) };
  });
}

/**
 * A practice after a deed, with what moved; refused where it cannot be done. Throws BadWish for a request that cannot be.
 * @param {object} data
 * @param {Request} request
 * @param {Practice} practice
 * @param {import("./types.js").Deed} deed
 * @returns {import("./types.js").Changed | Refused}
 */
export function change(data, request, practice, deed) {
  const asked = askedOf(data, request);
  return orRefused(() => {
    checkDeed(asked, practice, deed);
    const before = standing(asked, practice), after = changed(asked, practice, deed), now = standing(asked, after);
    return { practice: after, proposal: told(asked, now.order, now.cost, after.out), words: changeWords(asked, before.order, now.order, deed) };
  });
}

/** @template T @param {() => T} make @returns {T | Refused} */
export function orRefused(make) {
  try {
    return make();
  } catch (problem) {
    if (problem instanceof BadWish) {
      return { refused: problem.message };
    }
    throw problem;
  }
}

/** @param {Asked} asked @param {Practice} practice @param {import("./types.js").Deed} deed @returns {Practice} */
function changed(asked, practice, { do: what, role }) {
  const { parts } = practice, place = parts.findIndex((part) => part.role === role), own = /** @type {Chosen} */ (parts[place]);
  const by = DEEDS.get(what);
  if (by) {
    return moved(asked, practice, place, place + by);
  }
  if (what === "keep" || what === "free") {
    return { ...practice, parts: parts.map((part) => (part === own ? { ...own, kept: what === "keep" } : part)) };
  }
  if (own.kept) {
    refuse(asked, "change-kept", { title: sizedOf(asked, own).piece.title });
  }
  return what === "swap" ? swapped(asked, practice, place, own) : without(asked, practice, own);
}

/** With the next best in a place: of all that may stand there and fits, what costs least. @param {Asked} asked @param {Practice} practice @param {number} place @param {Chosen} gone */
function swapped(asked, practice, place, gone) {
  const slots = slotsOf(asked, practice), free = new Asked(asked.table, { ...asked.wishes, kept: [] });
  const known = [...practice.parts.map((own) => own.piece), ...practice.out];
  const candidates = ofRole(free, gone.role).filter(([first]) => first && !known.includes(first.piece.key));
  for (const changes of SWAPS) {
    const best = least(candidates.map((sizes) => inPlace(asked, slots, place, sizes, changes)));
    if (best) {
      return asFitted({ ...practice, out: [...practice.out, gone.piece] }, best);
    }
  }
  return refuse(asked, "change-swap", { role: roleWord(asked.table, gone.role).toLowerCase() });
}

/** The cheapest with a piece in a place, in whatever size. @param {Asked} asked @param {Slot[]} slots @param {number} place @param {Sized[]} sizes @param {number[]} changes */
function inPlace(asked, slots, place, sizes, changes) {
  for (const count of changes) {
    const best = least(sizes.map((now) => fitted(asked, slots.map((slot, at) => (at === place ? { ...slot, now, others: [] } : slot)), [count])));
    if (best) {
      return best;
    }
  }
  return null;
}

/** The first of the cheapest. @param {(Found | null)[]} every @returns {Found | null} */
const least = (every) => every.reduce((best, own) => (own && (!best || own.cost < best.cost) ? own : best), null);

/** With a piece before or after its neighbour. @param {Asked} asked @param {Practice} practice @param {number} place @param {number} to */
function moved(asked, practice, place, to) {
  const parts = [...practice.parts], last = parts.length - 1, one = parts[place], other = parts[to];
  if (place === 0 || to <= 0) {
    refuse(asked, "change-first");
  }
  if (place === last || to >= last || !one || !other) {
    return refuse(asked, "change-last");
  }
  parts[to] = one;
  parts[place] = other;
  return fittedAgain(asked, { ...practice, parts });
}

/** What is left without a piece; each main set after it is then the one before. @param {Practice} practice @param {Chosen} gone @returns {Practice} */
export function piecesWithout({ parts, out }, gone) {
  const from = MAINS.includes(gone.role) ? MAINS.indexOf(gone.role) : MAINS.length;
  const before = (/** @type {Chosen} */ own) => (MAINS.indexOf(own.role) > from ? { ...own, role: MAINS[MAINS.indexOf(own.role) - 1] ?? MAIN } : own);
  return { parts: parts.filter((own) => own !== gone).map(before), out: [...out, gone.piece] };
}

/** @param {Asked} asked @param {Practice} practice @param {Chosen} gone */
function without(asked, practice, gone) {
  const hasSecond = practice.parts.some((own) => own.role === SECOND);
  if (isHeld(gone.role) && [practice.parts[0], practice.parts.at(-1)].includes(gone)) {
    refuse(asked, practice.parts[0] === gone ? "change-first" : "change-last");
  }
  if (gone.role === WARM_UP || gone.role === COOL_DOWN || (gone.role === MAIN && !hasSecond)) {
    refuse(asked, "change-out", { role: roleWord(asked.table, gone.role).toLowerCase() });
  }
  return fittedAgain(asked, piecesWithout(practice, gone));
}

/** @param {Asked} asked @param {Practice} practice */
function fittedAgain(asked, practice) {
  const slots = slotsOf(asked, practice), found = fitted(asked, slots, A_FEW, true);
  if (found) {
    return asFitted(practice, found);
  }
  return refuse(asked, `broken-${unsafe(asked, laid(asked, slots.map(({ role, now }) => [role, now]))) || "minutes"}`);
}

/** A practice with the pieces and sizes that fit; what was kept is kept, with its own talk. @param {Practice} practice @param {Found} found @returns {Practice} */
export const asFitted = (practice, { order }) => ({
  ...practice,
  parts: order.map(({ role, own: { piece: { key }, number } }) => ({ kept: false, ...practice.parts.find((part) => part.piece === key), role, piece: key, number })),
});

/** There is such a deed, and something to do it to. @param {Asked} asked @param {Practice} practice @param {import("./types.js").Deed} deed */
function checkDeed(asked, { parts }, { do: what, role }) {
  if (!DEEDS.has(what) || !parts.some((part) => part.role === role)) {
    refuse(asked, "bad-deed", { do: what, role });
  }
}
