// A composed practice in words: the sentences are the data's, their blanks are filled here. Pure. Of report/compose/words.py.

import { showTime } from "../arithmetic/rounding.js";
import { SLACK_MOST, whole } from "./order.js";
import { isHeld, MAINS, TENTHS, UNKNOWN } from "./pieces.js";

/** @typedef {import("./pieces.js").Table} Table */
/** @typedef {import("./order.js").Stood} Stood */
/** @typedef {import("./pieces.js").Piece} Piece */

/** A sentence with its blanks filled. @param {Pick<Table, "words">} table @param {string} key @param {Record<string, string | number>} [filled] */
export const said = (table, key, filled = {}) =>
  (table.words[key] ?? "").replace(/\{(\w+)\}/g, (_, name) => String(filled[name]));

/** What a role is called. @param {Table} table @param {string} role */
export const roleWord = (table, role) => said(table, `role-${isHeld(role) ? "held" : role}`);

/** Words in a row: "kick, walls and rotation". @param {Table} table @param {string[]} words @param {"and" | "or"} [last] */
export const listed = (table, words, last = "and") => (words.length > 1 ? [words.slice(0, -1).join(", "), words.at(-1)].join(said(table, last)) : (words[0] ?? ""));

const SOME = 300; // permille of a piece below which it has only some of a goal

/** Why a piece stands there, in short phrases. @param {Table} table @param {Stood} one @param {import("./why.js").Why} why */
export function whyWords(table, { role, own: { piece } }, { goals, notes, days, gear }) {
  const found = [...servesWords(table, piece, goals), ...notes.map((note) => noteWords(table, piece, role, note))];
  if (days !== UNKNOWN) {
    found.push(said(table, days < 2 ? `done-${days}` : "done", { days }));
  }
  for (const [id, used, here] of gear) {
    found.push(said(table, "gear", { used, gear: table.gear[id]?.title.toLowerCase() ?? "", here }));
  }
  return found;
}

/** The goals that a piece serves, and what in it does; those together that the same does. @param {Table} table @param {Piece} piece @param {number[]} goals */
function servesWords(table, piece, goals) {
  /** @type {Map<string, {key: string, show: string, titles: string[]}>} */
  const alike = new Map();
  for (const goal of goals) {
    const place = piece.goals.indexOf(goal), share = piece.shares[place] ?? 0, known = piece.shows[place] ?? "";
    const show = known.startsWith(piece.title) ? "" : known; // the row says it already
    const key = !share ? "written-for" : !show ? "serves" : share < SOME ? "serves-some" : "serves-by";
    const own = alike.get(`${key} ${show}`) ?? { key, show, titles: [] };
    own.titles.push(titleOf(table.goals, goal));
    alike.set(`${key} ${show}`, own);
  }
  return [...alike.values()].map(({ key, show, titles }) => said(table, key, { goal: listed(table, titles), show }));
}

/** @param {import("./pieces.js").Named[]} words @param {number | undefined} place */
const titleOf = (words, place) => words[place ?? -1]?.title.toLowerCase() ?? "";

/** What a piece does where it stands. @param {Table} table @param {Piece} piece @param {string} role @param {import("./why.js").Note} note */
function noteWords(table, piece, role, { does, which, because }) {
  if (does === "stands") {
    return said(table, `stands-${isHeld(role) ? "held" : role}`);
  }
  if (does === "trains") {
    const show = piece.shows[0] ?? "";
    return said(table, show ? "trains-by" : "trains", { goal: titleOf(table.goals, which[0]), show });
  }
  if (does === "no-other") {
    const key = because === "groups" ? does : `${does}-${because === "minutes" ? "fits" : "because"}`;
    return said(table, key, { goal: listed(table, which.map((goal) => titleOf(table.goals, goal))), because: said(table, `because-${because}`) });
  }
  const strokes = does === "warms" || does === "carries" ? listed(table, which.map((stroke) => titleOf(table.strokes, stroke))) : "";
  return said(table, does, { strokes, effort: titleOf(table.efforts, which[0]) });
}

/** The sentence that offers no goal to drop where there is one alone. @param {Table} table @param {string} key @param {number} goals how many */
const ofGoals = (table, key, goals) => (goals === 1 && table.words[`${key}-one`] ? `${key}-one` : key);

/** What is not met, as a sentence; of goals a single one is not left out. @param {Table} table @param {import("./why.js").NotMet} own @param {number} goals how many */
export function unmetWords(table, { wish, which, because }, goals) {
  if (wish === "goals") {
    return said(table, "unmet-goals", { goal: table.goals[which]?.title ?? "", because: said(table, `because-${because}`), mend: said(table, ofGoals(table, `mend-${because}`, goals)) });
  }
  if (because === "time-left") {
    return said(table, `unmet-${wish}-time-left`, { time: which === UNKNOWN ? "" : showTime(which) });
  }
  if (wish !== "effort" && because !== "minutes") {
    return said(table, `unmet-${wish}-${because === "groups" ? "none" : "because"}`, { because: said(table, `because-${because}`), mend: said(table, `mend-${because}`) });
  }
  const key = `unmet-${wish}${because === "harder" ? "-harder" : ""}`;
  return said(table, ofGoals(table, key, goals), { effort: table.efforts[which]?.title.toLowerCase() ?? "" });
}

/**
 * What moved with a change, and by how much, in short phrases; of no deed where the practice was given other minutes.
 * @param {import("./wishes.js").Asked} asked
 * @param {Stood[]} before
 * @param {Stood[]} after
 * @param {Partial<import("./types.js").Deed>} [deed]
 */
export function changeWords({ table, slot }, before, after, { do: what, role } = {}) {
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
    found.push(said(table, `moved-${what}`, { what: name(after[place]), next: name(after[what === "up" ? place + 1 : place - 1]) }));
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

/** A piece by what it stands as; by its title where there are more such. @param {Table} table @param {Stood[]} order @param {Stood} one */
function named(table, order, one) {
  const isMain = (/** @type {Stood} */ { role }) => MAINS.includes(role);
  return isHeld(one.role) || (isMain(one) && order.filter(isMain).length > 1) ? one.own.piece.title : roleWord(table, one.role).toLowerCase();
}
