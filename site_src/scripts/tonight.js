// Tonight: the run that is on, then today, mine before the others; else the day that comes next, and the next of mine. Then the weeks, folded; what is over is one fold, at the end.

import { all, make, one } from "./lib/dom.js";
import { keptGroups } from "./lib/my-groups.js";
import { onNow } from "./lib/on-now.js";
import { today } from "./lib/today.js";

const box = one("[data-days]");
const mine = keptGroups();

/** @param {HTMLElement} row */
const isMine = ({ dataset }) => (dataset.groups ?? "").split(" ").some((group) => mine.includes(group));

/** @param {HTMLElement} day */
function mineFirst(day) {
  const rows = all("li", day);
  one("ul", day).append(...rows.filter(isMine), ...rows.filter((row) => !isMine(row)));
}

/** A day out of its week, under a heading of its own.
 * @param {HTMLElement} day
 * @param {string} word */
function first(day, word) {
  const heading = one("h3", day);
  heading.replaceWith(make("h2", {}, `${word}, ${heading.textContent}`));
  mineFirst(day);
  return day;
}

const days = all("[data-on]", box);
const over = days.filter((day) => (day.dataset.on ?? "") < today);
const coming = days.filter((day) => (day.dataset.on ?? "") >= today);
const [next] = coming;
const own = coming.find((day) => all("li", day).some(isMine));
const isToday = next?.dataset.on === today;
box.prepend(
  ...(isToday ? [] : [make("p", {}, "Nothing is planned today.")]),
  ...(next ? [first(next, isToday ? "Tonight" : "Next")] : []),
  ...(own && own !== next ? [first(own, "Next of mine")] : []),
);
if (over.length) {
  const heading = make("summary", {}, make("h2", {}, "Earlier"), " ", make("span", { class: "fold-count" }, String(over.flatMap((day) => all("li", day)).length)));
  box.append(make("details", { class: "fold" }, heading, ...over));
}
for (const week of all("[data-week]", box)) {
  const rows = all("li", week);
  one(".fold-count", week).textContent = String(rows.length);
  week.hidden = !rows.length;
}
const run = onNow();
if (run) {
  box.before(make("div", { class: "tonight" }, run));
}
