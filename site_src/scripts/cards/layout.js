// Deck cards onto sheets: each block of a card stays whole, and a card that is too long goes on to the next.

import { make, one } from "../lib/dom.js";

const SMALLEST = 0.76; // of the layout's text size: below it nobody reads at arm's length

/** Paper sizes, and how many cards a sheet takes. */
const LAYOUTS = /** @type {const} */ ({
  a6: { size: "210mm 297mm", cards: 4 },
  a5: { size: "148mm 210mm", cards: 1 },
  letter: { size: "11in 8.5in", cards: 2 },
});

/** @typedef {keyof typeof LAYOUTS} Layout */

/**
 * An empty card with the head and foot of its source.
 * @param {Element} source
 * @param {number} part counted from 1
 */
function frame(source, part) {
  const card = make("article", { class: "paper-card" }, one(".card-head", source).cloneNode(true));
  if (part > 1) {
    one(".card-title", card).append(` (${part})`);
  }
  card.append(make("div", { class: "card-body" }), one(".card-foot", source).cloneNode(true));
  return card;
}

/** @param {Element} body */
const isFull = (body) => body.scrollHeight > body.clientHeight + 1;

/**
 * Take blocks, from the first on, as long as they fit; at least one.
 * @param {Element} body
 * @param {Element[]} blocks
 */
function fill(body, blocks) {
  let taken = 0;
  while (taken < blocks.length) {
    body.append(blocks[taken].cloneNode(true));
    if (isFull(body) && taken) {
      body.lastElementChild?.remove();
      break;
    }
    taken += 1;
  }
  return taken;
}

/**
 * Make the text of a card smaller, down to `least`, until its blocks fit.
 * @param {HTMLElement} card
 * @param {Element} body
 * @param {number} least
 */
function shrink(card, body, least) {
  for (let size = 1; isFull(body) && size > least; size -= 0.04) {
    card.style.setProperty("--card-scale", size.toFixed(2));
  }
}

/**
 * One card with all of these blocks, at some size of text that can be read; null where there is none.
 * @param {Element} source
 * @param {Element} bench
 * @param {Element[]} blocks
 */
function single(source, bench, blocks) {
  const card = bench.appendChild(frame(source, 1));
  const body = one(".card-body", card);
  body.append(...blocks.map((block) => block.cloneNode(true)));
  shrink(card, body, SMALLEST);
  const fits = !isFull(body);
  card.remove();
  return fits ? card : null;
}

/**
 * As many cards as the blocks take.
 * @param {Element} source
 * @param {Element} bench
 * @param {Element[]} blocks
 */
function several(source, bench, blocks) {
  /** @type {HTMLElement[]} */
  const cards = [];
  for (let rest = blocks; rest.length; ) {
    /** @type {HTMLElement} */
    const card = bench.appendChild(frame(source, cards.length + 1));
    const body = one(".card-body", card);
    rest = rest.slice(fill(body, rest));
    shrink(card, body, 0.3); // one block that is larger than a card: small, but never cut
    card.remove();
    cards.push(card);
  }
  return cards;
}

/**
 * The cards that one source makes, laid out in `bench`, an element of the layout's own size.
 * @param {Element} source
 * @param {Element} bench
 */
function cardsOf(source, bench) {
  const blocks = [...one(".card-body", source).children];
  // what is good to have stays off where it is tight
  const needed = blocks.filter((block) => !block.matches(".card-more"));
  const whole = single(source, bench, blocks) ?? single(source, bench, needed);
  return whole ? [whole] : several(source, bench, needed);
}

/**
 * Sheets of cards for a layout, made in `place`. Returns how many cards and sheets there are.
 * @param {Element[]} sources
 * @param {Layout} layout
 * @param {Element} place
 */
export function layCards(sources, layout, place) {
  const bench = make("div", { class: `paper-sheet bench layout-${layout}` });
  place.replaceChildren(bench);
  const cards = sources.flatMap((source) => cardsOf(source, bench));
  bench.remove();
  for (let first = 0; first < cards.length; first += LAYOUTS[layout].cards) {
    const these = cards.slice(first, first + LAYOUTS[layout].cards);
    place.append(make("div", { class: `paper-sheet layout-${layout}` }, ...these));
  }
  return { cards: cards.length, sheets: place.children.length };
}

/** @param {Layout} layout */
export const paperSize = (layout) => LAYOUTS[layout].size;
