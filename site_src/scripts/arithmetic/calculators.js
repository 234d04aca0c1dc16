// The calculators by name: the same as the program's, which `data/v1/vectors.json` holds them to.

import { addedDrag, cord, parachute, pulley } from "./drag.js";
import { kickCount, kickRate, strouhal } from "./kick.js";
import { lane } from "./lanes.js";
import { sessionLoad, weekLoad } from "./load.js";
import { NoAnswer } from "./numbers.js";
import { ladder, sendOffs } from "./pace.js";
import { otherPool, units } from "./pools.js";
import { criticalSpeed, fade, points } from "./races.js";
import { showNumber, showTime, showTimed } from "./rounding.js";

/** @typedef {import("./numbers.js").Given} Given */
/** @typedef {(given: Given, club: import("./numbers.js").Club) => import("./numbers.js").Answer} Work */
/** @typedef {{name: string, title: string, takes: "time" | "number" | "whole" | "choice", unit: string, least: number, most: number,
 *   choices: Record<string, string>, many: boolean, optional: boolean, default: string}} Field */
/** @typedef {{name: string, title: string, how: "time" | "clock" | "number", unit: string, places: number}} Line */
/** The words of a calculator.
 * @typedef {{name: string, fields: Field[], lines: Line[], sentences: Record<string, string>, refusals: Record<string, string>}} Words */

/** @type {Record<string, Work>} */
const WORK = {
  "send-offs": sendOffs,
  descend: ladder,
  lane,
  "critical-speed": criticalSpeed,
  fade,
  points,
  "added-drag": addedDrag,
  parachute,
  pulley,
  cord,
  "kick-rate": kickRate,
  "kick-count": kickCount,
  strouhal,
  "session-load": sessionLoad,
  "week-load": weekLoad,
  units,
  "other-pool": otherPool,
};

/**
 * A calculator's answer as it is read: sentences, and each line with its number; no lines where there is no answer.
 * @param {Words} words
 * @param {Given} given
 * @param {import("./numbers.js").Club} club
 * @returns {{says: string[], shown: Record<string, string>, numbers: Record<string, number | number[]>}}
 */
export function answer(words, given, club) {
  /** @type {Record<string, string>} */
  const told = {};
  for (const field of words.fields) {
    if (given[field.name] !== undefined) {
      told[field.name] = showGiven(field, given[field.name]);
    }
  }
  try {
    const { numbers, says } = WORK[words.name](given, club);
    /** @type {Record<string, string>} */
    const shown = {};
    for (const line of words.lines) {
      if (numbers[line.name] !== undefined) {
        shown[line.name] = showLine(line, numbers[line.name]);
      }
    }
    return { says: says.map((said) => filled(words.sentences[said], { ...told, ...shown })), shown, numbers };
  } catch (problem) {
    if (!(problem instanceof NoAnswer)) {
      throw problem;
    }
    for (const [name, value] of Object.entries(problem.numbers)) {
      told[name] = showNumber(value, 2);
    }
    return { says: [filled(words.refusals[problem.why], told)], shown: {}, numbers: {} };
  }
}

/**
 * @param {string} sentence
 * @param {Record<string, string>} told
 */
const filled = (sentence, told) => sentence.replace(/\{([a-z0-9-]+)\}/g, (_, name) => told[name]);

/**
 * @param {Line} line
 * @param {number | number[]} found
 * @returns {string}
 */
function showLine(line, found) {
  if (Array.isArray(found)) {
    return found.map((each) => showLine(line, each)).join(" · ");
  }
  if (line.how !== "number") {
    return showTime(found, line.how === "time" ? 1 : 0);
  }
  return `${showNumber(found, line.places)} ${line.unit}`.trimEnd();
}

/**
 * What was given, as it is read back.
 * @param {Field} field
 * @param {number | string | number[]} value
 * @returns {string}
 */
export function showGiven(field, value) {
  if (typeof value === "string") {
    return field.choices[value].toLowerCase();
  }
  if (Array.isArray(value)) {
    return value.map((each) => showGiven(field, each)).join(" · ");
  }
  return field.takes === "time" ? showTimed(value) : `${showNumber(value, 3)} ${field.unit}`.trimEnd();
}
