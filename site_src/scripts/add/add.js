// "Add an entry" without Git: a form from the published schema of a kind, checked as one types, shown as file and as card.

import { all, make, one, root as siteRoot } from "../lib/dom.js";
import { beginning, besideStub, idFrom } from "./beginning.js";
import { showCard } from "./card.js";
import * as drafts from "./drafts.js";
import { editorOf } from "./editor.js";
import { fileFields, showNear, showProposal } from "./file.js";
import { findingsOf } from "./findings.js";
import { copy, download } from "./hand-over.js";
import { limitFindings } from "./limits.js";
import { at, page, say } from "./page.js";
import { withNotes } from "./schema.js";
import { shapeOf } from "./shape.js";
import { button, touch } from "./slots.js";
import { summarise } from "./summary.js";
import { toYaml } from "./yaml.js";

/**
 * @typedef {import("./names.js").Names} Names
 * @typedef {import("./schema.js").Piece} Piece
 *
 * @typedef {object} Writing what is being written
 * @property {Names} names
 * @property {string} kind
 * @property {Piece} root the schema of the kind, with its notes
 * @property {import("./editor.js").Editor} editor
 * @property {ReturnType<typeof fileFields>} file
 * @property {string} fresh the draft of an untouched form; "" once something has been filled in
 * @property {boolean} idIsOwn whether the id was typed, and is not made from the title
 * @property {string} yaml
 * @property {import("./send.js").FilePlace | null} place
 */

const WAIT_MS = 200;
/** @type {Names | null} */
let known = null;
/** @type {Writing | null} */
let now = null;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let waiting;

/** @param {string} file */
async function fetched(file) {
  const response = await fetch(new URL(`data/v1/${file}`, siteRoot));
  if (!response.ok) {
    throw new Error(`${file}: ${response.status}`);
  }
  return response.json();
}

/**
 * Make the form of a kind, filled with the draft that is kept.
 * @param {Names} names
 * @param {string} kind
 * @param {Piece} schema
 * @param {drafts.Kept | null} kept
 */
function build(names, kind, schema, kept) {
  const root = withNotes(schema, names.kinds[kind].notes);
  const own = besideStub(root);
  const families = names.families.map((family) => make("option", { value: family }));
  const lists = make("div", { hidden: "" }, make("datalist", { id: "add-list-families" }, ...families));
  const form = { root, names, lists, changed, say, editor: editorOf };
  const place = { label: names.kinds[kind].title, needed: true, bare: true };
  const editor = editorOf(form, shapeOf(root, own), kept?.entry ?? beginning(own), place);
  const file = fileFields(at("file"), kind, kept ?? { id: "", family: "" }, names);
  at("fields").replaceChildren(editor.element, lists);
  const idIsOwn = Boolean(kept?.id) && kept?.id !== idFrom(editor.value() ?? {}, names);
  const fresh = kept ? "" : JSON.stringify(editor.raw());
  now = { names, kind, root, editor, file, fresh, idIsOwn, yaml: "", place: null };
  const when = kept && drafts.when(kept);
  at("draft-told").textContent = kept ? `Your draft of ${when} is here, as you left it on this device.` : "";
  at("draft-kept").textContent = "";
  at("draft").hidden = at("file").hidden = at("result").hidden = false;
  update(now);
}

/** Show what follows from what has been typed.
 * @param {Writing} writing */
function update(writing) {
  clearTimeout(waiting);
  waiting = undefined;
  at("result").removeAttribute("aria-busy");
  const { names, kind, root, editor, file } = writing;
  const entry = editor.value() ?? {};
  if (!writing.idIsOwn) {
    file.idControl.value = idFrom(entry, names);
  }
  editor.refresh(entry);
  writing.yaml = toYaml(entry);
  writing.place = file.place();
  tell(writing, [...limitFindings(entry, writing.yaml, names.limits), ...findingsOf(root, entry, names)]);
  at("path").textContent = writing.place ? `${writing.place.folder}/${writing.place.name}` : "";
  at("yaml").textContent = writing.yaml;
  showCard(at("card"), kind, entry, names);
  showNear(at("near"), kind, file.id(), names);
  showProposal(page, writing.place, writing.yaml, names);
  keep(writing);
}

