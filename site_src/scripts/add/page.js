// The page's own elements, by the names that its template gives them.

import { one } from "../lib/dom.js";

export const page = one("[data-add]");

/** @param {string} name */
export const at = (name) => one(`[data-${name}]`, page);

/** @param {string} text */
export const say = (text) => { at("told").textContent = text; };
