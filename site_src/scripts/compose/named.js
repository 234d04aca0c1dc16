// What a composed practice is called, what it is for, and what every lane hears. Pure. Of report/compose/named.py.

import { MAIN, MAINS, SECOND, SKILL } from "./pieces.js";
import { said } from "./words.js";

/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {import("./order.js").Stood} Stood */
/** @typedef {import("./pieces.js").Piece} Piece */

const TITLE_MOST = 60, SUMMARY_MOST = 120; // as long as the schema lets them be

/** The work in the order of some roles. @param {Stood[]} order @param {string[]} roles */
const workOf = (order, roles) => roles.flatMap((role) => order.filter((one) => one.role === role));

/** The wished goals that the work serves, in the order of the wish. @param {Asked} asked @param {Stood[]} order */
function served({ table, wishes }, order) {
  const work = workOf(order, [SKILL, ...MAINS]);
  return wishes.goals.filter((goal) => work.some(({ own }) => own.piece.goals.includes(goal))).map((goal) => table.goals[goal]?.title.toLowerCase() ?? "");
}

/** @param {Asked} asked @param {Piece | undefined} piece */
function small({ table }, piece) {
  const squad = `${table.squad.title}: `, full = piece?.called || piece?.title || "";
  const [letter = "", ...rest] = full.startsWith(squad) ? full.slice(squad.length) : full;
  return [letter.toLowerCase(), ...rest].join("");
}

/** @param {Asked} asked */
const unitOf = ({ table, wishes }) => table.pools.find((pool) => pool.id === wishes.pool)?.unit ?? "";

/** The main set, after the work that serves the chief goal where it does not itself; a part of a practice with its distance. @param {Asked} asked @param {Stood[]} order */
function calledOf(asked, order) {
  const { table, wishes } = asked, work = order.filter(({ role }) => [SKILL, ...MAINS].includes(role)).map((one) => one.own.piece);
  const stood = order.find((one) => one.role === MAIN)?.own, main = stood?.piece, chief = wishes.goals.find((goal) => work.some((own) => own.goals.includes(goal)));
  if (chief !== undefined && !main?.goals.includes(chief)) {
    return [[work.find((own) => own.goals.includes(chief)), main].map((own) => small(asked, own)).join(said(table, "and")), small(asked, main)];
  }
  const called = small(asked, main), far = main?.of === "part" ? [`${called}, ${stood?.size.distance} ${unitOf(asked)}`] : [];
  return [...far, called, ...(called.includes(",") ? called.split(",").slice(0, 1) : [])];
}

/** The squad, what it is for and the main set, with as many of the goals as there is room for. @param {Asked} asked @param {Stood[]} order */
export function titled(asked, order) {
  const { table } = asked, goals = served(asked, order), called = calledOf(asked, order);
  const every = (goals.length ? goals : [""]).flatMap((_, out) => called.map((own) => {
    const title = [goals.slice(0, goals.length - out).join(", "), own].filter(Boolean).join(" – ");
    return said(table, "entry-title", { squad: table.squad.title, title });
  }));
  const cut = [...(every.at(-1) ?? "")].slice(0, TITLE_MOST - 1).join("");
  return every.find((own) => [...own].length <= TITLE_MOST) ?? `${cut.slice(0, Math.max(0, cut.lastIndexOf(" "))).replace(/[, –]+$/, "")}…`;
}

/** What it is for, and one piece of what is done beside the main set of the title; no longer than the schema lets it be, with fewer goals where they are long. @param {Asked} asked @param {Stood[]} order */
export function summary(asked, order) {
  const { table } = asked, [one] = workOf(order, [SKILL, SECOND, MAIN]), goals = served(asked, order);
  const every = goals.length ? goals : [table.squad.title];
  const purposes = every.map((_, out) => said(table, "entry-purpose", { goals: every.slice(0, every.length - out).join(", ") }));
  const work = said(table, one?.role === MAIN ? "entry-centre" : "entry-beside", { title: one?.own.piece.title.replace(/\.+$/, "") ?? "" });
  const text = `${work} ${purposes[0]}`;
  return [text, ...purposes].find((own) => [...own].length <= SUMMARY_MOST) ?? "";
}

/** What every lane hears: the cue of the work for the chief goal, else of the main set and what stands beside it, else its title. @param {Asked} asked @param {Stood[]} order */
export function focus({ wishes: { goals: [chief] } }, order) {
  const work = workOf(order, [...MAINS, SKILL]).map((one) => one.own.piece);
  const cue = [...work.filter((piece) => piece.goals.some((goal) => goal === chief)), ...work].find((piece) => piece.cue)?.cue;
  const text = cue ?? work[0]?.title ?? "";
  return /[.!?]$/.test(text) ? text : `${text}.`;
}
