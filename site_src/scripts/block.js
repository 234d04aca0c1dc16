// The pages of blocks and meets: this week stands open and first, and how many days it is to the race. Which day it is only the device knows.

import { all } from "./lib/dom.js";

const DAY_MS = 24 * 3600 * 1000;
const DAYS_A_WEEK = 7;

/** Noon of a day, so that no change of the clocks moves it to another.
 * @param {string} day */
const noon = (day) => new Date(`${day}T12:00`).getTime();

/** Whole days from now until a day; below zero when it is over.
 * @param {string} day */
const daysUntil = (day) => Math.round((noon(day) - new Date().setHours(12, 0, 0, 0)) / DAY_MS);

const weeks = /** @type {HTMLDetailsElement[]} */ (all("[data-this-week] > .week"));
const now = weeks.find(({ dataset }) => {
  const begun = -daysUntil(dataset.from ?? "");
  return begun >= 0 && begun < DAYS_A_WEEK;
});
if (now) {
  const [head] = all(`[data-week-from="${now.dataset.from}"]`);
  for (const row of head ? /** @type {HTMLTableRowElement[]} */ (all("tr", head.closest("table") ?? document)) : []) {
    row.cells[/** @type {HTMLTableCellElement} */ (head).cellIndex]?.classList.add("is-now");
  }
  weeks.forEach((week) => { week.open = week === now; });
  now.parentElement?.prepend(now);
}
for (const race of all("[data-race]")) {
  const days = daysUntil(race.dataset.race ?? "");
  race.textContent = days > 1 ? `, in ${days} days` : ["", ", today", ", tomorrow"][days + 1] ?? "";
}
// A timetable in force: the grids of today first, of the day itself where it is otherwise, else of its weekday.
for (const box of all("[data-today-first]")) {
  const inForce = daysUntil(box.dataset.from ?? "") <= 0 && daysUntil(box.dataset.to ?? "") >= 0;
  const single = all(".lane-grid[data-on]").filter(({ dataset }) => daysUntil(dataset.on ?? "") === 0);
  const weekly = all(".lane-grid", box).filter(({ dataset }) => (dataset.weekdays ?? "").split(" ").includes(String(new Date().getDay())));
  const today = !inForce ? [] : single.length > 0 ? single : weekly;
  today.forEach((grid) => grid.classList.add("is-now"));
  box.prepend(...today);
}
// A season: this week is marked, and what each squad has in it stands before all.
all(".year > tbody").find(({ dataset }) => {
  const begun = -daysUntil(dataset.from ?? "");
  return begun >= 0 && begun < Number(dataset.days ?? DAYS_A_WEEK);
})?.classList.add("is-now");
const held = all("li[data-to]").filter(({ dataset }) => daysUntil(dataset.since ?? "") <= 0 && daysUntil(dataset.to ?? "") >= 0);
for (const box of all("[data-year-now]")) {
  box.hidden = held.length === 0;
  box.lastElementChild?.append(...held.map((own) => own.cloneNode(true)));
}
