// The day on which something is printed, on its foot.

import { all } from "./dom.js";

/** @param {ParentNode} within */
export function tellPrinted(within) {
  const today = new Date().toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
  all("[data-printed]", within).forEach((place) => { place.textContent = today; });
}
