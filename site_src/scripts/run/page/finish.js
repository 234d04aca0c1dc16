// The end: what was done, as text to share and as the entry that the catalogue keeps. Without results.

import { make, one, root } from "../../lib/dom.js";
import { asEntry, asText } from "../done.js";
import { button, held } from "./press.js";
import { release } from "./wake.js";

/** @typedef {import("./app.js").App} App */
/** @typedef {import("./session.js").Session} Session */

/** @param {App} app */
export function finish(app) {
  const session = /** @type {Session} */ (app.session);
  const isOver = session.now().crews.every(({ mode }) => mode === "over");
  if (!isOver && session.role === "lead") {
    app.show({
      title: "End the run?", nodes: [make("p", {}, "What is left is not done. Press for 0.6 s."), held("run-offer", [make("strong", {}, "End it here")], () => {
        app.change({ do: "end" });
        finish(app);
      })],
    });
    return;
  }
  const heads = make("input", { type: "number", id: "run-heads", min: "1", max: "200", inputmode: "numeric" });
  const note = make("textarea", { id: "run-note", rows: "2" });
  const [text, yaml, file] = [make("pre", { class: "run-text", tabindex: "0" }), make("pre", { class: "run-text", tabindex: "0" }), make("p", { class: "quiet" })];
  const asked = () => ({ ...(heads.valueAsNumber > 0 ? { heads: heads.valueAsNumber } : {}), ...(note.value.trim() ? { note: note.value.trim() } : {}) });
  let times = 0;
  const tell = async () => {
    const time = ++times;
    const state = session.now();
    text.textContent = asText(state, session.run, asked());
    const made = asEntry(state, session.run, asked());
    yaml.hidden = made === null;
    file.textContent = made ? `The entry for the catalogue, ${made.file}:` : session.data.kind === "practice" ? "With the number of swimmers, it is also written as an entry for the catalogue." : "";
    const written = made ? await asYaml(made.entry) : "";
    if (time === times) { // else something was typed meanwhile
      yaml.textContent = written;
    }
  };
  heads.addEventListener("input", tell);
  note.addEventListener("input", tell);
  tell();
  app.show({
    title: "What was done",
    nodes: [
      make("label", { for: "run-heads" }, "Swimmers "), heads, make("label", { for: "run-note" }, "A note, no names"), note,
      button("run-offer", ["Share"], () => share(`${text.textContent}\n\n${yaml.textContent}`.trim(), app)), text, file, yaml,
    ],
    buttons: [button("run-button", ["Close"], () => leave(app))],
  });
}

/** As YAML, by a script that comes only when it is wanted.
 * @param {Record<string, unknown>} entry
 * @returns {Promise<string>} */
async function asYaml(entry) {
  const asking = { entry, text: "" };
  if (!document.documentElement.dataset.writesEntries) {
    const script = make("script", { src: new URL(one("[data-run]").dataset.entry ?? "", root).href });
    await new Promise((done) => {
      script.addEventListener("load", done);
      script.addEventListener("error", done);
      document.head.append(script);
    });
  }
  document.dispatchEvent(new CustomEvent("deck-almanac:entry", { detail: asking }));
  return asking.text;
}

/** @param {string} text
 * @param {App} app */
async function share(text, app) {
  const canShare = "share" in navigator;
  try {
    await (canShare ? navigator.share({ text }) : navigator.clipboard.writeText(text));
    app.marks.textContent = canShare ? "" : "copied";
  } catch {
    // nothing was chosen, or this browser shares nothing: the text stands there to be copied
  }
}

/** @param {App} app */
function leave(app) {
  const session = /** @type {Session} */ (app.session);
  session.keep(false);
  release();
  location.assign(new URL(session.data.page, root));
}
