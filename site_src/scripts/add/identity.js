// An entry's id and a family's name, by the rule of paths.py and `almanac new`. Pure.

import { nearestId } from "./near.js";

/** @typedef {import("./names.js").Names} Names */
/** @typedef {{message: string, hint: string}} Amiss */

const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const DEVICE = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/;

/** A name made from any text: lower-case letters, digits and single hyphens; "" where it holds none.
 * @param {string} text */
export const slug = (text) =>
  text
    .normalize("NFD")
    .toLowerCase()
    .replace(/\p{M}/gu, "")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");

/**
 * What is amiss with a name as it is spelt; null where nothing is.
 * @param {string} name
 * @param {number} most characters
 * @returns {Amiss | null}
 */
export function amissWith(name, most) {
  if (!ID.test(name)) {
    const better = slug(name);
    const message = `“${name}” is no id: an id is lower-case letters, digits and single hyphens`;
    return { message, hint: better && `write ${better}` };
  }
  if (DEVICE.test(name)) {
    return { message: `“${name}” is a device's name on some computers`, hint: "choose another" };
  }
  const message = `the id has ${name.length} characters, at most ${most}`;
  return name.length > most ? { message, hint: "shorten it" } : null;
}

/**
 * What is amiss with the id of a new entry of a kind: as it is spelt, or because it is taken.
 * @param {string} id
 * @param {string} kind
 * @param {Names} names
 * @returns {Amiss | null}
 */
export function amissWithId(id, kind, names) {
  /** @type {[string, string][]} */
  const taken = [
    ...names.reference[kind].map(([known, , file]) => /** @type {[string, string]} */ ([known, file])),
    ...Object.entries(names.moved[kind] ?? {}),
  ];
  const same = taken.find(([known]) => known === id);
  const hint = "choose another id, or change that entry";
  const isTaken = same ? { message: `the ${kind} “${id}” exists already: ${same[1]}`, hint } : null;
  return amissWith(id, names.limits.id) ?? isTaken;
}

/**
 * An entry of the kind whose id is spelt nearly the same; null where there is none.
 * @param {string} id
 * @param {string} kind
 * @param {Names} names
 */
export const nearlyThere = (id, kind, names) => nearestId(id, names.reference[kind]);
