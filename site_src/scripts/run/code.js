// A run as a short code to type: what it is, when it began, and its numbered changes, packed into letters (`code-letters.js`). The data
// stands on the other phone already. Pure.

import { Bits, bitsOf, letters } from "./code-letters.js";

/** @typedef {import("./types.js").Change} Change */
/** @typedef {import("./types.js").Run} Run */
/** @typedef {import("./types.js").RunData} RunData */
/** @typedef {[name: string, bits: number]} Field */

const FORM = 3;
const VERSION_BITS = 25;
const ALL_MARKS = [0, 15, 30, 45];
const HOWS = /** @type {const} */ (["same", "next", "part"]);
const BYS = /** @type {const} */ (["order", "rounds", "parts", "end"]);
const DAY_S = 86_400;
const LATE_UNIT_S = 30;
const COUNT_BITS = 8;
const MOST = 2 ** COUNT_BITS - 1; // changes of one evening

/** @type {import("./types.js").Deed[]} */
const DEEDS = ["go", "hold", "stop", "on", "more", "fewer", "sit", "meet", "round", "skip", "late", "cut", "end", "back"];

/** The seconds since the change before: few bits for the usual few minutes.
 * @type {[prefix: number, prefixBits: number, bits: number][]} */
const SPANS = [[0, 1, 7], [2, 2, 11], [3, 2, 15]];

/** @param {Bits} bits
 * @param {number} seconds */
function putSpan(bits, seconds) {
  const [prefix, width, size] = SPANS.find(([, , own]) => seconds < 2 ** own) ?? SPANS[2];
  bits.put(prefix, width);
  bits.put(seconds, size);
}

/** @param {Bits} bits */
const takeSpan = (bits) => bits.take(bits.take(1) === 0 ? 7 : bits.take(1) === 0 ? 11 : 15);

/** What of a change is packed, by its deed: a value's way into bits and back.
 * @typedef {{put: (bits: Bits, change: Change, run: Run) => void, take: (bits: Bits, run: Run) => Partial<Change>}} Packing */
/** @type {Packing} */
const WHO = {
  put: (bits, { who }, { crews }) => bits.put(who ? crews.indexOf(who) + 1 : 0, 2),
  take: (bits, { crews }) => {
    const index = bits.take(2);
    return { who: index ? crews[index - 1] : null };
  },
};
/** @type {Packing} */
const PART = { put: (bits, { part }) => bits.put(part ?? 0, 6), take: (bits) => ({ part: bits.take(6) }) };
/** @type {Packing} */
const SECONDS = { put: (bits, { s }) => bits.put(s ?? 0, 6), take: (bits) => ({ s: bits.take(6) }) };
/** @type {Packing} */
const LATE = { put: (bits, { s }) => bits.put((s ?? 0) / LATE_UNIT_S, 6), take: (bits) => ({ s: bits.take(6) * LATE_UNIT_S }) };
/** @type {Packing} */
const HOW = { put: (bits, { how }) => bits.put(HOWS.indexOf(how ?? "next"), 2), take: (bits) => ({ how: HOWS[bits.take(2)] }) };
/** @type {Packing} */
const ROUNDS = { put: (bits, { n }) => bits.put(n === 1 ? 1 : 0, 1), take: (bits) => ({ n: bits.take(1) ? 1 : -1 }) };
/** @param {number} moment */
const minute = (moment) => Math.floor(moment / 60_000);
const CUT_BITS = 9; // minutes from the beginning of a run to an end that it is cut to
/** @type {Packing} */
const UNTIL = {
  put: (bits, { until }, { begun }) => bits.put(Math.min(minute(until ?? 0) - minute(begun), 2 ** CUT_BITS - 1), CUT_BITS),
  take: (bits, { begun }) => ({ until: (minute(begun) + bits.take(CUT_BITS)) * 60_000 }),
};
/** @param {import("./types.js").By} by
 * @returns {Partial<Change>} */
const byOf = (by) => (by === "order" ? {} : { by });
/** @type {Packing} */
const BY = { put: (bits, { by }) => bits.put(BYS.indexOf(by ?? "order"), 2), take: (bits) => byOf(BYS[bits.take(2)]) };
/** @type {Packing} */
const OF = {
  put(bits, { of }) {
    bits.put(of?.length ?? 0, 3);
    of?.forEach((number) => bits.put(number, COUNT_BITS));
  },
  take: (bits) => ({ of: Array.from({ length: bits.take(3) }, () => bits.take(COUNT_BITS)) }),
};

const AROUND_MIN = 200; // a slot's start lies that near to the start of its run
const LONGEST_MIN = 2 ** 11;

/** What a run seldom has of its own: the start of its slot where it is another than the practice's, and until when the water is theirs.
 * @param {Bits} bits
 * @param {Run} run
 * @param {RunData} data */
function putTimes(bits, { begun, planned, until }, data) {
  const isOwn = planned !== plannedStart(data, begun);
  bits.put(isOwn ? 1 : 0, 1);
  if (isOwn) {
    bits.put(planned === null ? 0 : minute(planned) - minute(begun) + AROUND_MIN, 9);
  }
  const left = until === null ? 0 : minute(until) - minute(begun);
  const isKnown = left > 0 && left < LONGEST_MIN;
  bits.put(isKnown ? 1 : 0, 1);
  if (isKnown) {
    bits.put(left, 11);
  }
}

