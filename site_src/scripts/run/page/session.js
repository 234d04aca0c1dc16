// The run that is on, on this phone: its data, its list of changes, who leads. Kept on the device at every change, so that a reload finds
// it as it was.

import { read, write } from "../../lib/storage.js";
import { PoolClock } from "../clock.js";
import { plannedStart } from "../code.js";
import { at, changed, stateOf } from "../replay.js";

/** @typedef {import("../types.js").Change} Change */
/** @typedef {import("../types.js").Run} Run */
/** @typedef {import("../types.js").RunData} RunData */
/** @typedef {import("../types.js").State} State */
/** @typedef {{title: string, course?: string, ends?: Record<string, string>, emergency?: Record<string, string>}} Pool */
/** @typedef {{title: string, look?: {from: string, see: string}[], say?: string[], danger?: import("../types.js").Hazard[]}} DrillSaid */
/** @typedef {{form: number, version: string, pools: Record<string, Pool>, drills: Record<string, DrillSaid>, gear: Record<string, string>,
 *   runs?: Record<string, [string, string]>}} Shared */
/** @typedef {"lead" | "follow"} Role */
/** @typedef {import("../results.js").Touch} Touch */
/** @typedef {{crew?: string, station?: string}} Helps */
/** @typedef {{href: string, title: string, day: string, on: boolean, run: Run, role: Role, stoppedHere: number | null, helps: Helps | null}} Kept */

const SUBJECT = "run";
const DATA = "run-data";
const CLOCK = "run-clock";
const RESULTS = "run-results";
const KEPT_DAYS = 14;
const DAY_MS = 86_400_000;

/** @param {number} moment */
export function dayOf(moment) {
  const day = new Date(moment);
  return `${day.getFullYear()}-${String(day.getMonth() + 1).padStart(2, "0")}-${String(day.getDate()).padStart(2, "0")}`;
}

/** The clock with this evening's offset. */
export function poolClock() {
  const kept = read(CLOCK, { offset: 0, day: "" });
  return new PoolClock(kept.day === dayOf(Date.now()) ? kept.offset : 0);
}

/** @param {PoolClock} clock */
export const keepClock = (clock) => write(CLOCK, { offset: clock.offset, day: dayOf(Date.now()) });

/** The run that this phone holds, with its data; null where it holds none that is on.
 * @returns {{kept: Kept, data: RunData, shared: Shared} | null} */
export function keptRun() {
  const kept = /** @type {Kept} */ (read(SUBJECT, {}));
  const stored = /** @type {{data?: RunData, shared?: Shared}} */ (read(DATA, {}));
  return kept.on && stored.data && stored.shared && stored.data.version === kept.run.version ? { kept, data: stored.data, shared: stored.shared } : null;
}

/** What of the shared data a run needs.
 * @param {RunData} data
 * @param {Shared} shared
 * @returns {Shared} */
function needed(data, shared) {
  const drills = new Set(data.parts.flatMap(({ items }) => items.flatMap((item) => item.drills ?? [])));
  const own = Object.fromEntries(Object.entries(shared.drills).filter(([id]) => drills.has(id)));
  const { form, version, pools, gear } = shared;
  return { form, version, pools, gear, drills: own };
}

export class Session {
  /**
   * @param {RunData} data
   * @param {Shared} shared
   * @param {Run} run
   * @param {PoolClock} clock
   * @param {Role} role
   */
  constructor(data, shared, run, clock, role = "lead") {
    this.data = data;
    this.shared = shared;
    this.run = run;
    this.clock = clock;
    this.role = role;
    /** @type {number | null} when Stop was pressed on a phone that follows */
    this.stoppedHere = null;
    this.state = stateOf(data, run);
    /** @type {{of: State, state: State} | undefined} */
    this.shown = undefined;
    /** @type {Helps | null} the one group or station that this phone shows a helper */
    this.helps = null;
  }

  /** The state now, going on from when it was last asked: an hour of send-offs is not gone through each second. */
  now() {
    const moment = this.clock.now();
    const isEarlier = this.shown?.of !== this.state || this.shown.state.now > moment;
    this.shown = { of: this.state, state: at(this.shown && !isEarlier ? this.shown.state : this.state, moment) };
    return this.shown.state;
  }

  /** When the run was stopped, here or by the run's own list; null where it goes on. */
  stoppedAt() {
    return this.state.stopped ?? this.stoppedHere;
  }

  /** Make a change now; false where it does not apply.
   * @param {Omit<Change, "at">} change its own time, where it has one, is not heeded */
  change(change) {
    const made = changed(this.data, this.run, this.state, { ...change, at: Math.floor(this.clock.now() / 1000) * 1000 });
    if (made) {
      this.run = made.run;
      this.state = made.state;
      this.keep();
    }
    return made !== null;
  }

  /** Go by another phone's list.
   * @param {Run} run */
  take(run) {
    this.run = run;
    this.state = stateOf(this.data, run);
    this.keep();
  }

  /** Keep it on this device; false where the browser keeps nothing.
   * @param {boolean} [on] */
  keep(on = true) {
    const { kind, id, title } = this.data;
    const href = `run.html#${kind}=${id}`;
    const kept = { href, title, day: dayOf(this.run.begun), on, run: this.run, role: this.role, stoppedHere: this.stoppedHere, helps: this.helps };
    const stored = /** @type {{data?: RunData}} */ (read(DATA, {}));
    const isStored = stored.data?.version === this.data.version || write(DATA, { data: this.data, shared: needed(this.data, this.shared) });
    return write(SUBJECT, kept) && isStored;
  }

  /** The pool's emergency page; null where no pool was named. */
  pool() {
    return this.run.pool === null ? null : (this.shared.pools[this.run.pool] ?? null);
  }
}

const HALF_DAY_MS = 12 * 3600_000;

/** The next moment at which it is so late, within half a day; null where there is none.
 * @param {string} time HH:MM
 * @param {number} now */
function momentOf(time, now) {
  const [hours, minutes] = time.split(":").map(Number);
  const on = new Date(now).setHours(hours, minutes, 0, 0);
  const next = on < now ? on + DAY_MS : on;
  return next - now < HALF_DAY_MS ? next : null; // and null where it is no time: NaN
}

/**
 * A new run, as it is set up.
 * @param {RunData} data
 * @param {{crews: string[], marks: number[], onward: boolean, pool: string | null, until: string}} chosen `until` as HH:MM or ""
 * @param {number} now
 * @returns {Run}
 */
export function newRun(data, chosen, now) {
  const begun = Math.floor(now / 1000) * 1000;
  const { kind, id, version } = data;
  return { form: 1, kind, id, version, ...chosen, until: momentOf(chosen.until, begun), begun, planned: plannedStart(data, begun), changes: [] };
}

/** @typedef {{begun: number, title: string, touches: Touch[], kept?: boolean}} Results of one run */

/** The results on this device; those older than a fortnight that were not to be kept go.
 * @returns {Results[]} */
export function results() {
  const all = /** @type {Results[]} */ (read(RESULTS, []));
  const own = all.filter(({ begun, kept }) => kept || Date.now() - begun < KEPT_DAYS * DAY_MS);
  if (own.length !== all.length) {
    write(RESULTS, own);
  }
  return own;
}

/** @param {Results} one put in place of what there is of the same run */
export const keepResults = (one) => write(RESULTS, [...results().filter(({ begun }) => begun !== one.begun), one]);
