// Fields side by side, and a choice between forms of a value. Each gives its value, its draft, and the place of a path in it.

import { make } from "../lib/dom.js";
import { isObject } from "./schema.js";
import { choicesOf } from "./leaves.js";
import { excluded, label, needed } from "./shape.js";
import { button, focusable, freshId, groupSlot } from "./slots.js";

/**
 * @typedef {import("./editor.js").Editor} Editor
 * @typedef {import("./editor.js").Form} Form
 * @typedef {import("./editor.js").Maker} Maker
 * @typedef {import("./shape.js").Shape} Shape
 * @typedef {import("./shape.js").Variant} Variant
 */

/**
 * The label of a field: the title of the word that it is named by, where it is, else its key in words.
 * @param {Form} form
 * @param {Shape} shape
 * @param {string} key
 */
function labelOf(form, shape, key) {
  if (Object.hasOwn(shape.titles, key)) {
    return shape.titles[key];
  }
  const list = shape.piece.propertyNames ? choicesOf(form, shape.piece.propertyNames) : [];
  return list.find(([id]) => id === key)?.[1] ?? label(key);
}

/** @type {Maker} */
function fields(form, shape, raw, place) {
  const always = needed(form.root, shape.piece, {});
  const known = isObject(raw) ? raw : {};
  const isByWord = Boolean(shape.piece.propertyNames);
  const children = new Map(shape.keys.map((key) => {
    const field = shape.field(key);
    const hint = (!isByWord && field.piece.description) || "";
    const name = labelOf(form, shape, key);
    const own = { label: name, hint, needed: always.includes(key), marksOptional: !isByWord, bare: !name };
    return /** @type {[string, Editor]} */ ([key, form.editor(form, field, known[key], own)]);
  }));
  const { seldom = [] } = shape.piece;
  /** @type {(keys: string[]) => HTMLElement[]} */
  const elements = (keys) => keys.flatMap((key) => children.get(key)?.element ?? []);
  const often = elements(shape.keys.filter((key) => !seldom.includes(key)));
  const others = shape.keys.filter((key) => seldom.includes(key));
  const names = others.map((key) => labelOf(form, shape, key).toLowerCase()).join(", ");
  const more = make("details", { class: "add-more" }, make("summary", {}, make("span", {}, make("strong", {}, "More: "), names)), make("div", { class: "add-fields" }, ...elements(others)));
  more.open = others.some((key) => children.get(key)?.value() !== undefined);
  const body = make("div", { class: isByWord ? "add-fields is-narrow" : "add-fields" }, ...often, ...(others.length ? [more] : []));
  const slot = groupSlot(place, body);
  return {
    slot,
    element: slot.element,
    value() {
      const found = [...children].map(([key, child]) => [key, child.value()]).filter(([, value]) => value !== undefined);
      return found.length ? Object.fromEntries(found) : undefined;
    },
    raw: () => Object.fromEntries([...children].map(([key, child]) => [key, child.raw()])),
    locate: ([key, ...rest]) => children.get(String(key))?.locate(rest) ?? slot,
    refresh(value = {}) {
      const wanted = needed(form.root, shape.piece, value);
      const barred = excluded(form.root, shape.piece, value);
      for (const [key, child] of children) {
        child.slot.setNeeded(wanted.includes(key));
        child.element.hidden = barred.includes(key) && value[key] === undefined;
        child.refresh(value[key]);
      }
    },
  };
}

/** A group that need not be there: a button until it is wanted.
 * @type {Maker} */
function optional(form, shape, raw, place) {
  const box = make("div", { class: "add-optional-group" });
  const open = button("Add", place.label.toLowerCase(), () => show({}, true));
  const closed = groupSlot(place, open);
  /** @type {Editor | null} */
  let inner = null;

  function hide() {
    inner = null;
    box.replaceChildren(closed.element);
  }
  /**
   * @param {unknown} draft
   * @param {boolean} isNew
   */
  function show(draft, isNew) {
    const shown = form.editor(form, shape, draft, { ...place, needed: true });
    inner = shown;
    shown.element.append(button("Take out", place.label.toLowerCase(), () => {
      hide();
      form.changed();
      open.focus();
    }));
    box.replaceChildren(shown.element);
    if (isNew) {
      form.changed();
      focusable(shown.element)?.focus();
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

/** Whether a draft is of a form.
 * @type {(raw: unknown, variant: Variant) => boolean} */
const fits = (raw, { marks, type }) =>
  isObject(raw)
    ? type === "object" || (marks.length > 0 && marks.every((mark) => Object.hasOwn(raw, mark)))
    : type === "array" ? Array.isArray(raw) : type === "string" && typeof raw === "string";

/**
 * The form that a draft is of: by its mark, else the one without a mark, else the first.
 * @param {Variant[]} variants
 * @param {unknown} raw
 */
function variantOf(variants, raw) {
  const plain = variants.find(({ key, type }) => key === null && type === null);
  return variants.find((variant) => fits(raw, variant)) ?? plain ?? variants[0];
}

/** @type {Maker} */
function choice(form, shape, raw, place) {
  const { variants } = shape;
  const kept = new Map();
  const asked = make("span", { class: "unseen", id: freshId() }, "in which form");
  const select = make("select");
  const body = make("div", { class: "add-form" });
  const slot = groupSlot(place, make("div", {}, asked, select, body));
  slot.name.id = freshId();
  select.setAttribute("aria-labelledby", `${slot.name.id} ${asked.id}`);
  let chosen = variantOf(variants, raw);
  let inner = show(chosen.inner && isObject(raw) ? raw[String(chosen.key)] : raw);

  /** @param {unknown} draft */
  function show(draft) {
    const bare = ["fields", "pairs"].includes(chosen.shape.sort);
    const hint = (!bare && chosen.shape.piece.description) || "";
    const shown = form.editor(form, chosen.shape, draft, { label: label(chosen.name), hint, needed: true, bare });
    body.replaceChildren(shown.element);
    return shown;
  }
  select.append(...variants.map(({ name }, number) => make("option", { value: String(number) }, name)));
  select.addEventListener("change", () => {
    kept.set(chosen, inner.raw());
    chosen = variants[Number(select.value)];
    inner = show(kept.get(chosen));
  });
  select.value = String(variants.indexOf(chosen));
  slot.control = select;
  return {
    slot,
    element: slot.element,
    value() {
      const value = inner.value();
      return value === undefined || !chosen.inner ? value : { [String(chosen.key)]: value };
    },
    raw: () => (chosen.inner ? { [String(chosen.key)]: inner.raw() } : inner.raw()),
    locate(path) {
      const rest = chosen.inner ? path.slice(1) : path;
      const isTyped = !["fields", "list", "pairs", "choice"].includes(chosen.shape.sort) && inner.value() !== undefined;
      if (!path.length && !chosen.inner && isTyped) {
        return inner.locate(rest); // what is wrong is what was typed there
      }
      return path.length && (!chosen.inner || path[0] === chosen.key) ? inner.locate(rest) : slot;
    },
    refresh: (value) => inner.refresh(chosen.inner ? value?.[String(chosen.key)] : value),
  };
}

export { choice, fields, optional };
