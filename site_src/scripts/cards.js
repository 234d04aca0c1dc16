// The cards page: what has been gathered, read from each entry's own page, laid out for the chosen paper.

import { layCards, paperSize } from "./cards/layout.js";
import { ofGroups } from "./cards/practice.js";
import { forOneGroup, timed } from "./cards/set.js";
import { boxes, bring } from "./lib/clocks.js";
import { all, make, one, root } from "./lib/dom.js";
import * as myCards from "./lib/my-cards.js";
import * as preferences from "./lib/preferences.js";
import { tellPrinted } from "./lib/printed.js";
import { read, write } from "./lib/storage.js";

/** @typedef {import("./cards/layout.js").Layout} Layout */

const form = /** @type {HTMLFormElement} */ (one("[data-cards-form]"));
const sheets = one("[data-paper]");
const told = one("[data-cards-told]", form);
const list = one("[data-cards-list]", form);
const paper = new CSSStyleSheet();
let layout = read("layout", /** @type {Layout} */ ("a6"));
/** @type {Element[]} */
let sources = [];

/**
 * The card at the end of an entry's page, with its drawing put in where it is pointed at; of a practice one for each lane group.
 * Raises where the page has none.
 * @param {myCards.Card} card
 */
async function sourcesOf({ href }) {
  const response = await fetch(new URL(href, root));
  const page = new DOMParser().parseFromString(await response.text(), "text/html");
  const card = document.importNode(one(".deck-card", page), true);
  for (const use of all("use", card)) {
    const drawing = document.importNode(one(use.getAttribute("href") ?? "", page), true);
    drawing.removeAttribute("id");
    use.parentElement?.replaceWith(drawing);
  }
  timed(page, card);
  return ofGroups(page, card, preferences.chosen("group"));
}

/** What to print: the one entry that the address names, else all that has been gathered.
 * @returns {myCards.Card[]} */
function wanted() {
  const only = new URLSearchParams(location.hash.slice(1)).get("only");
  return only && /^[a-z]+\/[a-z0-9-]+\.html$/.test(only) ? [{ href: only, title: "this card" }] : myCards.all();
}

async function gather() {
  /** @type {myCards.Card[]} */
  const missing = [];
  const found = await Promise.all(wanted().map((card) => sourcesOf(card).catch(() => {
    missing.push(card);
    return [];
  })));
  sources = found.flat();
  await lay(missing);
}

/** @param {myCards.Card[]} missing */
async function lay(missing = []) {
  paper.replaceSync(`@page { size: ${paperSize(layout)}; margin: 0; }`);
  sources.forEach((source) => sheets.append(source)); // where choices reach them
  await bring(boxes().filter((box) => sheets.contains(box)));
  sources.forEach(forOneGroup);
  sources.forEach((source) => all("[hidden]", source).forEach((part) => part.remove()));
  sources.forEach(tellPrinted);
  const { cards, sheets: number } = layCards(sources, layout, sheets);
  told.textContent = cards
    ? `${cards} ${cards === 1 ? "card" : "cards"} on ${number} ${number === 1 ? "sheet" : "sheets"}.${forWhom()}`
    : "No cards yet: open a drill or a set, and press “Add to my cards”.";
  if (missing.length) {
    const titles = missing.map((card) => card.title).join(", ");
    told.textContent += ` Not to be read here: ${titles}. Open and print the page itself.`;
  }
  /** @type {HTMLButtonElement} */ (one("[data-cards-print]", form)).disabled = !cards;
}

/** Whose times and run sheets are printed, where there are any. */
function forWhom() {
  const [group, title] = [preferences.chosen("group"), select.selectedOptions[0]?.text];
  if (!sources.some((source) => source.querySelector(".card-whose, .card-clock"))) {
    return "";
  }
  const isOther = group && sources.some((source) => source.querySelector(".card-whose")) && !sources.some((source) => one(".card-names", source).textContent?.includes(title));
  return group ? ` For ${title}${isOther ? "; a practice without them comes for each of its groups" : ""}.` : " A practice for each of its groups, a set for the one that it is written for.";
}

function showList() {
  list.replaceChildren(...myCards.all().map((card) => {
    const off = make("button", { type: "button", class: "tool", "aria-label": `Take ${card.title} off` }, "Take off");
    off.addEventListener("click", () => {
      myCards.remove(card.href);
      start();
      one("[data-cards-clear]", form).focus();
    });
    return make("li", {}, make("a", { href: new URL(card.href, root).href }, card.title), " ", off);
  }));
}

function start() {
  showList();
  gather();
}

/** Every lane group can be printed, too: at first, where none is mine. */
const select = /** @type {HTMLSelectElement} */ (one('[data-choose="group"]'));
select.prepend(make("option", { value: "" }, "Each that it is for"));
if (!document.documentElement.dataset.myGroups) {
  preferences.choose("group", "", false);
}
select.value = preferences.chosen("group");
/** Each set in the pool that it is written for, too: at first, where none was chosen on this device. */
const pools = /** @type {HTMLSelectElement | null} */ (document.querySelector('[data-choose="pool"]'));
pools?.prepend(make("option", { value: "" }, "Each that it is for"));
if (pools && !preferences.isKept("pool")) {
  preferences.choose("pool", "", false);
  pools.value = "";
}
document.adoptedStyleSheets = [...document.adoptedStyleSheets, paper];
one("[data-cards-plain]").hidden = true;
form.hidden = false;
for (const input of /** @type {HTMLInputElement[]} */ (all("[name=layout]", form))) {
  input.checked = input.value === layout;
}
form.addEventListener("submit", (event) => event.preventDefault());
form.addEventListener("change", ({ target }) => {
  if (target instanceof HTMLInputElement && target.name === "layout") {
    layout = /** @type {Layout} */ (target.value);
    write("layout", layout);
    lay();
  }
});
one("[data-cards-print]", form).addEventListener("click", () => window.print());
one("[data-cards-clear]", form).addEventListener("click", () => {
  myCards.clear();
  history.replaceState(null, "", "#");
  start();
});
window.addEventListener("hashchange", start);
preferences.onChange(() => sources.length && gather());
start();
