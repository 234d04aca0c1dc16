// "Add to my cards" on the page of an entry, and the count of cards gathered. The cards page lays them out.
"use strict";

(function (deck) {
  const SUBJECT = "cards";

  function gathered() {
    return deck.read(SUBJECT, []).filter((card) => card && typeof card.href === "string" && typeof card.title === "string");
  }

  deck.cards = {
    all: gathered,
    has: (href) => gathered().some((card) => card.href === href),
    add: (card) => deck.write(SUBJECT, [...gathered().filter((other) => other.href !== card.href), card]),
    remove: (href) => deck.write(SUBJECT, gathered().filter((card) => card.href !== href)),
    clear: () => deck.write(SUBJECT, []),
  };

  /** This page as a card: its address from the site's root, and its title. */
  function ownCard() {
    return { href: location.pathname.slice(deck.root.pathname.length), title: document.querySelector("h1").firstChild.textContent.trim() };
  }

  function showState(button, count, own) {
    const taken = deck.cards.has(own.href);
    button.textContent = taken ? "Take off my cards" : "Add to my cards";
    const number = gathered().length;
    count.hidden = !number;
    count.textContent = `My cards (${number})`;
  }

  function start(tools) {
    const own = ownCard();
    const button = deck.make("button", { type: "button", class: "tool" });
    const print = deck.make("a", { class: "tool", href: new URL(`cards.html#only=${own.href}`, deck.root).href }, "Print card");
    const count = deck.make("a", { class: "tool", href: new URL("cards.html", deck.root).href });
    button.addEventListener("click", () => {
      if (deck.cards.has(own.href)) {
        deck.cards.remove(own.href);
      } else {
        deck.cards.add(own);
      }
      showState(button, count, own);
    });
    showState(button, count, own);
    tools.append(button, print, count);
  }

  /** The place for buttons: where the page has set one aside, else below its first line. */
  function place() {
    const tools = document.querySelector("[data-tools]") ?? deck.make("div", { class: "tools" });
    if (!tools.isConnected) {
      (document.querySelector("article .lead") ?? document.querySelector("article h1")).after(tools);
    }
    return tools;
  }

  if (document.querySelector("article .deck-card")) {
    start(place());
  }
})(window.deck);
