// The settings page: light or dark. Lane group, pool and units are choices.js, keeping the site on a phone is offline.js.

import { all } from "./lib/dom.js";
import { choose, chosen } from "./lib/look.js";

for (const input of /** @type {HTMLInputElement[]} */ (all("[data-look-choice] input"))) {
  input.checked = input.value === chosen();
  input.addEventListener("change", () => choose(input.value));
}
for (const box of all("[data-look-choice]")) {
  box.hidden = false;
}
