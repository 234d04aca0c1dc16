// A panel that does not fit comes screen by screen, and no screen ends or begins within a line of text or something to press: what would be
// cut through is hidden there, and stands whole on the screen beside it.

/** @typedef {{top: number, bottom: number, from: number, to: number}} Box on the screen, in CSS pixels: all of it, and what may not be cut */

const PRESSED = "button, input, textarea, svg, .run-code";
const HEADS = "h3, dt, label";
const NEXT_PX = 64; // a heading stands with so much of what it is over
const EDGE_PX = 1; // nothing of a border is left at the edge
const SLACK_PX = 0.4;
/** Of the height of a letter's box: above what is drawn, and below a letter that hangs down. Boxes of close lines overlap by so much. */
const EMPTY = { above: 0.12, below: 0.02 };
const NONE = { above: 0, below: 0 };

/** @param {{top: number, bottom: number}} place
 * @param {{above: number, below: number}} empty
 * @returns {Box} */
const box = ({ top, bottom }, { above, below } = NONE) => ({ top, bottom, from: top + above * (bottom - top), to: bottom - below * (bottom - top) });

/** The lines and the things to press of a panel that are shown, and its headings with what they are over.
 * @param {HTMLElement} body
 * @returns {{lines: Box[], heads: Box[]}} */
function boxes(body) {
  const found = [...body.querySelectorAll(PRESSED)].map((element) => box(element.getBoundingClientRect()));
  const walk = document.createTreeWalker(body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let text = walk.nextNode(); text; text = walk.nextNode()) {
    if (!text.parentElement?.closest("button, .run-code")) {
      range.selectNodeContents(text);
      found.push(...[...range.getClientRects()].map((line) => box(line, EMPTY)));
    }
  }
  const heads = [...body.querySelectorAll(HEADS)].map((head) => {
    const next = head.nextElementSibling?.getBoundingClientRect();
    return box({ top: head.getBoundingClientRect().top, bottom: next ? Math.min(next.bottom, next.top + NEXT_PX) : 0 });
  });
  const shown = (/** @type {Box[]} */ all) => all.filter(({ top, bottom }) => bottom > top);
  return { lines: shown(found), heads: shown(heads) };
}

/** Where a screen ends: at its foot, or above what would be cut through there; what is higher than the screen is cut all the same.
 * @param {Box[]} all
 * @param {DOMRect} screen */
function endOf(all, screen) {
  let end = screen.bottom;
  for (;;) {
    const cut = all.filter(({ from, to }) => from > screen.top + SLACK_PX && from < end - SLACK_PX && to > end + SLACK_PX);
    if (!cut.length) {
      return end;
    }
    end = Math.min(...cut.map(({ top }) => top - EDGE_PX));
  }
}

/** Where it begins: below what would be cut through at its head.
 * @param {Box[]} all
 * @param {DOMRect} screen */
function beginOf(all, screen) {
  let begin = screen.top;
  for (;;) {
    const cut = all.filter(({ from, to }) => from < begin - SLACK_PX && to > begin + SLACK_PX && to < screen.bottom - SLACK_PX);
    if (!cut.length) {
      return begin;
    }
    begin = Math.max(...cut.map(({ bottom }) => bottom + EDGE_PX));
  }
}

/**
 * Hide what a screen would cut through.
 * @param {HTMLElement} body that is scrolled
 * @returns {{isAll: boolean, isLast: boolean, next: number}} whether all fits, whether no more comes below, and how far to scroll for it
 */
export function whole(body) {
  const screen = body.getBoundingClientRect();
  const { lines, heads } = boxes(body);
  const all = [...lines, ...heads];
  const end = endOf(all, screen);
  const begin = body.scrollTop > 0 ? beginOf(lines, screen) : screen.top;
  const below = all.filter(({ to }) => to > end + SLACK_PX);
  const isAll = !below.length && body.scrollTop === 0;
  body.style.clipPath = isAll ? "" : `inset(${begin - screen.top}px -8px ${Math.max(0, screen.bottom - end)}px)`;
  const next = Math.min(...below.map(({ top }) => top)) - screen.top;
  return { isAll, isLast: !below.length, next: next > SLACK_PX ? next : screen.height };
}

/** On to what comes next, which then stands at the head of the screen; after the last the first.
 * @param {HTMLElement} body */
export function further(body) {
  const { isLast, next } = whole(body);
  const to = isLast ? 0 : Math.floor(body.scrollTop + next); // a browser may scroll by whole pixels only
  body.style.setProperty("--after", "2px");
  const short = to + body.clientHeight - body.scrollHeight;
  body.style.setProperty("--after", `${Math.max(0, short) + 2}px`);
  body.scrollTop = to;
}
