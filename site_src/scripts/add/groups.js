// Fields side by side, and a choice between forms of a value. Each gives its value, its draft, and the place of a path in it.

import { make } from "../lib/dom.js";
import { isObject } from "./check.js";
import { choicesOf } from "./leaves.js";
import * as shapes from "./shape.js";
import { button, freshId, groupSlot } from "./slots.js";

/** The label of a field: the title of the word that it is named by, where it is, else its key in words. */
function labelOf(form, shape, key) {
  const list = shape.piece.propertyNames ? choicesOf(form, shape.piece.propertyNames) : [];
  return list.find(([id]) => id === key)?.[1] ?? shapes.label(key);
}

function fields(form, shape, raw, place) {
  const needed = shapes.needed(form.root, shape.piece, {});
  const known = isObject(raw) ? raw : {};
  const isByWord = Boolean(shape.piece.propertyNames);
  const children = new Map(shape.keys.map((key) => {
    const field = shape.field(key);
    const hint = isByWord ? "" : field.piece.description;
    const own = { label: labelOf(form, shape, key), hint, needed: needed.includes(key), marksOptional: !isByWord };
    return [key, form.editor(form, field, known[key], own)];
  }));
  const body = make("div", { class: isByWord ? "add-fields is-narrow" : "add-fields" }, ...[...children.values()].map((child) => child.element));
  const slot = groupSlot(place, body);
  return {
    slot,
    element: slot.element,
    children,
    value() {
      const found = [...children].map(([key, child]) => [key, child.value()]).filter(([, value]) => value !== undefined);
      return found.length ? Object.fromEntries(found) : undefined;
    },
    raw: () => Object.fromEntries([...children].map(([key, child]) => [key, child.raw()])),
    locate: ([key, ...rest]) => children.get(key)?.locate(rest) ?? slot,
    refresh(value = {}) {
      const wanted = shapes.needed(form.root, shape.piece, value);
      const barred = shapes.excluded(form.root, shape.piece, value);
      for (const [key, child] of children) {
        child.slot.setNeeded(wanted.includes(key));
        child.element.hidden = barred.includes(key) && value[key] === undefined;
        child.refresh(value[key]);
      }
    },
  };
}

/** A group that need not be there: a button until it is wanted. */
function optional(form, shape, raw, place) {
  const box = make("div", { class: "add-optional-group" });
  const open = button("Add", place.label.toLowerCase(), () => show({}, true));
  const closed = groupSlot(place, open);
  let inner = null;

  function hide() {
    inner = null;
    box.replaceChildren(closed.element);
  }
  function show(draft, isNew) {
    inner = form.editor(form, shape, draft, { ...place, needed: true });
    inner.element.append(button("Take out", place.label.toLowerCase(), () => {
      hide();
      form.changed();
      open.focus();
    }));
    box.replaceChildren(inner.element);
    if (isNew) {
      form.changed();
      inner.element.querySelector("input, select, textarea, button")?.focus();
    }
  }
  if (isObject(raw) || (Array.isArray(raw) && raw.length)) {
    show(raw, false);
  } else {
    hide();
  }
  return {
    get slot() {
      return inner?.slot ?? closed;
    },
    element: box,
    value: () => inner?.value(),
    raw: () => inner?.raw() ?? null,
    locate: (path) => inner?.locate(path) ?? closed,
    refresh: (value) => inner?.refresh(value),
  };
}

const fits = (raw) => ({ key, type }) =>
  (key !== null && isObject(raw) && Object.hasOwn(raw, key)) || (type === "string" && typeof raw === "string") || (type === "object" && isObject(raw));

/** The form that a draft is of: by its mark, else the one without a mark, else the first. */
function formOf(forms, raw) {
  const plain = forms.find(({ key, type }) => key === null && type === null);
  return (raw === undefined || raw === null ? null : forms.find(fits(raw))) ?? plain ?? forms[0];
}

function choice(form, shape, raw, place) {
  const { forms } = shape;
  const kept = new Map();
  const asked = make("span", { class: "unseen", id: freshId() }, "in which form");
  const select = make("select");
  const body = make("div", { class: "add-form" });
  const slot = groupSlot(place, make("div", {}, asked, select, body));
  slot.name.id = freshId();
  select.setAttribute("aria-labelledby", `${slot.name.id} ${asked.id}`);
  let chosen = formOf(forms, raw);
  let inner = null;

  function show(draft) {
    const bare = ["fields", "pairs"].includes(chosen.shape.sort);
    inner = form.editor(form, chosen.shape, draft, { label: shapes.label(chosen.name), hint: bare ? "" : chosen.shape.piece.description, needed: true, bare });
    body.replaceChildren(inner.element);
    select.value = String(forms.indexOf(chosen));
  }
  select.append(...forms.map(({ name }, number) => make("option", { value: String(number) }, name)));
  select.addEventListener("change", () => {
    kept.set(chosen, inner.raw());
    chosen = forms[Number(select.value)];
    show(kept.get(chosen));
  });
  show(chosen.inner && isObject(raw) ? raw[chosen.key] : raw);
  slot.control = select;
  return {
    slot,
    element: slot.element,
    value() {
      const value = inner.value();
      return value === undefined || !chosen.inner ? value : { [chosen.key]: value };
    },
    raw: () => (chosen.inner ? { [chosen.key]: inner.raw() } : inner.raw()),
    locate(path) {
      const rest = chosen.inner ? path.slice(1) : path;
      return path.length && (!chosen.inner || path[0] === chosen.key) ? inner.locate(rest) : slot;
    },
    refresh: (value) => inner.refresh(chosen.inner ? value?.[chosen.key] : value),
  };
}

export { choice, fields, optional };
