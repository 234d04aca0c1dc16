// The finder's choice in the page's address, so that it can be shared and is there again after "back". Pure.

import { nothing } from "./list.js";

/** @import {Choice, Held, List} from "./list.js" */

/**
 * A choice as the part of an address after "#": goal=a,b&minutes=15. With minutes, the pool and group that they hold for.
 * @param {Choice} choice
 * @param {Held} held
 */
function toAddress(choice, { pool, group }) {
  const told = new URLSearchParams();
  for (const [facet, value] of Object.entries(choice)) {
    if (value instanceof Set ? value.size : value) {
      told.set(facet, value instanceof Set ? [...value].join(",") : String(value));
    }
  }
  if (choice.minutes) {
    told.set("pool", pool);
    told.set("group", group);
  }
  return told.toString().replaceAll("%2C", ",");
}

/**
 * What an address says: the choice, the pool and group that it names, and the facets to open. Unknown words are left out.
 * @param {string} text
 * @param {Record<List | "gear", Set<string>>} known
 */
function fromAddress(text, known) {
  const told = new URLSearchParams(text.replace(/^#/, ""));
  /** @param {string} name */
  const list = (name) => (told.get(name) ?? "").split(",").filter(Boolean);
  const choice = nothing();
  for (const [facet, value] of Object.entries(choice)) {
    if (value instanceof Set) {
      list(facet).filter((word) => known[/** @type {List} */ (facet)].has(word)).forEach((word) => value.add(word));
    }
  }
  const minutes = Number.parseInt(told.get("minutes") ?? "", 10);
  choice.minutes = minutes > 0 ? minutes : null;
  choice.words = told.get("words") ?? "";
  return { choice, pool: told.get("pool"), group: told.get("group"), open: list("open") };
}

export { toAddress, fromAddress };
