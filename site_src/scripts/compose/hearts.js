// The work of an evening: skill, main set and a second main set, in every way that may fit; in a long evening a third. Pure. Of composing/hearts.py.

import { againCost, idleCost, ownCost, pairCost, served, skillCost } from "./costs.js";
import { lead, takenOff } from "./order.js";
import { MAIN, MAINS, SECOND, SKILL, THIRD } from "./pieces.js";
import { lengthCost, longerCost, mainsCost } from "./shape.js";

/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./wishes.js").Sized} Sized */
/** @typedef {import("./lists.js").Lists} Lists */
/** @typedef {import("./order.js").Standing} Standing */
/** @typedef {import("./types.js").Role} Role */
/** @typedef {{own: Sized, role: Role, cost: number, serves: number[], first: number}} Part its cost beside a main set; `first`: what goes before it after a warm-up */
/** @typedef {{order: Standing[], places: number[], number: number, first: Part, takes: number, cost: number, serves: number[], beside: number[],
 *   least: number, off: number, work: number}} Mains
 *   one or two main sets, in order: `number` of them in the order of the lists, `beside` what each skill costs before them, `least` what a heart
 *   with them costs at least, `off` what taking their gear off takes, `work` what they take without what stands between */
/** @typedef {{mains: Mains, skill: Sized | null, number: number, takes: number, cost: number}} Heart `takes` is with what goes before each, `cost` in points */

const SECOND_FROM = 50 * 600, THIRD_FROM = 95 * 600; // a shorter slot has no second main set, and none a third
const BAND = 100; // points: so many hearts are made at a time
const PAUSE = 64; // after so many hearts, or main sets whose hearts are made, work may pause

/** The pieces of a heart with their roles, in order. @param {Heart} heart @returns {Standing[]} */
export const orderOf = ({ mains, skill }) => (skill ? [[SKILL, skill], ...mains.order] : mains.order);

/**
 * Every heart that takes so long, cheapest first; alike, in the order in which the lists have them. Less than `least` by as much as taking its
 * gear off takes will do, since that may be longer than the talk that is counted after it. There are many, and few are looked at: they are
 * made by bands of what they cost, and those of main sets whose hearts all cost more not at all.
 */
export class Hearts {
  /** @type {Mains[]} */ #mains = [];
  /** @type {Heart[][]} */ #bands = []; // by what they cost beyond `#least`
  #ready = 0; // so many bands are whole, and sorted
  #waiting = 0; // so many hearts stand in the others
  #next = 0; // of the main sets, whose hearts are made next
  #least = 0;
  #isWhole = false; // all of the main sets are there

  /**
   * @param {Asked} asked
   * @param {Lists} known
   * @param {number} least tenths
   * @param {number} most
   */
  constructor(asked, known, least, most) {
    this.asked = asked;
    this.bounds = { least, most };
    const keeps = asked.wishes.kept.map((own) => own.role);
    const isLong = asked.slot >= SECOND_FROM || keeps.includes(SECOND);
    this.needsSecond = keeps.includes(SECOND);
    this.none = keeps.includes(SKILL) ? Infinity : lengthCost(asked, null); // what it costs to have no skill
    this.skills = known.skills.map((own) => part(asked, own, SKILL, lengthCost(asked, own)));
    this.seconds = isLong ? known.seconds.map((own) => part(asked, own, SECOND)) : [];
    this.thirds = asked.slot >= THIRD_FROM ? known.thirds : [];
    this.mains = known.mains;
  }

  /** Each heart; null where work may pause. @returns {Generator<Heart | null, void, void>} */
  *[Symbol.iterator]() {
    for (let band = 0; band < this.#ready || (yield* this.#grow()); band += 1) {
      const hearts = this.#bands[band] ?? [];
      for (let at = 0; at < hearts.length; at += PAUSE) {
        yield* hearts.slice(at, at + PAUSE);
        yield null;
      }
    }
  }

