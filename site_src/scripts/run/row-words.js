// The words of a row: the time, rep k of n, the line, what else stands beside it, and what a touched row opens. Pure.

import { soonestBegin } from "./engine.js";
import { lead } from "./steps.js";
import { first } from "./view.js";
import { count, crewName, gone, inSentence, left, swum, timeOfDay } from "./words.js";

/** @typedef {import("./view.js").Row} Row */
/** @typedef {import("./types.js").State} State */
/** @typedef {import("./types.js").Step} Step */
/** @typedef {{data: import("./types.js").RunData, run: import("./types.js").Run, shared: {gear: Record<string, string>}}} Shown a run with what all
 *   runs share */

/** @param {Row} row */
export function timeWords({ look, in_ms }) {
  const words = { ready: "ready", over: "done", waits: gone(in_ms), held: gone(in_ms), tap: gone(in_ms), counts: left(in_ms), ends: left(in_ms) };
  return words[look];
}

/** What stands in the place of "swimming" and "next". */
const STANDING = new Map([["held", "held"], ["tap", "no time known"]]);

/** What a reader hears before the time: for whom it is, and what it is the time of.
 * @param {Row} row */
export function heardWords(row) {
  const of = { counts: "next send-off in ", ends: "home in ", waits: "", held: "held for ", tap: "for ", ready: "", over: "" };
  return `${crewName(row)}, ${of[row.look]}`;
}

/** What they do who have been sent off.
 * @param {Shown} run
 * @param {Step} step */
function doing({ data }, step) {
  const { land, metres } = data.parts[step.part].items[step.item ?? 0];
  return step.sat ? "sits out" : land || metres === 0 ? "working" : "swimming";
}

/** @param {Step} step */
const ofReps = (step) => (step.whole ? `${step.reps} ${step.reps === 1 ? "rep" : "reps"}` : `${(step.rep ?? 0) + 1} of ${step.reps}`);

/** Whether it is swum or next, where its time is known.
 * @param {Shown} run
 * @param {Row} row
 * @param {Step} step */
function mark(run, { look, told }, step) {
  return STANDING.get(look) ?? (told === "now" ? doing(run, step) : look === "ends" ? "home" : step.sat ? "next: sits out" : "next");
}

/** Rep k of n, whether it is swum or next, and what else is to be known of it.
 * @param {Shown} run
 * @param {State} state
 * @param {Row} row */
export function repWords(run, state, row) {
  const step = first(row);
  if (row.look === "ready" || row.look === "waits") {
    return row.look === "waits" ? ["waits"] : talkWords(run, state, row);
  }
  if (!step) {
    return [];
  }
  const wave = (step.waves ?? 1) > 1 ? `wave ${step.wave}/${step.waves}` : "";
  const round = row.round ? `round ${row.round.no}/${row.round.of}` : "";
  return [ofReps(step), mark(run, row, step), ...(row.look === "ends" ? ["to its end"] : [wave, round])].filter(Boolean);
}

/** What goes by before a part. */
const BEFORE = /** @type {const} */ ([["talk_s", "talk"], ["change_s", "change"], ["gear_s", "gear"]]);

/** What is left of the time that the plan gives to talk, to changing over and to gear before a part.
 * @param {Shown} run
 * @param {State} state
 * @param {Row} row */
function talkWords({ data }, state, { key }) {
  const crew = state.crews.find((own) => own.key === key);
  const part = data.parts[crew?.left[0]?.part ?? -1];
  if (!crew || !part) {
    return [];
  }
  const left_ms = soonestBegin(state, crew) - state.now;
  const what = BEFORE.filter(([field]) => part[field]).map(([, word]) => word);
  return left_ms > 0 && left_ms <= lead(part) ? [left(left_ms), what.join(", ")] : [];
}

/** What a crew waits for: Go, with the plan; or the others.
 * @param {Shown} run
 * @param {State} state
 * @param {Row} row
 */
function waitsFor({ data, run }, state, { key, look }) {
  const begins = state.crews.find((own) => own.key === key)?.left[0];
  const part = data.parts[begins?.part ?? 0];
  if (look === "ready") {
    const isPlanned = run.planned !== null && typeof part.starts_s === "number";
    return `${part.title}; ${isPlanned ? `planned ${timeOfDay((run.planned ?? 0) + (part.starts_s ?? 0) * 1000)}, ` : ""}now ${timeOfDay(state.now)}`;
  }
  const busy = state.crews.filter((other) => (other.left[0]?.stage ?? Infinity) < (begins?.stage ?? 0)).map((crew) => crew.key);
  return `for ${data.crews.filter((crew) => busy.includes(crew.key)).map((crew) => inSentence(crewName(crew))).join(" and ")}`;
}

/** @param {Shown} run
 * @param {Step} step */
const lineOf = ({ data }, step) => data.parts[step.part].items[step.item ?? 0].line;

/** The part that a crew comes to after the one that it is at.
 * @param {Shown} run
 * @param {State} state
 * @param {Row} row */
