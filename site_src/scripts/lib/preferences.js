// Lane group, pool and units: chosen once, kept on the device, followed on every page. What holds on this page stands on its
// root element (data-chosen-group, ...), where every script of the page reads it, whichever bundle it came with.

import { all } from "./dom.js";
import { read, write } from "./storage.js";

/** @typedef {"group" | "pool" | "units"} Name */
/** @typedef {{group?: string, pool?: string, units?: string}} Choices */

const SUBJECT = "choices";
const CHANGED = "deck-almanac:choices";
const page = document.documentElement;

/** The values that this page offers for a choice.
 * @param {Name} name */
function offered(name) {
  const selects = /** @type {HTMLSelectElement[]} */ (all(`[data-choose="${name}"]`));
  return new Set(selects.flatMap((select) => [...select.options].map((option) => option.value)));
}

/** What is kept on this device.
 * @returns {Choices} */
const kept = () => read(SUBJECT, {});

/** Begin: what was chosen on this device, else what the page is written for. */
export function start() {
  const own = all("[data-chooser]")[0]?.dataset ?? {};
  /** @type {[Name, string | undefined][]} */
  const fallbacks = [["group", own.ownGroup], ["pool", own.ownPool], ["units", "pool"]];
  for (const [name, fallback] of fallbacks) {
    const values = offered(name);
    const known = kept()[name];
    hold(name, known && (values.has(known) || !values.size) ? known : fallback);
  }
  apply();
}

/** @type {(name: Name) => string} */
const attribute = (name) => `data-chosen-${name}`;

/**
 * @param {Name} name
 * @param {string | undefined} value
 */
function hold(name, value) {
  if (value) {
    page.setAttribute(attribute(name), value);
  } else {
    page.removeAttribute(attribute(name));
  }
}

/** What holds on this page; "" where nothing was chosen.
 * @param {Name} name */
export const chosen = (name) => page.getAttribute(attribute(name)) ?? "";

/** The unit that lengths are shown in; "" for each in its own. */
function unit() {
  const [units, pool] = [chosen("units"), chosen("pool")];
  if (units === "m" || units === "yd") {
    return units;
  }
  return pool ? (pool.endsWith("yd") ? "yd" : "m") : "";
}

/**
 * Where the clock that was chosen is not in its box (yet), what stands there stays. What is for several groups names them all.
 * @param {Name} name
 * @param {string} value
 */
function showOnly(name, value) {
  for (const element of all(`[data-${name}]`)) {
    const box = element.closest("[data-clocks]");
    element.hidden = value !== "" && !element.dataset[name]?.split(" ").includes(value) && (!box || holdsChosen(box));
  }
}

/** Whether a box of clocks holds the one that was chosen.
 * @param {Element} box */
export const holdsChosen = (box) => box.querySelector(`[data-pool="${chosen("pool")}"] [data-group="${chosen("group")}"]`) !== null;

/** Show on the page what the choices say. */
export function apply() {
  showOnly("pool", chosen("pool"));
  showOnly("group", chosen("group"));
  showOnly("units", unit());
  for (const length of unit() ? all("[data-length]") : []) {
    length.textContent = `${length.dataset.length} ${unit()}`;
  }
  for (const select of /** @type {HTMLSelectElement[]} */ (all("[data-choose]"))) {
    const value = chosen(/** @type {Name} */ (select.dataset.choose));
    select.value = [...select.options].some((option) => option.value === value) ? value : select.value;
  }
}

/**
 * @param {Name} name
 * @param {string} value
 * @param {boolean} [keep] on this device, for the next page
 */
export function choose(name, value, keep = true) {
  hold(name, value);
  if (keep) {
    write(SUBJECT, { ...kept(), [name]: value });
  }
  apply();
  document.dispatchEvent(new Event(CHANGED));
}

/** Call `listener` after every change.
 * @param {() => void} listener */
export const onChange = (listener) => document.addEventListener(CHANGED, listener);
