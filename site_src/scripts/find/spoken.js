// What a screen reader says of the list, once the keys have stopped: at each key it would never come to an end.

import { one } from "../lib/dom.js";

/** @import {Entry} from "./list.js" */

const STILL_MS = 700;

/**
 * @param {HTMLElement} page
 * @param {(first: Entry) => string} told
 */
export function speaker(page, told) {
  let waiting = 0;
  const say = (/** @type {string} */ first) => {
    const words = ["[data-unknown]", "[data-total]"].map((place) => one(place, page).textContent);
    one("[data-spoken]", page).textContent = [...words, first].filter(Boolean).join(" ");
  };
  /** @param {Entry | undefined} first of the list */
  return (first) => {
    clearTimeout(waiting);
    waiting = setTimeout(say, STILL_MS, first ? told(first) : "");
  };
}
