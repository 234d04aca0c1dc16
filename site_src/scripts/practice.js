// The page of a practice: during its slot the part that comes next is open; on a wide screen every lane group has its column; and
// its run sheets are laid onto paper.

import { all, one } from "./lib/dom.js";
import { choose, chosen, onChange } from "./lib/preferences.js";
import { layBeforePrint, printOnly } from "./practice/paper.js";

const EARLY_S = 30 * 60; // who looks half an hour before it begins means this evening's

/** Open the part that is on, or comes next; the first where it is not the time of this practice. */
function openNext() {
  const sheet = one(".sheet");
  const rows = all("[data-starts]", sheet).filter((row) => !row.hidden);
  const now = new Date();
  const sinceStart = now.getHours() * 3600 + now.getMinutes() * 60 + now.getSeconds() - Number(sheet.dataset.slotStart);
  if (!rows.length || sinceStart < -EARLY_S || sinceStart > Number(sheet.dataset.slotLength)) {
    return;
  }
  const begun = rows.filter((row) => Number(row.dataset.starts) <= sinceStart);
  const wanted = begun.at(-1) ?? rows[0];
  for (const row of rows) {
    /** @type {HTMLDetailsElement} */ (one("details", row)).open = row === wanted;
  }
}

/** Beside all run sheets, the one of the lane group that the page is shown for. */
function offerOwn() {
  const group = chosen("group");
  const option = /** @type {HTMLOptionElement[]} */ (all('[data-choose="group"] option')).find(({ value }) => value && value === group);
  const button = one("[data-print-own]");
  button.hidden = !option;
  button.textContent = option ? `Print ${option.text} alone` : "";
}

if (matchMedia("(min-width: 60em)").matches) {
  choose("group", "", false);
}
openNext();
layBeforePrint();
one("[data-print-sheets]").addEventListener("click", () => printOnly(""));
one("[data-print-own]").addEventListener("click", () => printOnly(chosen("group")));
onChange(offerOwn);
offerOwn();
