// A practice that is given other minutes: its pieces stay in their order, and as few of them as will do are done more or less often; what is
// kept is not. Where no way is short enough, a sentence says what to take out. Pure. Of composing/minutes.py.

import { showTime } from "../arithmetic/rounding.js";
import { asFitted, orRefused, piecesWithout } from "./change.js";
import { askedOf, ordered, slotsOf, standing, standsSo } from "./chosen.js";
import { fitted } from "./fit.js";
import { laid, unsafe, whole } from "./order.js";
import { COOL_DOWN, isHeld, MAIN, TENTHS, WARM_UP } from "./pieces.js";
import { told } from "./propose.js";
import { BadWish } from "./request.js";
import { changeWords, listed, said } from "./words.js";

/** @typedef {import("./types.js").Practice} Practice */
/** @typedef {import("./types.js").Request} Request */
/** @typedef {import("./types.js").Role} Role */
/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./fit.js").Slot} Slot */

/**
 * A practice as it fits into the minutes of a request, longer or shorter than it, with what moved; refused where it does not, with the roles of
 * what to take out first. Throws BadWish for a request that cannot be.
 * @param {object} data
 * @param {Request} request
 * @param {Practice} practice
 * @param {Role[]} [without] roles of what is taken out of it before
 * @returns {import("./types.js").Changed | import("./types.js").Refused}
 */
export function inMinutes(data, request, practice, without = []) {
  const asked = askedOf(data, request), before = practice.parts.filter(({ role }) => without.includes(role)).reduce(piecesWithout, practice);
  /** @type {Role[]} */
  let out = [];
  const found = orRefused(() => {
    const old = ordered(asked, practice), order = ordered(asked, before), slots = slotsOf(asked, before), own = fit(asked, slots);
    if (!own) {
      const reason = whole(order) > asked.slot ? "" : unsafe(asked, order), long = tooLong(asked, before, slots);
      out = reason ? out : long.out;
      throw new BadWish(reason ? said(asked.table, `broken-${reason}`) : long.said);
    }
    const after = asFitted(before, own), now = standing(asked, after);
    return { practice: after, proposal: told(asked, now.order, now.cost, after.out), words: changeWords(asked, old, now.order) };
  });
  return "refused" in found ? { ...found, out } : found;
}

/** @param {Asked} asked @param {Slot[]} slots */
const fit = (asked, slots) => fitted(asked, slots, [...slots.keys(), slots.length], true);

/** How short it can be, and what makes it shorter: what is kept freed, one piece taken out, as many as it takes from the last on, or the longest swapped. @param {Asked} asked @param {Practice} practice @param {Slot[]} slots
 * @returns {{said: string, out: Role[]}} */
function tooLong(asked, practice, slots) {
  const { table } = asked, { parts } = practice, order = atShortest(asked, slots), time = showTime(Math.ceil(whole(order) / TENTHS));
  const found = said(table, "too-long", { minutes: asked.wishes.minutes, time });
  if (parts.some(({ kept }) => kept) && fits(asked, slotsOf(asked, { ...practice, parts: parts.map((own) => ({ ...own, kept: false })) }))) {
    return { said: found + said(table, "too-long-kept"), out: [] };
  }
  const may = mayGo(practice), gone = [...may.map((place) => [place]), ...may.map((_, at) => may.slice(0, at + 1))]
    .find((places) => stands(asked, slots.filter((_, place) => !places.includes(place)))) ?? [];
  const titles = listed(table, gone.map((place) => slots[place]?.now.piece.title ?? "")), out = slots.flatMap(({ role }, place) => (gone.includes(place) ? [role] : []));
  const [longest] = order.filter(({ role }) => !isHeld(role)).sort((one, other) => other.own.takes - one.own.takes);
  return { said: found + (titles ? said(table, "too-long-out", { titles }) : longest ? said(table, "too-long-swap", { title: longest.own.piece.title }) : ""), out };
}

/** @param {Asked} asked @param {Slot[]} slots */
const atShortest = (asked, slots) => laid(asked, slots.map(({ role, now, others }) => [role, [now, ...others].reduce((least, own) => (own.takes < least.takes ? own : least))]));

/** @param {Asked} asked @param {Slot[]} slots */
const fits = (asked, slots) => whole(atShortest(asked, slots)) <= asked.slot && fit(asked, slots) !== null;

/** @param {Asked} asked @param {Slot[]} slots */
const stands = (asked, slots) => standsSo(slots.map(({ role }) => role)) && fits(asked, slots);

/** The places of what may be taken out, the last first. @param {Practice} practice */
const mayGo = ({ parts }) =>
  parts.flatMap(({ role, kept }, place) => (place > 0 && place < parts.length - 1 && !kept && !(WARM_UP + MAIN + COOL_DOWN).includes(role) ? [place] : [])).reverse();