  /**
   * A heart of two main sets with each third that leaves room: in a long slot what serves is soon done, and the rest of it is no warm-up.
   * @param {Heart} heart
   * @returns {Generator<{order: Standing[], places: number[], takes: number, cost: number}, void, void>}
   */
  *withThird({ mains, skill, takes }) {
    const { asked, bounds } = this, taken = [...mains.places, ...(skill ? [skill.place] : [])];
    for (const own of mains.places.length === MAINS.length - 1 ? this.thirds : []) {
      if (taken.includes(own.place) || takes + own.takes > bounds.most) {
        continue;
      }
      const three = /** @type {Standing[]} */ ([...mains.order, [THIRD, own]]);
      three.sort(([role], [other]) => MAINS.indexOf(role) - MAINS.indexOf(other)).sort(([, one], [, other]) => sooner(asked, one, other));
      const order = /** @type {Standing[]} */ (skill ? [[SKILL, skill], ...three] : three);
      const all = order.reduce((sum, [, each], at) => sum + lead(asked, order[at - 1]?.[1].piece.ends ?? [], each) + each.takes, 0);
      if (all <= bounds.most) {
        const cost = order.reduce((sum, [role, each]) => sum + ownCost(asked, each, role), heartCost(asked, order));
        yield { order, places: [...mains.places, own.place], takes: all, cost };
      }
    }
  }

  /** The main sets with each second one. @returns {Generator<null, void, void>} */
  *#gather() {
    const { asked, skills, seconds } = this;
    const bestServed = skills.map((skill) => skill.serves).reduce(cheaper, asked.wanted.map(() => Infinity));
    for (const sizes of this.mains) {
      const beside = skills.map((skill) => skill.cost + skillCost(asked, skill.own, /** @type {Sized} */ (sizes[0])));
      for (const own of sizes) {
        this.#around(part(asked, own, MAIN), seconds, beside, bestServed);
      }
      yield null;
    }
    this.#mains.sort((a, b) => a.least - b.least);
    this.#least = this.#mains[0]?.least ?? 0;
    this.#isWhole = true;
  }

  /** Makes another band; whether there was one to make. @returns {Generator<null, boolean, void>} */
  *#grow() {
    if (!this.#isWhole) {
      yield* this.#gather();
    }
    if (!this.#waiting && this.#next >= this.#mains.length) {
      return false;
    }
    const upTo = this.#least + BAND * (this.#ready + 1);
    for (let own = this.#mains[this.#next]; own && own.least <= upTo; own = this.#mains[this.#next]) {
      this.#make(own);
      this.#next += 1;
      if (this.#next % PAUSE === 0) {
        yield null;
      }
    }
    const band = this.#bands[this.#ready] ?? [];
    band.sort((a, b) => a.cost - b.cost || a.number - b.number);
    this.#waiting -= band.length;
    this.#ready += 1;
    return true;
  }

  /** A main set alone and with each second one. @param {Part} main @param {Part[]} seconds @param {number[]} beside @param {number[]} bestServed */
  #around(main, seconds, beside, bestServed) {
    const { own } = main, { asked, bounds } = this;
    if (!this.needsSecond) {
      this.#add([main], main.cost, main.serves, beside, bestServed);
    }
    for (const second of seconds) {
      if (second.own.place !== own.place && own.takes + second.own.takes <= bounds.most) {
        const both = sooner(asked, own, second.own) <= 0 ? [main, second] : [second, main];
        this.#add(both, main.cost + second.cost + pairCost(asked, own, second.own), cheaper(main.serves, second.serves), beside, bestServed);
      }
    }
  }

  /** @param {Part[]} parts the main sets in order @param {number} base @param {number[]} serves @param {number[]} beside @param {number[]} bestServed */
  #add(parts, base, serves, beside, bestServed) {
    const { asked } = this, [first, after] = /** @type {[Part, Part?]} */ (parts);
    const both = first.own.takes + (after?.own.takes ?? 0), cost = base + mainsCost(asked, both);
    const least = cost + Math.min(this.none + sumOf(serves), Math.min(...beside) + cheaperSum(serves, bestServed));
    this.#mains.push({
      order: parts.map(({ own, role }) => [role, own]),
      places: parts.map(({ own }) => own.place),
      number: this.#mains.length,
      takes: both + (after ? lead(asked, first.own.piece.ends, after.own) : 0),
      first, cost, serves, beside, least, off: takenOff(asked, (after ?? first).own), work: both,
    });
  }

  /** The hearts of main sets, without a skill and with each. @param {Mains} mains */
  #make(mains) {
    const { asked, skills, bounds } = this, { first, order, takes, cost, serves, beside, places, off, work } = mains;
    const number = mains.number * (skills.length + 1);
    const push = (/** @type {Sized | null} */ skill, /** @type {number} */ at, /** @type {number} */ all, /** @type {number} */ points) => {
      if (all >= bounds.least - off && all <= bounds.most && points < Infinity) {
        const band = Math.max(this.#ready, Math.ceil((points - this.#least) / BAND) - 1);
        (this.#bands[band] ??= []).push({ mains, skill, number: number + at, takes: all, cost: points });
        this.#waiting += 1;
      }
    };
    push(null, 0, takes + first.first, cost + this.none + sumOf(serves));
    for (let at = 0; at < skills.length; at += 1) {
      const skill = /** @type {Part} */ (skills[at]), { own } = skill;
      if (!places.includes(own.place)) {
        const before = skill.first + own.takes + lead(asked, own.piece.ends, first.own);
        const again = againCost(asked, own, order.map(([, main]) => main));
        push(own, at + 1, takes + before, cost + (beside[at] ?? 0) + again + longerCost(asked, own, work) + cheaperSum(serves, skill.serves));
      }
    }
  }
}

