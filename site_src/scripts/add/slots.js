// A place in the form that a message can stand beside: a label, a hint, a control, and what is wrong. Text is only ever text.

import { all, make } from "../lib/dom.js";

/**
 * @typedef {object} Place what a place in the form is told by
 * @property {string} label
 * @property {string} [of] the list that it is a number of
 * @property {string} [hint]
 * @property {boolean} [needed]
 * @property {boolean} [bare] a group without a frame and a name of its own
 * @property {boolean} [marksOptional] whether it says so where it need not be filled in
 *
 * @typedef {HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement} Control
 * @typedef {import("./finding.js").Finding} Finding
 */

/** @type {WeakMap<Element, Slot>} */
const slots = new WeakMap();
let last = 0;

/** A new id for an element of the form. */
export const freshId = () => `add-${(last += 1)}`;

/** The label of a place as text: what only a screen reader needs (the list's name), then what all see.
 * @param {Place} place */
function nameParts({ label, of = "" }) {
  return of ? [make("span", { class: "unseen" }, `${of}, number `), label] : [label];
}

export class Slot {
  /**
   * @param {HTMLElement} element holds it all
   * @param {Place} place
   * @param {HTMLElement} name the element with its label
   * @param {Control | null} control takes the focus
   */
  constructor(element, place, name, control = null) {
    this.element = element;
    this.place = place;
    this.name = name;
    this.control = control;
    this.wrong = make("p", { class: "add-wrong", "aria-live": "polite", hidden: "", id: freshId() });
    this.touched = false;
    /** @type {Pick<Finding, "code" | "message" | "hint">[]} */
    this.findings = [];
    this.isOptional = Boolean(place.marksOptional) && !place.needed;
    this.rename(place.label);
    element.dataset.slot = "";
    slots.set(element, this);
  }

  /** @param {string} label */
  rename(label) {
    this.place = { ...this.place, label };
    const optional = this.isOptional ? [make("span", { class: "add-optional" }, " (optional)")] : [];
    this.name.replaceChildren(...nameParts(this.place), ...optional);
  }

  /** @param {boolean} isNeeded */
  setNeeded(isNeeded) {
    if (this.isOptional !== (Boolean(this.place.marksOptional) && !isNeeded)) {
      this.isOptional = !this.isOptional;
      this.rename(this.place.label);
    }
    if (this.control && this.control.type !== "checkbox") {
      this.control.setAttribute("aria-required", String(isNeeded));
    }
  }

  /** The name of the place for the list of mistakes. */
  get told() {
    return [this.place.of, this.place.label].filter(Boolean).join(" ");
  }

  /** What takes the focus.
   * @returns {HTMLElement} */
  get target() {
    const target = this.control ?? focusable(this.element) ?? this.element;
    target.id ||= freshId();
    return target;
  }

  focus() {
    this.touched = true;
    for (let around = this.element.closest("details"); around; around = around.parentElement?.closest("details") ?? null) {
      around.open = true;
    }
    this.target.focus();
    this.element.scrollIntoView({ block: "nearest" });
  }

  /** Show what is wrong here, unless nobody has been here yet. */
  show() {
    const told = this.touched ? this.findings : [];
    const words = told.map(({ code, message, hint }) =>
      make("span", { class: "add-message", "data-code": code }, message, ...hintLine(hint)),
    );
    if (words.map((word) => word.textContent).join("") !== this.wrong.textContent) {
      this.wrong.replaceChildren(...words);
    }
    this.wrong.hidden = !told.length;
    this.element.classList.toggle("is-wrong", told.length > 0);
    this.control?.setAttribute("aria-invalid", String(told.length > 0));
  }
}

/** The first thing in an element that takes the focus.
 * @param {Element} element
 * @returns {HTMLElement | null} */
export const focusable = (element) => element.querySelector("input, select, textarea, button");

/** What to write instead, on a line of its own below a message.
 * @param {string} hint */
export const hintLine = (hint) => (hint ? [make("span", { class: "add-mend" }, ` ${hint}`)] : []);

/** @param {Place} place */
const hintOf = ({ hint = "" }) => make("p", { class: "add-hint", id: freshId() }, ...(hint ? [hint] : []));

/**
 * A labelled control with its hint and its messages.
 * @param {Place} place
 * @param {Control} control
 * @param {...HTMLElement} beside
 */
export function fieldSlot(place, control, ...beside) {
  control.id = freshId();
  const name = make("label", { for: control.id });
  const hint = hintOf(place);
  hint.hidden = !place.hint;
  const slot = new Slot(make("div", { class: "add-field" }), place, name, control);
  slot.element.append(name, hint, control, ...beside, slot.wrong);
  control.setAttribute("aria-describedby", `${hint.id} ${slot.wrong.id}`);
  return slot;
}

/**
 * A group with its legend, its hint and its messages; `body` holds what is in it.
 * @param {Place} place
 * @param {HTMLElement} body
 * @param {...HTMLElement} tools
 */
export function groupSlot(place, body, ...tools) {
  const isBare = Boolean(place.bare);
  const name = make(isBare ? "span" : "legend", isBare ? { class: "unseen" } : {});
  const element = make(isBare ? "div" : "fieldset", { class: isBare ? "add-bare" : "add-group" });
  const slot = new Slot(element, place, name);
  const hint = hintOf(place);
  hint.hidden = !place.hint || isBare;
  element.append(...(isBare ? [] : [name]), hint, slot.wrong, body, ...tools);
  if (!isBare) {
    element.setAttribute("aria-describedby", `${hint.id} ${slot.wrong.id}`);
  }
  return slot;
}

/**
 * @param {string} text
 * @param {string} rest of its name, for a screen reader
 * @param {() => void} action
 */
export function button(text, rest, action) {
  const more = rest ? [make("span", { class: "unseen" }, ` ${rest}`)] : [];
  const made = make("button", { type: "button", class: "tool" }, text, ...more);
  made.addEventListener("click", action);
  return made;
}

/** All slots in an element, in the order of the page.
 * @param {Element} element */
export const slotsWithin = (element) => all("[data-slot]", element).flatMap((found) => slots.get(found) ?? []);

/** The slot around an element, itself included; null outside of all.
 * @param {Element | null | undefined} element */
const slotOf = (element) => slots.get(element?.closest("[data-slot]") ?? document.body) ?? null;

/** The slot around a slot; null for the outermost.
 * @param {Slot} slot */
export const slotAround = (slot) => slotOf(slot.element.parentElement);

/** Mark the innermost slot around an element as visited.
 * @param {Element} element */
export function touch(element) {
  const found = slotOf(element);
  if (found) {
    found.touched = true;
  }
}
