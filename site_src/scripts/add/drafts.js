// Drafts: one a kind, kept on this device as it is typed, so that a closed tab loses nothing.

import { read as readKept, write } from "../lib/storage.js";
import { isObject } from "./schema.js";

/** @typedef {{id: string, family: string, entry: import("./schema.js").Fields}} Draft */
/** @typedef {Draft & {at: string}} Kept with the time at which it was kept */

/** @param {string} kind */
const subject = (kind) => `draft-${kind}`;

/** The draft of a kind, as it was kept; null where there is none.
 * @param {string} kind
 * @returns {Kept | null} */
export function read(kind) {
  const { at, id, family, entry } = readKept(subject(kind), /** @type {Partial<Kept>} */ ({}));
  const text = (/** @type {unknown} */ value) => String(value ?? "");
  return isObject(entry) ? { at: text(at), id: text(id), family: text(family), entry } : null;
}

/**
 * Keep a draft; false where this browser keeps nothing, or no more.
 * @param {string} kind
 * @param {Draft} draft
 */
export const keep = (kind, draft) => write(subject(kind), { ...draft, at: new Date().toISOString() });

/** @param {string} kind */
export const discard = (kind) => write(subject(kind), {});

/** When a draft was kept, for people; "" where that is not known.
 * @param {Kept} draft */
export function when({ at }) {
  const date = new Date(at);
  const isKnown = !Number.isNaN(date.getTime());
  return isKnown ? date.toLocaleString(document.documentElement.lang, { dateStyle: "medium", timeStyle: "short" }) : "";
}
