// Lane group, pool and units: chosen once, kept on the device, followed on every page. What holds on this page stands on its
// root element (data-chosen-group, ...), where every script of the page reads it, whichever bundle it came with.

import { all } from "./dom.js";
import { keptGroups, MOST_GROUPS } from "./my-groups.js";
import { read, write } from "./storage.js";

/** @typedef {"group" | "pool" | "units"} Name */
/** @typedef {{group?: string, groups?: string[], pool?: string, units?: string}} Choices */

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

/** My lane groups, one to three, as they were chosen; the one of this page where none was.
 * @returns {string[]} */
export function mine() {
  const own = (page.dataset.myGroups ?? "").split(" ").filter(Boolean);
  return own.length ? own : [chosen("group")].filter(Boolean);
}

/**
 * @param {string[]} groups
 * @param {boolean} [keep] on this device, for the next page
 */
export function setMine(groups, keep = true) {
  const own = groups.slice(0, MOST_GROUPS);
  page.dataset.myGroups = own.join(" ");
  if (keep) {
    write(SUBJECT, { ...kept(), groups: own, group: own[0] ?? "" });
  }
  hold("group", suits(own));
  apply();
  document.dispatchEvent(new Event(CHANGED));
}

/** The lane groups that this page is meant for; none where it is for all. */
export const meant = () => (all("[data-chooser]")[0]?.dataset.meant ?? "").split(" ").filter(Boolean);

/** Of some groups the first that this page is meant for; else the first that it offers; "" where it offers none.
 * @param {string[]} groups */
function suits(groups) {
  const values = offered("group");
  const known = groups.filter((group) => values.has(group) || !values.size);
  return known.find((group) => meant().includes(group)) ?? known[0] ?? "";
}

/** Begin: what was chosen on this device, else what the page is written for. */
export function start() {
  const own = all("[data-chooser]")[0]?.dataset ?? {};
  page.dataset.myGroups = keptGroups().join(" ");
  /** @type {[Name, string | undefined][]} */
  const fallbacks = [["pool", own.ownPool], ["units", "pool"]];
  for (const [name, fallback] of fallbacks) {
    const values = offered(name);
    const known = kept()[name];
    hold(name, known && (values.has(known) || !values.size) ? known : fallback);
  }
  hold("group", suits(keptGroups()) || own.ownGroup);
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

/** Whether somebody chose it on this device.
 * @param {Name} name */
export const isKept = (name) => Boolean(kept()[name]);

/** What holds on this page; "" where nothing was chosen.
 * @param {Name} name */
export const chosen = (name) => page.getAttribute(attribute(name)) ?? "";

/** The unit that lengths are shown in, by the page's own pool where each is shown in its own; "" for each in its own. */
function unit() {
  const [units, pool] = [chosen("units"), chosen("pool") || all("[data-chooser]")[0]?.dataset.ownPool];
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

/** The lane group whose clock a box shows: that which was chosen, else that which it stands there for.
 * @param {Element} box */
export const groupOf = (box) => chosen("group") || (box.querySelector("[data-group]")?.getAttribute("data-group") ?? "");

/** The pool whose clock a box shows: that which was chosen, else that which it stands there for.
 * @param {Element} box */
export const poolOf = (box) => chosen("pool") || (box.querySelector("[data-pool]")?.getAttribute("data-pool") ?? "");

/** Whether a box of clocks holds the one that was chosen.
 * @param {Element} box */
export const holdsChosen = (box) => box.querySelector(`[data-pool="${poolOf(box)}"] [data-group="${groupOf(box)}"]`) !== null;

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
  if (keep && name === "group") {
    keepGroup(value);
  } else if (keep) {
    write(SUBJECT, { ...kept(), [name]: value });
  }
  apply();
  document.dispatchEvent(new Event(CHANGED));
}

/** A group that is chosen on a page is mine from then on; where I have several, it is looked at on this page alone.
 * @param {string} group */
function keepGroup(group) {
  if (mine().length < 2) {
    page.dataset.myGroups = group;
    write(SUBJECT, { ...kept(), group, groups: [group] });
  }
}

/** Call `listener` after every change.
 * @param {() => void} listener */
export const onChange = (listener) => document.addEventListener(CHANGED, listener);
