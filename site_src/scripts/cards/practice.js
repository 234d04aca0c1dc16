// The cards of a practice, from the run sheets that its page holds for paper: that of the lane group that is chosen; one for each of its
// groups where none is, or another.

import { all, make, one } from "../lib/dom.js";

/** A row of a run sheet as a line of a card, its send-off in a column of its own.
 * @param {HTMLTableRowElement} row */
function line(row) {
  const [what, go] = row.cells;
  const depth = [...what.classList].find((name) => name.startsWith("depth-")) ?? "";
  const said = make("p", {}, ...[...what.childNodes].map((piece) => piece.cloneNode(true)));
  const goes = make("p", { class: "go" }, ...[...go.childNodes].flatMap((piece) => [" ", piece.cloneNode(true)]));
  return make("div", { class: `card-board ${depth}` }, said, goes);
}

/** A part: its head and its lines.
 * @param {HTMLTableSectionElement} body */
function part(body) {
  const [head, ...lines] = [...body.rows];
  const title = make("p", {}, ...[...one("th", head).childNodes].map((own) => own.cloneNode(true)));
  return make("div", { class: "card-part" }, title, ...lines.map(line));
}

/** The card of one run sheet, in the frame of the practice's own.
 * @param {Element} card
 * @param {HTMLTableElement} sheet */
function ofSheet(card, sheet) {
  const own = /** @type {Element} */ (card.cloneNode(true));
  const parts = [...sheet.tBodies].filter((body) => body.querySelector("th") && !body.matches(".paper-brief"));
  const [first, ...others] = all(".card-of-all", own);
  one(".card-names", own).append(make("p", { class: "card-whose" }, one(".paper-who", sheet).textContent?.trim() ?? ""));
  first.replaceWith(...parts.map(part));
  others.forEach((other) => other.remove());
  return own;
}

/** The cards of a practice; the card as it is where the page is none of a practice.
 * @param {Document} page
 * @param {Element} card
 * @param {string} group that is chosen, or "" */
export function ofGroups(page, card, group) {
  const sheets = /** @type {HTMLTableElement[]} */ (all(".run-papers > table[data-sheet]", page));
  const own = sheets.filter(({ dataset }) => dataset.sheet === group);
  const wanted = own.length ? own : sheets;
  return wanted.length && card.querySelector(".card-of-all") ? wanted.map((sheet) => ofSheet(card, sheet)) : [card];
}
