// A question of "Check yourself": choose, then see of each answer whether it is right, and why.

import { all, make, one } from "../lib/dom.js";
import { shuffled } from "./order.js";

/**
 * Make the answers of a question into buttons, in today's order. Without scripts they are folds that open.
 * @param {HTMLElement} box
 * @param {string} seed
 * @param {(right: boolean) => void} answered
 */
export function ask(box, seed, answered) {
  const options = all("details", box);
  const list = make("ul", { class: "options" });
  for (const fold of shuffled(options, seed)) {
    list.append(choice(fold, () => tell(box, answered)));
  }
  options.forEach((fold) => fold.remove());
  box.append(list, make("p", { class: "verdict", role: "status" }));
}

/** @param {HTMLElement} fold
 * @param {() => void} chosen */
function choice(fold, chosen) {
  const right = fold.hasAttribute("data-right");
  const button = make("button", { type: "button", class: "option" }, one("summary", fold).textContent ?? "");
  const why = make("p", { class: "why", hidden: "" }, one("p", fold).textContent ?? "");
  const item = make("li", right ? { "data-right": "" } : {}, button, why);
  button.addEventListener("click", () => {
    if (!item.parentElement?.classList.contains("is-told")) {
      item.classList.add("is-chosen");
      chosen();
    }
  });
  return item;
}

/** @param {HTMLElement} box
 * @param {(right: boolean) => void} answered */
function tell(box, answered) {
  const list = one(".options", box);
  list.classList.add("is-told");
  const right = one(".is-chosen", list).hasAttribute("data-right");
  for (const item of all("li", list)) {
    one(".why", item).hidden = false;
    const button = one("button", item);
    button.setAttribute("aria-disabled", "true");
    const isRight = item.hasAttribute("data-right");
    if (isRight || item.classList.contains("is-chosen")) {
      button.append(make("span", { class: "unseen" }, isRight ? " (right)" : " (chosen, not right)"));
    }
  }
  one(".verdict", box).textContent = right ? "Right." : "Not so: read why below each answer. It comes back.";
  answered(right);
}
