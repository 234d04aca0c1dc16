// A composed practice as an entry of the catalogue, in YAML as entries are written: what `compose practice --save` writes. Pure.
// Of report/compose_entry.py and commands/compose_save.py.

import { showTime } from "../arithmetic/rounding.js";
import { askedOf, standing } from "./change.js";
import { MAIN, SECOND, SKILL, TENTHS } from "./pieces.js";
import { roleWord, said } from "./words.js";

/** @typedef {import("./types.js").Practice} Practice */
/** @typedef {import("./types.js").Request} Request */
/** @typedef {import("./order.js").Stood} Stood */
/** @typedef {import("./pieces.js").Piece} Piece */
/** @typedef {import("./pieces.js").Table} Table */
/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {Record<string, unknown>} Entry */

const TITLE_MOST = 60, SUMMARY_MOST = 120; // as long as the schema lets them be
const PLAIN = /^(?:[A-Za-z][A-Za-z0-9-]*|\d+|\d+:[0-5]\d(?:\.\d)?)$/;
const RESERVED = ["true", "false", "null", "yes", "no", "on", "off"];

/**
 * The entry as text. Throws BadWish for a request or a practice that cannot be.
 * @param {object} data
 * @param {Request} request
 * @param {Practice} practice
 * @param {string} start HH:MM
 */
export function entryText(data, request, practice, start) {
  const asked = askedOf(data, request), { order } = standing(asked, practice);
  return asYaml(entryOf(asked, order, start));
}

/**
 * The title of the entry: the squad and the main set.
 * @param {object} data
 * @param {Request} request
 * @param {Practice} practice
 */
export function titleOf(data, request, practice) {
  const asked = askedOf(data, request);
  return titled(asked.table, standing(asked, practice).order);
}

/** @param {Asked} asked @param {Stood[]} order @param {string} start @returns {Entry} */
function entryOf(asked, order, start) {
  const { table, wishes } = asked, lanes = lanesOf(asked);
  return {
    title: titled(table, order),
    summary: summary(table, order),
    squad: table.squad.id,
    pool: wishes.pool,
    slot: { start, minutes: wishes.minutes },
    focus: focus(order),
    adults: Math.max(asked.adultsLeast, ...order.map((one) => one.own.adults)),
    ...(lanes && { lanes: { groups: lanes } }),
    parts: order.map((one) => partOf(table, one)),
  };
}

/** The lanes of each lane group by number, from the first on, where they are not the usual. @param {Asked} asked */
function lanesOf({ table: { squad: { groups } }, wishes: { lanes } }) {
  if (groups.every((group, place) => group.lanes === lanes[place])) {
    return null;
  }
  let taken = 0;
  return Object.fromEntries(
    groups.map((group, place) => [group.id, Array.from({ length: lanes[place] ?? 0 }, () => (taken += 1))]),
  );
}

/** @param {Table} table @param {Stood[]} order */
function titled({ squad, words }, order) {
  const main = order.find((one) => one.role === MAIN)?.own.piece, title = main?.title ?? "";
  const named = main?.of === "part" ? title.slice(title.indexOf("“") + 1 || title.length).replace(/”+$/, "") : title;
  const own = named.startsWith(`${squad.title}: `) ? named.slice(squad.title.length + 2) : named;
  return [...said({ words }, "entry-title", { squad: squad.title, title: own })].slice(0, TITLE_MOST).join("").replace(/[, ]+$/, "");
}

/** For whom it is, and one piece of what is done beside the main set of the title; no longer than the schema lets it be. @param {Table} table @param {Stood[]} order */
function summary(table, order) {
  const one = [SKILL, SECOND, MAIN].flatMap((role) => order.filter((own) => own.role === role))[0];
  const purpose = said(table, "entry-purpose", { squad: table.squad.title });
  const work = said(table, "entry-work", { role: roleWord(table, one?.role ?? MAIN), title: one?.own.piece.title.replace(/\.+$/, "") ?? "" });
  const text = `${work} ${purpose}`;
  return [...text].length <= SUMMARY_MOST ? text : purpose;
}

/** What every lane hears: the cue of the main set, else of what leads to it, else its title. @param {Stood[]} order */
function focus(order) {
  const work = [MAIN, SECOND, SKILL].flatMap((role) => order.filter((one) => one.role === role).map((one) => one.own.piece));
  const text = work.find((piece) => piece.cue)?.cue ?? work[0]?.title ?? "";
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** @param {Table} table @param {Stood} one @returns {Entry} */
function partOf({ partWords }, { role, own: { piece, number, steps } }) {
  /** @type {Entry} */
  const part = { part: partWords[role] };
  if (piece.of === "set") {
    part.set = piece.id;
    if (steps) {
      part[piece.what] = number;
    }
  } else {
    part.items = scaledItems(piece, number);
  }
  if (piece.talk) {
    part.talk = showTime(Math.floor(piece.talk / TENTHS));
  }
  return part;
}

/** The items of a piece that is no set, so often. @param {Piece} piece @param {number} number */
function scaledItems({ items, scaled, what }, number) {
  const own = structuredClone(items);
  if (what) {
    /** @type {any} */
    let found = own;
    for (const step of scaled) {
      found = found[step];
    }
    found.reps = number;
  }
  return own;
}

/** The entry as text: a line for each key, a line for each part and each of its items. @param {Entry} entry */
function asYaml({ parts, ...others }) {
  const lines = [...Object.entries(others).map(([key, value]) => `${key}: ${flow(value, key)}`), "parts:"];
  for (const part of /** @type {Entry[]} */ (parts)) {
    let mark = "  - ";
    for (const [name, own] of Object.entries(part)) {
      if (name === "items") {
        lines.push(`${mark}items:`, .../** @type {unknown[]} */ (own).map((item) => `      - ${flow(item, "")}`));
      } else {
        lines.push(`${mark}${name}: ${flow(own, name)}`);
      }
      mark = "    ";
    }
  }
  return `${lines.join("\n")}\n`;
}

/** A value on one line. @param {unknown} value @param {string} key @returns {string} */
function flow(value, key) {
  if (Array.isArray(value)) {
    return `[${value.map((own) => flow(own, "")).join(", ")}]`;
  }
  if (value && typeof value === "object") {
    return `{${Object.entries(value).map(([name, own]) => `${name}: ${flow(own, name)}`).join(", ")}}`;
  }
  if (typeof value !== "string") {
    return String(value);
  }
  return PLAIN.test(value) && !RESERVED.includes(value) && key !== "start" ? value : JSON.stringify(value);
}
