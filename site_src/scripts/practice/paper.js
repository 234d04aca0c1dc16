// The run sheets on paper: each lane group's parts laid onto pages, none cut in two, "2 of 2" beside the group's name, and what is
// left of the last page ruled to write on. Without this script the browser breaks the tables, and their heads come again.

import { all, make, one } from "../lib/dom.js";
import { tellPrinted } from "../lib/printed.js";
import { read } from "../lib/storage.js";

/** @typedef {import("../cards/layout.js").Layout} Layout */

/** The paper as it was chosen for cards; a page less its margins, a little short so that no rounding makes another page. */
const PAPERS = /** @type {const} */ ({
  a4: { size: "210mm 297mm", width: "192mm", height: "280mm" },
  letter: { size: "8.5in 11in", width: "198mm", height: "262mm" },
});
const MARGIN = "8mm 9mm";

/** @param {HTMLElement} page */
const isFull = (page) => page.scrollHeight > page.clientHeight + 1;

/**
 * An empty page with the head and foot of a sheet.
 * @param {HTMLTableElement} sheet
 * @param {Element} place
 */
function emptyPage(sheet, place) {
  const table = make("table", { class: sheet.className });
  for (const always of all("colgroup, thead, tfoot", sheet)) {
    table.append(always.cloneNode(true));
  }
  const page = make("div", { class: "paper-page" }, table);
  place.append(page);
  return { page, table };
}

/**
 * Rule what is left of a page.
 * @param {HTMLElement} page
 */
function ruleRest(page) {
  const last = all(".paper-room", page).at(-1);
  for (let line = all(".paper-rule", page).at(-1); last && line && !isFull(page); ) {
    const next = /** @type {HTMLElement} */ (line.cloneNode(true));
    one("td", next).textContent = "";
    last.append(next);
    if (isFull(page)) {
      next.remove();
      break;
    }
    line = next;
  }
}

/**
 * Lay one sheet onto one page, its lines closer where they have to be, else onto as many pages as it takes.
 * @param {HTMLTableElement} sheet
 * @param {Element} place
 */
function lay(sheet, place) {
  let pages = pagesOf(sheet, place);
  if (pages.length > 1) {
    const roomy = pages;
    sheet.classList.add("is-close");
    pages = pagesOf(sheet, place);
    sheet.classList.remove("is-close");
    const [kept, left] = pages.length === 1 ? [pages, roomy] : [roomy, pages];
    left.forEach((page) => page.remove());
    pages = kept;
  }
  ruleRest(pages[pages.length - 1]);
  pages.forEach((own, number) => {
    one(".paper-of", own).textContent = pages.length > 1 ? `${number + 1} of ${pages.length}` : "";
  });
}

/**
 * The pages that a sheet takes.
 * @param {HTMLTableElement} sheet
 * @param {Element} place
 */
function pagesOf(sheet, place) {
  let { page, table } = emptyPage(sheet, place);
  const pages = [page];
  for (const part of sheet.tBodies) {
    table.append(part.cloneNode(true));
    if (isFull(page) && table.tBodies.length > 1) {
      table.tBodies[table.tBodies.length - 1].remove();
      if (part.matches(".paper-room")) {
        break; // no page for a place to write alone: its margin is one
      }
      ({ page, table } = emptyPage(sheet, place));
      pages.push(page);
      table.append(part.cloneNode(true));
    }
  }
  return pages;
}

const rules = new CSSStyleSheet();

/** The lane group whose sheet alone is asked for, until it is printed. */
let only = "";

/** Print the sheet of one lane group, with the dangers in full; of "" those of all.
 * @param {string} group */
export function printOnly(group) {
  only = group;
  window.print();
}

/** Lay the sheets of this page onto paper. */
function layAll() {
  const paper = PAPERS[read("layout", /** @type {Layout} */ ("a6")) === "letter" ? "letter" : "a4"];
  rules.replaceSync(`@page { size: ${paper.size}; margin: ${MARGIN}; } .paper-page { width: ${paper.width}; height: ${paper.height}; }`);
  const laid = make("div", { class: "run-laid" });
  const sheets = one(".run-papers");
  document.querySelector(".run-laid")?.remove();
  sheets.after(laid);
  for (const sheet of /** @type {HTMLTableElement[]} */ (all(".run-paper", sheets))) {
    if (!only || !sheet.dataset.sheet || sheet.dataset.sheet === only) {
      lay(sheet, laid);
    }
  }
}

/** Lay the sheets whenever the page is about to be printed. */
export function layBeforePrint() {
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];
  window.addEventListener("beforeprint", () => {
    tellPrinted(document);
    layAll();
  });
  window.addEventListener("afterprint", () => {
    only = "";
  });
}
