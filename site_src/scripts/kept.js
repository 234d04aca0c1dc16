// What this site keeps on the device: one small JSON text a subject. Nothing of it leaves the device.
"use strict";

window.deck = window.deck || {};

(function (deck) {
  const PREFIX = "deck-almanac-";

  /** What is kept under a subject; `otherwise` where nothing is, or what is there is not ours. */
  deck.read = function (subject, otherwise) {
    try {
      const value = JSON.parse(localStorage.getItem(PREFIX + subject));
      return value !== null && typeof value === typeof otherwise && Array.isArray(value) === Array.isArray(otherwise)
        ? value
        : otherwise;
    } catch {
      return otherwise; // a browser that keeps nothing
    }
  };

  /** Keep a value under a subject; false where the browser keeps nothing, and the value holds on this page only. */
  deck.write = function (subject, value) {
    try {
      localStorage.setItem(PREFIX + subject, JSON.stringify(value));
      return true;
    } catch {
      return false;
    }
  };

  /** The way from this page to the site's root, which the theme writes into every page. */
  deck.root = new URL(
    JSON.parse(document.getElementById("__config").textContent).base.replace(/\/?$/, "/"),
    location.href,
  );

  /** An element with attributes and children; a child that is text stays text. */
  deck.make = function (tag, attributes = {}, ...children) {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) {
      element.setAttribute(name, value);
    }
    element.append(...children);
    return element;
  };

  document.documentElement.classList.add("scripted");
  if (location.protocol === "file:") {
    document.documentElement.classList.add("from-folder"); // no search there: browsers refuse workers and fetches
  }
})(window.deck);
