// The finder: the choices on the page, the address, and the list, kept in step.

import { fromAddress, toAddress } from "./find/address.js";
import { FACETS, entriesOf, inOrder, isChosen, minutesOf, minutesTold, nothing, sift } from "./find/list.js";
import { resultList } from "./find/results.js";
import { all, make, one } from "./lib/dom.js";
import * as preferences from "./lib/preferences.js";
import { WordIndex } from "./lib/search.js";

/** @import {Counts, Data, Entry, Facet, List} from "./find/list.js" */

const form = one("[data-finder]");
const page = one("[data-found]");
/** @type {Data} */
const data = JSON.parse(one("#finder-data").textContent ?? "");
const entries = entriesOf(data);
/** @type {Record<string, Record<string, string>>} */
const titles = Object.fromEntries(
  Object.entries(data.words).map(([facet, words]) => [facet, Object.fromEntries(words)]),
);
const boxes = new Map(
  /** @type {HTMLDetailsElement[]} */ (all("[data-facet]", form)).map((box) => [String(box.dataset.facet), box]),
);
const inputs = /** @type {HTMLInputElement[]} */ (all("fieldset input", form)).map((input) => ({
  input,
  count: input.parentElement?.querySelector("[data-count]"),
}));
const wordsInput = /** @type {HTMLInputElement} */ (one("#find-words", form));
const steps = inputs.filter(({ input }) => input.name === "minutes").map(({ input }) => Number(input.value)).filter(Boolean);
/** The pool and lane group that minutes hold for. */
const held = () => ({ pool: preferences.chosen("pool"), group: preferences.chosen("group") });
/** @param {Entry} entry */
const minutes = (entry) => minutesOf(data, entry, held());
/** @param {string} fault */
const firstFor = (fault) => data.first[data.words.fault.findIndex(([id]) => id === fault)];
const results = resultList(page, titles, (entry) => minutesTold(data, entry, held()));
let choice = nothing();
/** @type {WordIndex | null} */
let index = null;
let byPointer = false;
let writing = 0;

const WEIGHTS = { title: 8, more: 5, faults: 4, summary: 3 };

/** What an entry is found by.
 * @param {Entry} entry */
function fields(entry) {
  const faults = entry.has.fault.map((id) => `${titles.fault[id]} ${data.also[id] ?? ""}`).join(" ");
  return { id: entry.number, title: entry.title, more: entry.more, faults, summary: entry.summary };
}

const readWords = () => (index ??= new WordIndex(WEIGHTS, data.synonyms, entries.map(fields)));

/** Entries that answer every word asked for, as a Map from number to score; null where nothing is asked. */
function scores() {
  const found = choice.words ? readWords().search(choice.words) : null;
  return found && new Map(found.map(({ id, score }) => [id, score]));
}

/** What is chosen in a facet, in words.
 * @param {Facet} facet */
function told(facet) {
  if (facet === "minutes") {
    return choice.minutes ? `${choice.minutes} minutes` : "";
  }
  if (facet === "words") {
    return choice.words;
  }
  return [...choice[facet]].map((word) => (word === "none" ? "nothing" : titles[facet][word])).join(", ");
}

/**
 * @param {Element} element
 * @param {string} text
 */
function say(element, text) {
  if (element.textContent !== text) {
    element.textContent = text; // what stays as it is costs no layout
  }
}

/** @param {Counts} counts */
function showChoices(counts) {
  for (const { input, count } of inputs) {
    const { value } = input;
    const name = /** @type {List | "gear" | "minutes"} */ (input.name);
    const number = counts[name][value] ?? 0;
    const isOn = name === "minutes" ? String(choice.minutes ?? "") === value : choice[name].has(value);
    input.checked = isOn;
    input.disabled = !number && !isOn && value !== "";
    if (count) {
      say(count, String(number));
    }
  }
  for (const [facet, box] of boxes) {
    say(one("[data-chosen]", box), told(/** @type {Facet} */ (facet)));
  }
  one("[data-clear]", form).hidden = !FACETS.some((facet) => isChosen(choice, facet));
}

/**
 * @param {number} number
 * @param {string} single
 * @param {string} more
 */
function many(number, single, more) {
  return `${number} ${number === 1 ? single : more}`;
}

/**
 * @param {Entry[]} found
 * @param {number} untimed
 */
