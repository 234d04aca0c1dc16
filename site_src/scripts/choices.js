// The choosers of a page: lane group, pool and units. Without this script all of them show.

import { boxes, bring, placeOn } from "./lib/clocks.js";
import { all } from "./lib/dom.js";
import { explain } from "./lib/explain.js";
import { named, openNamed } from "./lib/folds.js";
import { choose, holdsChosen, onChange, start } from "./lib/preferences.js";
import { offerMine, showMine, tellWhose } from "./lib/whose.js";

/** The clocks of this page; what lies on the sheets of the cards page is laid there. */
const own = () => boxes().filter((box) => !box.closest("[data-paper]"));

/** A link to one clock, as a page opened from a folder follows it, says which: for this page alone. */
function chooseByAddress() {
  const place = named();
  const pool = place?.closest("[data-pool]")?.getAttribute("data-pool");
  if (place?.dataset.group && pool) {
    choose("pool", pool, false);
    choose("group", place.dataset.group, false);
  }
}

for (const chooser of all("[data-chooser]")) {
  chooser.hidden = false;
  chooser.addEventListener("change", ({ target }) => {
    if (target instanceof HTMLSelectElement && target.dataset.choose) {
      const name = /** @type {import("./lib/preferences.js").Name} */ (target.dataset.choose);
      choose(name, target.value, target.value !== ""); // "every lane group" is for this page alone
      const elsewhere = location.protocol === "file:" && own().find((box) => !holdsChosen(box));
      if (elsewhere) {
        location.assign(placeOn(elsewhere.dataset.clocks ?? ""));
      }
    }
  });
}
offerMine();
start();
chooseByAddress();
function follow() {
  showMine();
  tellWhose();
  bring(own());
}
onChange(follow);
follow();
openNamed();
window.addEventListener("hashchange", openNamed);
explain();
