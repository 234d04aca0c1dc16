// A composed practice in words: the sentences are the data's, their blanks are filled here. Pure. Of report/compose_words.py.

import { ROLES, UNKNOWN } from "./pieces.js";

/** @typedef {import("./pieces.js").Table} Table */

/** A sentence with its blanks filled. @param {Table} table @param {string} key @param {Record<string, string | number>} [filled] */
export const said = (table, key, filled = {}) =>
  (table.words[key] ?? "").replace(/\{(\w+)\}/g, (_, name) => String(filled[name]));

/** What a role is called. @param {Table} table @param {string} role */
export const roleWord = (table, role) => said(table, `role-${role}`);

/** Why a piece stands there, in short phrases. @param {Table} table @param {string} role @param {import("./why.js").Why} why */
export function whyWords(table, role, { goals, days, gear }) {
  const titles = goals.map((goal) => table.goals[goal]?.title.toLowerCase() ?? "");
  const found = [titles.length ? said(table, "serves", { goals: titles.join(said(table, "and")) }) : said(table, `serves-${role}`)];
  if (days !== UNKNOWN) {
    found.push(said(table, days < 2 ? `done-${days}` : "done", { days }));
  }
  for (const [id, used, here] of gear) {
    found.push(said(table, "gear", { used, gear: table.gear[id]?.title.toLowerCase() ?? "", here }));
  }
  return found;
}

/** What is not met, as a sentence. @param {Table} table @param {import("./why.js").NotMet} own */
export function unmetWords(table, { wish, which, because }) {
  if (wish === "goals") {
    return said(table, "unmet-goals", { goal: table.goals[which]?.title ?? "", because: said(table, `because-${because}`) });
  }
  return said(table, `unmet-${wish}`, { effort: table.efforts[which]?.title.toLowerCase() ?? "" });
}

/** A wish that hinders, as a sentence. @param {Table} table @param {import("./why.js").InTheWay} own */
export function hindersWords(table, { wish, which }) {
  const goal = table.goals[which]?.title.toLowerCase() ?? "", role = roleWord(table, ROLES[which] ?? "").toLowerCase();
  return said(table, `hinders-${wish}`, { goal, role, minutes: which });
}
