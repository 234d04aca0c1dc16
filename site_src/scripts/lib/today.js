// Which day it is: only the device knows, for a site is built once and read on other days.

const now = new Date();

/** A day as YYYY-MM-DD, by the device's own clock.
 * @param {Date} date */
const iso = (date) => [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((part) => String(part).padStart(2, "0")).join("-");

export const today = iso(now);
/** The time of day as HH:MM. */
export const time = now.toTimeString().slice(0, "HH:MM".length);
/** The last day of the seven that begin today. */
export const weekEnd = iso(new Date(now.getFullYear(), now.getMonth(), now.getDate() + 6));

/** A day in words.
 * @param {string} on */
export const inWords = (on) =>
  new Date(`${on}T12:00`).toLocaleDateString(document.documentElement.lang, { weekday: "long", day: "numeric", month: "long" });
