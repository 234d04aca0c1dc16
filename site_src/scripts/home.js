// Home: today's practices, those of my lane groups first; the last three pages; what is chosen. Which day it is only the device knows.

import { all, make, one } from "./lib/dom.js";
import { last } from "./lib/last-pages.js";
import { keptGroups } from "./lib/my-groups.js";
import { practiceLines } from "./lib/practice-lines.js";
import { onNow } from "./lib/on-now.js";
import { read } from "./lib/storage.js";
import { inWords, time, today } from "./lib/today.js";
import { dueInAll } from "./learn/due.js";

/** A practice on a day.
 * @typedef {{on: string, start: string, end: string, href: string, title: string, squad: string, groups: string[]}} Planned */
/** @typedef {{titles: Record<string, string>, columns: string[], rows: (string | string[])[][]}} Data */

const NEXT = 5;
/** @type {Data} */
const data = JSON.parse(one("#home-data").textContent ?? "");
const planned = data.rows.map((row) => /** @type {Planned} */ (Object.fromEntries(data.columns.map((name, at) => [name, row[at]]))));
const { pool } = read("choices", /** @type {{pool?: string}} */ ({}));
const mine = keptGroups();

/** @param {Planned} own */
const isMine = (own) => own.groups.some((group) => mine.includes(group));

/** Mine first, then by the clock; what is over comes last.
 * @param {Planned} own
 * @returns {[boolean, boolean, string]} */
const order = (own) => [own.end !== "" && own.end < time, !isMine(own), own.start];

/** @param {Planned[]} found */
const sorted = (found) =>
  found
    .map((own) => ({ own, key: order(own).map((part) => (typeof part === "boolean" ? Number(part) : part)).join(" ") }))
    .sort((first, next) => (first.key < next.key ? -1 : 1))
    .map(({ own }) => own);

/** @param {Planned} own */
const when = (own) => (own.start ? `${own.start}–${own.end}` : "no time");

/** @param {string} href
 * @param {string} title
 * @param {string} about */
const row = (href, title, about) =>
  make("li", {}, make("a", { href }, make("b", {}, title), " ", make("span", { class: "about" }, about)));

/** On a desk the evening to scale, for each lane group.
 * @param {Planned} own */
const lines = (own) =>
  location.protocol !== "file:" && matchMedia("(min-width: 60em)").matches ? [practiceLines(own.href, own.groups)] : [];

/** The first as a Band with its button, the others as rows.
 * @param {Planned[]} found
 * @param {string} heading */
function shown([first, ...others], heading) {
  const band = make(
    "header",
    { class: "band" },
    make("p", { class: "band-kind" }, `${heading} · ${first.squad}`),
    make("h2", {}, make("a", { href: first.href }, first.title)),
    make("p", { class: "lead" }, when(first)),
    make("a", { class: "tool is-main", href: `run.html#practice=${first.href.replace(/^.*\/|\.html$/g, "")}${first.start ? `&start=${first.start}` : ""}` }, "Run"),
    " ", make("a", { class: "tool", href: "make.html" }, "Make a practice"),
    ...lines(first),
  );
  const rows = others.map((own) => row(own.href, own.title, `${when(own)} · ${own.squad}`));
  return [band, ...(rows.length ? [make("ul", { class: "rows" }, ...rows)] : [])];
}

/** What comes after today, mine alone where I chose lane groups. */
const coming = planned.filter((own) => own.on > today && (!mine.length || isMine(own)));

function showTonight() {
  const run = onNow();
  if (run) {
    one("[data-tonight]").replaceChildren(run);
    return;
  }
  const todays = planned.filter((own) => own.on === today);
  const later = coming.filter((own) => own.on === coming[0].on);
  if (todays.length) {
    one("[data-tonight]").replaceChildren(...shown(sorted(todays), "Tonight"));
  } else if (later.length) {
    one("[data-tonight]").replaceChildren(...shown(sorted(later), `Nothing today; ${inWords(later[0].on)}`));
  }
}

/** On a desk: the days after the one that is shown. */
function showNext() {
  const isToday = planned.some((own) => own.on === today);
  const next = coming.filter((own) => isToday || own.on !== coming[0].on).slice(0, NEXT);
  const box = one("[data-next]");
  box.hidden = !next.length;
  one("ul", box).replaceChildren(...next.map((own) => row(own.href, own.title, `${inWords(own.on)}, ${when(own)} · ${own.squad}`)));
}

function showLast() {
  const pages = last();
  const box = one("[data-last]");
  box.hidden = !pages.length;
  one("ul", box).replaceChildren(...pages.map(({ href, title, kind }) => row(href, title, kind)));
}

/** What was answered wrong and comes back, in one line; nothing where nothing does. */
function showDue() {
  const due = dueInAll(new Date());
  const line = one("[data-due]");
  line.hidden = !due;
  one("a", line).textContent = due === 1 ? "One question comes back" : `${due} questions come back`;
}

showTonight();
showDue();
showNext();
showLast();
const chosen = [...mine.map((group) => data.titles[group]), (pool ?? "").replace(/^\d+/, "$& ")].filter(Boolean);
for (const place of all("[data-chosen]")) {
  place.textContent = chosen.length ? `: ${chosen.join("; ")}` : "";
}
