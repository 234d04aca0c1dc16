// The work of an evening: skill, main set and a second main set, in every way that may fit. Pure. Of composing_hearts.py.

import { idleCost, lengthCost, mainsCost, ownCost, pairCost, served, skillCost } from "./costs.js";
import { lead } from "./order.js";
import { MAIN, SECOND, SKILL } from "./pieces.js";
import { at } from "./wishes.js";

/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./wishes.js").Sized} Sized */
/** @typedef {import("./lists.js").Lists} Lists */
/** @typedef {import("./order.js").Standing} Standing */
/** @typedef {import("./types.js").Role} Role */
/** @typedef {{own: Sized, cost: number, serves: number[], first: number}} Part its cost beside a main set; `first`: what goes before it after a warm-up */
/** @typedef {{order: Standing[]}} Mains one or two main sets, in order */
/** @typedef {{mains: Mains, skill: Sized | null, takes: number, cost: number}} Heart `takes` is with what goes before each, `cost` in points */

const SECOND_FROM = 50 * 600; // a shorter slot has no second main set

/** The pieces of a heart with their roles, in order. @param {Heart} heart @returns {Standing[]} */
export const orderOf = ({ mains, skill }) => (skill ? [[SKILL, skill], ...mains.order] : mains.order);

/** Every heart that takes so long, cheapest first; alike, in the order in which the lists have them. There are many: each is made when asked for. */
export class Hearts {
  /** @type {Mains[]} */ #mains = [];
  /** @type {(Sized | null)[]} */ #skills = [];
  /** @type {number[]} */ #of = []; // by heart, which mains
  /** @type {number[]} */ #with = []; // and which skill
  /** @type {number[]} */ #takes = [];
  /** @type {number[]} */ #costs = [];

  /**
   * @param {Asked} asked
   * @param {Lists} known
   * @param {number} least tenths
   * @param {number} most
   */
  constructor(asked, known, least, most) {
    this.asked = asked;
    this.least = least;
    this.most = most;
    const keeps = asked.wishes.kept.map((own) => own.role);
    const isLong = asked.slot >= SECOND_FROM || keeps.includes(SECOND);
    this.needsSecond = keeps.includes(SECOND);
    this.needsSkill = keeps.includes(SKILL);
    const skills = known.skills.map((own) => part(asked, own, SKILL, lengthCost(asked, own)));
    const seconds = isLong ? known.seconds.map((own) => part(asked, own, SECOND)) : [];
    this.#skills = [null, ...known.skills];
    for (const own of known.mains.flat()) {
      this.#around(part(asked, own, MAIN), seconds, skills);
    }
    this.order = byCost(this.#costs);
  }

  /** @returns {IterableIterator<Heart>} */
  *[Symbol.iterator]() {
    for (const heart of this.order) {
      const mains = /** @type {Mains} */ (this.#mains[this.#of[heart] ?? 0]);
      yield { mains, skill: this.#skills[this.#with[heart] ?? 0] ?? null, takes: this.#takes[heart] ?? 0, cost: this.#costs[heart] ?? 0 };
    }
  }

  /** The hearts of a main set. @param {Part} main @param {Part[]} seconds @param {Part[]} skills */
  #around(main, seconds, skills) {
    const { own } = main, { asked } = this;
    const costs = skills.map((skill) =>
      skill.own.place === own.place || skill.own.takes + own.takes > this.most ? Infinity : skill.cost + skillCost(skill.own, own),
    );
    if (!this.needsSecond) {
      this.#add([main], main.cost, main.serves, skills, costs);
    }
    for (const second of seconds) {
      if (second.own.place !== own.place && own.takes + second.own.takes <= this.most) {
        const both = isFirst(asked, own, second.own) ? [main, second] : [second, main];
        const serves = main.serves.map((cost, goal) => Math.min(cost, second.serves[goal] ?? cost));
        this.#add(both, main.cost + second.cost + pairCost(asked, own, second.own), serves, skills, costs, second.own);
      }
    }
  }

  /**
   * The hearts of one or two main sets, without a skill and with each.
   * @param {Part[]} parts the main sets in order
   * @param {number} cost
   * @param {number[]} serves
   * @param {Part[]} skills
   * @param {number[]} costs of each skill beside the main set
   * @param {Sized | null} [second]
   */
  #add(parts, cost, serves, skills, costs, second = null) {
    const { asked } = this, [one, two] = /** @type {[Part, Part?]} */ (parts);
    const both = one.own.takes + (two?.own.takes ?? 0);
    const takes = both + (two ? lead(asked, one.own.piece.ends, two.own) : 0);
    this.#mains.push({ order: parts.map(({ own }) => [own === second ? SECOND : MAIN, own]) });
    const ofMains = cost + mainsCost(asked, both);
    if (!this.needsSkill) {
      this.#push(0, takes + one.first, ofMains + cheaperSum(serves, serves) + lengthCost(asked, null));
    }
    for (const [place, skill] of skills.entries()) {
      const own = costs[place] ?? Infinity, whole = takes + skill.first + skill.own.takes;
      if (own < Infinity && whole <= this.most && skill.own.place !== second?.place) {
        this.#push(place + 1, whole + lead(asked, skill.own.piece.ends, one.own), ofMains + own + cheaperSum(serves, skill.serves));
      }
    }
  }

  /** @param {number} skill @param {number} takes @param {number} cost */
  #push(skill, takes, cost) {
    if (takes >= this.least && takes <= this.most) {
      this.#of.push(this.#mains.length - 1);
      this.#with.push(skill);
      this.#takes.push(takes);
      this.#costs.push(cost);
    }
  }
}

/** What is fast first, while all are fresh; then legs before the stroke that they carry. @param {Asked} asked @param {Sized} main @param {Sized} second */
function isFirst(asked, main, second) {
  const { fast } = asked.table;
  const slow = Number(main.piece.hardest < fast) - Number(second.piece.hardest < fast);
  return (slow || second.piece.kick - main.piece.kick) <= 0;
}

/** @param {Asked} asked @param {Sized} own @param {Role} role @param {number} [length] what its length costs @returns {Part} */
const part = (asked, own, role, length = 0) => ({
  own, cost: ownCost(asked, own, role) + idleCost(asked, own, role) + length, serves: served(asked, own, role), first: lead(asked, [], own),
});

/** What the goals cost, the cheaper way for each. @param {number[]} one @param {number[]} other */
function cheaperSum(one, other) {
  let sum = 0;
  for (let goal = 0; goal < one.length; goal += 1) {
    sum += Math.min(one[goal] ?? 0, other[goal] ?? 0);
  }
  return sum;
}

/** The places of costs, the least first; alike, in their order. @param {number[]} costs whole numbers */
function byCost(costs) {
  let most = 0;
  for (const cost of costs) {
    most = Math.max(most, cost);
  }
  const next = new Int32Array(most + 2), order = new Int32Array(costs.length);
  for (const cost of costs) {
    next[cost + 1] = at(next, cost + 1) + 1;
  }
  for (let cost = 0; cost < most; cost += 1) {
    next[cost + 1] = at(next, cost + 1) + at(next, cost);
  }
  for (let heart = 0; heart < costs.length; heart += 1) {
    const cost = at(costs, heart), place = at(next, cost);
    order[place] = heart;
    next[cost] = place + 1;
  }
  return order;
}
