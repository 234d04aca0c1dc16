// A progression's page: its questions asked and kept, those that come back named first; the record of a day printed.

import { all, make, one, root } from "./lib/dom.js";
import { openNamed } from "./lib/folds.js";
import { today } from "./lib/today.js";
import { tellPrinted } from "./lib/printed.js";
import { askToLast } from "./learn/lasting.js";
import { readyWords, rounds } from "./judge/results.js";
import { answered } from "./learn/answering.js";
import { dueInAll } from "./learn/due.js";
import { counts, kept } from "./learn/progress.js";
import { ask } from "./learn/question.js";

const questions = all("[data-question]");
const keys = questions.map((box) => box.dataset.question ?? "");

function tellCounts() {
  const { answered: done, right, due } = counts(keys, new Date());
  const box = one("[data-learnt]");
  box.hidden = !done;
  box.replaceChildren(`${right} of ${keys.length} right${done < keys.length ? `, ${keys.length - done} not asked yet` : ""}.`);
  if (due.length) {
    const first = make("a", { href: `#q-${due[0]}` }, due.length === 1 ? "One comes back today" : `${due.length} come back today`);
    box.append(" ", first, ".");
  }
  for (const place of all("[data-record-count]")) {
    place.textContent = `${right} of ${keys.length}`;
  }
  mark(due);
}

/** Mark the questions that come back, and the stages that they are folded into.
 * @param {string[]} due */
function mark(due) {
  all(".comes-back").forEach((old) => old.remove());
  const boxes = questions.filter((box) => due.includes(box.dataset.question ?? ""));
  for (const box of boxes) {
    box.prepend(make("p", { class: "comes-back" }, "Comes back now"));
  }
  for (const fold of new Set(boxes.map((box) => box.closest("details")))) {
    fold?.querySelector("summary > :first-child")?.append(make("span", { class: "comes-back" }, " · comes back"));
  }
}

/** After an answer: the way to the next question that comes back, or to Learn where others do.
 * @param {HTMLElement} box */
function leadOn(box) {
  const now = new Date();
  const [next] = counts(keys, now).due;
  const others = dueInAll(now);
  if (next) {
    box.append(make("p", {}, make("a", { class: "tool", href: `#q-${next}` }, "Next that comes back")));
  } else if (others) {
    box.append(make("p", {}, make("a", { class: "tool", href: new URL("learn.html", root).href }, others === 1 ? "One more comes back, in Learn" : `${others} more come back, in Learn`)));
  }
}

for (const box of questions) {
  ask(box, `${today} ${box.dataset.question}`, async (right) => {
    const held = answered(box.dataset.question ?? "", right, new Date());
    tellCounts();
    leadOn(box);
    const told = held ? await askToLast() : "This browser keeps nothing: the answers hold on this page only.";
    one("[data-lasting]").textContent = told;
  });
}
for (const button of all("[data-print-record]")) {
  button.hidden = false;
  button.addEventListener("click", () => {
    document.documentElement.dataset.sheet = "record";
    tellPrinted(document);
    window.print();
  });
}
addEventListener("afterprint", () => delete document.documentElement.dataset.sheet);
one("[data-shape]").textContent = kept().shape;
one("[data-record-ready]").textContent = readyWords(rounds(kept().shape));
tellCounts();
openNamed();
addEventListener("hashchange", openNamed);
