// The card of a set for one lane group: when it goes and how fast stand in the lines, taken from the whiteboard of the set's page, which
// has them for every group in the set's own pool. In another pool they stand in the table of its clock alone.

import { all, one } from "../lib/dom.js";
import { groupOf, holdsChosen, poolOf } from "../lib/preferences.js";

/**
 * Into each line of the card the send-offs and targets of every lane group, and which pool they are of.
 * @param {Document} page
 * @param {Element} card
 */
export function timed(page, card) {
  const pool = card.querySelector("[data-clocks] [data-pool]");
  const [lines, own] = [all(".card-board", card), all(".board > p", page)];
  if (!pool || lines.length !== own.length) {
    return;
  }
  lines.forEach((line, place) => {
    all(":scope > :is(.go, .gos)", line).forEach((go) => go.remove());
    line.append(...copies(":scope > :is(.go, .gos)", own[place]));
    const said = one("p", line);
    const note = said.querySelector(".note");
    for (const target of copies(".target", own[place])) {
      said.insertBefore(document.createTextNode(" "), note);
      said.insertBefore(target, note);
    }
  });
  /** @type {HTMLElement} */ (card).dataset.timedFor = pool.getAttribute("data-pool") ?? "";
}

/** @type {(selector: string, within: Element) => Node[]} */
const copies = (selector, within) => all(selector, within).map((part) => document.importNode(part, true));

/**
 * Leave what is for one lane group: that which is chosen, else that whose clock the card carries. Where its lines hold its times
 * the table of its clock is good to have; where they are of another pool they go.
 * @param {Element} source after its clock was brought
 */
export function forOneGroup(source) {
  const clock = source.querySelector("[data-clocks]");
  const group = clock ? groupOf(clock) : "";
  if (!clock || !group) {
    return;
  }
  all("[data-group]", source).filter((part) => !part.dataset.group?.split(" ").includes(group)).forEach((part) => part.remove());
  all(".whose", source).forEach((name) => name.remove());
  const pool = /** @type {HTMLElement} */ (source).dataset.timedFor;
  if (pool && pool !== poolOf(clock) && holdsChosen(clock)) {
    all(".card-board :is(.go, .gos, .target)", source).forEach((time) => time.remove());
  } else if (pool) {
    all("table", clock).forEach((table) => table.classList.add("card-more"));
  }
}
