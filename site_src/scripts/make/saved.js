// A practice that was opened and changed, as an entry: what was not changed stands as its file has it, word for word. Pure.

/** @import {File} from "./types.js" */

/** @typedef {{file: File, places: number[], composed: string[], from: string, adults: number, title: string}} Changed the practice that was opened, and it as it
 *   stands now. `places`: which part of it each part is, as it stands there, -1 of another, whose lines are `composed`; `from`: the words of an address that
 *   opens what it was made from */

const NOT_OURS = ["also_called", "asked_as", "review"]; // the other names that the old one is found by, and who read it when

/** The keys of the old one that are not in the new file: those that are its own, and what somebody accepted of check before there was anything new in it.
 * @param {Pick<Changed, "file" | "places">} changed */
const left = ({ file, places }) => file.head.map(([key]) => key).filter((key) => NOT_OURS.includes(key) || (key === "accepts" && places.includes(-1)));

/** The entry as text.
 * @param {Changed} changed */
export function changedText(changed) {
  const { file, places, composed, from, adults, title } = changed, gone = left(changed), isMore = adults > file.adults;
  /** @type {Record<string, string>} */
  const ours = {
    title: `title: ${JSON.stringify(title)}\n`, composed: "", ...(isMore ? { adults: `adults: ${adults}\n` } : {}),
    parts: `composed: ${JSON.stringify(from)}\nparts:\n${places.map((part, place) => file.parts[part]?.text ?? composed[place]).join("")}`,
  };
  const keys = file.head.some(([key]) => key === "adults") || !isMore ? file.head : file.head.flatMap((own) => (own[0] === "parts" ? [["adults", ""], own] : [own]));
  return keys.filter(([key]) => !gone.includes(key)).map(([key, text]) => ours[key] ?? text).join("");
}

/** What of the old one the file does not have, and what of it has to be read again.
 * @param {Pick<Changed, "file" | "places">} changed */
export function notKept({ file, places }) {
  /** @type {Record<string, string>} */
  const words = { also_called: "its other names", asked_as: "what it is found by", review: "who reviewed it", accepts: "what it accepts of check" };
  const gone = left({ file, places }).map((key) => words[key]), old = file.parts.flatMap((_, part) => (places.includes(part) ? [] : [file.pieces[part].title]));
  const again = old.length ? ` Its summary, focus and dangers are those of the old one: read them again. Not as it was: ${old.join(", ")}.` : "";
  return `Its parts that were not changed stand in it word for word, notes and helpers with them.${gone.length ? ` Not in it: ${gone.join(", ")}.` : ""}${again}`;
}
