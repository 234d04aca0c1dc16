// Deck cards onto sheets: one size of text on all of them, each block whole on one card, and a card that is too long goes on to the
// next, which says so with the lane group's name.

import { all, make, one } from "../lib/dom.js";

/** Paper sizes, and how many cards a sheet takes. */
const LAYOUTS = /** @type {const} */ ({
  a6: { size: "210mm 297mm", cards: 4 },
  a5: { size: "148mm 210mm", cards: 1 },
  letter: { size: "11in 8.5in", cards: 2 },
});

/** @typedef {keyof typeof LAYOUTS} Layout */

/**
 * Which card of how many it is, and for whom, where a source makes more than one.
 * @param {Element} source
 * @param {number} number
 * @param {number} count
 */
const partOf = (source, number, count) => {
  const whose = source.querySelector(".card-clock strong, .card-whose")?.textContent?.replace(/:$/, "");
  return [`${number} of ${count}`, whose].filter(Boolean).join(", ");
};

/**
 * An empty card with the head and foot of its source; its code stands on the first alone.
 * @param {Element} source
 * @param {boolean} isFirst
 * @param {boolean} isAlone whether nothing says that there are more
 */
function frame(source, isFirst, isAlone) {
  const card = make("article", { class: "paper-card" }, one(".card-head", source).cloneNode(true));
  if (!isFirst) {
    all(".card-head > svg", card).forEach((code) => code.remove());
  }
  if (!isAlone) {
    all(".card-whose", card).forEach((told) => told.remove()); // told with the number
    one(".card-names", card).append(make("p", { class: "card-part-of" }, partOf(source, 9, 9)));
  }
  card.append(make("div", { class: "card-body" }), one(".card-foot", source).cloneNode(true));
  return card;
}

/** @param {Element} body */
const isFull = (body) => body.scrollHeight > body.clientHeight + 1;

/**
 * What stays whole on a card: what only holds other blocks together is taken apart, a table into its rows.
 * @param {Element} block
 * @returns {Element[]}
 */
function whole(block) {
  if (block.matches("table")) {
    return all("tr", block).map((row) => make("table", { class: "card-table" }, row.cloneNode(true)));
  }
  if (block.matches(".card-brief, [data-clocks], div[data-pool], div[data-group]:not(.card-board)")) {
    return [...block.children].flatMap(whole);
  }
  return block.matches(".card-whole") ? [] : [block];
}

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
 * As many cards as the blocks take.
 * @param {Element} source
 * @param {Element} bench
 * @param {Element[]} blocks
 * @param {boolean} [isAlone]
 */
function several(source, bench, blocks, isAlone = false) {
  /** @type {HTMLElement[]} */
  const cards = [];
  for (let rest = blocks; rest.length; ) {
    const card = bench.appendChild(frame(source, !cards.length, isAlone));
    const body = one(".card-body", card);
    const taken = fill(body, rest);
    const isOver = isFull(body);
    card.remove();
    if (isOver && rest[0].matches(".card-part")) { // a part that is longer than a card
      rest = [...rest[0].children, ...rest.slice(1)];
      continue;
    }
    rest = rest.slice(taken);
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
  const blocks = [...one(".card-body", source).children].flatMap(whole);
  // what is good to have stays off where it would take another card
  const needed = blocks.filter((block) => !block.matches(".card-more"));
  for (const own of [blocks, needed]) {
    const single = several(source, bench, own, true);
    if (single.length === 1) {
      return single;
    }
  }
  const [every, fewer] = [blocks, needed].map((own) => several(source, bench, own));
  const cards = every.length > fewer.length ? fewer : every;
  cards.forEach((card, place) => { one(".card-part-of", card).textContent = partOf(source, place + 1, cards.length); });
  return cards;
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
