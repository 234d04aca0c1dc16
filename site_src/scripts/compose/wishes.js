// Wishes held against a table: each piece as it is for them, how long it takes, and why it is left out. Pure. Of composing/wishes.py and composing/asked.py.

import { EASY, MAIN, MAINS, SKILL, UNKNOWN } from "./pieces.js";

/** @typedef {import("./pieces.js").Table} Table */
/** @typedef {import("./pieces.js").Piece} Piece */
/** @typedef {import("./pieces.js").Offer} Offer */
/** @typedef {import("./pieces.js").Size} Size */
/** @typedef {import("./types.js").Role} Role */
/** @typedef {{piece: number, role: Role, number: number}} Kept number: UNKNOWN for however often */
/** @typedef {{pool: string, groups: number[], lanes: number[], heads: number[], minutes: number, goals: number[], gear: number[],
 *   effort: number, adults: number, days: Map<number, number>, taught: Set<number>, kept: Kept[], leftOut: Set<number>}} Wishes by place */
/** @typedef {{place: number, piece: Piece, size: Size, number: number, takes: number, adults: number, steps: number}} Sized
 *   a piece so often; `takes` is until the slowest lane group is done, `steps` how many rounds or reps more or fewer than written */
/** @typedef {"groups" | "gear" | "lanes" | "adults" | "done" | "leave_out"} Reason the wish that is in the way */

export const MINUTES_LEAST = 20, MINUTES_MOST = 120, GOALS_MOST = 3;
export const REPEATED_AFTER = 7; // days before a main set comes again
const A_DRILL_BELOW = 18001; // tenths of a slot from which a drill is no main set

/** @param {number} heads @param {number} lanes the swimmers of the fullest lane */
export const inALane = (heads, lanes) => Math.ceil(heads / lanes);

export class Asked {
  /** @param {Table} table @param {Wishes} wishes */
  constructor(table, wishes) {
    this.table = table;
    this.wishes = wishes;
    this.slot = 600 * wishes.minutes; // tenths
    this.offers = table.squad.offers.in(wishes.pool);
    this.inLane = table.squad.groups.map((_, group) => inALane(at(wishes.heads, group), at(wishes.lanes, group)));
    /** By lane group how many more swimmers are in its fullest lane than usual. */
    this.extra = table.squad.groups.map((own, group) => Math.max(0, at(this.inLane, group) - inALane(own.heads, own.lanes)));
    const work = this.offers.map(({ piece }) => piece).filter(isWork), goals = [...new Set(wishes.goals)];
    const every = (/** @type {number} */ goal) => work.filter((piece) => piece.goals.includes(goal));
    const rest = goals.filter((goal) => every(goal).every((piece) => this.onlyEases(piece)));
    /** The wished goals that no work is chosen for: those that none serves here, and beside work those that gentle swimming alone does. */
    this.aside = rest.length < goals.length ? rest : rest.filter((goal) => !every(goal).length);
    /** The wished goals that work is chosen for, as they are wished. */
    this.wanted = wishes.goals.filter((goal) => !this.aside.includes(goal));
    /** Whether all that is wished for is served by gentle work alone that may stand as relief, as recovery is. */
    this.isRest = this.wanted.length > 0 && this.wanted.every((goal) => rest.includes(goal));
    const isGentle = wishes.effort === UNKNOWN && (this.isRest || wishes.goals.every((goal) => this.aside.includes(goal)));
    /** The effort that is wished for; gentle where all that is wished for is rest, or no work. */
    this.effort = isGentle ? table.gentle : wishes.effort;
    /** Whether more is wished for than rest or gentle swimming. */
    this.asksWork = !this.isRest && !(this.effort >= 0 && this.effort <= table.gentle);
    /** @type {Map<Offer, Sized[]>} */
    this.known = new Map();
  }

  /** Whether a piece of work is gentle, teaches nothing and may stand as relief. @param {Piece} piece */
  onlyEases({ roles, hardest }) {
    return hardest <= this.table.gentle && !roles.includes(SKILL) && roles.includes(EASY);
  }

