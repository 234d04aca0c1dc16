// A part of a practice that is opened, on the clock of the practice as it stands now. Pure.

import { fitted, withoutOffers } from "./offers.js";
import { each } from "./often.js";

/** @import {RunData} from "./types.js" */
/** @import {Part as RunPart} from "../run/types.js" */

/** @typedef {{at: number, place: number, stage: number, names: string[], lead: number}} Now `at`: when what is before it ends; `names`: who is here */

const TENTHS = 10;
const TIMES = /** @type {const} */ (["ends_s", "clock_over_s", "last_touch_s"]);

/** Without an offer that a rule was asked for on another evening.
 * @template {object} T
 * @param {T} own
 * @param {keyof T} name
 * @returns {T} */
const without = (own, name) => /** @type {T} */ (Object.fromEntries(Object.entries(own).filter(([known]) => known !== name)));

/**
 * A part of a practice that is opened, as the build laid it, where it stands now: later or sooner. What may be changed on the deck was held against the
 * rules of that evening, and is left out.
 * @param {RunData} run
 * @param {number} number of the part, from 0
 * @param {Now} now
 * @returns {RunPart[]}
 */
export function asWritten(run, number, { at, place, stage, names, lead }) {
  const own = run.parts.filter((part) => part.number === number + 1), first = own[0].stage, starts = Math.min(...own.map((part) => part.starts_s ?? 0));
  const later = (/** @type {number | null | undefined} */ time) => (typeof time === "number" ? Math.round(TENTHS * (time - starts + at + lead)) / TENTHS : null);
  const times = (/** @type {import("../run/types.js").CrewPart} */ crew) => Object.fromEntries(TIMES.flatMap((name) => (crew[name] === undefined ? [] : [[name, later(crew[name])]])));
  const here = new Set(run.crews.filter(({ group }) => names.includes(group)).map(({ key }) => key));
  const rows = own.map((part) => ({
    ...without(part, "skip"), stage: stage + part.stage - first, number: place + 1, starts_s: later(part.starts_s),
    crews: Object.fromEntries(Object.entries(part.crews).filter(([key]) => here.has(key)).map(([key, crew]) => [key, {
      ...without(crew, "meet"), ...times(crew), blocks: withoutOffers(each(crew.blocks, (block) => fitted(block, "", 0))),
    }])),
  }));
  return rows.filter(({ crews }) => Object.keys(crews).length); // a station at which nobody of those who are here is has no row
}
