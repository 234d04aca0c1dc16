// My lane groups, one to three: the ticks that choose them, and whom of them a page is shown for.

import { all, make } from "./dom.js";
import { MOST_GROUPS } from "./my-groups.js";
import { chosen, meant, mine, setMine } from "./preferences.js";

const ticks = () => /** @type {HTMLInputElement[]} */ (all("[data-my-group]"));

/** Keep what is ticked, one at least. */
export function offerMine() {
  for (const input of ticks()) {
    input.addEventListener("change", () => {
      const ticked = ticks().filter(({ checked }) => checked).map(({ value }) => value);
      setMine(ticked.length ? ticked : [input.value]);
    });
  }
}

export function showMine() {
  const groups = mine();
  for (const input of ticks()) {
    input.checked = groups.includes(input.value);
    input.disabled = !input.checked && groups.length >= MOST_GROUPS;
  }
}

/** The title of the lane group that a page is shown for.
 * @param {Element} chooser */
const shownFor = (chooser) => /** @type {HTMLOptionElement[]} */ (all('[data-choose="group"] option', chooser))
  .find(({ value }) => value === chosen("group"))?.text ?? "";

/**
 * Where I have chosen my groups, for whom of them this page is shown; at the top, where it is written for others.
 */
export function tellWhose() {
  const [chooser] = all("[data-chooser]");
  const groups = (document.documentElement.dataset.myGroups ?? "").split(" ").filter(Boolean);
  if (!chooser || !groups.length || !meant().length) {
    return;
  }
  const isMine = groups.some((group) => meant().includes(group));
  const told = document.querySelector("[data-whose-page]") ?? make("p", { "data-whose-page": "" });
  told.className = isMine ? "whose-page" : "whose-page for-others";
  if (isMine) {
    const which = groups.length > 1 ? ", the first of your groups that this is written for" : "";
    told.textContent = `Shown for ${shownFor(chooser)}${which}.`;
    chooser.append(told);
  } else {
    told.textContent = `Written for ${chooser.dataset.meantFor}, not for your groups. Shown for ${shownFor(chooser)}.`;
    document.querySelector("h1")?.after(told);
  }
}
