// What a composed practice is called, whose it is, and the version of its run. Pure.

/** @import {Data} from "./types.js" */

const LETTERS = 16;
const TITLE_MOST = 60, ID_MOST = 60; // letters, as the schema lets them be
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** A version of run data, the same wherever the same was laid: FNV-1a of its text, forwards and backwards, 32 bits each.
 * @param {string} text */
export function versionOf(text) {
  const hash = (/** @type {number[]} */ codes) => codes.reduce((own, code) => Math.imul(own ^ code, 0x01000193) >>> 0, 0x811c9dc5);
  const codes = [...new TextEncoder().encode(text)];
  const halves = [hash(codes), hash(codes.reverse())];
  return halves.map((half) => half.toString(16).padStart(LETTERS / 2, "0")).join("");
}

/** An id of letters without accents, digits and hyphens.
 * @param {string} text */
const plain = (text) => text.toLowerCase().replace(/ß/g, "ss").normalize("NFKD").replace(/\p{M}/gu, "").replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "");

/** What a composed practice, or one that is changed, is called as an entry: by its title, or the id that it had, and the day; as long as the
 * schema lets an id be.
 * @param {string} name
 * @param {string} on YYYY-MM-DD */
export function idOf(name, on) {
  const mark = `-${dayOf(on).toLowerCase().replace(" ", "-")}`, own = plain(name) || "practice", room = ID_MOST - mark.length;
  return `${own.length <= room ? own : own.slice(0, own.lastIndexOf("-", room))}${mark}`;
}

/** A day in short, such as 27 Nov.
 * @param {string} on YYYY-MM-DD */
function dayOf(on) {
  const [, month, day] = on.split("-").map(Number);
  return `${day} ${MONTHS[month - 1]}`;
}

/** The title of the old one with a mark that it is changed.
 * @param {{title: string}} file
 * @param {string} on YYYY-MM-DD */
export function changedTitle({ title }, on) {
  const mark = `, changed ${dayOf(on)}`, room = TITLE_MOST - mark.length, all = [...title];
  return `${all.length <= room ? title : `${all.slice(0, room - 1).join("").replace(/[\s,:.]+\S*$/, "")}…`}${mark}`;
}

/** For whom, where and when.
 * @param {Data} data
 * @param {{request: {pool: string, groups?: string[]}, start: string}} asked */
export function whose({ squad, pools }, { request, start }) {
  const groups = squad.groups.filter(([id]) => request.groups?.includes(id)).map(([, title]) => title);
  return [groups.length ? groups.join(" and ") : squad.title, pools.find(([id]) => id === request.pool)?.[1], start && `from ${start}`].filter(Boolean).join(" · ");
}
