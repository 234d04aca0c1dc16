// The rows of a run, one a lane group, in lane order and never in another: lanes, time to the next send-off, rep k of n, one line; where there
// is room, a second. The one that leaves next is inverted. A touched row opens the cue, the target and the waves.

import { all, make, one } from "../../lib/dom.js";
import { heardWords, lineWords, moreWords, repWords, thenWords, timeWords } from "../row-words.js";
import { shortName } from "../words.js";
import { put } from "./put.js";

/** @typedef {import("../view.js").Row} Row */
/** @typedef {import("../types.js").State} State */
/** @typedef {import("./session.js").Session} Session */

const MEASURED_PX = 100;
const LANES_PX = 22; // as run.css has them

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
    const row = make("button", { type: "button", class: "run-row", "data-key": key }, make("span", { class: "row-heard unseen" }), part("lanes"), part("time"), part("rep"), part("line"), part("then"), part("more"));
    one(".row-lanes", row).setAttribute("aria-hidden", "true"); // heard in full before it
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
  const lanes = shortName(shown);
  put(one(".row-heard", row), heardWords(shown));
  put(one(".row-lanes", row), lanes);
  row.style.setProperty("--lanes", `${Math.ceil(LANES_PX * Math.max(...lanes.split("\n").map(wide)))}px`);
  put(one(".row-time", row), time);
  row.style.setProperty("--wide", String(Math.max(1.6, wide(time.replace(/\d/g, "0")) + 0.02).toFixed(3)));
  row.dataset.look = shown.look;
  row.dataset.told = shown.look === "counts" || (shown.look === "ends" && shown.told === "now") ? shown.told : "";
  putLines(one(".row-rep", row), repWords(session, state, shown));
  const line = lineWords(session, state, shown);
  if (one(".row-line", row).textContent !== line) {
    one(".row-line", row).textContent = line;
    row.style.setProperty("--line-wide", wide(line).toFixed(2)); // a short line may be larger
  }
  put(one(".row-then", row), thenWords(session, state, shown));
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