/** What is fast first, while all are fresh; then legs before the stroke that they carry: below 0 where one is. @param {Asked} asked @param {Sized} one @param {Sized} other */
function sooner({ table: { fast } }, one, other) {
  return Number(one.piece.hardest < fast) - Number(other.piece.hardest < fast) || other.piece.kick - one.piece.kick;
}

/**
 * What the work of an evening costs beside what each piece of it does by itself, in whatever order; of a practice that is written it may have no
 * main set.
 * @param {Asked} asked
 * @param {Standing[]} heart
 */
export function heartCost(asked, heart) {
  const roles = new Map(heart), skill = roles.get(SKILL) ?? null, main = roles.get(MAIN), each = heart.map(([role, own]) => served(asked, own, role));
  const mains = MAINS.flatMap((role) => roles.get(role) ?? []), takes = mains.reduce((sum, own) => sum + own.takes, 0);
  let cost = heart.reduce((sum, [role, own]) => sum + idleCost(asked, own, role), 0);
  cost += asked.wanted.reduce((sum, _, goal) => sum + Math.min(...each.map((costs) => costs[goal] ?? 0)), 0);
  if (!main) {
    return cost;
  }
  cost += skill ? skillCost(asked, skill, main) + againCost(asked, skill, mains) + longerCost(asked, skill, takes) : 0;
  cost += mains.reduce((sum, one, at) => mains.slice(at + 1).reduce((more, other) => more + pairCost(asked, one, other), sum), 0);
  return cost + mainsCost(asked, takes) + lengthCost(asked, skill);
}

/** @param {Asked} asked @param {Sized} own @param {Role} role @param {number} [length] what its length costs @returns {Part} */
const part = (asked, own, role, length = 0) => ({
  own, role, cost: ownCost(asked, own, role) + idleCost(asked, own, role) + length, serves: served(asked, own, role), first: lead(asked, [], own),
});

/** The cheaper way to serve each goal. @param {number[]} one @param {number[]} other */
const cheaper = (one, other) => one.map((cost, goal) => Math.min(cost, other[goal] ?? cost));

/** @param {number[]} costs */
const sumOf = (costs) => cheaperSum(costs, costs);

/** What the goals cost, the cheaper way for each. @param {number[]} one @param {number[]} other */
function cheaperSum(one, other) {
  let sum = 0;
  for (let goal = 0; goal < one.length; goal += 1) {
    sum += Math.min(one[goal] ?? 0, other[goal] ?? 0);
  }
  return sum;
}
