// One value made of another and of what differs: `report/differences.py` is the other half, and says how a difference is written. Pure.

const GONE = "-";

/** @typedef {Record<string, any>} Value an object */

/** @param {unknown} value
 * @returns {value is Value} */
const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);

/** @param {unknown} value
 * @returns {value is Value[]} */
const holdsObjects = (value) => Array.isArray(value) && isObject(value[0]);

/** What a difference makes of a value; of nothing, itself. What stays is the same object.
 * @param {any} old
 * @param {any} difference
 * @returns {any} */
export function applied(old, difference) {
  if (isObject(old)) {
    const { [GONE]: gone = [], ...told } = difference;
    const kept = Object.entries(old).filter(([key]) => !gone.includes(key));
    return { ...Object.fromEntries(kept), ...Object.fromEntries(Object.entries(told).map(([key, own]) => [key, applied(old[key], own)])) };
  }
  if (!holdsObjects(old)) {
    return difference;
  }
  if (Array.isArray(difference)) {
    return difference.map((own) => (Array.isArray(own) ? applied(old[own[0]], own[1]) : old[own]));
  }
  return old.map((own, place) => (place in difference ? applied(own, difference[place]) : own));
}
