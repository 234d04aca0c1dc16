// The page of a missing address, where nobody has said at which address the site is: a browser finds this script beside that
// address or as far up as a folder of the site can be, and where it was found says where the site begins.

const LATER = ["scripts/kept.js", "scripts/choices.js", "scripts/mine.js", "scripts/offline.js"];
const found = document.currentScript;

/** @param {string} root */
function lead(root) {
  for (const [selector, name] of [["a", "href"], ["form", "action"]]) {
    for (const element of document.querySelectorAll(`${selector}[${name}]:not([href^="#"])`)) {
      element.setAttribute(name, new URL(element.getAttribute(name) ?? "", root).href);
    }
  }
}

if (found instanceof HTMLScriptElement && !document.documentElement.dataset.root) {
  const root = new URL("..", found.src).href;
  document.documentElement.dataset.root = root;
  for (const script of LATER) {
    const own = document.createElement("script");
    own.src = new URL(script, root).href;
    own.defer = true;
    own.async = false; // one after the other
    addEventListener("DOMContentLoaded", () => document.head.append(own));
  }
  addEventListener("DOMContentLoaded", () => lead(root));
}
