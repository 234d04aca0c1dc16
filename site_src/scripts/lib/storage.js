// What this site keeps on the device: one small JSON text a subject. Nothing of it leaves the device.

const PREFIX = "deck-almanac-";

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
