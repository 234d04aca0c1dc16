// Warm-ups, relief and cool-downs, tried around the work of an evening so that the slot is filled. Pure. Of composing/around.py.

import { ownCost } from "./costs.js";
import { broken, laid, lead, SLACK_MOST, takenOff } from "./order.js";
import { COOL_DOWN, EASY, TENTHS, WARM_UP } from "./pieces.js";
import { coolDownCost, endsCost, reliefCost, warmUpCost, workOf } from "./shape.js";

/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./wishes.js").Sized} Sized */
/** @typedef {import("./order.js").Standing} Standing */
/** @typedef {{order: import("./order.js").Stood[], cost: number}} Found a practice, and what it costs in points */
/** @typedef {import("./shape.js").Work} Work */
/** @typedef {{own: Sized, cost: number, takes: number}} Tried `takes` with the talk before it */
/** @typedef {{own: Sized | null, cost: number, takes: number}} Easy relief, or none, where `takes` is 0 */
/** @typedef {{own: Sized, rank: number, cost: number, takes: number}} End a cool-down, in seconds with what goes before it */
/** @typedef {{all: End[], fewest: number, most: number, at: Map<number, End[]>}} Closing cool-downs after gear that takes so long to take off, the
 *   shortest first: the fewest seconds that one fills, the most, and those that fill so many, the cheapest first */
/** @typedef {{heart: Standing[], taken: number[], left: number, easies: Easy[], off: number, best: Found | null, refused: number}} Filling
 *   `left`: tenths around the heart, `off`: those that its gear is taken off in */

const REFUSED = 60; // so many practices around one heart may break a limit before it is given up
const SAME_WARM_UP = 20;
export const SPARE = 30, A_POINT = 2; // so many seconds are well left; so many fewer or more cost a point

export class Around {
  /** @param {Asked} asked @param {import("./lists.js").Lists} known */
  constructor(asked, known) {
    this.asked = asked;
    const tried = (/** @type {Sized} */ own, /** @type {import("./types.js").Role} */ role) => ({
      own, cost: ownCost(asked, own, role), takes: own.takes + own.piece.talk,
    });
    this.warmUps = known.warmUps.map((own) => tried(own, WARM_UP));
    this.easies = known.easies.map((own) => tried(own, EASY));
    this.coolDowns = known.coolDowns.map((own) => {
      const each = tried(own, COOL_DOWN);
      return { ...each, cost: each.cost + coolDownCost(asked, own) };
    });
    const cheapest = (/** @type {Tried[]} */ all) => Math.min(...all.map((own) => own.cost));
    const noRelief = asked.wishes.kept.some((own) => own.role === EASY) ? Infinity : 0;
    // What cool-down, relief and warm-up cost at least, with what comes after them.
    this.leastEnd = cheapest(this.coolDowns);
    this.leastEased = this.leastEnd + Math.min(noRelief, cheapest(this.easies));
    this.least = this.leastEased + cheapest(this.warmUps);
    // What has been worked out already: cool-downs by the gear that comes off, relief and warm-ups by the work.
    /** @type {Map<number, Closing>} */
    this.closings = new Map();
    /** @type {Map<string, Easy[]>} */
    this.eased = new Map();
    /** @type {Map<string, Tried[]>} */
    this.warmed = new Map();
  }

  /** Whether what the drills of a heart need first has been taught, or is done before them: in itself, or in some warm-up. @param {Standing[]} heart */
  canTeach(heart) {
    const { taught } = this.asked.wishes;
    const known = /** @type {number[]} */ ([]), needs = /** @type {number[]} */ ([]);
    for (const [, { piece }] of heart) {
      needs.push(...piece.asks.filter((drill) => !taught.has(drill) && !known.includes(drill)));
      known.push(...piece.drills);
    }
    return !needs.length || this.warmUps.some(({ own }) => needs.every((drill) => own.piece.drills.includes(drill)));
  }

  /** The least and the most that a heart may take; after each it is a talk that is counted. @returns {[least: number, most: number]} */
  get bounds() {
    const least = (/** @type {Tried[]} */ all) => Math.min(...all.map((own) => own.takes));
    const most = (/** @type {Tried[]} */ all) => Math.max(0, ...all.map((own) => own.takes));
    const { slot } = this.asked, cool = this.coolDowns;
    return [slot - most(this.warmUps) - most(cool) - most(this.easies) - SLACK_MOST, slot - least(this.warmUps) - least(cool)];
  }

