// Deck cards onto sheets: one size of text on all of them, each block whole on one card, and a card that is too long goes on to the
// next, which says so with the lane group's name. Head and foot are short from the second on, so that most entries take two.

import { all, make, one } from "../lib/dom.js";

/** Paper sizes, and how many cards a sheet takes. */
const LAYOUTS = /** @type {const} */ ({
  a6: { size: "210mm 297mm", cards: 4 },
  a5: { size: "148mm 210mm", cards: 1 },
  letter: { size: "11in 8.5in", cards: 2 },
});

/** @typedef {keyof typeof LAYOUTS} Layout */

const LONG_TABLE = 12; // rows, about half of the smallest card

/** What may stay off a card, the least missed first. */
const SPARED = ["", ".card-summary", ".card-more", ".card-summary, .card-more"];

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
 * An empty card with the head and foot of its source; its kind, its code and its address stand on the first alone.
 * @param {Element} source
 * @param {boolean} isFirst
 * @param {boolean} isAlone whether nothing says that there are more
 */
function frame(source, isFirst, isAlone) {
  const card = make("article", { class: "paper-card" }, one(".card-head", source).cloneNode(true));
  if (!isFirst) {
    all(".card-head > svg, .card-kind", card).forEach((told) => told.remove());
  }
  if (!isAlone) {
    all(".card-whose", card).forEach((told) => told.remove()); // told with the number
    one(".card-names", card).append(make("p", { class: "card-part-of" }, partOf(source, 9, 9)));
  }
  card.append(make("div", { class: "card-body" }), one(".card-foot", source).cloneNode(true));
  for (const address of all(".card-from", card)) {
    address.textContent = address.textContent?.replace(/^https?:\/\//, "") ?? "";
    if (!isFirst) {
      address.remove();
    }
  }
  return card;
}

/** @param {Element} body */
const isFull = (body) => body.scrollHeight > body.clientHeight + 1;

/**
 * What stays whole on a card: what only holds other blocks together is taken apart, a long table into its rows.
 * @param {Element} block
 * @returns {Element[]}
 */
function whole(block) {
  if (block.matches("table") && all("tr", block).length > LONG_TABLE) {
    return all("tr", block).map((row) => make("table", { class: block.className }, row.cloneNode(true)));
  }
  if (block.matches(".card-part")) {
    block.firstElementChild?.classList.add("card-part-head");
  }
  if (block.matches(".card-part, .card-brief, [data-clocks], div[data-pool], div[data-group]:not(.card-board)")) {
    return [...block.children].flatMap(whole);
  }
  return block.matches(".card-whole") ? [] : [block];
}

/** Whether a block is read with the one below it: the head of a part or a table, the line above one.
 * @param {Element | null} block
 * @param {Element | null} next */
const leads = (block, next) => Boolean(block?.matches(next?.matches("table") ? ".card-clock, :has(th):not(:has(td))" : ".card-part-head"));

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
  for (; taken > 1 && leads(body.lastElementChild, blocks[taken] ?? null); taken -= 1) {
    body.lastElementChild?.remove();
  }
  return taken;
}

/** How far down its words go, in pixels.
 * @param {Element} body */
const depth = (body) => (body.lastElementChild?.getBoundingClientRect().bottom ?? 0) - body.getBoundingClientRect().top;

/**
 * No card for a line left over: the last takes from the one before it until it holds half as much.
 * @param {HTMLElement[]} cards that follow each other
 * @param {Element} bench
 */
function even(cards, bench) {
  const two = cards.slice(-2);
  bench.append(...two);
  const [before, last] = two.map((card) => one(".card-body", card));
  while (before.children.length > 1 && (leads(before.lastElementChild, last.firstElementChild) || depth(last) < depth(before) / 2)) {
    const moved = /** @type {Element} */ (before.lastElementChild);
    last.prepend(moved);
    if (isFull(last)) {
      before.append(moved);
      break;
    }
  }
  two.forEach((card) => card.remove());
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
    card.remove();
    rest = rest.slice(taken);
    cards.push(card);
  }
  if (cards.length > 1) {
    even(cards, bench);
  }
  return cards;
}

/**
 * The cards that one source makes, laid out in `bench`, an element of the layout's own size.
 * @param {Element} source
 * @param {Element} bench
 */
function cardsOf(source, bench) {
  for (const note of all(".card-board > p > :is(.note, .paper-note)", source)) {
    note.parentElement?.parentElement?.append(note); // below, as wide as the card
  }
  const blocks = [...one(".card-body", source).children].flatMap(whole);
  /** @type {HTMLElement[]} */
  let fewest = [];
  for (const spared of SPARED) { // what is good to have stays off where it would take another card
    const own = blocks.filter((block) => !spared || !block.matches(spared));
    const single = several(source, bench, own, true);
    if (single.length === 1) {
      return single;
    }
    const cards = several(source, bench, own);
    fewest = !fewest.length || cards.length < fewest.length ? cards : fewest;
  }
  fewest.forEach((card, place) => { one(".card-part-of", card).textContent = partOf(source, place + 1, fewest.length); });
  return fewest;
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