function partAfter({ data }, state, { key }) {
  const own = state.crews.find((crew) => crew.key === key)?.left ?? [];
  const after = own.find(({ part }) => part !== own[0].part);
  return after ? `Then: ${data.parts[after.part].title}` : "Then: the end";
}

/** @param {Shown} run
 * @param {State} state
 * @param {Row} row */
export function lineWords(run, state, row) {
  const step = first(row);
  if (row.look === "ready" || row.look === "waits") {
    return waitsFor(run, state, row);
  }
  if (row.look === "ends" && row.told !== "now") {
    return partAfter(run, state, row);
  }
  return step ? lineOf(run, step) : "";
}

/** What the row does not tell first, where there is room: what leaves next and when, or who still swims; else the wait before it.
 * @param {Shown} run
 * @param {State} state
 * @param {Row} row */
export function thenWords(run, state, row) {
  const { look, told, on, next, wait } = row;
  if (look === "ready" || look === "waits") {
    return firstWords(run, state, row);
  }
  if (on && told === "now") {
    return next ? `Next${whenWords(state, row)}: ${besides(run, next, on)}` : look === "ends" ? partAfter(run, state, row) : "";
  }
  if (on && told === "soon") {
    const words = doing(run, on);
    return `${words[0].toUpperCase()}${words.slice(1)}: ${besides(run, on, next)}`;
  }
  return wait?.wait ? waitWords(run, wait.wait) : "";
}

/** @param {State} state
 * @param {Row} row */
const whenWords = (state, { look, in_ms }) => (look === "counts" ? ` at ${timeOfDay(state.now + in_ms, true).slice(-3)}` : "");

/** What a part begins with.
 * @param {Shown} run
 * @param {State} state
 * @param {Row} row */
function firstWords({ data }, state, { key }) {
  const step = state.crews.find((crew) => crew.key === key)?.left.find(({ kind }) => kind === "rep");
  const item = step && data.parts[step.part].items[step.item ?? 0];
  return item ? `First: ${(item.what ?? item.line).replace(/^1 × /, "")}` : "";
}

/** A send-off beside another: its rep, and its line where that is another.
 * @param {Shown} run
 * @param {Step} step
 * @param {Step | null} other */
function besides(run, step, other) {
  const line = lineOf(run, step);
  const isOtherRound = other && step.rounds.at(-1)?.node === other.rounds.at(-1)?.node && (step.rounds.at(-1)?.no ?? 0) > (other.rounds.at(-1)?.no ?? 0);
  return `${other && lineOf(run, other) === line ? "" : `${line}, `}${ofReps(step)}${isOtherRound ? ", next round" : ""}`;
}

/** What a step is swum at.
 * @param {Step} step */
function targetWords(step) {
  const block = step.block;
  return [
    typeof step.target === "number" ? `Target ${swum(step.target)}${block?.marks?.length ? ` (${block.marks.join(", ")})` : ""}` : "",
    typeof step.aim === "number" ? `aim ${swum(step.aim)}` : "",
    typeof step.rest === "number" ? `rest ${count(Math.round(step.rest))}` : "",
  ].filter(Boolean).join(", ");
}

/** Waves, or how many follow each other in a lane.
 * @param {Step} step */
function laneWords({ block, waves, wave }) {
  const [many, atOnce, isInWaves] = [block?.in_lane ?? 1, block?.at_once ?? 1, (waves ?? 1) > 1];
  const gap = (isInWaves ? atOnce : many) > 1 && block?.gap ? `, ${block.gap} s apart` : "";
  return isInWaves ? `Wave ${wave} of ${waves}, ${atOnce} in a lane${gap}` : many > 1 ? `${many} in a lane${gap}` : "";
}

const WAITS = new Map([["gear", "Gear change"], ["between", "Between rounds"]]);

/** @param {Shown} run
 * @param {import("./types.js").WaitBlock} wait */
function waitWords({ shared }, { why, off, on, note }) {
  const gear = (/** @type {string} */ word, /** @type {string[] | undefined} */ ids) => (ids?.length ? `${word}: ${ids.map((id) => shared.gear[id] ?? id).join(", ")}` : "");
  return [WAITS.get(why) ?? "Pause", gear("off", off), gear("on", on), note ?? ""].filter(Boolean).join("; ");
}

/** The send-off that an opened row tells of.
 * @param {State} state
 * @param {Row} row */
const told = (state, row) => first(row) ?? state.crews.find(({ key }) => key === row.key)?.left.find(({ kind }) => kind === "rep");

/**
 * Cue, target and waves of what the row tells first, and what else stands with it.
 * @param {Shown} run
 * @param {State} state
 * @param {Row} row
 */
export function moreWords(run, state, row) {
  const step = told(state, row);
  if (!step || row.look === "over") {
    return [];
  }
  const part = run.data.parts[step.part];
  const item = part.items[step.item ?? 0];
  return [
    item.cue ? `“${item.cue}”` : "", targetWords(step), laneWords(step), item.note, part.place, part.led_by ? `With ${part.led_by.toLowerCase()}` : "",
  ].filter((line) => typeof line === "string").filter(Boolean);
}