function showTotal(found, untimed) {
  const drills = found.filter((entry) => entry.kind === "drill").length;
  const times = untimed ? ` ${many(untimed, "other has", "others have")} no computed time for this lane group.` : "";
  one("[data-total]", page).textContent =
    `${many(drills, "drill", "drills")} and ${many(found.length - drills, "set", "sets")}.${times}`;
}

/**
 * Nothing found: which choice to drop, the most helpful first.
 * @param {Entry[]} found
 * @param {Record<string, number>} without
 */
function showWayOut(found, without) {
  const wayOut = one("[data-nothing]", page);
  wayOut.hidden = found.length > 0;
  const helpful = /** @type {[Facet, number][]} */ (Object.entries(without)).sort(([, first], [, next]) => next - first);
  const useful = helpful.filter(([, number]) => number);
  const buttons = (useful.length ? useful : helpful).map(([facet, number]) => {
    const button = make("button", { type: "button", class: "tool" }, `${data.titles[facet]}: ${told(facet)}`);
    button.append(number ? ` (${number} without it)` : "");
    button.addEventListener("click", () => {
      drop(facet);
      wordsInput.focus();
    });
    return button;
  });
  one("[data-ways]", wayOut).replaceChildren(...buttons);
}

/** @param {Facet} facet */
function drop(facet) {
  choice = { ...choice, [facet]: nothing()[facet] };
  wordsInput.value = choice.words;
  refresh();
}

function refresh(keepAddress = false) {
  const scored = scores();
  const { found, counts, without, untimed } = sift(entries, choice, { minutes, scores: scored, steps });
  showChoices(counts);
  showTotal(found, untimed);
  showWayOut(found, without);
  results.show(inOrder(found, choice, scored, firstFor));
  if (!keepAddress) {
    clearTimeout(writing);
    writing = setTimeout(writeAddress); // when the list is on the screen
  }
}

function writeAddress() {
  const address = toAddress(choice, held());
  history.replaceState(null, "", address ? `#${address}` : "#");
}

/** @param {HTMLInputElement} input */
function chosen(input) {
  if (input.name === "minutes") {
    choice.minutes = Number(input.value) || null;
  } else {
    choice[/** @type {List | "gear"} */ (input.name)][input.checked ? "add" : "delete"](input.value);
  }
  refresh();
  if (byPointer && input.name !== "gear" && !isWide()) {
    const box = boxes.get(input.name); // the list, not the choices, is wanted next
    if (box) {
      box.open = false;
    }
    form.scrollIntoView({ block: "nearest" });
  }
}

const isWide = () => window.matchMedia("(min-width: 60em)").matches;

function readAddress(address = location.hash) {
  const known = /** @type {Record<List | "gear", Set<string>>} */ (
    Object.fromEntries(Object.entries(data.words).map(([facet, words]) => [facet, new Set(words.map(([id]) => id))]))
  );
  known.gear.add("none");
  const asked = fromAddress(address, known);
  choice = asked.choice;
  for (const name of /** @type {const} */ (["pool", "group"])) {
    const value = asked[name] ?? "";
    if (form.querySelector(`[data-choose="${name}"] option[value="${CSS.escape(value)}"]`)) {
      preferences.choose(name, value, false);
    }
  }
  choice.words ||= new URLSearchParams(location.search).get("q") ?? "";
  wordsInput.value = choice.words;
  boxes.forEach((box, facet) => { box.open = isWide() || asked.open.includes(facet); });
  refresh(true);
}

form.hidden = page.hidden = false;
one("[data-plain-lists]").hidden = true;
form.addEventListener("submit", (event) => event.preventDefault());
form.addEventListener("pointerdown", () => { byPointer = true; });
form.addEventListener("keydown", () => { byPointer = false; });
form.addEventListener("change", ({ target }) => {
  if (target instanceof HTMLInputElement && target.closest("fieldset")) {
    chosen(target);
  }
});
wordsInput.addEventListener("input", () => {
  choice.words = wordsInput.value.trim();
  refresh();
});
one("[data-clear]", form).addEventListener("click", () => {
  choice = nothing();
  wordsInput.value = "";
  refresh();
});
window.addEventListener("hashchange", ({ newURL }) => {
  clearTimeout(writing); // an address that is just being written must not stand before the one that was gone to
  const address = new URL(newURL).hash;
  history.replaceState(null, "", address || "#");
  readAddress(address);
});
readAddress();
(window.requestIdleCallback ?? setTimeout)(readWords); // before the first letter is typed
preferences.onChange(() => {
  results.forget();
  refresh(!choice.minutes);
});
