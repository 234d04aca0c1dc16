// My lane groups as this device keeps them.

import { read } from "./storage.js";

/** @typedef {{group?: string, groups?: string[]}} Kept `group`: as one alone was kept before there could be several */

export const MOST_GROUPS = 3;

/** In the order in which they were chosen; none where none was.
 * @returns {string[]} */
export function keptGroups() {
  const { groups, group } = read("choices", /** @type {Kept} */ ({}));
  return (groups ?? (group ? [group] : [])).slice(0, MOST_GROUPS);
}
