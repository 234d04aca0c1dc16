// The finder: the choices on the page, the address, and the list, kept in step.

import { fromAddress, toAddress } from "./find/address.js";
import { FACETS, entriesOf, inOrder, isChosen, minutesOf, nothing, sift } from "./find/list.js";
import { resultList } from "./find/results.js";
import { make } from "./lib/dom.js";
import * as preferences from "./lib/preferences.js";
import { WordIndex } from "./lib/search.js";

const form = document.querySelector("[data-finder]");
const page = document.querySelector("[data-found]");
const data = JSON.parse(document.getElementById("finder-data").textContent);
const entries = entriesOf(data);
const titles = Object.fromEntries(Object.entries(data.words).map(([facet, words]) => [facet, Object.fromEntries(words)]));
const boxes = new Map([...form.querySelectorAll("[data-facet]")].map((box) => [box.dataset.facet, box]));
const inputs = [...form.querySelectorAll("fieldset input")].map((input) => ({ input, count: input.parentElement.querySelector("[data-count]") }));
const steps = inputs.filter(({ input }) => input.name === "minutes").map(({ input }) => Number(input.value)).filter(Boolean);
/** The pool and lane group that minutes hold for. */
const held = () => ({ pool: preferences.chosen("pool"), group: preferences.chosen("group") });
const minutes = (entry) => minutesOf(data, entry, held());
const firstFor = (fault) => data.first[data.words.fault.findIndex(([id]) => id === fault)];
const results = resultList(page, titles, minutes);
let choice = nothing();
let index = null;
let byPointer = false;
let writing = 0;

const WEIGHTS = { title: 8, more: 5, faults: 4, summary: 3 };

/** What an entry is found by. */
function fields(entry) {
  const faults = entry.has.fault.map((id) => `${titles.fault[id]} ${data.also[id] ?? ""}`).join(" ");
  return { id: entry.number, title: entry.title, more: entry.more, faults, summary: entry.summary };
}

const readWords = () => { index ??= new WordIndex(WEIGHTS, data.synonyms, entries.map(fields)); };

/** Entries that answer every word asked for, as a Map from number to score; null where nothing is asked. */
function scores() {
  if (!choice.words) {
    return null;
  }
  readWords();
  const found = index.search(choice.words);
  return found && new Map(found.map(({ id, score }) => [id, score]));
}

/** What is chosen in a facet, in words. */
function told(facet) {
  if (facet === "minutes") {
    return choice.minutes ? `${choice.minutes} minutes` : "";
  }
  if (facet === "words") {
    return choice.words;
  }
  return [...choice[facet]].map((word) => (word === "none" ? "nothing" : titles[facet][word])).join(", ");
}

function say(element, text) {
  if (element.textContent !== text) {
    element.textContent = text; // what stays as it is costs no layout
  }
}

function showChoices(counts) {
  for (const { input, count } of inputs) {
    const { name, value } = input;
    const number = counts[name][value] ?? 0;
    const isOn = name === "minutes" ? String(choice.minutes ?? "") === value : choice[name].has(value);
    input.checked = isOn;
    input.disabled = !number && !isOn && value !== "";
    if (count) {
      say(count, String(number));
    }
  }
  for (const [facet, box] of boxes) {
    say(box.querySelector("[data-chosen]"), told(facet));
  }
  form.querySelector("[data-clear]").hidden = !FACETS.some((facet) => isChosen(choice, facet));
}

function many(number, one, more) {
  return `${number} ${number === 1 ? one : more}`;
}

function showTotal(found, untimed) {
  const drills = found.filter((entry) => entry.kind === "drill").length;
  const times = untimed ? ` ${many(untimed, "other has", "others have")} no computed time for this lane group.` : "";
  page.querySelector("[data-total]").textContent =
    `${many(drills, "drill", "drills")} and ${many(found.length - drills, "set", "sets")}.${times}`;
}

/** Nothing found: which choice to drop, the most helpful first. */
function showWayOut(found, without) {
  const wayOut = page.querySelector("[data-nothing]");
  wayOut.hidden = found.length > 0;
  const helpful = Object.entries(without).sort(([, one], [, other]) => other - one);
  const useful = helpful.filter(([, number]) => number);
  const buttons = (useful.length ? useful : helpful).map(([facet, number]) => {
    const button = make("button", { type: "button", class: "tool" }, `${data.titles[facet]}: ${told(facet)}`);
    button.append(number ? ` (${number} without it)` : "");
    button.addEventListener("click", () => {
      drop(facet);
      form.querySelector("#find-words").focus();
    });
    return button;
  });
  wayOut.querySelector("[data-ways]").replaceChildren(...buttons);
}

function drop(facet) {
  choice[facet] = nothing()[facet];
  form.querySelector("#find-words").value = choice.words;
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

function chosen(input) {
  if (input.name === "minutes") {
    choice.minutes = Number(input.value) || null;
  } else {
    choice[input.name][input.checked ? "add" : "delete"](input.value);
  }
  refresh();
  if (byPointer && input.name !== "gear" && !isWide()) {
    const box = boxes.get(input.name); // the list, not the choices, is wanted next
    box.open = false;
    form.scrollIntoView({ block: "nearest" });
  }
}

const isWide = () => window.matchMedia("(min-width: 60em)").matches;

function readAddress() {
  const known = Object.fromEntries(Object.entries(data.words).map(([facet, words]) => [facet, new Set(words.map(([id]) => id))]));
  known.gear.add("none");
  const told = fromAddress(location.hash, known);
  choice = told.choice;
  for (const name of ["pool", "group"]) {
    if (form.querySelector(`[data-choose="${name}"] option[value="${CSS.escape(told[name] ?? "")}"]`)) {
      preferences.choose(name, told[name], false);
    }
  }
  form.querySelector("#find-words").value = choice.words;
  boxes.forEach((box, facet) => { box.open = isWide() || told.open.includes(facet); });
  refresh(true);
}

form.hidden = page.hidden = false;
document.querySelector("[data-plain-lists]").hidden = true;
form.addEventListener("submit", (event) => event.preventDefault());
form.addEventListener("pointerdown", () => { byPointer = true; });
form.addEventListener("keydown", () => { byPointer = false; });
form.addEventListener("change", ({ target }) => target.closest("fieldset") && !target.dataset.choose && chosen(target));
form.querySelector("#find-words").addEventListener("input", ({ target }) => {
  choice.words = target.value.trim();
  refresh();
});
form.querySelector("[data-clear]").addEventListener("click", () => {
  choice = nothing();
  form.querySelector("#find-words").value = "";
  refresh();
});
window.addEventListener("hashchange", readAddress);
readAddress();
(window.requestIdleCallback ?? setTimeout)(readWords); // before the first letter is typed
preferences.onChange(() => {
  results.forget();
  refresh(!choice.minutes);
});