  /** The fewest adults for so many heads in this pool, whatever is done. */
  get adultsLeast() {
    const [fewest = 0, each = 0] = this.table.squad.watch[this.wishes.pool] ?? [];
    const heads = this.sum(this.wishes.heads);
    return Math.max(fewest, each ? Math.ceil(heads / each) : 0);
  }

  /** @param {number[]} ofEach by lane group; the sum over those that are asked for */
  sum(ofEach) {
    return this.wishes.groups.reduce((sum, group) => sum + at(ofEach, group), 0);
  }

  /** The sizes of an offer that every lane group that is asked for can do. @param {Offer} offer @returns {Sized[]} */
  sized(offer) {
    let found = this.known.get(offer);
    if (!found) {
      this.known.set(offer, (found = offer.sizes.flatMap((size) => this.#sized(offer, size))));
    }
    return found;
  }

  /** @param {Offer} offer @param {Size} size @returns {Sized[]} */
  #sized({ piece, adults }, size) {
    let takes = 0;
    for (const group of this.wishes.groups) {
      const time = at(size.times, group);
      if (time === UNKNOWN) {
        return [];
      }
      takes = Math.max(takes, time + at(this.extra, group) * (this.table.squad.groups[group]?.gap ?? 0));
    }
    const steps = piece.what ? Math.abs(size.number - piece.written) : 0;
    return [{ place: piece.place, piece, size, number: size.number, takes, adults, steps }];
  }

  /** The letters that a piece may stand as in such a slot: one drill in its own dose is a main set where there is time for little else. @param {Piece} piece */
  rolesOf({ of, roles }) {
    return this.slot < A_DRILL_BELOW || of !== "drill" ? roles : roles.replace(MAIN, "");
  }

  /**
   * Why a piece may not stand in a role; "" where it may. What is kept may, whenever it was done.
   * @param {Offer} offer
   * @param {Role} role
   * @returns {Reason | ""}
   */
  whyNot(offer, role) {
    const { piece } = offer, { wishes } = this;
    if (!this.sized(offer).length) {
      return "groups";
    }
    if (piece.gear.some((gear) => this.usedAtOnce(piece) > at(wishes.gear, gear))) {
      return "gear";
    }
    if (wishes.groups.some((group) => this.#isFull(offer, group))) {
      return "lanes";
    }
    if (wishes.adults !== UNKNOWN && offer.adults > wishes.adults) {
      return "adults";
    }
    if (wishes.leftOut.has(piece.place)) {
      return "leave_out";
    }
    return MAINS.includes(role) && this.#isLate(piece) ? "done" : "";
  }

  /** Whether a piece was done too lately to be a main set again. @param {Piece} piece */
  #isLate({ place }) {
    const days = this.wishes.days.get(place) ?? UNKNOWN;
    return 0 <= days && days < REPEATED_AFTER && !this.wishes.kept.some((own) => own.piece === place);
  }

  /** How many of each of its gear are in use at the same moment. @param {Piece} piece */
  usedAtOnce({ mostInLane }) {
    const { groups, heads, lanes } = this.wishes;
    return groups.reduce((sum, group) => sum + Math.min(at(heads, group), mostInLane ? mostInLane * at(lanes, group) : Infinity), 0);
  }

  /** Whether a lane has no room for those who are in it. @param {Offer} offer @param {number} group */
  #isFull({ piece, room }, group) {
    const most = at(room, group);
    return (piece.mostInLane > 0 && at(this.extra, group) > 0) || (most > 0 && most < at(this.inLane, group));
  }
}

/** Whether a piece may stand as work. @param {Piece} piece */
export const isWork = (piece) => piece.roles.includes(SKILL) || piece.roles.includes(MAIN);

/** @param {ArrayLike<number>} numbers @param {number} place */
export const at = (numbers, place) => numbers[place] ?? 0;
