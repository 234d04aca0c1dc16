// A composed practice as an entry of the catalogue, in YAML as entries are written: what `compose practice --save` writes. Pure.
// Of report/compose/entry.py and commands/compose_save.py.

import { showTime } from "../arithmetic/rounding.js";
import { toAddress } from "../make/asked.js";
import { focus, summary, titled } from "./named.js";
import { TENTHS } from "./pieces.js";

/** @typedef {import("./order.js").Stood} Stood */
/** @typedef {import("./types.js").Role} Role */
/** @typedef {import("./pieces.js").Piece} Piece */
/** @typedef {import("./pieces.js").Table} Table */
/** @typedef {import("./wishes.js").Asked} Asked */
/** @typedef {Record<string, unknown>} Entry */

const PLAIN = /^(?:[A-Za-z][A-Za-z0-9-]*|\d+|\d+:[0-5]\d(?:\.\d)?)$/;
const RESERVED = ["true", "false", "null", "yes", "no", "on", "off"];

/** The entry as text. @param {Asked} asked @param {Stood[]} order @param {string} start HH:MM */
export const entryText = (asked, order, start) => asYaml(entryOf(asked, order, start));

/** @param {Asked} asked @param {Stood[]} order @param {string} start @returns {Entry} */
function entryOf(asked, order, start) {
  const { table, wishes } = asked, lanes = lanesOf(asked);
  return {
    title: titled(asked, order),
    summary: summary(asked, order),
    squad: table.squad.id,
    pool: wishes.pool,
    slot: { start, minutes: wishes.minutes },
    focus: focus(asked, order),
    adults: Math.max(asked.adultsLeast, ...order.map((one) => one.own.adults)),
    ...(lanes && { lanes: { groups: lanes } }),
    composed: addressOf(asked, order, start),
    parts: order.map((one) => partOf(table, one)),
  };
}

/** The words of the address that makes it again: what is not as usual, and which pieces stand, how often. @param {Asked} asked @param {Stood[]} order @param {string} start */
function addressOf({ table, wishes }, order, start) {
  const { pieces, squad: { groups } } = table;
  const unusual = (/** @type {{id: string}[]} */ all, /** @type {number[]} */ numbers, /** @type {number[]} */ usual) =>
    Object.fromEntries(all.flatMap(({ id }, at) => (numbers[at] === usual[at] ? [] : [[id, numbers[at] ?? 0]])));
  return toAddress({
    squad: table.squad.id, on: "", start, number: 1, code: "",
    request: {
      pool: wishes.pool, minutes: wishes.minutes, goals: wishes.goals.map((goal) => table.goals[goal]?.id ?? ""),
      groups: wishes.groups.length < groups.length ? wishes.groups.map((group) => groups[group]?.id ?? "") : [],
      gear: unusual(table.gear, wishes.gear, table.gear.map((own) => own.owned)),
      lanes: unusual(groups, wishes.lanes, groups.map((own) => own.lanes)), heads: unusual(groups, wishes.heads, groups.map((own) => own.heads)),
      effort: table.efforts[wishes.effort]?.id ?? "", adults: wishes.adults,
    },
    practice: { parts: order.map(({ role, own }) => ({ role: /** @type {Role} */ (role), piece: own.piece.key, number: own.number, kept: false, ...talkOf(own, pieces) })), out: [] },
  });
}

/** The talk before a piece, where it is not the usual. @param {import("./wishes.js").Sized} own @param {Piece[]} pieces */
const talkOf = ({ place, piece: { talk } }, pieces) => (pieces[place]?.talk === talk ? {} : { talk_s: talk / TENTHS });

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

/** The lines of each part of a practice. @param {Asked} asked @param {Stood[]} order */
export const partTexts = ({ table }, order) => order.map((one) => `${partLines(partOf(table, one)).join("\n")}\n`);

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
  const lines = [...Object.entries(others).map(([key, value]) => `${key}: ${flow(value, key)}`), "parts:", .../** @type {Entry[]} */ (parts).flatMap(partLines)];
  return `${lines.join("\n")}\n`;
}

/** A line for each key of a part and for each of its items. @param {Entry} part */
const partLines = (part) => Object.entries(part).flatMap(([name, own], place) => {
  const mark = place ? "    " : "  - ";
  return name === "items" ? [`${mark}items:`, .../** @type {unknown[]} */ (own).map((item) => `      - ${flow(item, "")}`)] : [`${mark}${name}: ${flow(own, name)}`];
});

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
