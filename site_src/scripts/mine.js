// "Add to my cards" on the page of an entry, and the count of cards gathered. The cards page lays them out.

import { make, one, root } from "./lib/dom.js";
import { note } from "./lib/last-pages.js";
import * as myCards from "./lib/my-cards.js";
import { tellPrinted } from "./lib/printed.js";

/** This page as a card: its address from the site's root, and its title.
 * @returns {myCards.Card} */
function ownCard() {
  const title = one("h1").firstChild?.textContent ?? "";
  return { href: location.pathname.slice(root.pathname.length), title: title.trim() };
}

/**
 * @param {HTMLButtonElement} button
 * @param {HTMLAnchorElement} count
 * @param {myCards.Card} own
 */
function showState(button, count, own) {
  button.textContent = myCards.has(own.href) ? "Take off my cards" : "Add to my cards";
  const number = myCards.all().length;
  count.hidden = !number;
  count.textContent = `My cards (${number})`;
}

/** @param {Element} tools */
function start(tools) {
  const own = ownCard();
  const button = make("button", { type: "button", class: "tool" });
  const print = make("a", { class: "tool", href: new URL(`cards.html#only=${own.href}`, root).href }, "Print card");
  const count = make("a", { class: "tool", href: new URL("cards.html", root).href });
  button.addEventListener("click", () => {
    if (myCards.has(own.href)) {
      myCards.remove(own.href);
    } else {
      myCards.add(own);
    }
    showState(button, count, own);
  });
  showState(button, count, own);
  tools.append(button, print, count);
}

/** The place for buttons: where the page has set one aside, else below its first line. */
function place() {
  const tools = document.querySelector("[data-tools]") ?? make("div", { class: "tools" });
  if (!tools.isConnected) {
    (document.querySelector("article .lead") ?? one("article h1")).after(tools);
  }
  return tools;
}

if (document.querySelector("article .deck-card")) {
  const { href, title } = ownCard();
  note({ href, title, kind: document.querySelector(".band-kind")?.textContent ?? "" });
  start(place());
  window.addEventListener("beforeprint", () => tellPrinted(document));
}
