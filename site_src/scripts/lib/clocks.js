// The clocks of a set. Its page carries the one of the lane group and pool that it is written for; those of every other stand on a
// page beside it, which is fetched when one of them is chosen. A page opened from a folder may fetch nothing: there a link leads on.

import { all, make, one, root } from "./dom.js";
import { apply, chosen, groupOf, holdsChosen, poolOf } from "./preferences.js";

const FIGURES_ON_CARD = 3;

/** What shows clocks on this page: a set's own, or its deck card. */
export const boxes = () => all("[data-clocks]");

/** @type {Map<string, Promise<Document>>} */
const pages = new Map();

/** The page with every clock of a set; fetched once.
 * @param {string} address from the site's root */
function clocksPage(address) {
  const known = pages.get(address);
  if (known) {
    return known;
  }
  const asked = fetchPage(new URL(address, root));
  pages.set(address, asked);
  asked.catch(() => pages.delete(address)); // asked for again at the next choice
  return asked;
}

/** @param {URL} address */
async function fetchPage(address) {
  const response = await fetch(address);
  if (!response.ok) {
    throw new Error(`${address.pathname}: ${response.status}`);
  }
  return new DOMParser().parseFromString(await response.text(), "text/html");
}

/** Bring the chosen clock into every box that lacks it, and show it.
 * @param {HTMLElement[]} wanted */
export async function bring(wanted) {
  await Promise.all(wanted.filter((box) => !holdsChosen(box)).map(fill));
  apply();
  const ownPool = document.querySelector("[data-chooser]")?.getAttribute("data-own-pool");
  if (chosen("pool") !== ownPool) { // the whiteboard tells the times of its own pool: those of another are wanted at once
    unfold(wanted, true);
  }
}

/**
 * @param {HTMLElement[]} among
 * @param {boolean} open
 */
function unfold(among, open) {
  for (const fold of /** @type {HTMLDetailsElement[]} */ (among.flatMap((box) => all("details.fold", box)))) {
    fold.open = open;
  }
}

/** @param {HTMLElement} box */
async function fill(box) {
  const address = box.dataset.clocks ?? "";
  if (location.protocol === "file:") {
    tell(box, "The clock of your lane group and pool stands on ", make("a", { href: placeOn(address) }, "a page of its own"), ".");
    return;
  }
  try {
    const clocks = one("article.clocks", await clocksPage(address));
    const found = box.matches("article") ? [...clocks.children] : [cardClock(clocks, groupOf(box), poolOf(box))];
    box.replaceChildren(...found.map((part) => document.importNode(part, true)));
    unfold([box], false); // on a page of their own they stand open
  } catch {
    tell(box, "The clock of your lane group and pool could not be fetched; this is another.");
  }
}

/** The place of the chosen clock on the page with all of them.
 * @param {string} address */
export const placeOn = (address) => new URL(`${address}#${chosen("pool")}-${chosen("group")}`, root).href;

/**
 * @param {HTMLElement} box
 * @param {...(Node | string)} words
 */
function tell(box, ...words) {
  const told = box.querySelector("[data-clocks-told]") ?? make("p", { class: "missing", role: "status", "data-clocks-told": "" });
  told.replaceChildren(...words);
  box.prepend(told);
}

/** The chosen clock as it stands on a deck card: first figures, then the table, without its workings.
 * @param {Element} clocks
 * @param {string} group
 * @param {string} pool */
function cardClock(clocks, group, pool) {
  const section = one(`[data-pool="${pool}"] [data-group="${group}"]`, clocks);
  const figures = all("dl.figures > div", section).slice(0, FIGURES_ON_CARD);
  const words = figures.map((figure) => `${plain(one("dt", figure)).toLowerCase()} ${plain(one("dd", figure))}`).join(", ");
  const title = make("strong", {}, `${plain(one("h3", section))}, ${pool.replace(/^\d+/, "$& ")} pool:`);
  const table = /** @type {HTMLElement} */ (one("table.lanes", section).cloneNode(true));
  table.className = "card-table";
  for (const cell of all("td", table)) {
    cell.textContent = plain(cell);
  }
  const clock = make("div", { "data-group": group }, make("p", { class: "card-clock" }, title, ` ${words}. `, make("span", {}, plain(one(".paces", section)))), table);
  return make("div", { "data-pool": pool }, clock);
}

/** What an element says without its working and its remarks.
 * @param {Element} element */
const plain = (element) => (element.querySelector("summary") ?? element.firstChild)?.textContent?.trim() ?? "";