  /** Cool-downs after gear that takes so many tenths to take off, or the talk where that is longer. @param {number} off @returns {Closing} */
  #closing(off) {
    let found = this.closings.get(off);
    if (!found) {
      const all = this.coolDowns.map(({ own, cost }, rank) => ({
        own, cost, rank, takes: Math.ceil((Math.max(own.piece.talk, off) + own.takes) / TENTHS),
      }));
      all.sort((a, b) => a.takes - b.takes);
      found = { all, fewest: all[0]?.takes ?? Infinity, most: (all.at(-1)?.takes ?? 0) + SLACK_MOST / TENTHS, at: new Map() };
      this.closings.set(off, found);
    }
    return found;
  }

  /** The cool-downs that fill so many whole seconds, with what they cost there, the cheapest first. @param {Closing} closing @param {number} seconds */
  #endsAt({ all, at }, seconds) {
    let found = at.get(seconds);
    if (!found) {
      found = all
        .slice(firstFrom(all, seconds - SLACK_MOST / TENTHS), firstFrom(all, seconds + 1))
        .map((end) => ({ ...end, cost: end.cost + Math.floor(Math.abs(seconds - end.takes - SPARE) / A_POINT) }))
        .sort((a, b) => a.cost - b.cost || a.rank - b.rank);
      at.set(seconds, found);
    }
    return found;
  }

  /**
   * The cheapest practice around a heart that costs less than `best`; else that one.
   * @param {Standing[]} heart
   * @param {number} takes what the heart takes
   * @param {number} cost
   * @param {Found | null} best
   * @param {Set<number>} warm the warm-ups of what was found before
   */
  fill(heart, takes, cost, best, warm) {
    const pieces = heart.map(([, own]) => own), work = workOf(this.asked, pieces), taken = pieces.map((own) => own.place);
    /** @type {Filling} */
    const filling = {
      heart, taken, left: this.asked.slot - takes, easies: this.#easies(pieces, work), off: takenOff(this.asked, /** @type {Sized} */ (pieces.at(-1))), best, refused: 0,
    };
    for (const warmUp of this.#warmUps(work, warm)) {
      if (filling.best && cost + warmUp.cost + this.leastEased >= filling.best.cost) {
        break;
      }
      if (!taken.includes(warmUp.own.place) && !this.#after(filling, warmUp, cost + warmUp.cost)) {
        break;
      }
    }
    return filling.best;
  }

  /** Relief and cool-down after a warm-up; whether there is more to try. @param {Filling} filling @param {Tried} warmUp @param {number} soFar */
  #after(filling, warmUp, soFar) {
    const rest = filling.left - warmUp.takes, bare = this.#closing(0), geared = this.#closing(filling.off);
    for (const easy of filling.easies) {
      if (filling.best && soFar + easy.cost + this.leastEnd >= filling.best.cost) {
        break;
      }
      const seconds = Math.floor((rest - easy.takes) / TENTHS), closing = easy.own ? bare : geared;
      const fits = seconds >= closing.fewest && seconds <= closing.most && !isIn(easy.own, warmUp.own, filling.taken);
      if (fits && !this.#close(filling, warmUp.own, easy.own, this.#endsAt(closing, seconds), soFar + easy.cost)) {
        return false;
      }
    }
    return true;
  }

  /**
   * The cheapest cool-down that breaks nothing; whether there is more to try.
   * @param {Filling} filling
   * @param {Sized} warmUp
   * @param {Sized | null} easy
   * @param {End[]} ends
   * @param {number} soFar
   */
  #close(filling, warmUp, easy, ends, soFar) {
    for (const end of ends) {
      const cost = soFar + end.cost;
      if (filling.best && cost >= filling.best.cost) {
        break;
      }
      const whole = cost + endsCost(this.asked, warmUp, easy, end.own);
      if ((filling.best && whole >= filling.best.cost) || end.own.place === easy?.place || isIn(end.own, warmUp, filling.taken)) {
        continue;
      }
      const eased = /** @type {Standing[]} */ (easy ? [[EASY, easy]] : []);
      const order = laid(this.asked, [[WARM_UP, warmUp], ...filling.heart, ...eased, [COOL_DOWN, end.own]]);
      if (!broken(this.asked, order)) {
        filling.best = { order, cost: whole };
        continue;
      }
      filling.refused += 1;
      if (filling.refused >= REFUSED) {
        return false;
      }
    }
    return true;
  }

  /** @param {Work} work @param {Set<number>} warm */
  #warmUps(work, warm) {
    const key = `${work.hardest} ${work.legsFirst} ${work.strokes} ${work.again} ${[...warm]}`;
    let found = this.warmed.get(key);
    if (!found) {
      found = this.warmUps.map(({ own, cost, takes }) => ({
        own, takes, cost: cost + warmUpCost(this.asked, own, work) + (warm.has(own.place) ? SAME_WARM_UP : 0),
      }));
      this.warmed.set(key, found.sort((a, b) => a.cost - b.cost));
    }
    return found;
  }

  /** @param {Sized[]} pieces @param {Work} work */
  #easies(pieces, work) {
    const { asked } = this, worn = pieces.at(-1)?.piece.ends ?? [], key = `${work.tired} ${work.strokes} ${work.hardest} ${worn}`;
    let found = this.eased.get(key);
    if (!found) {
      found = this.easies.map(({ own, cost }) => ({
        own: /** @type {Sized | null} */ (own), cost: cost + reliefCost(asked, own, work), takes: lead(asked, worn, own) + own.takes,
      }));
      if (!asked.wishes.kept.some((own) => own.role === EASY)) {
        found.unshift({ own: null, cost: reliefCost(asked, null, work), takes: 0 });
      }
      this.eased.set(key, found.sort((a, b) => a.cost - b.cost));
    }
    return found;
  }
}

/** Where those begin that take so many seconds or more. @param {End[]} ends the shortest first @param {number} seconds */
function firstFrom(ends, seconds) {
  const found = ends.findIndex((end) => end.takes >= seconds);
  return found < 0 ? ends.length : found;
}

/** Whether what eases or closes stands there already. @param {Sized | null} easy @param {Sized} warmUp @param {number[]} taken */
const isIn = (easy, warmUp, taken) => easy !== null && (easy.place === warmUp.place || taken.includes(easy.place));
