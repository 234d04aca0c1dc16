// The last five things that were looked for and opened, on this device.

import { read, write } from "../lib/storage.js";

const SUBJECT = "looked-for";
const MOST = 5;

/** @returns {string[]} */
export const lookedFor = () => read(SUBJECT, []).filter((words) => typeof words === "string").slice(0, MOST);

export const forget = () => write(SUBJECT, []);

/** @param {string} words */
export function remember(words) {
  const own = words.trim();
  if (own) {
    write(SUBJECT, [own, ...lookedFor().filter((other) => other.toLowerCase() !== own.toLowerCase())].slice(0, MOST));
  }
}
