// A marked word tells what it means, at a tap or by the keyboard, under its paragraph. Without scripts it leads to the page Words.

import { all, make, root } from "./dom.js";
import { read } from "./storage.js";

/** @type {Promise<Record<string, [string, string]>> | null} */
let coming = null;

/** The meanings, fetched once: as a script, since a page opened from a folder may fetch nothing else. */
const meanings = () =>
  (coming ??= new Promise((resolve, reject) => {
    const script = make("script", { src: new URL("words/meanings.js", root).href });
    script.addEventListener("load", () => resolve(/** @type {any} */ (self).almanacMeanings ?? {}));
    script.addEventListener("error", reject);
    document.head.append(script);
  }));

/** Whether words are marked: turned off under Settings. */
export const areMarked = () => read("marks", /** @type {{words?: boolean}} */ ({})).words !== false;

/** @param {HTMLAnchorElement} mark */
async function tell(mark) {
  const told = document.getElementById(`means-${mark.hash.slice(1)}`);
  if (told) {
    told.remove();
    mark.setAttribute("aria-expanded", "false");
    return;
  }
  try {
    const [title, means] = (await meanings())[mark.hash.slice("#t-".length)];
    const box = make("span", { class: "term-means", role: "status", id: `means-${mark.hash.slice(1)}` });
    (mark.closest("p, dd") ?? mark).append(box);
    box.append(make("b", {}, title), ` ${means}`);
    mark.setAttribute("aria-expanded", "true");
  } catch {
    location.href = mark.href;
  }
}

/** Make the marks of a page ready, or plain where they are turned off. */
export function explain() {
  const marks = /** @type {HTMLAnchorElement[]} */ (all("a.term"));
  if (!areMarked()) {
    marks.forEach((mark) => mark.replaceWith(mark.textContent ?? ""));
    return;
  }
  for (const mark of marks) {
    mark.setAttribute("role", "button");
    mark.setAttribute("aria-expanded", "false");
    mark.addEventListener("click", (event) => {
      event.preventDefault();
      tell(mark);
    });
    mark.addEventListener("keydown", (event) => {
      if (event.key === " ") {
        event.preventDefault();
        tell(mark);
      }
    });
  }
}
