// What is left to do, as a list whose links lead to the fields: mistakes in full, then what is only still to be filled in.

import { make, one } from "../lib/dom.js";
import { hintLine, slotAround, slotsWithin } from "./slots.js";

/**
 * @typedef {import("./slots.js").Slot} Slot
 * @typedef {{code: string, message: string, hint: string, slot: Slot}} Placed a finding at its slot
 */

/**
 * @param {number} count
 * @param {string} single
 * @param {string} more
 */
const many = (count, single, more) => `${count} ${count === 1 ? single : more}`;

/** The name of a place among others of its name: "Safety 1: Hazard", "Effort: From".
 * @param {Slot} slot */
function nameOf(slot) {
  let around = slotAround(slot);
  while (around?.place.bare) {
    around = slotAround(around); // a box without a name of its own
  }
  return slot.place.of || !around ? slot.told : `${around.told}: ${slot.told}`;
}

/**
 * @param {Slot} slot
 * @param {string} text
 */
function linkTo(slot, text) {
  const link = make("a", { href: `#${slot.target.id}` }, text);
  link.addEventListener("click", (event) => {
    event.preventDefault();
    slot.focus();
    slot.show();
  });
  return link;
}

/** @param {Placed} finding */
const isBlank = ({ code }) => code === "missing-key" || code === "no-name";

/**
 * Put the findings beside their fields and into the list below `page`. Returns how many there are, and that in words.
 * @param {Element} page
 * @param {Element} form
 * @param {Placed[]} findings
 */
export function summarise(page, form, findings) {
  const slots = slotsWithin(form);
  slots.forEach((slot) => { slot.findings = []; });
  findings.forEach(({ slot, ...finding }) => slot.findings.push(finding));
  slots.forEach((slot) => slot.show());
  const wrong = findings.filter((finding) => !isBlank(finding));
  const blank = findings.filter(isBlank);
  const told = wrong.map(({ slot, code, message, hint }) =>
    make("li", { "data-code": code }, linkTo(slot, `${nameOf(slot)}: ${message}`), ...hintLine(hint)),
  );
  one("[data-mistakes]", page).replaceChildren(...told);
  one("[data-blanks-head]", page).hidden = !blank.length || !wrong.length;
  one("[data-blanks]", page).replaceChildren(...blank.map(({ slot }) => make("li", {}, linkTo(slot, nameOf(slot)))));
  const count = [
    wrong.length ? many(wrong.length, "thing to mend", "things to mend") : "",
    blank.length ? `${blank.length} still to fill in` : "",
  ];
  const line = count.filter(Boolean).join(", ");
  return { number: findings.length, line: line ? `${line}.` : "Everything that can be checked here is in order." };
}

/** Show every message, those of fields too that nobody has been to.
 * @param {Element} form */
export function showAll(form) {
  for (const slot of slotsWithin(form)) {
    slot.touched = true;
    slot.show();
  }
}
