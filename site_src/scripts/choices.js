// The choosers of a page: lane group, pool and units. Without this script all of them show.

import { all } from "./lib/dom.js";
import { choose, start } from "./lib/preferences.js";

for (const chooser of all("[data-chooser]")) {
  chooser.hidden = false;
  chooser.addEventListener("change", ({ target }) => {
    if (target instanceof HTMLSelectElement && target.dataset.choose) {
      choose(/** @type {import("./lib/preferences.js").Name} */ (target.dataset.choose), target.value);
    }
  });
}
start();
