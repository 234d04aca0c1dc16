// Learn: how far each progression is, what comes back, and what is kept on this device.

import { all, make, one } from "./lib/dom.js";
import { askToLast } from "./learn/lasting.js";
import { nextOf } from "./learn/next.js";
import { SHAPES, bring, choose, clear, counts, kept, mine, takeAlong } from "./learn/progress.js";

/** @type {Record<string, string>} */
const MARKS = { circle: "●", square: "■", triangle: "▲", star: "★" };

function tellAll() {
  const now = new Date();
  /** @type {HTMLElement[]} */
  const back = [];
  for (const row of all("[data-questions]")) {
    const keys = (row.dataset.questions ?? "").split(" ");
    const { answered, right, due } = counts(keys, now);
    one("[data-learnt]", row).textContent = answered ? ` · ${right} of ${keys.length} right` : "";
    const link = /** @type {HTMLAnchorElement} */ (one("a", row));
    if (due.length) {
      const words = due.length === 1 ? "one question" : `${due.length} questions`;
      back.push(make("li", {}, make("a", { href: `${link.getAttribute("href")}#q-${due[0]}` }, make("b", {}, one("b", link).textContent ?? ""), ` ${words}`)));
    }
  }
  tellNext(now);
  one("[data-due]").hidden = !back.length;
  one("[data-due] ul").replaceChildren(...back);
}

/** What is next: the first question that comes back, else a progression.
 * @param {Date} now */
function tellNext(now) {
  const rows = all("[data-questions]");
  const progressions = rows.map((row) => (row.dataset.questions ?? "").split(" "));
  const due = progressions.map((keys) => counts(keys, now).due);
  const back = due.findIndex((keys) => keys.length);
  const found = back < 0 ? nextOf(progressions, now, mine()) : back;
  const link = found < 0 ? null : /** @type {HTMLAnchorElement} */ (one("a", rows[found]));
  one("[data-next-one]").hidden = !link;
  if (link) {
    const href = `${link.getAttribute("href")}${back < 0 ? "" : `#q-${due[back][0]}`}`;
    one("[data-next-one]").replaceChildren(back < 0 ? "Next: " : "Next, what comes back: ", make("a", { href }, one("b", link).textContent ?? ""));
  }
}

function tellShapes() {
  const { shape, of } = kept();
  one("[data-shapes]").replaceChildren(
    ...SHAPES.map((name) => {
      const held = Object.keys(of[name]?.answers ?? {}).length;
      const button = make("button", { type: "button", class: "tool", "aria-pressed": String(name === shape), "data-mark": MARKS[name] }, `${name}${held ? ` (${held})` : ""}`);
      button.addEventListener("click", () => {
        choose(name);
        tellShapes();
        tellAll();
      });
      return button;
    }),
  );
}

/** @param {string} text */
function say(text) {
  one("[data-told]").textContent = text;
}

one("[data-take]").addEventListener("click", () => {
  const text = takeAlong();
  /** @type {HTMLTextAreaElement} */ (one("[data-code]")).value = text;
  const file = make("a", { href: URL.createObjectURL(new Blob([text], { type: "text/plain" })), download: `progress-${kept().shape}.txt` });
  file.click();
  say("Saved as a file; the same stands below as a code to copy.");
});
one("[data-bring]").addEventListener("click", () => {
  const wrong = bring(/** @type {HTMLTextAreaElement} */ (one("[data-code]")).value);
  say(wrong || "Put in.");
  tellShapes();
  tellAll();
});
one("[data-file]").addEventListener("change", async (event) => {
  const [file] = /** @type {HTMLInputElement} */ (event.target).files ?? [];
  if (file) {
    /** @type {HTMLTextAreaElement} */ (one("[data-code]")).value = await file.text();
    say("Read; now put it in.");
  }
});
const sure = one("[data-clear]");
const asks = sure.textContent;
function takeBack() {
  delete sure.dataset.asked;
  sure.textContent = asks;
}
sure.addEventListener("click", () => {
  const { shape } = kept();
  if (sure.dataset.asked) {
    clear();
    tellShapes();
    tellAll();
    say(`All of it under ${shape} is gone.`);
    takeBack();
    return;
  }
  sure.dataset.asked = "yes";
  sure.textContent = `Press again to forget all under ${shape}`;
});
// A press on anything else takes it back: another shape is somebody else's.
document.addEventListener("click", ({ target }) => target !== sure && takeBack());
one("[data-kept]").hidden = false;
tellShapes();
tellAll();
askToLast().then((told) => { one("[data-lasting]").textContent = told; });
