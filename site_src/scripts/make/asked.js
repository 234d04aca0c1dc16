// What is asked of Make a practice, as the words of its address: a link, a reload and another phone make the same practice of them. Pure.

import { MINUTES_MOST } from "../compose/wishes.js";

/** @import {Group, Practice, Request} from "./types.js" */
/** @import {Chosen, Hinders, Role, Unmet} from "../compose/types.js" */

/** @typedef {{squad: string, request: Request, on: string, start: string, number: number, practice: Practice | null, code: string, from?: string,
 *   roles?: string}} Asked
 *   `on`: YYYY-MM-DD; `number`: of the proposal, from 1; `practice`: where it was changed; `code`: of a run that another phone passes on;
 *   `from`: the entry that is opened; `roles`: those that its parts had where it was composed */

const ID = /^[\w-]+$/;
const KEPT = "!"; // after a piece that was kept
const ROLES = "wsmnoec0123456789AB"; // of a part that is held its place in the practice that is opened

/** @param {Record<string, number> | undefined} numbers */
const pairs = (numbers = {}) => Object.entries(numbers).map(([id, number]) => `${id}:${number}`).join(",");

/** @param {string | null} text
 * @returns {[string, number][]} */
const numbersOf = (text) => (text ?? "").split(",").flatMap((pair) => {
  const [, id, number] = /^([\w/-]+):(\d{1,4})$/.exec(pair) ?? [];
  return id ? [[id, Number(number)]] : [];
});

/** @param {string | null} text */
const listed = (text) => (text ?? "").split(",").filter((id) => /^[\w/-]+$/.test(id));

/** A practice that is no longer as it was proposed.
 * @param {Practice} practice
 * @param {string} from
 * @returns {[string, string][]} */
const ownWords = ({ parts, out }, from) =>
  [["parts", parts.map(({ role, piece, number, kept, talk_s: talk }) => `${role}.${piece}:${number}${talk === undefined ? "" : `:${talk}`}${kept ? KEPT : ""}`).join(",")], ["out", out.join(",")], ["from", from]];

/** @param {Asked} asked */
export function toAddress({ squad, request, on, start, number, practice, code, from = "" }) {
  const { pool, minutes, goals, groups = [], lanes, heads, gear, effort, adults, done = [], taught } = request;
  /** @type {[string, string][]} */
  const words = [
    ["squad", squad], ["pool", pool], ["groups", groups.join(",")], ["minutes", String(minutes)], ["goals", goals.join(",")], ["gear", pairs(gear)],
    ["lanes", pairs(lanes)], ["heads", pairs(heads)], ["effort", effort ?? ""], ["adults", adults === undefined || adults < 0 ? "" : String(adults)],
    ["done", done.map(([id, days]) => `${id}:${days}`).join(",")], ["taught", pairs(taught)], ["on", on], ["start", start], ["number", number > 1 ? String(number) : ""],
    ...(practice ? ownWords(practice, from) : []), ["code", code],
  ];
  return words.filter(([, value]) => value).map(([name, value]) => `${name}=${encodeURIComponent(value).replace(/%(2F|2C|3A|21)/gi, decodeURIComponent)}`).join("&");
}

/** @param {string} text
 * @returns {Practice["parts"]} */
const partsOf = (text) => text.split(",").flatMap((one) => {
  const [, role, piece, number, talk, kept] = /^(\w)\.([\w/-]+):(\d{1,3})(?::(\d{1,4}))?(!?)$/.exec(one) ?? [];
  return role && ROLES.includes(role) ? [/** @type {Chosen} */ ({ role: /** @type {Role} */ (role), piece, number: Number(number), kept: kept === KEPT, ...(talk ? { talk_s: Number(talk) } : {}) })] : [];
});

/** A day that there is, "" of another: the thirty-first of February.
 * @param {string} text YYYY-MM-DD */
const dayOf = (text) => (new Date(text).toJSON()?.startsWith(text) ? text : "");

/** A reader of words, each in the form that it has to have, "" else.
 * @param {URLSearchParams} words */
const reader = (words) => (/** @type {string} */ name, /** @type {RegExp} */ form) => form.exec(words.get(name) ?? "")?.[0] ?? "";

/** @param {URLSearchParams} words
 * @returns {Request} */
function requestOf(words) {
  const word = reader(words);
  const numbers = (/** @type {string} */ name) => Object.fromEntries(numbersOf(words.get(name)));
  return {
    pool: word("pool", ID), minutes: Number(word("minutes", /^\d{1,9}$/)), goals: listed(words.get("goals")), groups: listed(words.get("groups")), gear: numbers("gear"),
    lanes: numbers("lanes"), heads: numbers("heads"), taught: numbers("taught"), done: numbersOf(words.get("done")), effort: word("effort", ID),
    adults: Number(word("adults", /^\d{1,3}$/) || -1),
  };
}

/** What an address asks for; null where it asks for nothing.
 * @param {string} address after the #
 * @returns {Asked | null} */
