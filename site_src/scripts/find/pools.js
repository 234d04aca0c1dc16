// Which pool the times are for is asked where something is swum.

import { isOnLand } from "./list.js";

/** @import {Entry} from "./list.js" */

/** What is done on land is the same in every pool: where nothing else is found none is offered to choose.
 * @param {HTMLElement} form
 * @param {Entry[]} found
 * @param {string[]} narrowed the kinds that may be swum */
export function offerPools(form, found, narrowed) {
  const done = found.filter(({ kind }) => narrowed.includes(kind));
  const choose = form.querySelector("[data-choose=pool]")?.closest("label");
  choose?.toggleAttribute("hidden", done.length > 0 && done.every(isOnLand));
}
