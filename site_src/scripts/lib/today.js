// Which day it is: only the device knows, for a site is built once and read on other days.

const now = new Date();

/** Today as YYYY-MM-DD, by the device's own clock. */
export const today = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
/** The time of day as HH:MM. */
export const time = now.toTimeString().slice(0, "HH:MM".length);

/** A day in words.
 * @param {string} on */
export const inWords = (on) =>
  new Date(`${on}T12:00`).toLocaleDateString(document.documentElement.lang, { weekday: "long", day: "numeric", month: "long" });
