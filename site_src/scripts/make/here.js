// What Make a practice knows before it is asked: the squads, what is planned on which day, my groups, and what was answered last.

import { MINUTES_LEAST } from "../compose/wishes.js";
import { one, root } from "../lib/dom.js";
import { mineUntil } from "../lib/mine-until.js";
import { keptGroups } from "../lib/my-groups.js";
import { read } from "../lib/storage.js";
import { today } from "../lib/today.js";
import { leftOf, minutesUntil } from "./asked.js";

/** @import {Answers} from "./answers.js" */

/** @typedef {[id: string, title: string, groups: [id: string, title: string][], pool: string, start: string, minutes: number]} SquadHere */
/** @typedef {{squads: SquadHere[], planned: [on: string, squad: string, start: string, minutes: number, pool: string][], kept: [on: string, practice: string][],
 *   gravities: string[], parts: Record<string, string>}} Here */

export const NO_SIGNAL = "No signal, and the site is not kept on this phone: what a practice is made of can’t be read.";
const FROM_FOLDER = "A practice can’t be made from a folder: it reads its data from the site. Open it over https, or keep the site on this phone.";
/** What is not on this phone can't be had just now. */
export class NoSignal extends Error {}

export const LAST = "make";
/** @type {Here} */
export const here = JSON.parse(one("#make-data").textContent ?? "");
const mine = keptGroups();
/** @type {Map<string, Promise<any>>} */
const files = new Map();

/** @param {string} file below data/v1/
 * @returns {Promise<any>} */
export function fetched(file) {
  const known = files.get(file) ?? fetch(new URL(`data/v1/${file}.json`, root)).catch(() => { throw new NoSignal(); }).then((response) => {
    if (!response.ok) {
      throw new Error(`${file}: ${response.status}`);
    }
    return response.json();
  });
  files.set(file, known);
  known.catch(() => files.delete(file));
  return known;
}

/** @param {Date} now */
const clock = (now) => now.toTimeString().slice(0, "HH:MM".length);

/** What is planned for a squad today: what runs now, else what is next, else what was first.
 * @param {string} squad
 * @param {Date} now */
export function tonight(squad, now) {
  const own = here.planned.filter(([on, whose]) => on === today && whose === squad);
  return own.find(([, , start, minutes]) => leftOf(now, start, minutes)) ?? own.find(([, , start]) => start >= clock(now)) ?? own[0];
}

/** The minutes that are left of what is planned and runs now; 0 where nothing does.
 * @param {string} squad
 * @param {Date} now */
export function leftTonight(squad, now) {
  const planned = tonight(squad, now);
  return planned ? leftOf(now, planned[2], planned[3]) : 0;
}

/** When what is asked for begins: now where the slot runs already or only its end is said, else when it is planned.
 * @param {SquadHere} squad
 * @param {string} until
 * @param {Date} now */
export const starts = ([id, , , , usual], until, now) => (until || leftTonight(id, now) ? clock(now) : (tonight(id, now)?.[2] ?? usual));

/** The squad of my groups, of the last time, or the only one; undefined where it has to be asked. */
export function mySquad() {
  const last = read(LAST, { squad: "" }).squad;
  return here.squads.find(([, , groups]) => groups.some(([id]) => id === mine[0])) ?? here.squads.find(([id]) => id === last) ?? (here.squads.length === 1 ? here.squads[0] : undefined);
}

/** How long a slot is that is not said: what is left of the one that runs, where that is enough for a practice.
 * @param {string} squad
 * @param {number} whole
 * @param {Date} now */
function longOf(squad, whole, now) {
  const left = leftTonight(squad, now);
  return left >= MINUTES_LEAST ? left : whole;
}

/** What is taken as answered at first: tonight's slot, my groups, until when the water is mine.
 * @param {SquadHere} squad
 * @returns {Answers} */
export function atFirst([id, , groups, pool, , minutes]) {
  const now = new Date(), planned = tonight(id, now), until = mineUntil();
  const own = groups.map(([group]) => group).filter((group) => mine.includes(group));
  const last = read(LAST, /** @type {{day?: string, goals?: string[], gone?: string[]}} */ ({}));
  const isToday = last.day === today;
  return {
    minutes: String((until && minutesUntil(now, until)) || longOf(id, planned?.[3] ?? minutes, now)), until, goals: isToday ? (last.goals ?? []) : [], gone: new Set(isToday ? last.gone : []),
    groups: own.length ? own : groups.map(([group]) => group), pool: planned?.[4] ?? pool, lanes: {}, heads: {}, effort: "", adults: "", notDone: new Set(), taught: {},
  };
}

/** Why there is nothing to be shown.
 * @param {unknown} problem */
export const whyNot = (problem) => (location.protocol === "file:" ? FROM_FOLDER : problem instanceof NoSignal ? NO_SIGNAL : String(problem));
