// A composed practice on paper: a sheet for each lane group, with its send-offs, its gear, and every danger.

import { make } from "../lib/dom.js";
import { count, crewName } from "../run/words.js";
import { go, times } from "./goes.js";

/** @import {Block, Item, RunData} from "./types.js" */

const DEEPEST = 3;
const MINUTE_MS = 60_000;

/**
 * @param {Block[]} blocks
 * @param {Item[]} items
 * @param {number} depth
 * @returns {HTMLElement[]}
 */
const lines = (blocks, items, depth) => blocks.flatMap((block) => {
  const under = `make-line depth-${Math.min(depth, DEEPEST)}`;
  if ("rounds" in block) {
    const number = block.rounds.reduce((sum, { times: own }) => sum + own, 0);
    return block.rounds.flatMap(({ times: own, blocks: inner }) => [
      ...(number > 1 ? [make("div", { class: under }, make("b", {}, own === number ? `${number} ×` : `${own} × of ${number}`))] : []), ...lines(inner, items, depth + 1)]);
  }
  if ("wait" in block) {
    return [make("div", { class: under }, make("span", {}, block.note ?? (block.why === "gear" ? "gear" : "pause")), make("span", { class: "make-go-at" }, count(Math.round(block.wait))))];
  }
  const { what, line, effort, gear = [], how, note } = items[block.item];
  const told = [effort, gear.join(", "), how].filter(Boolean).join(", ");
  const whole = what ?? line;
  const said = block.reps > 1 && !/^\d+ × /.test(whole) ? `${block.reps} × ${whole}` : whole;
  const target = times(block.target);
  return [make("div", { class: under }, make("span", {}, make("b", {}, said), told ? `, ${told}` : "", target ? `, in ${target}` : "", ...(note ? [make("span", { class: "note" }, note)] : [])),
    make("span", { class: "make-go-at" }, go(block)))];
});

/** @param {string} start HH:MM
 * @param {number} seconds after */
function at(start, seconds) {
  const [hours, minutes] = start.split(":").map(Number);
  return new Date(new Date(2000, 0, 1, hours, minutes).getTime() + Math.floor(seconds / 60) * MINUTE_MS).toTimeString().slice(0, "HH:MM".length);
}

/**
 * The sheets.
 * @param {Omit<RunData, "version">} run
 * @param {{where: string, day: string, gear: string[], adults: number, printed: string}} told
 * @returns {HTMLElement[]}
 */
export function sheets(run, { where, day, gear, adults, printed }) {
  const start = run.start ?? "";
  return run.crews.map((crew) => make("section", { class: "make-sheet" },
    make("h2", {}, run.title),
    make("p", {}, `${crewName(crew)} · ${where} · ${day}, ${start} to ${at(start, 60 * (run.minutes ?? 0))} · ${adults === 1 ? "1 adult" : `${adults} adults`}`),
    ...(gear.length ? [make("p", {}, make("b", {}, "Gear: "), gear.join(", "))] : []),
    ...run.parts.filter(({ crews }) => crews[crew.key]).map((part) => make("div", { class: "make-part" },
      make("h3", {}, make("time", {}, at(start, part.starts_s ?? 0)), ` ${part.title}`), ...lines(part.crews[crew.key].blocks, part.items, 0))),
    make("ul", { class: "dangers" }, ...(run.hazards ?? []).map(({ title, control }) => make("li", {}, make("strong", {}, title), control ? ` ${control}` : ""))),
    make("p", { class: "make-printed" }, printed)));
}
