// The kick cycle in place: the moments that stand on the page, shown one after the other. Without this script all of them stand.

const STEP_MS = 320;
const cycle = document.querySelector("[data-cycle]");
const moments = [...cycle.querySelectorAll("[data-cycle-moments] > *")];
const loop = cycle.querySelector("[data-cycle-loop]");
const next = cycle.querySelector("[data-cycle-next]");
const all = cycle.querySelector("[data-cycle-all]");
const still = window.matchMedia("(prefers-reduced-motion: reduce)");
let now = -1; // the moment that is shown alone; -1 while all are
let timer = 0;

/** Show one moment alone, or all of them for -1. */
function show(moment) {
  now = moment;
  moments.forEach((element, number) => {
    element.hidden = moment >= 0 && number !== moment;
  });
  all.disabled = moment < 0;
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
  cycle.querySelector("[data-cycle-still]").hidden = !still.matches;
}

loop.addEventListener("click", () => (timer ? stop() : start()));
next.addEventListener("click", () => {
  stop();
  step();
});
all.addEventListener("click", () => {
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
cycle.querySelector("[data-cycle-tools]").hidden = false;
