// Where no practice fits, what is said of it: which wish to drop, and what there would be then. Pure. Of report/compose/hinders.py.

import { compose } from "./choice.js";
import { titled } from "./named.js";
import { ROLES, UNKNOWN } from "./pieces.js";
import { Asked } from "./wishes.js";
import { listed, roleWord, said } from "./words.js";

/** @typedef {import("./pieces.js").Table} Table */
/** @typedef {import("./wishes.js").Wishes} Wishes */
/** @typedef {import("./hinders.js").InTheWay} InTheWay */

const NEAR = 10; // minutes more or fewer that are nearer than any other wish

/**
 * What hinders, each with its sentence: what would do soonest first and by name, what has no room for so many once.
 * @param {Table} table
 * @param {Wishes} wishes
 * @param {InTheWay[]} found
 * @returns {[own: InTheWay, words: string][]}
 */
export function saidHinders(table, wishes, found) {
  const full = found.filter(({ wish }) => wish === "room"), ways = found.filter(({ instead }) => instead);
  const near = ways.find(({ wish, which }) => wish === "minutes" && Math.abs(which - wishes.minutes) <= NEAR) ?? ways[0];
  const others = found.filter((own) => own !== near && !full.includes(own));
  /** @type {[own: InTheWay, words: string][]} */
  const first = full[0] ? [[full[0], fullWords(table, full)]] : [];
  return [...first, ...(near ? [/** @type {[InTheWay, string]} */ ([near, nearestWords(table, wishes, near)])] : []),
    ...others.map((own) => /** @type {[InTheWay, string]} */ ([own, hindersWords(table, wishes, own)]))];
}

/** @param {Table} table @param {InTheWay[]} full */
function fullWords(table, full) {
  const roles = full.map(({ which }) => roleWord(table, ROLES[which] ?? "").toLowerCase());
  return said(table, "hinders-room", { role: listed(table, roles, "or"), heads: full[0]?.heads?.[0]?.[1] ?? 0 });
}

/** What would do, with what it would be called. @param {Table} table @param {Wishes} wishes @param {InTheWay} near */
function nearestWords(table, wishes, near) {
  const words = hindersWords(table, wishes, near), other = near.instead ?? wishes, [first] = compose(table, other, 1);
  return first ? words.replace(/\.$/, "") + said(table, "nearest", { title: titled(new Asked(table, other), first.order) }) : words;
}

/** A wish that hinders, as a sentence. @param {Table} table @param {Wishes} wishes @param {InTheWay} own */
function hindersWords(table, wishes, own) {
  const { wish, which, heads = [] } = own;
  if (wish === "lanes" && heads.length) {
    const each = heads.map(([group, number]) => said(table, "heads", { heads: number, group: table.squad.groups[group]?.title ?? "" }));
    return said(table, "hinders-fewer", { heads: listed(table, each), most: which });
  }
  if (wish === "together") {
    return togetherWords(table, wishes, own);
  }
  if (wish === "gear" && which !== UNKNOWN) {
    return said(table, "hinders-gear-one", { gear: table.gear[which]?.title.toLowerCase() ?? "" });
  }
  const goal = table.goals[which]?.title.toLowerCase() ?? "", role = roleWord(table, ROLES[which] ?? "").toLowerCase();
  return said(table, `hinders-${wish}`, { goal, role, minutes: which });
}

/** Wishes that are in the way together. @param {Table} table @param {Wishes} wishes @param {InTheWay} own */
function togetherWords(table, wishes, { which, drops = [] }) {
  const each = drops.map((wish) => said(table, `together-${wish}`)), minutes = said(table, "together-minutes", { minutes: which });
  return said(table, "hinders-together", { drops: listed(table, which === wishes.minutes ? each : [...each, minutes]) });
}
