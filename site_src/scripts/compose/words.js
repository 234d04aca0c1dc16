// A composed practice in words: the sentences are the data's, their blanks are filled here. Pure. Of report/compose_words.py.

import { showTime } from "../arithmetic/rounding.js";
import { SLACK_MOST, whole } from "./order.js";
import { MAIN, ROLES, SECOND, TENTHS, UNKNOWN } from "./pieces.js";

/** @typedef {import("./pieces.js").Table} Table */
/** @typedef {import("./order.js").Stood} Stood */

/** A sentence with its blanks filled. @param {Pick<Table, "words">} table @param {string} key @param {Record<string, string | number>} [filled] */
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
  if (because === "time-left") {
    return said(table, `unmet-${wish}-time-left`, { time: which === UNKNOWN ? "" : showTime(which) });
  }
  return said(table, `unmet-${wish}`, { effort: table.efforts[which]?.title.toLowerCase() ?? "" });
}

/** A wish that hinders, as a sentence. @param {Table} table @param {import("./why.js").InTheWay} own */
export function hindersWords(table, { wish, which, heads = [] }) {
  if (wish === "lanes" && heads.length) {
    const each = heads.map(([group, number]) => said(table, "heads", { heads: number, group: table.squad.groups[group]?.title ?? "" }));
    return said(table, "hinders-fewer", { heads: each.join(said(table, "and")), most: which });
  }
  const goal = table.goals[which]?.title.toLowerCase() ?? "", role = roleWord(table, ROLES[which] ?? "").toLowerCase();
  return said(table, `hinders-${wish}`, { goal, role, minutes: which, heads: heads[0]?.[1] ?? 0 });
}

/**
 * What moved with a change, and by how much, in short phrases.
 * @param {import("./wishes.js").Asked} asked
 * @param {Stood[]} before
 * @param {Stood[]} after
 * @param {import("./types.js").Deed} deed
 */
export function changeWords({ table, slot }, before, after, { do: what, role }) {
  const left = slot - whole(after), place = after.findIndex((one) => one.role === role);
  const name = (/** @type {Stood | undefined} */ one) => (one ? named(table, after, one) : "");
  const found = [said(table, "now", { time: showTime(Math.ceil(whole(after) / TENTHS)) })];
  if (left > SLACK_MOST) {
    found.push(said(table, "left", { time: showTime(Math.floor(left / TENTHS)) }));
  }
  if (what === "keep" || what === "free") {
    found.push(said(table, what === "keep" ? "kept" : "free", { what: name(after[place]) }));
  }
  if (what === "up" || what === "down") {
    found.push(said(table, "moved", { what: name(after[place]), next: name(after[place + 1]) }));
  }
  return [...found, ...piecesWords(table, before, after)];
}

/** What each piece was and is. @param {Table} table @param {Stood[]} before @param {Stood[]} after */
function piecesWords(table, before, after) {
  const found = [];
  for (const one of after) {
    const same = before.find((old) => old.own.place === one.own.place), was = same ?? before.find((old) => old.role === one.role);
    const what = same ? named(table, after, one) : roleWord(table, one.role).toLowerCase();
    if (!same) {
      found.push(said(table, "another", { what, title: one.own.piece.title }));
    }
    const more = one.own.takes - (was?.own.takes ?? 0), seconds = Math.floor((Math.abs(more) + TENTHS / 2) / TENTHS);
    if (seconds) {
      found.push(said(table, more > 0 ? "longer" : "shorter", { what, time: showTime(seconds) }));
    }
  }
  if (after.length < before.length) {
    const gone = before.filter((old) => !after.some((one) => one.own.place === old.own.place));
    found.push(...gone.map((old) => said(table, "gone", { what: named(table, before, old) })));
  }
  return found;
}

/** A piece by what it stands as; by its title where there are two such. @param {Table} table @param {Stood[]} order @param {Stood} one */
function named(table, order, one) {
  const isMain = (/** @type {Stood} */ { role }) => role === MAIN || role === SECOND;
  return isMain(one) && order.filter(isMain).length > 1 ? one.own.piece.title : roleWord(table, one.role).toLowerCase();
}
