// The rows of a run, one a lane group, in lane order and never in another: lanes, time to the next send-off, rep k of n, one line. The one
// that leaves next is inverted. A touched row opens the cue, the target and the waves.

import { all, make, one } from "../../lib/dom.js";
import { count, crewName, gone, inSentence, left, shortName, swum, timeOfDay } from "../words.js";
import { put } from "./put.js";

/** @typedef {import("../view.js").Row} Row */
/** @typedef {import("../types.js").State} State */
/** @typedef {import("../types.js").Step} Step */
/** @typedef {import("./session.js").Session} Session */

const MEASURED_PX = 100;

/** How wide a text is in bold letters of this device's face, in parts of their size. */
const widthOf = (() => {
  /** @type {Map<string, number>} */
  const known = new Map();
  const pen = make("canvas").getContext("2d");
  return (/** @type {string} */ letter) => {
    if (pen && !known.has(letter)) {
      pen.font = `700 ${MEASURED_PX}px ${getComputedStyle(document.body).fontFamily}`;
      known.set(letter, pen.measureText(letter).width / MEASURED_PX);
    }
    return known.get(letter) ?? 0.65;
  };
})();

/** @param {string} text */
const wide = (text) => [...text].reduce((sum, letter) => sum + widthOf(letter), 0);

export class Rows {
  /** @param {(key: string) => void} touched */
  constructor(touched) {
    this.touched = touched;
    this.box = make("div", { class: "run-rows" });
  }

  /**
   * @param {Session} session
   * @param {State} state
   * @param {Row[]} rows
   * @param {string | null} open
   */
  draw(session, state, rows, open) {
    if (this.box.childElementCount !== rows.length) {
      this.box.replaceChildren(...rows.map(({ key }) => this.made(key)));
      this.box.dataset.rows = String(rows.length);
    }
    this.box.classList.toggle("is-opened", open !== null && rows.length > 1);
    rows.forEach((row, k) => fill(/** @type {HTMLElement} */ (this.box.children[k]), session, state, row, row.key === open || rows.length === 1));
  }

  /** @param {string} key */
  made(key) {
    const part = (/** @type {string} */ name) => make("span", { class: `row-${name}` });
    const row = make("button", { type: "button", class: "run-row", "data-key": key }, part("lanes"), part("time"), part("rep"), part("line"), part("more"));
    row.addEventListener("click", () => this.touched(key));
    return row;
  }

  /** @param {string[]} keys */
  flash(keys) {
    for (const row of all("[data-key]", this.box)) {
      row.classList.toggle("is-flashed", keys.includes(row.dataset.key ?? ""));
    }
  }
}

/**
 * @param {HTMLElement} row
 * @param {Session} session
 * @param {State} state
 * @param {Row} shown
 * @param {boolean} isOpen
 */
function fill(row, session, state, shown, isOpen) {
  const time = timeWords(shown);
  row.classList.toggle("is-next", shown.isNext);
  row.classList.toggle("is-open", isOpen);
  row.classList.toggle("is-waiting", shown.look !== "counts" && shown.look !== "ends");
  row.setAttribute("aria-expanded", String(isOpen));
  put(one(".row-lanes", row), shortName(shown));
  put(one(".row-time", row), time);
  row.style.setProperty("--wide", String(Math.max(1.6, wide(time.replace(/\d/g, "0")) + 0.02).toFixed(3)));
  putLines(one(".row-rep", row), repWords(shown));
  const line = lineWords(session, state, shown);
  if (one(".row-line", row).textContent !== line) {
    one(".row-line", row).textContent = line;
    row.style.setProperty("--line-wide", wide(line).toFixed(2)); // a short line may be larger
  }
  putLines(one(".row-more", row), isOpen ? moreWords(session, state, shown) : []);
}

/** A line each, where they are others than before.
 * @param {HTMLElement} box
 * @param {string[]} lines */
function putLines(box, lines) {
  const text = lines.join("\n");
  if (box.dataset.text !== text) {
    box.dataset.text = text;
    box.replaceChildren(...lines.map((line) => make("span", {}, line)));
  }
}

