// The day on which something is printed, on its foot; and at the foot of each page of paper what it is and how many there are.

import { all } from "./dom.js";

const pages = new CSSStyleSheet();

/** @param {ParentNode} within */
export function tellPrinted(within) {
  const today = new Date().toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
  all("[data-printed]", within).forEach((place) => { place.textContent = today; });
  const title = within.querySelector(".deck-card .card-title")?.textContent ?? "";
  const style = "font: 11pt sans-serif; vertical-align: top";
  pages.replaceSync(`@page card {
    @bottom-left { content: "${title.replace(/["\\\n]/g, "\\$&")}"; ${style}; }
    @bottom-right { content: counter(page) " of " counter(pages); ${style}; }
  }`);
  if (!document.adoptedStyleSheets.includes(pages)) {
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, pages];
  }
}
