// The ticks and fields of the page: what they show of a choice, and what a change of one makes of it.

import { all, make, one } from "../lib/dom.js";
import { keepUntil, mineUntil } from "../lib/mine-until.js";
import { minutesUntil } from "./fit.js";

/** @import {Choice, Counts, Facet, List} from "./list.js" */
/** @typedef {{choice: Choice, until: string, mine: string[]}} State */

const NUMBERS = ["minutes", "lanes", "swimmers"];

/**
 * @param {Element} element
 * @param {string} text
 */
export function say(element, text) {
  if (element.textContent !== text) {
    element.textContent = text; // what stays as it is costs no layout
  }
}

/** As long as the water is mine today, in one tap: as a run says, or this page before.
 * @param {HTMLInputElement} field */
function offerUntil(field) {
  const until = mineUntil();
  const offered = make("button", { type: "button", class: "tool" }, `Until ${until}`);
  offered.addEventListener("click", () => {
    field.value = until;
    field.dispatchEvent(new Event("change", { bubbles: true }));
  });
  field.closest(".field")?.append(...(until ? [offered] : []));
}

const isWide = () => window.matchMedia("(min-width: 60em)").matches;

/**
 * @param {HTMLElement} form
 * @param {(facet: Facet) => string} told
 */
export function choicesOf(form, told) {
  const boxes = new Map(
    /** @type {HTMLDetailsElement[]} */ (all("[data-facet]", form)).map((box) => [/** @type {Facet} */ (box.dataset.facet), box]),
  );
  const more = /** @type {HTMLDetailsElement} */ (one("[data-more-facets]", form));
  const ticks = /** @type {HTMLInputElement[]} */ (all("fieldset input[name]:not([data-swimmers])", form)).map((input) => ({
    input, count: input.parentElement?.querySelector("[data-count]"), box: input.closest("details"),
  }));
  const untilField = /** @type {HTMLInputElement} */ (one("[data-until]", form));
  const swimmersField = /** @type {HTMLInputElement} */ (one("[data-swimmers]", form));
  offerUntil(untilField);

  const isBrief = () => form.hasAttribute("data-brief");
  for (const [facet, box] of boxes) {
    one("summary", box).addEventListener("click", (event) => {
      if (isBrief() && box.open) { // all of this one, in place of a little of each
        event.preventDefault();
        form.removeAttribute("data-brief");
        boxes.forEach((other, name) => { other.open = name === facet; });
        box.scrollIntoView({ block: "nearest" });
      }
    });
  }

  /** @type {(choice: Choice, input: HTMLInputElement) => boolean} */
  const isOn = (choice, { name, value }) => (NUMBERS.includes(name)
    ? String(choice[/** @type {"minutes"} */ (name)] ?? "") === value
    : choice[/** @type {List} */ (name)].has(value));

  return {
    steps: ticks.filter(({ input }) => input.name === "minutes").map(({ input }) => Number(input.value)).filter(Boolean),

    /** @type {(state: State, counts: Counts) => void} */
    show(state, counts) {
      for (const { input, count, box } of ticks) {
        const number = input.name === "lanes" ? 1 : counts[/** @type {Facet} */ (input.name)][input.value] ?? 0;
        input.checked = isOn(state.choice, input);
        input.disabled = !number && !input.checked && input.value !== "";
        if (count && (!box || box.open)) { // numbers in what is shut are told when it opens
          say(count, String(number));
        }
      }
      untilField.value = state.until;
      swimmersField.value = state.choice.swimmers ? String(state.choice.swimmers) : "";
      boxes.forEach((box, facet) => say(one("[data-chosen]", box), told(facet)));
      const set = [...boxes].filter(([facet, box]) => more.contains(box) && told(facet)).length;
      say(one(":scope > summary [data-chosen]", more), set ? String(set) : "");
    },

    /** Open on a desk; on a phone what the address names, several of them in brief.
     * @param {string[]} named */
    open(named = []) {
      form.toggleAttribute("data-brief", !isWide() && named.length > 1);
      boxes.forEach((box, facet) => { box.open = isWide() || named.includes(facet); });
      more.open = isWide() || [...boxes].some(([facet, box]) => more.contains(box) && named.includes(facet));
    },

    /** @param {() => void} act */
    onOpen(act) {
      for (const box of boxes.values()) {
        box.addEventListener("toggle", () => box.open && act());
      }
    },

    /** Whether the choices have made room for the list. After a tap the list, not the choices, is wanted next; gear, groups and lanes are rarely one choice.
     * @param {string} facet */
    close(facet) {
      const box = boxes.get(/** @type {Facet} */ (facet));
      if (box && !isWide() && !isBrief() && facet !== "gear" && facet !== "lanes") {
        box.open = more.open = false;
        return true;
      }
      return false;
    },

    /** On to a choice that still stands open, its head in view, before the hits; whether there is one.
     * @returns {boolean} */
    goOn() {
      const next = [...boxes.values()].find((box) => box.open && (more.open || !more.contains(box)));
      const top = next?.getBoundingClientRect().top ?? 0;
      if (top < 0 || top > window.innerHeight / 2) {
        next?.scrollIntoView({ block: "start" });
      }
      return Boolean(next);
    },

    /** What a change of a field makes of the state.
     * @type {(state: State, input: HTMLInputElement) => void} */
    take(state, input) {
      const { choice } = state;
      if (input === untilField) {
        choice.minutes = minutesUntil(input.value, new Date()) || null;
        state.until = choice.minutes ? input.value : "";
        keepUntil(state.until);
      } else if (NUMBERS.includes(input.name)) {
        choice[/** @type {"minutes" | "lanes" | "swimmers"} */ (input.name)] = Math.floor(Number(input.value)) || null;
        state.until = input.name === "minutes" ? "" : state.until;
      } else if (input.name) {
        choice[/** @type {List | "gear" | "kind"} */ (input.name)][input.checked ? "add" : "delete"](input.value);
      }
    },
  };
}