/** @param {Row} row */
function timeWords({ look, in_ms }) {
  const words = { ready: "ready", over: "done", waits: gone(in_ms), held: gone(in_ms), tap: gone(in_ms), counts: left(in_ms), ends: left(in_ms) };
  return words[look];
}

const STANDING = { ready: "", over: "", waits: "waits", held: "held", tap: "no time known", counts: "", ends: "to its end" };

/** @param {Step} step */
function ofReps(step) {
  const wave = (step.waves ?? 1) > 1 ? `wave ${step.wave}/${step.waves}` : "";
  const rep = step.whole ? `${step.reps} reps` : `${(step.rep ?? 0) + 1} of ${step.reps}`;
  return [rep, step.sat ? "sits out" : wave];
}

/** Rep k of n, and what else is to be known of it.
 * @param {Row} row */
function repWords({ look, next, on, round }) {
  const step = next ?? on;
  const isWaiting = look === "ready" || look === "waits" || !step;
  return [...(isWaiting ? [] : ofReps(step)), round && !isWaiting ? `round ${round.no}/${round.of}` : "", STANDING[look]].filter(Boolean);
}

/** What a crew waits for: Go, with the plan; or the others.
 * @param {Session} session
 * @param {State} state
 * @param {Row} row */
function waitsFor({ data, run }, state, { key, look }) {
  const first = state.crews.find((own) => own.key === key)?.left[0];
  const part = data.parts[first?.part ?? 0];
  if (look === "ready") {
    const isPlanned = run.planned !== null && typeof part.starts_s === "number";
    return `${part.title}; ${isPlanned ? `planned ${timeOfDay((run.planned ?? 0) + (part.starts_s ?? 0) * 1000)}, ` : ""}now ${timeOfDay(state.now)}`;
  }
  const busy = state.crews.filter((other) => (other.left[0]?.stage ?? Infinity) < (first?.stage ?? 0)).map((crew) => crew.key);
  return `for ${data.crews.filter((crew) => busy.includes(crew.key)).map((crew) => inSentence(crewName(crew))).join(" and ")}`;
}

/** @param {Session} session
 * @param {State} state
 * @param {Row} row */
function lineWords(session, state, row) {
  const step = row.next ?? row.on;
  if (row.look === "ready" || row.look === "waits") {
    return waitsFor(session, state, row);
  }
  return step ? session.data.parts[step.part].items[step.item ?? 0].line : "";
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

/** @param {Session} session
 * @param {import("../types.js").WaitBlock} wait */
function waitWords({ shared }, { why, off, on, note }) {
  const gear = (/** @type {string} */ word, /** @type {string[] | undefined} */ ids) => (ids?.length ? `${word}: ${ids.map((id) => shared.gear[id] ?? id).join(", ")}` : "");
  return [WAITS.get(why) ?? "Pause", gear("off", off), gear("on", on), note ?? ""].filter(Boolean).join("; ");
}

/** The send-off that an opened row tells of.
 * @param {State} state
 * @param {Row} row */
const told = (state, { next, on, key }) => next ?? on ?? state.crews.find((crew) => crew.key === key)?.left.find(({ kind }) => kind === "rep");

/**
 * Cue, target and waves of what leaves next, and what else stands with it.
 * @param {Session} session
 * @param {State} state
 * @param {Row} row
 */
function moreWords(session, state, row) {
  const step = told(state, row);
  if (!step || row.look === "over") {
    return [];
  }
  const part = session.data.parts[step.part];
  const item = part.items[step.item ?? 0];
  return [
    row.look === "ready" || row.look === "waits" ? (item.what ?? item.line) : "",
    item.cue ? `“${item.cue}”` : "", targetWords(step), laneWords(step), row.wait?.wait ? waitWords(session, row.wait.wait) : "",
    ...[item.note, part.place, part.led_by ? `With ${part.led_by.toLowerCase()}` : ""],
  ].filter((line) => typeof line === "string").filter(Boolean);
}
