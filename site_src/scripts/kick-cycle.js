// The kick cycle in place: the moments that stand on the page, shown one after the other. Without this script all of them stand.

import { all, one } from "./lib/dom.js";

const STEP_MS = 320;
const cycle = one("[data-cycle]");
const moments = all("[data-cycle-moments] > *", cycle);
const loop = one("[data-cycle-loop]", cycle);
const next = one("[data-cycle-next]", cycle);
const together = /** @type {HTMLButtonElement} */ (one("[data-cycle-all]", cycle));
const still = window.matchMedia("(prefers-reduced-motion: reduce)");
let now = -1; // the moment that is shown alone; -1 while all are
let timer = 0;

/** Show one moment alone, or all of them for -1.
 * @param {number} moment */
function show(moment) {
  now = moment;
  moments.forEach((element, number) => {
    element.hidden = moment >= 0 && number !== moment;
  });
  together.disabled = moment < 0;
  cycle.classList.toggle("is-one", moment >= 0);
}

function step() {
  show((now + 1) % moments.length);
}

function stop() {
  clearInterval(timer);
  timer = 0;
  loop.setAttribute("aria-pressed", "false");
  cycle.classList.remove("is-running");
}

function start() {
  step();
  timer = setInterval(step, STEP_MS);
  loop.setAttribute("aria-pressed", "true");
  cycle.classList.add("is-running");
}

/** A device that asks for less motion gets no loop, and one that begins to ask stops it. */
function heedMotion() {
  stop();
  loop.hidden = still.matches;
  one("[data-cycle-still]", cycle).hidden = !still.matches;
}

loop.addEventListener("click", () => (timer ? stop() : start()));
next.addEventListener("click", () => {
  stop();
  step();
});
together.addEventListener("click", () => {
  stop();
  show(-1);
  next.focus();
});
document.addEventListener("visibilitychange", () => {
  if (document.hidden) {
    stop();
  }
});
window.addEventListener("beforeprint", () => {
  stop();
  show(-1);
});
still.addEventListener("change", heedMotion);
heedMotion();
one("[data-cycle-tools]", cycle).hidden = false;
if (window.matchMedia("(max-width: 44.98em)").matches) {
  show(0); // on a phone one after the other: eight are five screens
}