export function fromAddress(address) {
  const words = new URLSearchParams(address);
  const word = reader(words);
  const [squad, from, parts] = [word("squad", ID), word("from", ID), partsOf(words.get("parts") ?? "")];
  return squad && word("minutes", /^\d{1,9}$/) ? {
    squad, request: requestOf(words), on: dayOf(word("on", /^\d{4}-\d\d-\d\d$/)), start: word("start", /^(?:[01]\d|2[0-3]):[0-5]\d$/), number: Number(word("number", /^[1-3]$/) || 1),
    practice: parts.length ? { parts, out: listed(words.get("out")) } : null, code: word("code", ID), ...(from ? { from, roles: word("roles", /^[wsmnoec]+$/) } : {}),
  } : null;
}

/** @typedef {{title: string, request: Request}} Way without a wish that hinders */

/** The heads of each lane group, so many in a lane at most; no fewer than are usual there.
 * @param {Request} request
 * @param {number} most in a lane
 * @param {Group[]} groups */
const fewerHeads = ({ lanes = {}, heads = {} }, most, groups) => Object.fromEntries(groups.flatMap(([id, , usualLanes, usual]) => {
  const own = Math.min(heads[id] ?? usual, Math.max(most, Math.ceil(usual / usualLanes)) * (lanes[id] ?? usualLanes));
  return own === usual ? [] : [[id, own]];
}));

/**
 * What is asked without a wish that is in the way, and what the button says; null where there is no dropping it.
 * @param {Request} request
 * @param {Pick<Hinders | Unmet, "wish" | "which">} hinders
 * @param {(goal: string) => string} goalTitle
 * @param {Group[]} [groups] the lane groups of the squad
 * @returns {Way | null}
 */
export function without(request, { wish, which }, goalTitle, groups = []) {
  const goals = request.goals.filter((goal) => goal !== which);
  /** @type {Record<string, Way | null>} */
  const ways = {
    goals: goals.length ? { title: `Without ${goalTitle(String(which)).toLowerCase()}`, request: { ...request, goals } } : null,
    minutes: typeof which === "number" ? { title: `In ${which} minutes`, request: { ...request, minutes: which } } : null,
    effort: { title: "At any effort", request: { ...request, effort: "" } },
    gear: { title: "With all the gear", request: { ...request, gear: {} } },
    adults: { title: "With as many adults as it needs", request: { ...request, adults: -1 } },
    lanes: typeof which === "number" ? { title: `With ${which} in a lane`, request: { ...request, heads: fewerHeads(request, which, groups) } }
      : { title: "With the usual lanes and heads", request: { ...request, lanes: {}, heads: {} } },
    done: { title: "With repeats", request: { ...request, done: [] } },
    together: typeof which === "number" ? { title: "With all of that", request: { ...request, minutes: which, done: [], gear: {}, adults: -1, effort: "", lanes: {}, heads: {} } } : null,
  };
  return ways[wish] ?? null;
}

/** The wish to drop for what a proposal does not meet: the one behind it, else what is not met itself; for want of time the last goal, but for
 * relief, which a few minutes more have room for sooner.
 * @param {Request} request
 * @param {Unmet} unmet
 * @param {(goal: string) => string} goalTitle */
export function wayPast(request, { wish, which, because }, goalTitle) {
  if (because === "time-left") { // there is time: what was taken out is taken back
    return null;
  }
  if (wish === "relief" && because === "minutes") {
    const minutes = request.minutes + MORE_MINUTES;
    return minutes <= MINUTES_MOST ? { title: `In ${minutes} minutes`, request: { ...request, minutes } } : null;
  }
  const behind = because === "minutes" || because === "goals" ? null : without(request, { wish: because, which: null }, goalTitle);
  const goal = wish === "goals" ? which : (request.goals[request.goals.length - 1] ?? null);
  return behind ?? without(request, wish === "effort" ? { wish, which } : { wish: "goals", which: goal }, goalTitle);
}

const MORE_MINUTES = 10;
const MINUTE_MS = 60_000;
const DAY_MINUTES = 24 * 60;

/** Whole minutes that are left of a slot that runs at a moment; 0 where it does not, or has just begun.
 * @param {Date} now
 * @param {string} start HH:MM
 * @param {number} minutes */
export function leftOf(now, start, minutes) {
  const [hours, past] = start.split(":").map(Number);
  const gone = Math.floor((now.getTime() - new Date(now).setHours(hours, past, 0, 0)) / MINUTE_MS);
  return gone > 0 && gone < minutes ? minutes - gone : 0;
}

/** Whole minutes from a moment until a time of day, of the next day where it is past; 0 where it is no time.
 * @param {Date} now
 * @param {string} until HH:MM */
export function minutesUntil(now, until) {
  const [hours, minutes] = until.split(":").map(Number);
  const then = new Date(now).setHours(hours, minutes, 0, 0);
  const left = Math.floor((then - now.getTime()) / MINUTE_MS);
  return Number.isNaN(left) ? 0 : left < 0 ? left + DAY_MINUTES : left;
}

/** A slot that ends at a time of day: from its start on, or from now on where it runs; as long as it is where no end is told.
 * @param {Date} now
 * @param {{start: string, isToday: boolean, until: string, minutes: number}} slot
 * @returns {{minutes: number, start?: string}} */
export function slotUntil(now, { start, isToday, until, minutes }) {
  const time = now.toTimeString().slice(0, "HH:MM".length), from = !start || (isToday && start < time && time < until) ? time : start;
  const [hours, past] = from.split(":").map(Number), begins = new Date(new Date(now).setHours(hours, past, 0, 0));
  return until ? { minutes: minutesUntil(begins, until), start: from } : { minutes };
}
