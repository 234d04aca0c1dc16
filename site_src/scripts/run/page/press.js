// Wet hands: what counts as a press. A second touch within 0.4 s, or with another finger down, is none; what changes a clock needs 0.6 s
// of pressing, or Enter twice. Stop alone goes by the first touch, whatever else is down.

import { make } from "../../lib/dom.js";
import { put } from "./put.js";

const APART_MS = 400;
export const HOLD_MS = 600;
export const LONG_HOLD_MS = 1000;
const ARMED_MS = 3000;
const STRAY_PX = 24;

/** Says to who hears the page, and does not see it, that a key must be pressed once more. */
const armedTold = make("p", { class: "unseen", role: "status" });

/** Touches that count for nothing, until they are lifted and have clicked. */
const ignored = new Set();
let last = -Infinity;

/** Watch all touches of a page before any button hears of them.
 * @param {HTMLElement} page */
export function guard(page) {
  document.body.append(armedTold);
  /** @type {(event: Event) => void} */
  const drop = (event) => {
    event.preventDefault();
    event.stopPropagation();
  };
  page.addEventListener("pointerdown", (event) => {
    const isFree = event.target instanceof Element && event.target.closest("[data-at-once]");
    const isStray = !event.isPrimary || event.timeStamp - last < APART_MS; // not primary: another finger is down
    ignored.delete(event.pointerId);
    if (isStray && !isFree) {
      ignored.add(event.pointerId);
      drop(event);
    } else {
      last = event.timeStamp;
    }
  }, true);
  page.addEventListener("click", (event) => {
    if (event instanceof PointerEvent && event.detail > 0 && ignored.has(event.pointerId)) {
      drop(event);
    }
  }, true);
  for (const kind of ["contextmenu", "dragstart", "gesturestart", "dblclick"]) {
    page.addEventListener(kind, (event) => event.preventDefault());
  }
}

/**
 * A plain button: for what changes no clock.
 * @param {string} name class
 * @param {(Node | string)[]} content
 * @param {() => void} action
 */
export function button(name, content, action) {
  const made = make("button", { type: "button", class: name }, ...content);
  made.addEventListener("click", action);
  return made;
}

/**
 * A button that acts as soon as it is touched, and whatever else is touched: Stop, and the pads.
 * @param {string} name class
 * @param {(Node | string)[]} content
 * @param {(event: Event) => void} action
 */
export function atOnce(name, content, action) {
  const made = make("button", { type: "button", class: name, "data-at-once": "" }, ...content);
  made.addEventListener("pointerdown", (event) => {
    event.preventDefault();
    action(event);
  });
  made.addEventListener("click", (event) => event.detail === 0 && action(event)); // a key, or a screen reader
  return made;
}

/**
 * A button that must be pressed for a while; by a key, twice.
 * @param {string} name class
 * @param {(Node | string)[]} content
 * @param {() => void} action
 * @param {number} [hold_ms]
 */
export function held(name, content, action, hold_ms = HOLD_MS) {
  const made = make("button", { type: "button", class: `${name} held` }, ...content);
  made.setAttribute("aria-description", "press long; by a key, twice");
  made.style.setProperty("--hold", `${hold_ms}ms`);
  /** @type {{timer: ReturnType<typeof setTimeout>, x: number, y: number} | null} */
  let pressed = null;
  let armed = -Infinity;
  const stop = () => {
    clearTimeout(pressed?.timer);
    pressed = null;
    made.classList.remove("is-pressed");
  };
  const act = () => {
    stop();
    armed = -Infinity;
    made.classList.remove("is-armed");
    put(armedTold, "");
    action();
  };
  made.addEventListener("pointerdown", (event) => {
    if (event.button === 0) {
      pressed = { timer: setTimeout(act, hold_ms), x: event.clientX, y: event.clientY };
      made.classList.add("is-pressed");
    }
  });
  for (const end of ["pointerup", "pointercancel", "pointerleave", "blur"]) {
    made.addEventListener(end, stop);
  }
  made.addEventListener("pointermove", (event) => {
    if (pressed && Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y) > STRAY_PX) {
      stop();
    }
  });
  made.addEventListener("keydown", (event) => event.repeat && event.preventDefault());
  made.addEventListener("click", (event) => {
    if (event.detail !== 0) {
      return;
    }
    if (event.timeStamp - armed < ARMED_MS) {
      act();
    } else {
      armed = event.timeStamp;
      made.classList.add("is-armed");
      put(armedTold, "Once more");
      setTimeout(() => {
        made.classList.remove("is-armed");
        put(armedTold, "");
      }, ARMED_MS);
    }
  });
  return made;
}
