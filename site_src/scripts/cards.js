// The cards page: what has been gathered, read from each entry's own page, laid out for the chosen paper.

import { layCards, paperSize } from "./cards/layout.js";
import { boxes, bring } from "./lib/clocks.js";
import { make, root } from "./lib/dom.js";
import * as myCards from "./lib/my-cards.js";
import * as preferences from "./lib/preferences.js";
import { read, write } from "./lib/storage.js";

const form = document.querySelector("[data-cards-form]");
const sheets = document.querySelector("[data-paper]");
const told = form.querySelector("[data-cards-told]");
const list = form.querySelector("[data-cards-list]");
const paper = new CSSStyleSheet();
let layout = read("layout", "a6");
let sources = [];

/** The card at the end of an entry's page, with its drawing put in where it is pointed at. Raises where the page has none. */
async function sourceOf({ href }) {
  const response = await fetch(new URL(href, root));
  const page = new DOMParser().parseFromString(await response.text(), "text/html");
  const card = document.importNode(page.querySelector(".deck-card"), true);
  for (const use of card.querySelectorAll("use")) {
    const drawing = document.importNode(page.querySelector(use.getAttribute("href")), true);
    drawing.removeAttribute("id");
    use.parentElement.replaceWith(drawing);
  }
  return card;
}

/** What to print: the one entry that the address names, else all that has been gathered. */
function wanted() {
  const only = new URLSearchParams(location.hash.slice(1)).get("only");
  return only && /^[a-z]+\/[a-z0-9-]+\.html$/.test(only) ? [{ href: only, title: "this card" }] : myCards.all();
}

async function gather() {
  const missing = [];
  const found = await Promise.all(wanted().map((card) => sourceOf(card).catch(() => missing.push(card) && null)));
  sources = found.filter(Boolean);
  await lay(missing);
}

async function lay(missing = []) {
  paper.replaceSync(`@page { size: ${paperSize(layout)}; margin: 0; }`);
  sources.forEach((source) => sheets.append(source)); // where choices reach them
  await bring(boxes().filter((box) => sheets.contains(box)));
  sources.forEach((source) => source.querySelectorAll("[hidden]").forEach((part) => part.remove()));
  const { cards, sheets: number } = layCards(sources, layout, sheets);
  told.textContent = cards
    ? `${cards} ${cards === 1 ? "card" : "cards"} on ${number} ${number === 1 ? "sheet" : "sheets"}.`
    : "No cards yet: open a drill or a set, and press “Add to my cards”.";
  if (missing.length) {
    told.textContent += ` Not to be read here: ${missing.map((card) => card.title).join(", ")}. Open and print the page itself.`;
  }
  form.querySelector("[data-cards-print]").disabled = !cards;
}

function showList() {
  list.replaceChildren(...myCards.all().map((card) => {
    const off = make("button", { type: "button", class: "tool", "aria-label": `Take ${card.title} off` }, "Take off");
    off.addEventListener("click", () => {
      myCards.remove(card.href);
      start();
      form.querySelector("[data-cards-clear]").focus();
    });
    return make("li", {}, make("a", { href: new URL(card.href, root).href }, card.title), " ", off);
  }));
}

function start() {
  showList();
  gather();
}

document.adoptedStyleSheets = [...document.adoptedStyleSheets, paper];
document.querySelector("[data-cards-plain]").hidden = true;
form.hidden = false;
form.querySelectorAll("[name=layout]").forEach((input) => { input.checked = input.value === layout; });
form.addEventListener("submit", (event) => event.preventDefault());
form.addEventListener("change", ({ target }) => {
  if (target.name === "layout") {
    layout = target.value;
    write("layout", layout);
    lay();
  }
});
form.querySelector("[data-cards-print]").addEventListener("click", () => window.print());
form.querySelector("[data-cards-clear]").addEventListener("click", () => {
  myCards.clear();
  history.replaceState(null, "", "#");
  start();
});
window.addEventListener("hashchange", start);
preferences.onChange(() => sources.length && gather());
start();
