// The way from the box to the hits and along them by the arrow keys.

import { all } from "../lib/dom.js";

const STEPS = new Map([["ArrowDown", 1], ["ArrowUp", -1]]);

/** The first hit has the cursor; whether there is one.
 * @param {Element} page
 * @param {FocusOptions} [how] */
export function toFirst(page, how) {
  const [first] = all(".hits a", page);
  first?.focus(how);
  return first !== undefined;
}

/**
 * Down from the box to the first hit, up and down along the hits, and up from the first to the box.
 * @param {HTMLInputElement} box
 * @param {HTMLElement} page
 */
export function walk(box, page) {
  box.addEventListener("keydown", (event) => {
    if (event.key === "Enter") { // a form of several fields and no button sends nothing by itself
      event.preventDefault();
      box.form?.requestSubmit();
    } else if (event.key === "ArrowDown" && toFirst(page)) {
      event.preventDefault();
    }
  });
  page.addEventListener("keydown", (event) => {
    const step = STEPS.get(event.key);
    const hits = all(".hits a", page);
    const at = hits.indexOf(/** @type {HTMLElement} */ (event.target));
    if (step && at >= 0 && !event.altKey && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      (at + step < 0 ? box : hits[at + step])?.focus();
    }
  });
}
