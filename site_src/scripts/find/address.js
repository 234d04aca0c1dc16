// The finder's choice in the page's address, so that it can be shared and is there again after "back". Pure.

import { nothing } from "./list.js";

/** @import {Choice, List} from "./list.js" */
/** @typedef {{pool: string, groups: string[]}} Whose the pool and lane groups that minutes hold for */

const NUMBERS = /** @type {const} */ (["minutes", "lanes", "swimmers"]);

/**
 * A choice as the part of an address after "#": goal=a,b&minutes=15. With minutes, the pool and groups that they hold for.
 * @param {Choice} choice
 * @param {Whose} whose
 */
function toAddress(choice, { pool, groups }) {
  const told = new URLSearchParams();
  for (const [facet, value] of Object.entries(choice)) {
    if (value instanceof Set ? value.size : value) {
      told.set(facet, value instanceof Set ? [...value].join(",") : String(value));
    }
  }
  if (choice.minutes) {
    told.set("pool", pool);
    told.set("groups", groups.join(","));
  }
  return told.toString().replaceAll("%2C", ",");
}

/**
 * What an address says: the choice, the pool and groups that it names, and the facets to open. Unknown words are left out.
 * @param {string} text
 * @param {Record<List | "kind" | "gear" | "groups" | "pool", Set<string>>} known
 */
function fromAddress(text, known) {
  const told = new URLSearchParams(text.replace(/^[#?]/, ""));
  /** @param {string} name */
  const list = (name) => (told.get(name) ?? "").split(",").filter(Boolean);
  const choice = nothing();
  for (const [facet, value] of Object.entries(choice)) {
    if (value instanceof Set) {
      list(facet).filter((word) => known[/** @type {List} */ (facet)].has(word)).forEach((word) => value.add(word));
    }
  }
  for (const name of NUMBERS) {
    const number = Number.parseInt(told.get(name) ?? "", 10);
    choice[name] = number > 0 && number < 1000 ? number : null;
  }
  choice.untimed = told.get("untimed") === "true";
  choice.words = told.get("words") ?? told.get("q") ?? "";
  const pool = told.get("pool") ?? "";
  const groups = [...list("groups"), ...list("group")].filter((id) => known.groups.has(id)).slice(0, 3);
  return { choice, pool: known.pool.has(pool) ? pool : "", groups, open: list("open"), until: told.get("until") ?? "", isRun: told.has("run") };
}

export { toAddress, fromAddress };
