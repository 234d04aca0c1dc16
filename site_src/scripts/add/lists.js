// Lists: items to add, remove and move, by pointer or keyboard; and pairs of a free name and a value.

import { make } from "../lib/dom.js";
import { label as labelled, open as openAt, shape as shapeWith } from "./shape.js";
import { button, focusable, groupSlot } from "./slots.js";

/**
 * @typedef {import("./editor.js").Editor} Editor
 * @typedef {import("./editor.js").Form} Form
 * @typedef {import("./editor.js").Maker} Maker
 * @typedef {import("./schema.js").Piece} Piece
 * @typedef {import("./shape.js").Shape} Shape
 */

/** One row of a list, with its buttons. */
class Row {
  /**
   * @param {Rows} rows
   * @param {Editor} child
   */
  constructor(rows, child) {
    this.child = child;
    this.up = button("Up", "", () => rows.move(this, -1));
    this.down = button("Down", "", () => rows.move(this, 1));
    this.remove = button("Remove", "", () => rows.remove(this));
    const tools = make("div", { class: "add-row-tools" }, this.up, this.down, this.remove);
    this.element = make("li", { class: "add-row" }, child.element, ...(rows.isFixed ? [] : [tools]));
  }
}

class Rows {
  /**
   * @param {Form} form
   * @param {Shape} shape
   * @param {string} label of the list
   */
  constructor(form, shape, label) {
    this.form = form;
    this.shape = shape;
    this.label = label;
    /** @type {Row[]} */
    this.all = [];
    this.element = make("ol", { class: "add-rows" });
    this.isFixed = shape.piece.minItems !== undefined && shape.piece.minItems === shape.piece.maxItems;
    this.more = button("Add one", `to ${label}`, () => {
      const row = this.insert(undefined);
      form.changed();
      focusable(row.element)?.focus();
    });
  }

  /** @param {unknown} raw */
  insert(raw) {
    const place = { label: "", of: this.label, hint: "", needed: true };
    const row = new Row(this, this.form.editor(this.form, this.shape.item(), raw, place));
    this.all.push(row);
    this.element.append(row.element);
    this.number();
    return row;
  }

  /** Write numbers into labels and buttons, and close what leads nowhere. */
  number() {
    for (const [index, row] of this.all.entries()) {
      row.child.slot.rename(String(index + 1));
      row.up.disabled = index === 0;
      row.down.disabled = index === this.all.length - 1;
      for (const tool of [row.up, row.down, row.remove]) {
        const rest = make("span", { class: "unseen" }, `: number ${index + 1} of ${this.label}`);
        tool.replaceChildren(tool.firstChild ?? "", rest);
      }
    }
  }

  /**
   * @param {Row} row
   * @param {number} by
   */
  move(row, by) {
    const from = this.all.indexOf(row);
    this.all.splice(from, 1);
    this.all.splice(from + by, 0, row);
    this.element.insertBefore(row.element, this.all[from + by + 1]?.element ?? null);
    this.number();
    this.form.changed();
    this.form.say(`Number ${from + 1} is now number ${from + by + 1} of ${this.label}.`);
    const [same, other] = by < 0 ? [row.up, row.down] : [row.down, row.up];
    (same.disabled ? other : same).focus();
  }

  /** @param {Row} row */
  remove(row) {
    const from = this.all.indexOf(row);
    this.all.splice(from, 1);
    row.element.remove();
    this.number();
    this.form.changed();
    this.form.say(`Number ${from + 1} of ${this.label} is removed.`);
    (this.all[from]?.remove ?? this.all.at(-1)?.remove ?? this.more).focus();
  }
}

/** @type {Maker} */
function list(form, shape, raw, place) {
  const rows = new Rows(form, shape, place.label);
  const slot = groupSlot(place, rows.element, ...(rows.isFixed ? [] : [rows.more]));
  const start = Array.isArray(raw) ? raw : [];
  const { minItems = 0 } = shape.piece;
  const filled = rows.isFixed ? Array.from({ length: minItems }, (_, index) => start[index]) : start;
  const blanks = Array.from({ length: place.needed ? minItems : 0 });
  (filled.length || Array.isArray(raw) ? filled : blanks).forEach((item) => rows.insert(item));
  /** The rows in the order in which an entry holds them: a list that has an order of its own is put into it. */
  const ordered = () => {
    const all = rows.all.map((row) => ({ row, value: row.child.value() }));
    const key = (/** @type {{value: unknown}} */ { value }) => String(value ?? "\uffff"); // blanks last
    return shape.piece.sorted ? all.sort((one, other) => (key(one) < key(other) ? -1 : 1)) : all;
  };
  const isObjects = shape.item().sort === "fields";
  return {
    slot,
    element: slot.element,
    value() {
      const values = ordered().map(({ value }) => value);
      return values.every((value) => value === undefined) ? undefined : values.map((value) => value ?? (isObjects ? {} : null));
    },
    raw: () => rows.all.map((row) => row.child.raw()),
    locate: ([index, ...rest]) => ordered()[Number(index)]?.row.child.locate(rest) ?? slot,
    refresh() {
      rows.all.forEach(({ child }) => {
        child.slot.setNeeded(true);
        child.refresh(child.value());
      });
      rows.more.disabled = rows.all.length >= (shape.piece.maxItems ?? Infinity);
    },
  };
}

const NAME = { type: "string", title: "name", description: "The name." };

/** @type {Maker} */
function pairs(form, shape, raw, place) {
  const value = shape.item();
  const { title = NAME.title, description = NAME.description } = openAt(form.root, shape.piece.propertyNames ?? {});
  const row = shapeWith("fields", { required: ["name", "value"] }, {
    keys: ["name", "value"],
    titles: { name: labelled(title), value: value.sort === "fields" ? "" : labelled(value.piece.title ?? "value") },
    field: (key) => (key === "name" ? shapeWith("text", { ...NAME, description }) : value),
  });
  const start = Array.isArray(raw) ? raw : [undefined];
  const inner = list(form, shapeWith("list", shape.piece, { item: () => row }), start, place);
  /** @type {() => {name: string, value?: unknown}[]} */
  const named = () => (inner.value() ?? []).filter((/** @type {{name?: string}} */ { name }) => name !== undefined);
  return {
    ...inner,
    value: () => (named().length ? Object.fromEntries(named().map(({ name, value: own = null }) => [name, own])) : undefined),
    locate([name, ...rest]) {
      const number = named().findIndex((pair) => pair.name === name);
      const isName = !rest.length && value.sort === "fields"; // what has no frame of its own is told by its name
      return inner.locate(name === undefined ? [] : isName ? [number, "name"] : [number, "value", ...rest]);
    },
  };
}

export { list, pairs };
