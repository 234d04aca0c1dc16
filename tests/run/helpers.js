// What the tests of the run share: the practice beside this file, a run of it, and numbers by chance that are the same each time.

import { readFileSync } from "node:fs";

export const data = JSON.parse(readFileSync(new URL("practice.json", import.meta.url), "utf-8"));
/** A quarter to seven, on a full minute. */
export const START = Date.UTC(2026, 10, 26, 18, 45);

export const MARKS = [0, 15, 30, 45];

/** @param {object} [other] */
export const runOf = (other = {}) => ({
  form: 1, kind: "practice", id: data.id, version: data.version, crews: ["a", "b"], marks: MARKS, onward: false,
  begun: START, planned: START, until: null, pool: "home", changes: [], ...other,
});

/** Numbers from 0 to 1 by chance, from a seed (mulberry32). @param {number} seed */
export function chance(seed) {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
