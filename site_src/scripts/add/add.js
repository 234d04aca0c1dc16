// "Add an entry" without Git: a form from the published schema of a kind, checked as one types, shown as file and as card.

import { make, root as siteRoot } from "../lib/dom.js";
import { showCard } from "./card.js";
import * as drafts from "./drafts.js";
import { explain, withNotes } from "./explain.js";
import { fileFields, showNear, showProposal } from "./file.js";
import { editorOf } from "./editor.js";
import * as identity from "./identity.js";
import { limitFindings } from "./limits.js";
import * as send from "./send.js";
import * as shapes from "./shape.js";
import { button, touch } from "./slots.js";
import { showAll, summarise } from "./summary.js";
import { toYaml } from "./yaml.js";

const page = document.querySelector("[data-add]");
const at = (name) => page.querySelector(`[data-${name}]`);
const WAIT_MS = 200;
let names = null;
let now = null; // what is being written: {kind, root, editor, file, fresh, idIsOwn, yaml, place}
let waiting = 0;

async function fetched(file) {
  const response = await fetch(new URL(`data/v1/${file}`, siteRoot));
  if (!response.ok) {
    throw new Error(`${file}: ${response.status}`);
  }
  return response.json();
}

const say = (text) => { at("told").textContent = text; };
const day = (date) => [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((part) => String(part).padStart(2, "0")).join("-");

/** What a new entry begins with: a review today and again in a year, where the kind needs one. */
function beginning({ required }) {
  const today = new Date();
  const again = new Date(today.getFullYear() + 1, today.getMonth(), Math.min(today.getDate(), 28));
  return required.includes("review") ? { review: { on: day(today), again: day(again) } } : {};
}

const idFrom = ({ title = "" }) => identity.slug(title).slice(0, names.limits.id).replace(/-$/, "");

function build(kind, schema, kept) {
  const root = withNotes(schema, names.kinds[kind].notes);
  const families = names.families.map((family) => make("option", { value: family }));
  const lists = make("div", { hidden: "" }, make("datalist", { id: "add-list-families" }, ...families));
  const form = { root, names, lists, changed, say, editor: editorOf };
  const place = { label: names.kinds[kind].title, needed: true, bare: true };
  const editor = form.editor(form, shapes.of(root, root.else), kept?.entry ?? beginning(root.else), place);
  const file = fileFields(at("file"), kind, kept ?? { id: "", family: "" }, names);
  at("fields").replaceChildren(editor.element, lists);
  now = { kind, root, editor, file, fresh: kept ? "" : JSON.stringify(editor.raw()) };
  now.idIsOwn = Boolean(kept?.id) && kept.id !== idFrom(editor.value() ?? {});
  at("draft-told").textContent = kept ? `Your draft of ${drafts.when(kept)} is here, as you left it on this device.` : "";
  at("draft-kept").textContent = "";
  at("draft").hidden = at("file").hidden = at("result").hidden = false;
  update();
}

function update() {
  clearTimeout(waiting);
  waiting = 0;
  at("result").removeAttribute("aria-busy");
  const { kind, root, editor, file } = now;
  const entry = editor.value() ?? {};
  if (!now.idIsOwn) {
    file.idControl.value = idFrom(entry);
  }
  editor.refresh(entry);
  now.yaml = toYaml(entry);
  now.place = file.place();
  tell(editor, [...limitFindings(entry, now.yaml, names.limits), ...explain(root, entry, names)], file.findings());
  at("path").textContent = now.place ? `${now.place.folder}/${now.place.name}` : "";
  at("yaml").textContent = now.yaml;
  showCard(at("card"), kind, entry, names);
  showNear(at("near"), kind, file.id(), names);
  showProposal(page, now.place, now.yaml, names);
  keep();
}

function tell(editor, found, ofFile) {
  const placed = found.map((finding) => ({ ...finding, slot: editor.locate(finding.at) }));
  const { number, line } = summarise(page, at("form"), [...placed, ...ofFile]);
  at("unsound").hidden = !number;
  if (at("count").textContent !== line) {
    at("count").textContent = line;
  }
}

function draft() {
  return { id: now.file.id(), family: now.file.family(), entry: now.editor.raw() };
}

function keep() {
  if (JSON.stringify(now.editor.raw()) !== now.fresh) {
    now.fresh = "";
    const isKept = drafts.keep(now.kind, draft());
    at("draft-kept").textContent = isKept ? "Kept on this device as you type." : "This browser keeps no drafts: copy the text before you close the page.";
  }
  at("discard").hidden = now.fresh !== "";
}

/** Something was typed: what follows from it comes in a moment, when the typing rests. */
function changed() {
  clearTimeout(waiting);
  at("result").setAttribute("aria-busy", "true");
  waiting = setTimeout(update, WAIT_MS);
}

async function open(kind) {
  try {
    names ??= await fetched("form.json");
    const schema = await fetched(`schema/${kind}.json`);
    build(kind, schema, drafts.read(kind));
    say("");
  } catch (problem) {
    say(`The form could not be made: ${problem.message}. It needs the site from its server; with no signal, try again later.`);
  }
}

function choose(kind) {
  if (now && waiting) {
    update();
  }
  page.querySelectorAll("[name=kind]").forEach((input) => { input.checked = input.value === kind; });
  history.replaceState(null, "", `#${kind}`);
  open(kind);
}

function discard() {
  const { kind } = now;
  const last = draft();
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

async function copy() {
  update();
  showAll(at("form"));
  const done = await send.copy(now.yaml, at("yaml"));
  say(done ? "Copied." : "This browser does not let the page copy: the text is marked, copy it with the keyboard or a long press.");
}

function download() {
  update();
  showAll(at("form"));
  const name = `${now.place?.name.split("/").at(-1) ?? "entry.yml"}`;
  send.download(now.yaml, name);
  say(`Downloaded as ${name}.`);
}

function listen() {
  const form = at("form");
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", ({ target }) => {
    if (target.name === "kind") {
      return;
    }
    if (target === now?.file.idControl) {
      now.idIsOwn = target.value.trim() !== "";
    }
    changed();
  });
  form.addEventListener("change", ({ target }) => (target.name === "kind" ? choose(target.value) : changed()));
  form.addEventListener("focusout", ({ target }) => {
    if (now && target.matches("input, select, textarea") && target.name !== "kind") {
      touch(target);
      changed();
    }
  });
  at("copy").addEventListener("click", copy);
  at("download").addEventListener("click", download);
  at("propose").addEventListener("click", update);
  at("discard").addEventListener("click", discard);
  window.addEventListener("pagehide", () => now && waiting && update());
  window.addEventListener("hashchange", start);
}

function start() {
  const kind = location.hash.slice(1);
  if (page.querySelector(`[name=kind][value="${CSS.escape(kind)}"]`)) {
    choose(kind);
  }
}

page.hidden = false;
document.querySelector("[data-add-plain]").hidden = true;
listen();
start();
