// Lists: items to add, remove and move, by pointer or keyboard; and pairs of a free name and a value.

import { make } from "../lib/dom.js";
import { button, groupSlot } from "./slots.js";

/** How many blank items a list begins with. */
function blanks({ minItems = 0 }, isNeeded) {
  return Array.from({ length: isNeeded ? minItems : 0 });
}

class Rows {
  constructor(form, shape, place) {
    Object.assign(this, { form, shape, place, all: [], element: make("ol", { class: "add-rows" }) });
    this.isFixed = shape.piece.minItems !== undefined && shape.piece.minItems === shape.piece.maxItems;
  }

  insert(raw) {
    const place = { label: "", of: this.place.label, hint: "", needed: true };
    const child = this.form.editor(this.form, this.shape.item(), raw, place);
    const row = { child, element: make("li", { class: "add-row" }) };
    row.up = button("Up", "", () => this.move(row, -1));
    row.down = button("Down", "", () => this.move(row, 1));
    row.remove = button("Remove", "", () => this.remove(row));
    row.tools = make("div", { class: "add-row-tools" }, row.up, row.down, row.remove);
    row.element.append(child.element, ...(this.isFixed ? [] : [row.tools]));
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
      for (const button of [row.up, row.down, row.remove]) {
        button.replaceChildren(button.firstChild, make("span", { class: "unseen" }, `: number ${index + 1} of ${this.place.label}`));
      }
    }
  }

  move(row, by) {
    const from = this.all.indexOf(row);
    this.all.splice(from, 1);
    this.all.splice(from + by, 0, row);
    this.element.insertBefore(row.element, this.all[from + by + 1]?.element ?? null);
    this.number();
    this.form.changed();
    this.form.say(`Number ${from + 1} is now number ${from + by + 1} of ${this.place.label}.`);
    const [same, other] = by < 0 ? [row.up, row.down] : [row.down, row.up];
    (same.disabled ? other : same).focus();
  }

  remove(row) {
    const from = this.all.indexOf(row);
    this.all.splice(from, 1);
    row.element.remove();
    this.number();
    this.form.changed();
    this.form.say(`Number ${from + 1} of ${this.place.label} is removed.`);
    (this.all[from]?.remove ?? this.all.at(-1)?.remove ?? this.more).focus();
  }
}

function list(form, shape, raw, place) {
  const rows = new Rows(form, shape, place);
  rows.more = button("Add one", `to ${place.label}`, () => {
    const row = rows.insert(undefined);
    form.changed();
    row.element.querySelector("input, select, textarea, button").focus();
  });
  const slot = groupSlot(place, rows.element, ...(rows.isFixed ? [] : [rows.more]));
  const start = Array.isArray(raw) ? raw : [];
  const { minItems = 0 } = shape.piece;
  const filled = rows.isFixed ? Array.from({ length: minItems }, (_, index) => start[index]) : start;
  (filled.length || Array.isArray(raw) ? filled : blanks(shape.piece, place.needed)).forEach((item) => rows.insert(item));
  /** The rows in the order in which an entry holds them: a list that has an order of its own is put into it. */
  const ordered = () => {
    const all = rows.all.map((row) => ({ row, value: row.child.value() }));
    return shape.piece.sorted ? all.sort((one, other) => (String(one.value ?? "\uffff") < String(other.value ?? "\uffff") ? -1 : 1)) : all;
  };
  const isObjects = shape.item().sort === "fields";
  return {
    slot,
    element: slot.element,
    rows,
    value() {
      const values = ordered().map(({ value }) => value);
      return values.every((value) => value === undefined) ? undefined : values.map((value) => value ?? (isObjects ? {} : null));
    },
    raw: () => rows.all.map((row) => row.child.raw()),
    locate: ([index, ...rest]) => ordered()[index]?.row.child.locate(rest) ?? slot,
    refresh() {
      rows.all.forEach(({ child }) => {
        child.slot.setNeeded(true);
        child.refresh(child.value());
      });
      rows.more.disabled = rows.all.length >= (shape.piece.maxItems ?? Infinity);
    },
  };
}

const NAME = { type: "string", description: "The name." };

function pairs(form, shape, raw, place) {
  const value = shape.item();
  const row = { sort: "fields", piece: { required: ["name", "value"] }, keys: ["name", "value"] };
  row.field = (key) => (key === "name" ? { sort: "text", piece: NAME, isLong: false } : value);
  const inner = list(form, { sort: "list", piece: shape.piece, item: () => row }, Array.isArray(raw) ? raw : [undefined], place);
  const named = () => (inner.value() ?? []).filter(({ name }) => name !== undefined);
  return {
    ...inner,
    value: () => (named().length ? Object.fromEntries(named().map(({ name, value: own = null }) => [name, own])) : undefined),
    locate: ([name, ...rest]) => inner.locate(name === undefined ? [] : [named().findIndex((pair) => pair.name === name), "value", ...rest]),
  };
}

export { list, pairs };
