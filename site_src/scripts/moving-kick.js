// The kick of a body figure in motion, once it is asked for: a tap on it, or a key. Never by itself, and
// not on a device that asks for less motion. The angles stand in figures.css; here are only the rate and the switch.

import { all, make } from "./lib/dom.js";

const less = window.matchMedia("(prefers-reduced-motion: reduce)");

/** Seconds of one cycle, by kick, as the style sheet asks for them.
 * @param {SVGSVGElement} svg */
function setRates(svg) {
  for (const kick of ["flutter", "dolphin"]) {
    const seconds = svg.dataset[`${kick}S`];
    if (seconds) {
      svg.style.setProperty(`--${kick}-cycle`, `${seconds}s`);
    }
  }
}

/**
 * Keep the mark of the button in the corner of what is drawn: the picture may be given more room than its shape fills.
 * @param {SVGSVGElement} svg
 * @param {HTMLElement} button
 */
function keepMark(svg, button) {
  const [room, given] = [button.getBoundingClientRect(), svg.getBoundingClientRect()];
  const { width, height } = svg.viewBox.baseVal;
  const scale = Math.min(given.width / width, given.height / height);
  const [beside, below] = [(given.width - width * scale) / 2, (given.height - height * scale) / 2];
  button.style.setProperty("--beside", `${room.right - given.right + beside}px`);
  button.style.setProperty("--below", `${room.bottom - given.bottom + below}px`);
}

/** @param {SVGSVGElement} svg */
function letMove(svg) {
  const figure = svg.parentElement;
  if (!figure) {
    return;
  }
  const button = make("button", { type: "button", class: "kick-button", "aria-pressed": "false", "aria-label": "Show the kick move", title: svg.dataset.beat ?? "" });
  /** @param {boolean} moving */
  const show = (moving) => {
    svg.classList.toggle("is-kicking", moving);
    button.setAttribute("aria-pressed", String(moving));
  };
  const heed = () => {
    show(false);
    button.hidden = less.matches;
    figure.classList.toggle("moves", !less.matches);
  };
  setRates(svg);
  button.addEventListener("click", () => show(!svg.classList.contains("is-kicking")));
  less.addEventListener("change", heed);
  window.addEventListener("beforeprint", () => show(false));
  figure.append(button);
  heed();
  new ResizeObserver(() => keepMark(svg, button)).observe(svg);
}

/** @type {SVGSVGElement[]} */
const figures = all("svg[data-beat]");
figures.forEach(letMove);