/**
 * @param {Writing} writing
 * @param {import("./finding.js").Finding[]} found
 */
function tell({ editor, file }, found) {
  const placed = found.map((finding) => ({ ...finding, slot: editor.locate(finding.at) }));
  const { number, line } = summarise(page, at("form"), [...placed, ...file.findings()]);
  at("unsound").hidden = !number;
  if (at("count").textContent !== line) {
    at("count").textContent = line;
  }
}

/** @param {Writing} writing */
const draft = ({ editor, file }) => ({ id: file.id(), family: file.family(), entry: editor.raw() });

/** @param {Writing} writing */
function keep(writing) {
  if (JSON.stringify(writing.editor.raw()) !== writing.fresh) {
    writing.fresh = "";
    const isKept = drafts.keep(writing.kind, draft(writing));
    at("draft-kept").textContent = isKept
      ? "Kept on this device as you type."
      : "This browser keeps no drafts: copy the text before you close the page.";
  }
  at("discard").hidden = writing.fresh !== "";
}

/** Something was typed: what follows from it comes in a moment, when the typing rests. */
function changed() {
  clearTimeout(waiting);
  at("result").setAttribute("aria-busy", "true");
  waiting = setTimeout(catchUp, WAIT_MS);
}

/** Show at once what follows from the last typing. */
function catchUp() {
  if (now) {
    update(now);
  }
}

let opened = 0; // how often a form was asked for: what comes late makes none

/** @param {string} kind */
async function open(kind) {
  opened += 1;
  const own = opened;
  try {
    known ??= /** @type {Names} */ (await fetched("form.json"));
    const schema = await fetched(`schema/${kind}.json`);
    if (own === opened) {
      build(known, kind, schema, drafts.read(kind));
      say("");
    }
  } catch (problem) {
    const why = problem instanceof Error ? problem.message : String(problem);
    say(`The form could not be made: ${why}. It needs the site from its server; with no signal, try again later.`);
  }
}

/** @param {string} kind */
function choose(kind) {
  if (waiting) {
    catchUp();
  }
  for (const input of /** @type {HTMLInputElement[]} */ (all("[name=kind]", page))) {
    input.checked = input.value === kind;
  }
  history.replaceState(null, "", `#${kind}`);
  open(kind);
}

/** @param {Writing} writing */
function discard(writing) {
  const { kind } = writing;
  const last = draft(writing);
  clearTimeout(waiting);
  drafts.discard(kind);
  now = null;
  open(kind).then(() => {
    const back = button("Bring it back", "", () => {
      drafts.keep(kind, last);
      open(kind);
    });
    at("draft-told").replaceChildren("The draft is gone. ", back);
    back.focus();
  });
}

/** Call `action` with what is being written, when a button is pressed.
 * @type {(name: string, action: (writing: Writing) => void) => void} */
const onPress = (name, action) => at(name).addEventListener("click", () => now && action(now));

function listen() {
  const form = at("form");
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", ({ target }) => {
    const control = /** @type {HTMLInputElement} */ (target);
    if (control.name === "kind") {
      return;
    }
    if (now && control === now.file.idControl) {
      now.idIsOwn = control.value.trim() !== "";
    }
    changed();
  });
  form.addEventListener("change", ({ target }) => {
    const control = /** @type {HTMLInputElement} */ (target);
    return control.name === "kind" ? choose(control.value) : changed();
  });
  form.addEventListener("focusout", ({ target }) => {
    const control = /** @type {HTMLInputElement} */ (target);
    if (now && control.matches("input, select, textarea") && control.name !== "kind") {
      touch(control);
      changed();
    }
  });
  onPress("copy", (writing) => {
    update(writing);
    copy(writing);
  });
  onPress("download", (writing) => {
    update(writing);
    download(writing);
  });
  onPress("propose", update);
  onPress("discard", discard);
  window.addEventListener("pagehide", () => waiting && catchUp());
  window.addEventListener("hashchange", start);
}

function start() {
  const kind = location.hash.slice(1);
  if (page.querySelector(`[name=kind][value="${CSS.escape(kind)}"]`)) {
    choose(kind);
  }
}

page.hidden = false;
one("[data-add-plain]").hidden = true;
listen();
start();
