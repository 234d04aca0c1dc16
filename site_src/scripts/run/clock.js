// The time of a run. Within a page it is the monotonic clock, set by the time of day when the page came; over a reload it is the time of
// day; never a count of ticks. Where the two part by more than a second, the page asks which to follow. Pure but for the two clocks.

const PART_MS = 1000;
const MINUTE_MS = 60_000;

/** @typedef {{day: () => number, monotonic: () => number}} Clocks both in milliseconds */

/** @type {Clocks} */
const OWN = { day: () => Date.now(), monotonic: () => performance.now() };

export class PoolClock {
  /**
   * @param {number} offset milliseconds to add to this phone's time of day to get the pool's clock
   * @param {Clocks} clocks
   */
  constructor(offset = 0, clocks = OWN) {
    this.clocks = clocks;
    this.offset = offset;
    this.from = { day: clocks.day(), monotonic: clocks.monotonic() };
  }

  /** From here on go by the time of day, as it is now. */
  follow() {
    this.from = { day: this.clocks.day(), monotonic: this.clocks.monotonic() };
  }

  /** The pool's clock, in milliseconds like `Date.now()`. */
  now() {
    return this.from.day + (this.clocks.monotonic() - this.from.monotonic) + this.offset;
  }

  /** The time of day of the phone with its offset: what a reload would go by. */
  byDay() {
    return this.clocks.day() + this.offset;
  }

  /** How far the time of day is ahead of the run's clock, where that is more than a second; else 0. */
  parted() {
    const apart = this.byDay() - this.now();
    return Math.abs(apart) > PART_MS ? apart : 0;
  }

  /** Keep to the run's clock: the phone's time of day was changed, and a reload must not follow it. */
  keep() {
    this.offset -= this.byDay() - this.now();
    this.follow();
  }

  /** The hand of the pool's clock is at the top now. */
  atTheTop() {
    const past = ((this.clocks.day() % MINUTE_MS) + MINUTE_MS) % MINUTE_MS;
    this.offset = past < MINUTE_MS / 2 ? 0 - past : MINUTE_MS - past;
    this.follow();
  }
}
