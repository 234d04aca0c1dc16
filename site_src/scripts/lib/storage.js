// What this site keeps on the device: one small JSON text a subject, under the site's own path, since two clubs may share a host.
// Nothing of it leaves the device.

import { root } from "./dom.js";

const OLDER = "deck-almanac-"; // before what is kept named its site
const PREFIX = `deck-almanac ${root.pathname} `;

/**
 * What is kept under a subject; `otherwise` where nothing is, or what is there is not ours.
 * @template T
 * @param {string} subject
 * @param {T} otherwise
 * @returns {T}
 */
export function read(subject, otherwise) {
  try {
    const value = JSON.parse(localStorage.getItem(PREFIX + subject) ?? "null");
    return value !== null && typeof value === typeof otherwise && Array.isArray(value) === Array.isArray(otherwise)
      ? value
      : otherwise;
  } catch {
    return otherwise; // a browser that keeps nothing
  }
}

/**
 * Keep a value under a subject; false where the browser keeps nothing, and the value holds on this page only.
 * @param {string} subject
 * @param {unknown} value
 */
export function write(subject, value) {
  try {
    localStorage.setItem(PREFIX + subject, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

/** Give what is kept under an older name to this site: the first that is opened takes it, as it was the one that there was. */
export function takeOlder() {
  try {
    for (const name of Object.keys(localStorage).filter((key) => key.startsWith(OLDER))) {
      const own = PREFIX + name.slice(OLDER.length);
      localStorage.setItem(own, localStorage.getItem(own) ?? localStorage.getItem(name) ?? "null");
      localStorage.removeItem(name);
    }
  } catch {
    // a browser that keeps nothing, or has no room: what is there stays
  }
}
