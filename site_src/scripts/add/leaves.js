// What is typed or chosen in one place: text, a number, a time, a day, a word or id of a list, yes. Each gives its value as an
// entry holds it (nothing where nothing is filled in), and what was typed, for the draft.

import { make } from "../lib/dom.js";
import { fieldSlot, freshId } from "./slots.js";

/**
 * @typedef {import("./editor.js").Editor} Editor
 * @typedef {import("./editor.js").Form} Form
 * @typedef {import("./editor.js").Maker} Maker
 * @typedef {import("./names.js").Known} Known
 * @typedef {import("./schema.js").Piece} Piece
 * @typedef {import("./slots.js").Control} Control
 * @typedef {import("./slots.js").Slot} Slot
 */

const NUMBER = /^[-+]?(0|[1-9][0-9]*)(\.[0-9]+)?$/;
const LONGEST_NUMBER = 15;
const MOST_IN_SELECT = 24;
const LONGEST_NAME = 200;
const SIDE_BY_SIDE = 30; // a text of more characters takes the whole width

/** Text without its outer blanks, and without halves of characters.
 * @param {string} typed */
const tidy = (typed) => typed.replace(/\p{Cs}/gu, "\ufffd").trim();

/** A number where a text is one that the reader of files knows, with no exponent when it is written; else the text.
 * @param {string} typed */
function numberOr(typed) {
  const isNumber = NUMBER.test(typed) && typed.length <= LONGEST_NUMBER && !/e/.test(String(Number(typed)));
  return isNumber ? Number(typed) : typed;
}

/**
 * An editor of one control. `read` makes the value of what was typed.
 * @param {Slot} slot
 * @param {Control} control
 * @param {(typed: string) => unknown} read
 * @returns {Editor}
 */
function leaf(slot, control, read) {
  return {
    slot,
    element: slot.element,
    value: () => (tidy(control.value) === "" ? undefined : read(tidy(control.value))),
    raw: () => control.value,
    locate: () => slot,
    refresh() {},
  };
}

/** @type {(control: Control, raw: unknown) => void} */
const startWith = (control, raw) => {
  control.value = typeof raw === "string" ? raw : "";
};

/** @param {Piece} piece */
function lengths({ minLength, maxLength }) {
  return maxLength === undefined ? "" : ` ${minLength ?? 0} to ${maxLength} characters.`;
}

/**
 * @param {Control} control
 * @param {Piece} piece
 */
function counter(control, { maxLength }) {
  const count = make("span", { class: "add-count", "aria-hidden": "true" });
  const show = () => {
    count.textContent = control.value ? `${[...tidy(control.value)].length} of ${maxLength}` : "";
  };
  control.addEventListener("input", show);
  queueMicrotask(show);
  return count;
}

/** @type {Maker} */
function text(_form, shape, raw, place) {
  const { piece, isLong, isLine } = shape;
  const control = isLong
    ? make("textarea", { rows: isLine ? "2" : "4" })
    : make("input", { type: "text", autocomplete: "off" });
  if (!piece.maxLength) {
    control.maxLength = LONGEST_NAME; // what has no limit of its own is a name or a short form of words
  }
  startWith(control, raw);
  if (isLong && isLine) {
    control.addEventListener("input", () => {
      if (control.value.includes("\n")) {
        control.value = control.value.replace(/\s*\n\s*/g, " "); // as a box of one line does
      }
    });
  }
  const hint = `${place.hint ?? ""}${/characters/.test(place.hint ?? "") ? "" : lengths(piece)}`.trim();
  const slot = fieldSlot({ ...place, hint }, control, ...(piece.maxLength ? [counter(control, piece)] : []));
  slot.element.classList.toggle("is-long", isLong || (piece.maxLength ?? 0) > SIDE_BY_SIDE);
  return leaf(slot, control, (typed) => typed);
}

/** @type {Maker} */
function number(_form, shape, raw, place) {
  const inputmode = shape.piece.type === "integer" ? "numeric" : "decimal";
  const control = make("input", { type: "text", autocomplete: "off", inputmode, class: "is-short" });
  startWith(control, raw);
  return leaf(fieldSlot(place, control), control, numberOr);
}

