// What of the questions can't be, told at the question that it is of: seen there, and read with it.

import { all } from "../lib/dom.js";

/** Where a question is asked.
 * @param {string} field */
const ways = (field) => [`#make-${field}`, `[id^="make-${field}-"]`, `[name="${field.replace(/s$/, "")}"]`];

/**
 * Say it there, and go there; by the button where it is of no question. With "" nothing is told any more.
 * @param {HTMLElement} form
 * @param {HTMLElement} told
 * @param {string} problem
 * @param {string} field
 */
export function point(form, told, problem, field) {
  all("[aria-invalid]", form).forEach((own) => {
    own.removeAttribute("aria-invalid");
    own.removeAttribute("aria-describedby");
  });
  const [input] = problem && field ? ways(field).flatMap((way) => all(way, form)) : [];
  (input?.closest(".make-question, .make-field") ?? form.querySelector(".make-go"))?.[input ? "append" : "before"](told);
  told.textContent = problem;
  if (input) {
    input.setAttribute("aria-invalid", "true");
    input.setAttribute("aria-describedby", told.id);
    input.closest("details")?.setAttribute("open", "");
    input.focus({ preventScroll: true });
  }
  if (problem) {
    told.scrollIntoView({ block: "center" });
  }
}
