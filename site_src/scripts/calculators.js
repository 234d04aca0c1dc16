// The page Calculators: reads what is typed, and tells the answer above the fields. A telephone's keypad has no colon: a time's digits are read
// from the right, and shown as they are read.

import { answer } from "./arithmetic/calculators.js";
import { readField } from "./arithmetic/typed.js";
import { showTimed } from "./arithmetic/rounding.js";
import { all, make, one } from "./lib/dom.js";
import { openNamed } from "./lib/folds.js";
import { read } from "./lib/storage.js";

/** @typedef {import("./arithmetic/calculators.js").Words} Words */
/** @typedef {{group: string, title: string, pool: string, tests: [string, string][]}} Tests */

/** @type {{club: import("./arithmetic/numbers.js").Club, words: Record<string, Words>, tests: Tests[]}} */
const data = JSON.parse(one("#calculators-data").textContent ?? "");

/** @param {HTMLElement} fold */
function ready(fold) {
  const words = data.words[fold.dataset.calculator ?? ""];
  const form = /** @type {HTMLFormElement} */ (one("form", fold));
  const tell = () => show(one("[data-answer]", fold), one("[data-more]", fold), words, form);
  form.addEventListener("input", tell);
  form.addEventListener("submit", (event) => event.preventDefault());
  for (const button of all("[data-step]", form)) {
    button.addEventListener("click", () => {
      step(words, one("input", button.parentElement ?? form), Number(button.dataset.step));
      tell();
    });
  }
  const tests = /** @type {HTMLSelectElement | null} */ (form.querySelector("[data-tests]"));
  tests?.addEventListener("change", () => {
    fill(form, data.tests[Number(tests.value)]);
    tell();
  });
  fold.addEventListener("toggle", () => tests && mineFirst(tests), { once: true });
  tell();
}

/** A second more or less, never below the least.
 * @param {Words} words
 * @param {HTMLInputElement} input
 * @param {number} by */
function step(words, input, by) {
  const field = words.fields.find((own) => own.name === input.name);
  const found = field ? readField(field, input.value || "0") : {};
  if (field && typeof found.value === "number") {
    input.value = showTimed(Math.max(field.least, found.value + by));
  }
}

/** Tests of my lane groups first.
 * @param {HTMLSelectElement} select */
function mineFirst(select) {
  const { groups = [] } = read("choices", /** @type {{groups?: string[]}} */ ({}));
  const own = [...select.options].filter((option) => option.value && groups.includes(data.tests[Number(option.value)].group));
  select.options[0].after(...own);
}

/** @param {HTMLFormElement} form
 * @param {Tests | undefined} tests */
function fill(form, tests) {
  for (const [at, end] of ["", "-2"].entries()) {
    const [distance, time] = tests?.tests[at] ?? ["", ""];
    /** @type {HTMLInputElement} */ (one(`[name="distance${end}"]`, form)).value = distance;
    /** @type {HTMLInputElement} */ (one(`[name="time${end}"]`, form)).value = time;
  }
  const pool = /** @type {HTMLSelectElement | null} */ (form.querySelector('[name="pool"]'));
  if (pool && tests) {
    pool.value = tests.pool;
  }
}

/** The first sentence stays in sight, the rest stands below what is typed.
 * @param {HTMLElement} output
 * @param {HTMLElement} more
 * @param {Words} words
 * @param {HTMLFormElement} form */
function show(output, more, words, form) {
  /** @type {import("./arithmetic/numbers.js").Given} */
  const given = {};
  /** @type {string[]} */
  const wrong = [];
  /** @type {string[]} */
  const missing = [];
  for (const field of words.fields) {
    const input = /** @type {HTMLInputElement} */ (form.elements.namedItem(field.name));
    const found = readField(field, input.value);
    const told = input.closest(".calc-field")?.querySelector("[data-read]");
    if (told) {
      told.textContent = found.told ?? "";
    }
    input.setAttribute("aria-invalid", String(Boolean(found.wrong)));
    if (found.missing) {
      missing.push(field.title);
    }
    if (found.wrong) {
      wrong.push(found.wrong);
    } else if (found.value !== undefined) {
      given[field.name] = found.value;
    }
  }
  if (wrong.length || missing.length) {
    const told = wrong.length ? wrong : [`Still to be filled in: ${missing.join("; ")}.`];
    output.replaceChildren(...told.map((text) => make("p", {}, text)));
    more.replaceChildren();
    return;
  }
  const { says, shown } = answer(words, given, data.club);
  const rows = words.lines.filter((line) => shown[line.name] !== undefined);
  output.replaceChildren(make("p", { class: "said" }, says[0]));
  more.replaceChildren(
    ...says.slice(1).map((text) => make("p", {}, text)),
    make("dl", {}, ...rows.flatMap((line) => [make("dt", {}, line.title), make("dd", {}, shown[line.name])])),
  );
}

for (const fold of all("[data-calculator]")) {
  ready(fold);
}
one("[data-calculators]").hidden = false;
addEventListener("hashchange", openNamed);
openNamed();
