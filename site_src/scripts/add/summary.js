// What is left to do, as a list whose links lead to the fields: mistakes in full, then what is only still to be filled in.

import { make } from "../lib/dom.js";
import { mendLine, slotAround, slotsWithin } from "./slots.js";

const many = (count, one, more) => `${count} ${count === 1 ? one : more}`;

/** The name of a place among others of its name: "Safety 1: Hazard", "Effort: From". */
function nameOf(slot) {
  let around = slotAround(slot);
  while (around?.place.bare) {
    around = slotAround(around); // a box without a name of its own
  }
  return slot.place.of || !around ? slot.told : `${around.told}: ${slot.told}`;
}

function linkTo(slot, text) {
  const link = make("a", { href: `#${slot.target.id}` }, text);
  link.addEventListener("click", (event) => {
    event.preventDefault();
    slot.focus();
    slot.show();
  });
  return link;
}

const isBlank = ({ code }) => code === "missing-key" || code === "no-name";

/** Put the findings beside their fields and into the list below `page`. Returns how many there are. */
export function summarise(page, form, findings) {
  const all = slotsWithin(form);
  all.forEach((slot) => { slot.findings = []; });
  findings.forEach(({ slot, ...finding }) => slot.findings.push(finding));
  all.forEach((slot) => slot.show());
  const wrong = findings.filter((finding) => !isBlank(finding));
  const blank = findings.filter(isBlank);
  const told = wrong.map(({ slot, message, mend }) => make("li", {}, linkTo(slot, `${nameOf(slot)}: ${message}`), ...mendLine(mend)));
  page.querySelector("[data-mistakes]").replaceChildren(...told);
  page.querySelector("[data-blanks-head]").hidden = !blank.length || !wrong.length;
  page.querySelector("[data-blanks]").replaceChildren(...blank.map(({ slot }) => make("li", {}, linkTo(slot, nameOf(slot)))));
  const count = [wrong.length ? many(wrong.length, "thing to mend", "things to mend") : "", blank.length ? `${blank.length} still to fill in` : ""];
  const line = count.filter(Boolean).join(", ");
  return { number: findings.length, line: line ? `${line}.` : "Everything that can be checked here is in order." };
}

/** Show every message, those of fields too that nobody has been to. */
export function showAll(form) {
  for (const slot of slotsWithin(form)) {
    slot.touched = true;
    slot.show();
  }
}