/** @type {Maker} */
function time(_form, _shape, raw, place) {
  const control = make("input", { type: "text", autocomplete: "off", class: "is-short" });
  startWith(control, raw);
  const own = place.hint ?? "";
  const hint = /m:ss/.test(own) ? own : `${own} m:ss, say 1:15, or a number of seconds.`.trim();
  return leaf(fieldSlot({ ...place, hint }, control), control, numberOr);
}

/** @type {Maker} */
function day(_form, _shape, raw, place) {
  const control = make("input", { type: "date", class: "is-short" });
  startWith(control, raw);
  return leaf(fieldSlot(place, control), control, (typed) => typed);
}

/** @type {Maker} */
function yes(_form, _shape, raw, place) {
  const control = make("input", { type: "checkbox" });
  control.checked = raw === true;
  const slot = fieldSlot(place, control);
  slot.element.classList.add("is-yes");
  const isChecked = () => (control.checked ? true : undefined);
  return { ...leaf(slot, control, isChecked), value: isChecked, raw: () => control.checked };
}

/**
 * The words of a list: each with its id, its title, and what there is to say about it.
 * @param {Form} form
 * @param {Piece} piece
 * @returns {Known[]}
 */
export function choicesOf(form, { vocabulary, reference, enum: ids = [] }) {
  if (vocabulary) {
    return form.names.vocabulary[vocabulary] ?? [];
  }
  const named = reference ? form.names.reference[reference] ?? [] : ids.map((id) => [String(id), String(id)]);
  return named.map(([id, title]) => [id, title, ""]);
}

/**
 * @param {Known[]} choices
 * @param {unknown} raw
 */
function options(choices, raw) {
  const known = choices.map(([id, title]) => make("option", { value: id }, title));
  const isUnknown = typeof raw === "string" && raw && !choices.some(([id]) => id === raw);
  const unknown = isUnknown ? [make("option", { value: raw }, raw)] : [];
  return [make("option", { value: "" }, "Choose"), ...known, ...unknown];
}

/**
 * One list of suggestions for all fields that take ids of a kind.
 * @param {Form} form
 * @param {string} list
 * @param {Known[]} choices
 */
function suggestions(form, list, choices) {
  const id = `add-list-${list}`;
  if (!form.lists.querySelector(`#${id}`)) {
    const known = choices.map(([value, title]) => make("option", { value }, title));
    form.lists.append(make("datalist", { id }, ...known));
  }
  return id;
}

/** Searched in a long list, chosen from a short one.
 * @type {Maker} */
function word(form, shape, raw, place) {
  const choices = choicesOf(form, shape.piece);
  const list = shape.piece.reference ?? shape.piece.vocabulary;
  const isSearched = list !== undefined && choices.length > MOST_IN_SELECT;
  const plain = { type: "text", autocomplete: "off", spellcheck: "false", autocapitalize: "off" };
  const control = isSearched
    ? make("input", { ...plain, list: suggestions(form, list, choices) })
    : make("select", {}, ...options(choices, raw));
  startWith(control, raw);
  const about = make("p", { class: "add-about", id: freshId() });
  const explain = () => {
    const [, title, means] = choices.find(([id]) => id === control.value) ?? [];
    about.textContent = (isSearched ? title : means) ?? "";
  };
  control.addEventListener("change", () => {
    const typed = control.value.trim().toLowerCase();
    const titled = choices.find(([, title]) => title.toLowerCase() === typed);
    if (isSearched && titled) {
      control.value = titled[0]; // someone who typed the name that coaches say
    }
  });
  control.addEventListener("input", explain);
  control.addEventListener("change", explain);
  explain();
  const slot = fieldSlot(place, control, about);
  control.setAttribute("aria-describedby", `${control.getAttribute("aria-describedby")} ${about.id}`);
  return leaf(slot, control, (typed) => typed);
}

/** By sort of shape.
 * @type {Record<string, Maker>} */
export const EDITORS = { text, number, time, day, yes, word };
