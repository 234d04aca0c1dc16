// The cards that somebody has gathered for printing: kept on the device, each by its page's address from the site's root.

import { read, write } from "./storage.js";

/** @typedef {{href: string, title: string}} Card */

const SUBJECT = "cards";

/** @param {Partial<Card> | null} card as it was kept
 * @returns {card is Card} */
const isCard = (card) => typeof card?.href === "string" && typeof card.title === "string";

/** Every card, in the order in which they were gathered. */
export const all = () => read(SUBJECT, /** @type {(Partial<Card> | null)[]} */ ([])).filter(isCard);

/** @param {string} href */
export const has = (href) => all().some((card) => card.href === href);

/** @param {Card} card */
export const add = (card) => write(SUBJECT, [...all().filter((other) => other.href !== card.href), card]);

/** @param {string} href */
export const remove = (href) => write(SUBJECT, all().filter((card) => card.href !== href));

export const clear = () => write(SUBJECT, []);
