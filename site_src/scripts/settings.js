// The settings page: light or dark. Lane group, pool and units are choices.js, keeping the site on a phone is offline.js.

import { all, one } from "./lib/dom.js";
import { areMarked } from "./lib/explain.js";
import { choose, chosen } from "./lib/look.js";
import { write } from "./lib/storage.js";

for (const input of /** @type {HTMLInputElement[]} */ (all("[data-look-choice] input"))) {
  input.checked = input.value === chosen();
  input.addEventListener("change", () => choose(input.value));
}
for (const box of all("[data-look-choice]")) {
  box.hidden = false;
}
for (const box of all("[data-marks]")) {
  const input = /** @type {HTMLInputElement} */ (one("[data-mark-words]", box));
  input.checked = areMarked();
  input.addEventListener("change", () => write("marks", { words: input.checked }));
  box.hidden = false;
}
