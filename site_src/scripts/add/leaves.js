// What is typed or chosen in one place: text, a number, a time, a day, a word or id of a list, yes. Each gives its value as an
// entry holds it (nothing where nothing is filled in), and what was typed, for the draft.

import { make } from "../lib/dom.js";
import { fieldSlot, freshId } from "./slots.js";

const NUMBER = /^[-+]?(0|[1-9][0-9]*)(\.[0-9]+)?$/;
const LONGEST_NUMBER = 15;
const MOST_IN_SELECT = 24;
const LONGEST_NAME = 200;
const SIDE_BY_SIDE = 30; // a text of more characters takes the whole width

/** Text without its outer blanks, and without halves of characters. */
const tidy = (text) => text.replace(/\p{Cs}/gu, "\ufffd").trim();

function numberOr(text) {
  return NUMBER.test(text) && text.length <= LONGEST_NUMBER ? Number(text) : text;
}

/** An editor of one control. `read` makes the value of what was typed. */
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

const startWith = (control, raw) => {
  control.value = typeof raw === "string" ? raw : "";
};

function lengths({ minLength, maxLength }) {
  return maxLength === undefined ? "" : ` ${minLength ?? 0} to ${maxLength} characters.`;
}

function counter(control, { maxLength }) {
  const count = make("span", { class: "add-count", "aria-hidden": "true" });
  const show = () => {
    count.textContent = control.value ? `${[...tidy(control.value)].length} of ${maxLength}` : "";
  };
  control.addEventListener("input", show);
  queueMicrotask(show);
  return count;
}

function text(form, shape, raw, place) {
  const { piece, isLong, isLine } = shape;
  const control = isLong ? make("textarea", { rows: isLine ? "2" : "4" }) : make("input", { type: "text", autocomplete: "off" });
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
  const hint = `${place.hint ?? ""}${/characters/.test(place.hint) ? "" : lengths(piece)}`.trim();
  const slot = fieldSlot({ ...place, hint }, control, ...(piece.maxLength ? [counter(control, piece)] : []));
  slot.element.classList.toggle("is-long", isLong || piece.maxLength > SIDE_BY_SIDE);
  return leaf(slot, control, (typed) => typed);
}

function number(form, shape, raw, place) {
  const control = make("input", { type: "text", autocomplete: "off", inputmode: shape.piece.type === "integer" ? "numeric" : "decimal", class: "is-short" });
  startWith(control, raw);
  return leaf(fieldSlot(place, control), control, numberOr);
}

function time(form, shape, raw, place) {
  const control = make("input", { type: "text", autocomplete: "off", class: "is-short" });
  startWith(control, raw);
  const hint = /m:ss/.test(place.hint) ? place.hint : `${place.hint ?? ""} m:ss, say 1:15, or a number of seconds.`.trim();
  return leaf(fieldSlot({ ...place, hint }, control), control, numberOr);
}

function day(form, shape, raw, place) {
  const control = make("input", { type: "date", class: "is-short" });
  startWith(control, raw);
  return leaf(fieldSlot(place, control), control, (typed) => typed);
}

function yes(form, shape, raw, place) {
  const control = make("input", { type: "checkbox" });
  control.checked = raw === true;
  const slot = fieldSlot(place, control);
  slot.element.classList.add("is-yes");
  return { ...leaf(slot, control), value: () => (control.checked ? true : undefined), raw: () => control.checked };
}

/** The words of a list: each with its id, its title, and what there is to say about it. */
export function choicesOf(form, { vocabulary, reference, enum: ids }) {
  if (vocabulary) {
    return form.names.vocabulary[vocabulary] ?? [];
  }
  return reference ? (form.names.reference[reference] ?? []).map(([id, title]) => [id, title, ""]) : ids.map((id) => [String(id), String(id), ""]);
}

function options(choices, raw) {
  const known = choices.map(([id, title]) => make("option", { value: id }, title));
  const isUnknown = typeof raw === "string" && raw && !choices.some(([id]) => id === raw);
  return [make("option", { value: "" }, "Choose"), ...known, ...(isUnknown ? [make("option", { value: raw }, raw)] : [])];
}

/** One list of suggestions for all fields that take ids of a kind. */
function suggestions(form, list, choices) {
  const id = `add-list-${list}`;
  if (!form.lists.querySelector(`#${id}`)) {
    form.lists.append(make("datalist", { id }, ...choices.map(([value, title]) => make("option", { value }, title))));
  }
  return id;
}

function word(form, shape, raw, place) {
  const choices = choicesOf(form, shape.piece);
  const list = shape.piece.reference ?? shape.piece.vocabulary;
  const isSearched = Boolean(list) && choices.length > MOST_IN_SELECT;
  const control = isSearched
    ? make("input", { type: "text", autocomplete: "off", spellcheck: "false", autocapitalize: "off", list: suggestions(form, list, choices) })
    : make("select", {}, ...options(choices, raw));
  startWith(control, raw);
  const about = make("p", { class: "add-about", id: freshId() });
  const explain = () => {
    const [, title, means] = choices.find(([id]) => id === control.value) ?? [];
    about.textContent = (isSearched ? title : means) ?? "";
  };
  control.addEventListener("change", () => {
    const titled = choices.find(([, title]) => title.toLowerCase() === control.value.trim().toLowerCase());
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

export { text, number, time, day, yes, word };
