// A place in the form that a message can stand beside: a label, a hint, a control, and what is wrong. Text is only ever text.

import { make } from "../lib/dom.js";

const slots = new WeakMap();
let last = 0;

/** A new id for an element of the form. */
const freshId = () => `add-${(last += 1)}`;

/** The label of a place as text: what only a screen reader needs (the list's name), then what all see. */
function nameParts({ label, of = "" }) {
  return of ? [make("span", { class: "unseen" }, `${of}, number `), label] : [label];
}

class Slot {
  /** `element` holds it all; `control` takes the focus; `name` is the element with its label. */
  constructor(element, { place, control = null, name, wrong = make("p", { class: "add-wrong", "aria-live": "polite", hidden: "" }) }) {
    Object.assign(this, { element, control, name, wrong, place, touched: false, findings: [] });
    this.wrong.id = freshId();
    this.isOptional = Boolean(place.marksOptional) && !place.needed;
    this.rename(place.label);
    element.dataset.slot = "";
    slots.set(element, this);
  }

  rename(label) {
    this.place = { ...this.place, label };
    this.name.replaceChildren(...nameParts(this.place), ...(this.isOptional ? [make("span", { class: "add-optional" }, " (optional)")] : []));
  }

  setNeeded(isNeeded) {
    if (this.isOptional !== (Boolean(this.place.marksOptional) && !isNeeded)) {
      this.isOptional = !this.isOptional;
      this.rename(this.place.label);
    }
    if (this.control?.matches("input, select, textarea") && this.control.type !== "checkbox") {
      this.control.setAttribute("aria-required", String(isNeeded));
    }
  }

  /** The name of the place for the list of mistakes. */
  get told() {
    return [this.place.of, this.place.label].filter(Boolean).join(" ");
  }

  /** What takes the focus. */
  get target() {
    const target = this.control ?? this.element.querySelector("input, select, textarea, button") ?? this.element;
    target.id ||= freshId();
    return target;
  }

  focus() {
    this.touched = true;
    this.target.focus();
    this.element.scrollIntoView({ block: "nearest" });
  }

  /** Show what is wrong here, unless nobody has been here yet. */
  show() {
    const told = this.touched ? this.findings : [];
    const words = told.map(({ message, mend }) => make("span", { class: "add-message" }, message, ...mendLine(mend)));
    if (words.map((word) => word.textContent).join("") !== this.wrong.textContent) {
      this.wrong.replaceChildren(...words);
    }
    this.wrong.hidden = !told.length;
    this.element.classList.toggle("is-wrong", told.length > 0);
    if (this.control?.matches("input, select, textarea")) {
      this.control.setAttribute("aria-invalid", String(told.length > 0));
    }
  }
}

/** What to write instead, on a line of its own below a message. */
export const mendLine = (mend) => (mend ? [make("span", { class: "add-mend" }, ` ${mend}`)] : []);

/** A labelled control with its hint and its messages. */
function fieldSlot(place, control, ...beside) {
  control.id = freshId();
  const name = make("label", { for: control.id });
  const hint = make("p", { class: "add-hint", id: freshId() }, ...[place.hint ?? ""]);
  hint.hidden = !place.hint;
  const element = make("div", { class: "add-field" });
  const slot = new Slot(element, { place, control, name });
  element.append(name, hint, control, ...beside, slot.wrong);
  control.setAttribute("aria-describedby", `${hint.id} ${slot.wrong.id}`);
  return slot;
}

/** A group with its legend, its hint and its messages; `body` holds what is in it. */
function groupSlot(place, body, ...tools) {
  const name = make(place.bare ? "span" : "legend", place.bare ? { class: "unseen" } : {});
  const element = make(place.bare ? "div" : "fieldset", { class: place.bare ? "add-bare" : "add-group" });
  const slot = new Slot(element, { place, name });
  const hint = make("p", { class: "add-hint", id: freshId() }, ...[place.hint ?? ""]);
  hint.hidden = !place.hint || Boolean(place.bare);
  element.append(...(place.bare ? [] : [name]), hint, slot.wrong, body, ...tools);
  element.setAttribute("aria-describedby", `${hint.id} ${slot.wrong.id}`);
  if (place.bare) {
    element.removeAttribute("aria-describedby");
  }
  return slot;
}

function button(text, rest, action) {
  const made = make("button", { type: "button", class: "tool" }, text, ...(rest ? [make("span", { class: "unseen" }, ` ${rest}`)] : []));
  made.addEventListener("click", action);
  return made;
}

/** All slots in an element, in the order of the page. */
const within = (element) => [...element.querySelectorAll("[data-slot]")].map((found) => slots.get(found));

/** The slot around a slot; null for the outermost. */
const around = (slot) => slots.get(slot.element.parentElement?.closest("[data-slot]")) ?? null;

/** Mark the innermost slot around an element as visited. */
function touch(element) {
  const found = slots.get(element.closest("[data-slot]"));
  if (found) {
    found.touched = true;
  }
}

export { freshId, fieldSlot, groupSlot, button, within as slotsWithin, around as slotAround, touch };
