// The page of a practice: during its slot the part that comes next is open; on a wide screen every lane group has its column; and
// its run sheets are laid onto paper.

import { all, one } from "./lib/dom.js";
import { choose } from "./lib/preferences.js";
import { layBeforePrint } from "./practice/paper.js";

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

if (matchMedia("(min-width: 60em)").matches) {
  choose("group", "", false);
}
openNext();
layBeforePrint();
one("[data-print-sheets]").addEventListener("click", () => window.print());
