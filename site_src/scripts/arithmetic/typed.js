// What is typed into a field of a calculator: a number, or a sentence that says what is wrong with it.

import { showGiven } from "./calculators.js";

/** @typedef {import("./calculators.js").Field} Field */
/** What was read; `told` says how it was read, where that may surprise.
 * @typedef {{value?: number | string | number[], told?: string, wrong?: string, missing?: boolean}} Typed */

/**
 * @param {Field} field
 * @param {string} text
 * @returns {Typed}
 */
export function readField(field, text) {
  const words = (field.many ? text.split(/[\s;·]+/) : [text.trim()]).filter(Boolean);
  if (!words.length) {
    return field.optional ? {} : { missing: true };
  }
  if (field.takes === "choice") {
    return { value: words[0] };
  }
  /** @type {number[]} */
  const values = [];
  for (const own of words) {
    const value = field.takes === "time" ? timeOf(own) : numberOf(own);
    const wrong = typeof value === "string" ? value : outside(field, value);
    if (wrong) {
      return { wrong: `${field.title}: ${wrong}` };
    }
    values.push(/** @type {number} */ (value));
  }
  const value = field.many ? values : values[0];
  return { value, told: field.takes === "time" ? `= ${showGiven(field, value)}` : "" };
}

/**
 * @param {Field} field
 * @param {number} value
 */
function outside(field, value) {
  if (field.takes === "whole" && !Number.isInteger(value)) {
    return "this must be a whole number.";
  }
  const [least, most] = [showGiven(field, field.least), showGiven(field, field.most)];
  return value < field.least || value > field.most ? `${showGiven(field, value)} is not between ${least} and ${most}.` : "";
}

/** @param {string} text */
function numberOf(text) {
  const plain = text.replace(",", ".");
  return /^\d+(\.\d*)?$|^\.\d+$/.test(plain) ? Number(plain) : `“${text}” is no number.`;
}

/**
 * Seconds of a time: with a colon as it is written; without one the last two digits are seconds, those before them minutes, then hours. Up to 99
 * seconds are taken where no minute stands before them.
 * @param {string} text
 * @returns {number | string}
 */
export function timeOf(text) {
  const plain = text.replace(",", ".");
  const [whole, decimals = ""] = plain.split(".");
  const colons = /^(?:\d{1,2}:)?\d{1,3}:\d{2}$/.test(whole);
  if (!(colons || /^\d{1,6}$/.test(whole)) || !/^\d*$/.test(decimals) || plain.split(".").length > 2) {
    return `“${text}” is no time: write 1:25, or 125 for it.`;
  }
  const parts = colons ? whole.split(":").map(Number) : inPairs(whole);
  if (parts.length > 1 && parts.slice(1).some((part) => part > 59)) {
    return `“${text}” is no time: seconds go from 00 to 59.`;
  }
  const seconds = parts.reduce((sum, part) => 60 * sum + part, 0);
  return Math.round(seconds * 100 + Number(`0.${decimals || 0}`) * 100) / 100;
}

/**
 * Digits in pairs from the right.
 * @param {string} digits
 */
const inPairs = (digits) => (digits.padStart(Math.ceil(digits.length / 2) * 2, "0").match(/../g) ?? []).map(Number);

