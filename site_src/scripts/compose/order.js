// Pieces in the order of a practice: when each begins, and what of the limits of a whole practice they break. Pure. Of composing/order.py.

import { UNKNOWN } from "./pieces.js";
import { at } from "./wishes.js";

/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./wishes.js").Sized} Sized */
/** @typedef {import("./types.js").Role} Role */
/** @typedef {[role: Role, own: Sized]} Standing */
/** @typedef {{role: Role, own: Sized, lead: number}} Stood with `lead` tenths of talk and change before it */
/** @typedef {"minutes" | "limit" | "dose" | "breath" | "taught"} Broken what pieces break together */

export const SLACK_MOST = 1200; // tenths of the slot that may be left
const WHOLE = 1000;

/**
 * What goes before a piece: its talk, or the change into its gear where that is longer.
 * @param {Asked} asked
 * @param {number[] | null} worn none before the first, where it is the talk alone
 * @param {Sized} after
 */
export function lead(asked, worn, { piece }) {
  let most = piece.talk;
  if (!worn) {
    return most;
  }
  for (const gear of worn) {
    if (!piece.begins.includes(gear)) {
      most = Math.max(most, asked.table.gear[gear]?.change ?? 0);
    }
  }
  for (const gear of piece.begins) {
    if (!worn.includes(gear)) {
      most = Math.max(most, asked.table.gear[gear]?.change ?? 0);
    }
  }
  return most;
}

/** What taking off takes that is worn at the last length of a piece: the longest of it. @param {Asked} asked @param {Sized} own */
export const takenOff = ({ table }, { piece }) => Math.max(0, ...piece.ends.map((gear) => table.gear[gear]?.change ?? 0));

/** Pieces with what goes before each. @param {Asked} asked @param {Standing[]} order @returns {Stood[]} */
export const laid = (asked, order) =>
  order.map(([role, own], place) => ({ role, own, lead: lead(asked, order[place - 1]?.[1].piece.ends ?? null, own) }));

/** What all of it takes, in tenths. @param {Stood[]} order */
export const whole = (order) => order.reduce((sum, one) => sum + one.lead + one.own.takes, 0);

/** The first that pieces break together; "" where they break nothing. @param {Asked} asked @param {Stood[]} order @returns {Broken | ""} */
export function broken(asked, order) {
  const left = asked.slot - whole(order);
  return left < 0 || left > SLACK_MOST ? "minutes" : unsafe(asked, order);
}

/** The first limit of a whole practice, or rule of teaching, that is broken. @param {Asked} asked @param {Stood[]} order @returns {Broken | ""} */
export function unsafe(asked, order) {
  const found = tooMuch(asked, order.map((one) => one.own));
  if (found) {
    return found;
  }
  if (isOutOfBreath(asked, order)) {
    return "breath";
  }
  return isBeforeItsNeed(asked, order) ? "taught" : "";
}

/** The first limit that pieces are beyond, in whatever order they stand. @param {Asked} asked @param {Sized[]} pieces @returns {Broken | ""} */
export function tooMuch(asked, pieces) {
  const { limits } = asked.table.squad;
  let fast = 0, resisted = 0, plates = 0, under = 0;
  for (const { size } of pieces) {
    fast += size.fast;
    resisted += size.resisted;
    plates += size.plates;
    under += size.under;
  }
  if (fast > limits.fast || resisted > limits.resisted || plates > limits.plates || under > limits.under) {
    return "limit";
  }
  return isOverDose(pieces) ? "dose" : "";
}

/** Whether some drill is done more than its dose lets the level: reckoned as plain where all of it is. @param {Sized[]} pieces */
function isOverDose(pieces) {
  /** @type {Map<number, import("./pieces.js").Dose>} */
  const doses = new Map();
  for (const { size } of pieces) {
    for (const own of size.doses) {
      const sum = doses.get(own[0]);
      doses.set(own[0], sum ? both(sum, own) : own);
    }
  }
  for (const [, plain, strict] of doses.values()) {
    if ((plain === UNKNOWN ? strict : plain) > WHOLE) {
      return true;
    }
  }
  return false;
}

/** Two doses of a drill. @param {import("./pieces.js").Dose} one @param {import("./pieces.js").Dose} other @returns {import("./pieces.js").Dose} */
const both = ([drill, plain, strict], [, more, moreStrict]) => [
  drill, plain === UNKNOWN || more === UNKNOWN ? UNKNOWN : plain + more, strict + moreStrict,
];

/** Whether somebody goes under water too soon after fast work of an earlier piece. @param {Asked} asked @param {Stood[]} order */
function isOutOfBreath(asked, order) {
  const least = asked.table.squad.limits.underAfterFast;
  let since = UNKNOWN;
  for (const one of order) {
    const { size } = one.own;
    if (since !== UNKNOWN) {
      since += one.lead;
      if (size.goesUnder !== UNKNOWN && since + size.goesUnder < least) {
        return true;
      }
    }
    if (size.calm !== UNKNOWN) {
      since = size.calm;
    }
    else if (since !== UNKNOWN) {
      since += Math.min(...asked.wishes.groups.map((group) => Math.max(0, at(size.times, group))));
    }
  }
  return false;
}

/** Whether a drill comes before what it needs, neither taught nor done before. @param {Asked} asked @param {Stood[]} order */
function isBeforeItsNeed(asked, order) {
  /** @type {number[]} */
  const done = [];
  for (const { own: { piece } } of order) {
    if (piece.asks.some((drill) => !asked.wishes.taught.has(drill) && !done.includes(drill))) {
      return true;
    }
    done.push(...piece.drills);
  }
  return false;
}
