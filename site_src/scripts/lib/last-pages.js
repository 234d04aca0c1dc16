// The entries whose pages were seen last on this device: kept there, the newest first, and shown on Home.

import { read, write } from "./storage.js";

/** @typedef {{href: string, title: string, kind: string}} Seen */

const SUBJECT = "last";
const MOST = 3;

/** @param {Partial<Seen> | null} seen as it was kept
 * @returns {seen is Seen} */
const isSeen = (seen) => [seen?.href, seen?.title, seen?.kind].every((text) => typeof text === "string");

/** The newest first. */
export const last = () => read(SUBJECT, /** @type {(Partial<Seen> | null)[]} */ ([])).filter(isSeen).slice(0, MOST);

/** @param {Seen} page */
export const note = (page) => write(SUBJECT, [page, ...last().filter((other) => other.href !== page.href)].slice(0, MOST));