/** @param {Bits} bits
 * @param {number} begun
 * @param {RunData} data
 * @returns {Pick<Run, "planned" | "until">} */
function takeTimes(bits, begun, data) {
  const after = (/** @type {number} */ minutes) => (minute(begun) + minutes) * 60_000;
  const own = bits.take(1) ? bits.take(9) : null;
  const planned = own === null ? plannedStart(data, begun) : own ? after(own - AROUND_MIN) : null;
  return { planned, until: bits.take(1) ? after(bits.take(11)) : null };
}

/** @type {Partial<Record<import("./types.js").Deed, Packing[]>>} */
const PACKED = {
  go: [WHO], hold: [WHO], on: [HOW], more: [WHO, SECONDS], fewer: [WHO], sit: [WHO], meet: [WHO], round: [WHO, ROUNDS, PART], skip: [PART],
  late: [WHO, LATE], cut: [UNTIL, BY], end: [WHO], back: [OF],
};

/** The start of a version that a code carries.
 * @param {string} version hexadecimal */
export const shortVersion = (version) => Math.floor(parseInt(version.slice(0, 8), 16) / 2 ** (32 - VERSION_BITS));

/** The second of the day, by the universal clock: the same on each phone.
 * @param {number} moment */
const secondOfDay = (moment) => Math.floor(moment / 1000) % DAY_S;

/**
 * @param {Run} run
 * @param {RunData} data
 * @param {string[]} pools keys of all pools, in order
 * @returns {string | null} groups of four; null where it has more changes than a code holds
 */
export function written(run, data, pools) {
  if (run.changes.length > MOST) {
    return null;
  }
  const bits = new Bits();
  bits.put(FORM, 3);
  bits.put(shortVersion(run.version), VERSION_BITS);
  bits.put(run.crews.length, 2);
  run.crews.forEach((key) => bits.put(data.crews.findIndex((crew) => crew.key === key), 5));
  ALL_MARKS.forEach((mark) => bits.put(run.marks.includes(mark) ? 1 : 0, 1));
  bits.put(run.onward ? 1 : 0, 1);
  bits.put(secondOfDay(run.begun), 17);
  bits.put(pools.indexOf(run.pool ?? "") + 1, 4);
  putTimes(bits, run, data);
  bits.put(run.changes.length, COUNT_BITS);
  let before = Math.floor(run.begun / 1000);
  for (const change of run.changes) {
    const at = Math.floor(change.at / 1000);
    bits.put(DEEDS.indexOf(change.do), 4);
    putSpan(bits, at - before);
    PACKED[change.do]?.forEach((packing) => packing.put(bits, change, run));
    before = at;
  }
  return letters(bits);
}

/** The short version that a code is of; null where it is mistyped, -1 where it is of another form than this page knows.
 * @param {string} text */
export function versionOf(text) {
  const bits = bitsOf(text);
  return bits && (bits.take(3) === FORM ? bits.take(VERSION_BITS) : -1);
}

/**
 * The run of a code. Its evening is the last one that fits.
 * @param {string} text
 * @param {RunData} data of the version that the code is of
 * @param {string[]} pools keys of all pools, in order
 * @param {number} now
 * @returns {Run | null} null where it is mistyped
 */
export function readCode(text, data, pools, now) {
  const bits = bitsOf(text);
  try {
    return bits && bits.take(3) === FORM && bits.take(VERSION_BITS) === shortVersion(data.version) ? runOf(bits, data, pools, now) : null;
  } catch (problem) {
    if (problem instanceof RangeError) {
      return null;
    }
    throw problem;
  }
}

/**
 * @param {Bits} bits after the version
 * @param {RunData} data
 * @param {string[]} pools
 * @param {number} now
 * @returns {Run}
 */
function runOf(bits, data, pools, now) {
  const crews = Array.from({ length: bits.take(2) }, () => data.crews[bits.take(5)].key);
  const marks = ALL_MARKS.filter(() => bits.take(1));
  const onward = bits.take(1) === 1;
  const ago = (secondOfDay(now + 3600_000) - bits.take(17) + DAY_S) % DAY_S;
  const begun = (Math.floor((now + 3600_000) / 1000) - ago) * 1000;
  const pool = pools[bits.take(4) - 1] ?? null;
  const { planned, until } = takeTimes(bits, begun, data);
  /** @type {Run} */
  const run = { form: 1, kind: data.kind, id: data.id, version: data.version, crews, marks, onward, begun, planned, until, pool, changes: [] };
  let at = begun;
  const length = bits.take(COUNT_BITS);
  for (let k = 0; k < length; k++) {
    const deed = DEEDS[bits.take(4)];
    at += takeSpan(bits) * 1000;
    run.changes.push(Object.assign({ at, do: deed }, ...(PACKED[deed] ?? []).map((packing) => packing.take(bits, run))));
  }
  return run;
}

const NEAR_MS = 3 * 3600_000;

/**
 * The start of a practice's slot on the day of a run, where it is run at about that time; else null.
 * @param {RunData} data
 * @param {number} begun
 */
export function plannedStart(data, begun) {
  const [hours, minutes] = (data.start ?? "").split(":").map(Number);
  const planned = data.start ? new Date(begun).setHours(hours, minutes, 0, 0) : Infinity;
  return Math.abs(planned - begun) <= NEAR_MS ? planned : null;
}
