// A practice that was opened and changed, as an entry: what was not changed stands as its file has it, word for word. Pure.

import { toAddress } from "./asked.js";
import { otherwiseOf } from "./otherwise.js";

/** @import {Data, File, Otherwise, Practice} from "./types.js" */

/** @typedef {{file: File, places: number[], data: Data, chosen: Practice["parts"], composed: string[], from: string, adults: number, title: string}} Changed the practice that was opened, and it as it
 *   stands now. `places`: which part of it each part is, as it stands there, -1 of another, whose lines are `composed`; `from`: the words of an address that
 *   opens what it was made from */

const NOT_OURS = ["also_called", "asked_as", "review"]; // the other names that the old one is found by, and who read it when

/** The keys of the old one that are not in the new file: those that are its own, and what somebody accepted of check before there was anything new in it.
 * @param {Pick<Changed, "file" | "places">} changed */
const left = ({ file, places }) => file.head.map(([key]) => key).filter((key) => NOT_OURS.includes(key) || (key === "accepts" && places.includes(-1)));

/** The lines of a part with another number of rounds or reps; null where that number does not stand on a line of its own, or there is none such.
 * @param {File} file
 * @param {Otherwise | null} own
 * @returns {string | null} */
function soOften(file, own) {
  const lines = own ? file.parts[own.part].text.split("\n") : [];
  return !own ? null : own.of === "set" ? setSoOften(lines, own) : itemsSoOften(lines, own);
}

/** @param {string[]} lines
 * @param {Otherwise} own */
function setSoOften(lines, own) {
  const at = lines.findIndex((line) => /^ {4}set: [\w-]+$/.test(line)), others = lines.filter((line) => !/^ {4}(rounds|reps): \d+$/.test(line));
  return at < 0 || others.indexOf(lines[at]) !== at ? null : [...others.slice(0, at + 1), ...(own.isWritten ? [] : [`    ${own.what}: ${own.number}`]), ...others.slice(at + 1)].join("\n");
}

/** @param {string[]} lines
 * @param {Otherwise} own */
function itemsSoOften(lines, own) {
  const first = lines.findIndex((line) => /^ {4}items:$/.test(line)), items = lines.flatMap((line, k) => (k > first && /^ {6}- /.test(line) ? [k] : []));
  const at = first >= 0 && own.scaled.length === 1 ? items[Number(own.scaled[0])] ?? -1 : -1, isThere = at > 0 && /^ {6}- \{?reps: \d+(,|$)/.test(lines[at]);
  return isThere ? lines.map((line, k) => (k === at ? line.replace(/reps: \d+/, `reps: ${own.number}`) : line)).join("\n") : null;
}

/** The words of an address that opens what it was made from.
 * @param {File} file
 * @param {import("./asked.js").Asked} asked */
export const fromWords = ({ id }, asked) => `${toAddress({ ...asked, on: "", practice: null, code: "", number: 1, request: { ...asked.request, done: [], taught: {} } })}&from=${id}`;

/** The entry as text.
 * @param {Changed} changed */
export function changedText(changed) {
  const { data, file, places, chosen, composed, from, adults, title } = changed, otherwise = otherwiseOf(data, file, chosen, places), gone = left(changed), isMore = adults > file.adults;
  const said = file.head.find(([key]) => key === "parts")?.[1] ?? "";
  /** @type {Record<string, string>} */
  const ours = {
    title: `title: ${JSON.stringify(title)}\n`, composed: "", ...(isMore ? { adults: `adults: ${adults}\n` } : {}),
    parts: `composed: ${JSON.stringify(from)}\n${said}parts:\n${places.map((part, place) => file.parts[part]?.text ?? soOften(file, otherwise[place]) ?? composed[place]).join("")}`,
  };
  const keys = file.head.some(([key]) => key === "adults") || !isMore ? file.head : file.head.flatMap((own) => (own[0] === "parts" ? [["adults", ""], own] : [own]));
  return keys.filter(([key]) => !gone.includes(key)).map(([key, text]) => ours[key] ?? text).join("");
}

/** What of the old one the file does not have, and what of it has to be read again.
 * @param {Pick<Changed, "data" | "file" | "places" | "chosen">} changed */
export function notKept({ data, file, places, chosen }) {
  /** @type {Record<string, string>} */
  const words = { also_called: "its other names", asked_as: "what it is found by", review: "who reviewed it", accepts: "what it accepts of check" };
  const gone = left({ file, places }).map((key) => words[key]), kept = otherwiseOf(data, file, chosen, places).flatMap((own) => (own && soOften(file, own) ? [own.part] : []));
  const titles = (/** @type {(part: number) => boolean} */ isMeant) => file.pieces.flatMap(({ title }, part) => (!places.includes(part) && isMeant(part) ? [title] : [])).join(", ");
  const [old, often] = [titles((part) => !kept.includes(part)), titles((part) => kept.includes(part))];
  const again = old || often ? ` Its summary, focus and dangers are those of the old one: read them again.${often ? ` More or less often, with its notes: ${often}.` : ""}${old ? ` Not as it was: ${old}.` : ""}` : "";
  return `Its parts that were not changed stand in it word for word, notes and helpers with them.${gone.length ? ` Not in it: ${gone.join(", ")}.` : ""}${again}`;
}
