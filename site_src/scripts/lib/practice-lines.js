// The Clock lines of a practice, brought to another page. A page opened from a folder may fetch nothing, and does without them.

import { all, make, root } from "./dom.js";

const SVG = "http://www.w3.org/2000/svg";

/** A place for each lane group's line, whose height is kept free until it is there.
 * @param {string[]} groups */
function places(groups) {
  return groups.map((group) => {
    const drawing = document.createElementNS(SVG, "svg");
    drawing.setAttribute("viewBox", "0 0 1000 226");
    return make("div", { "data-line": group }, make("p", {}, "\u00a0"), make("figure", { class: "clock-line" }, drawing));
  });
}

/** The lines of some lane groups from the page of a practice.
 * @param {string} href from the site's root
 * @param {string[]} groups */
async function fetched(href, groups) {
  const response = await fetch(new URL(href, root));
  const page = new DOMParser().parseFromString(response.ok ? await response.text() : "", "text/html");
  return all(".parts-lines > [data-group]", page).filter(({ dataset }) => groups.includes(dataset.group ?? ""));
}

/** A box with the Clock line of each lane group.
 * @param {string} href of the practice, from the site's root
 * @param {string[]} groups */
export function practiceLines(href, groups) {
  const box = make("div", { class: "parts-lines" }, ...places(groups));
  fetched(href, groups).then(
    (lines) => box.replaceChildren(...lines.map((line) => document.importNode(line, true))),
    () => box.remove(),
  );
  return box;
}
