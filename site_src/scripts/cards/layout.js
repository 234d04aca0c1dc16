// Deck cards onto sheets: each block of a card stays whole, and a card that is too long goes on to the next.

import { make } from "../lib/dom.js";

const SMALLEST = 0.76; // of the layout's text size: below it nobody reads at arm's length

/** Paper sizes, and how many cards a sheet takes. */
const LAYOUTS = {
  a6: { size: "210mm 297mm", cards: 4 },
  a5: { size: "148mm 210mm", cards: 1 },
  letter: { size: "11in 8.5in", cards: 2 },
};

function frame(source, part) {
  const card = make("article", { class: "paper-card" }, source.querySelector(".card-head").cloneNode(true));
  if (part > 1) {
    card.querySelector(".card-title").append(` (${part})`);
  }
  card.append(make("div", { class: "card-body" }), source.querySelector(".card-foot").cloneNode(true));
  return card;
}

const isFull = (body) => body.scrollHeight > body.clientHeight + 1;

/** Take blocks, from the first on, as long as they fit; at least one. */
function fill(body, blocks) {
  let taken = 0;
  while (taken < blocks.length) {
    body.append(blocks[taken].cloneNode(true));
    if (isFull(body) && taken) {
      body.lastChild.remove();
      break;
    }
    taken += 1;
  }
  return taken;
}

/** Make the text of a card smaller, down to `least`, until its blocks fit. */
function shrink(card, body, least) {
  for (let size = 1; isFull(body) && size > least; size -= 0.04) {
    card.style.setProperty("--card-scale", size.toFixed(2));
  }
}

/** One card with all of these blocks, at some size of text that can be read; null where there is none. */
function single(source, bench, blocks) {
  const card = bench.appendChild(frame(source, 1));
  const body = card.querySelector(".card-body");
  body.append(...blocks.map((block) => block.cloneNode(true)));
  shrink(card, body, SMALLEST);
  const fits = !isFull(body);
  card.remove();
  return fits ? card : null;
}

/** As many cards as the blocks take. */
function several(source, bench, blocks) {
  const cards = [];
  for (let rest = blocks; rest.length; ) {
    const card = bench.appendChild(frame(source, cards.length + 1));
    const body = card.querySelector(".card-body");
    rest = rest.slice(fill(body, rest));
    shrink(card, body, 0.3); // one block that is larger than a card: small, but never cut
    card.remove();
    cards.push(card);
  }
  return cards;
}

/** The cards that one source makes, laid out in `bench`, an element of the layout's own size. */
function cardsOf(source, bench) {
  const all = [...source.querySelector(".card-body").children];
  const needed = all.filter((block) => !block.matches(".card-more")); // what is good to have stays off where it is tight
  const one = single(source, bench, all) ?? single(source, bench, needed);
  return one ? [one] : several(source, bench, needed);
}

/** Sheets of cards for a layout, made in `place`. Returns how many cards and sheets there are. */
export function layCards(sources, layout, place) {
  const bench = make("div", { class: `paper-sheet bench layout-${layout}` });
  place.replaceChildren(bench);
  const cards = sources.flatMap((source) => cardsOf(source, bench));
  bench.remove();
  for (let first = 0; first < cards.length; first += LAYOUTS[layout].cards) {
    place.append(make("div", { class: `paper-sheet layout-${layout}` }, ...cards.slice(first, first + LAYOUTS[layout].cards)));
  }
  return { cards: cards.length, sheets: place.children.length };
}

export const paperSize = (layout) => LAYOUTS[layout].size;
