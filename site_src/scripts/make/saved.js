// A practice that was opened and changed, as an entry: what was not changed stands as its file has it, word for word. Pure.

import { partTexts } from "../compose/entry.js";
import { toAddress } from "./asked.js";
import { partOf } from "./opened.js";

/** @import {Asked} from "./asked.js" */
/** @import {Data, File, Practice} from "./types.js" */

const TITLE_MOST = 60; // letters, as the schema lets a title be
const NOT_OURS = ["also_called", "asked_as", "review"]; // the other names that the old one is found by, and who read it when
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** The title of the old one with a mark that it is changed.
 * @param {File} file
 * @param {string} on YYYY-MM-DD */
export function changedTitle({ title }, on) {
  const [, month, day] = on.split("-").map(Number), mark = `, changed ${day} ${MONTHS[month - 1]}`, room = TITLE_MOST - mark.length, all = [...title];
  return `${all.length <= room ? title : `${all.slice(0, room - 1).join("").replace(/[\s,:.]+\S*$/, "")}…`}${mark}`;
}

/** The words of an address that opens what it was made from.
 * @param {File} file
 * @param {Asked} asked */
const madeFrom = ({ id }, asked) => `${toAddress({ ...asked, on: "", practice: null, code: "", number: 1, request: { ...asked.request, done: [], taught: {} } })}&from=${id}`;

/** Whether something is in it that was not there when somebody accepted what check says of it.
 * @param {File} file
 * @param {Data} data
 * @param {Practice} practice */
const hasNew = (file, data, practice) => practice.parts.some((own) => partOf(data, file, own) < 0);

/** The keys of the old one that are not in the new file.
 * @param {File} file
 * @param {Data} data
 * @param {Practice} practice */
const left = (file, data, practice) => file.head.map(([key]) => key).filter((key) => NOT_OURS.includes(key) || (key === "accepts" && hasNew(file, data, practice)));

/**
 * The entry as text. Throws BadWish for a practice that cannot be.
 * @param {File} file the practice that was opened
 * @param {Data} data with its parts
 * @param {Asked} asked
 * @param {Practice} practice
 * @param {number} adults that it takes now
 * @param {string} title
 */
export function changedText(file, data, asked, practice, adults, title) {
  const composed = partTexts(data, asked.request, practice);
  const parts = practice.parts.map((own, place) => file.parts[partOf(data, file, own)]?.text ?? composed[place]).join("");
  const gone = left(file, data, practice);
  /** @type {Record<string, string>} */
  const ours = {
    title: `title: ${JSON.stringify(title)}\n`, composed: "", parts: `composed: ${JSON.stringify(madeFrom(file, asked))}\nparts:\n${parts}`,
    ...(adults > file.adults ? { adults: `adults: ${adults}\n` } : {}),
  };
  const known = file.head.some(([key]) => key === "adults") || adults <= file.adults ? file.head : file.head.flatMap(([key, text]) => (key === "parts" ? [["adults", ""], [key, text]] : [[key, text]]));
  return known.filter(([key]) => !gone.includes(key)).map(([key, text]) => ours[key] ?? text).join("");
}

/** What of the old one the file does not have, and what of it has to be read again.
 * @param {File} file
 * @param {Data} data
 * @param {Practice} practice */
export function notKept(file, data, practice) {
  /** @type {Record<string, string>} */
  const words = { also_called: "its other names", asked_as: "what it is found by", review: "who reviewed it", accepts: "what it accepts of check" };
  const gone = left(file, data, practice).map((key) => words[key]), parts = practice.parts.map((own) => partOf(data, file, own));
  const old = file.parts.flatMap((_, part) => (parts.includes(part) ? [] : [file.pieces[part].title]));
  const again = old.length ? ` Its summary, focus and dangers are those of the old one: read them again. Not as it was: ${old.join(", ")}.` : "";
  return `Its parts that were not changed stand in it word for word, notes and helpers with them.${gone.length ? ` Not in it: ${gone.join(", ")}.` : ""}${again}`;
}
