// Judge it: a picture, what is seen, where, what first, what is said; ten make a round.

import { all, make, one } from "./lib/dom.js";
import { today } from "./lib/today.js";
import { askedOf, next } from "./judge/asking.js";
import { elements, placeOf } from "./judge/drawing.js";
import { ROUND, keep, readyWords, rounds } from "./judge/results.js";
import { kept } from "./learn/progress.js";

/** @typedef {import("./judge/asking.js").Asked} Asked */
/** @typedef {import("./judge/asking.js").Choice} Choice */

const WIDTH = 320;
const SEEN = "what you see";
const FLOAT = 8; // from one float of a rope to the next
const NEAR = 1.5; // a touch counts within so many rings
/** @type {import("./judge/asking.js").Data} */
const data = JSON.parse(one("#judge-data").textContent ?? "");
const box = one("[data-ask]");
const LATELY = Math.min(6, Math.floor(askedOf(data).length / 2)); // pictures before a fault comes again
/** @type {string[]} */
let lately = [];
let [count, right] = [0, 0];

/** @param {Asked} asked
 * @returns {SVGSVGElement} */
function picture({ drawing, along, mirrored }) {
  const { height, level } = drawing;
  const water = `<rect class="figure-water" x="0" y="${level ?? 0}" width="${WIDTH}" height="${height - (level ?? 0)}"/>`;
  const surface = level === null ? "" : `<path class="figure-surface" d="M0 ${level}H${WIDTH}"/>`;
  const veil = drawing.deck ? `<rect class="judge-veil" x="0" y="${level}" width="${WIDTH}" height="${height - (level ?? 0)}"/>` : "";
  const text = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}">${water}${drawing.above ? rope() : ""}${elements(drawing, data.shapes, along).join("")}${surface}${veil}</svg>`;
  const svg = document.adoptNode(/** @type {any} */ (new DOMParser().parseFromString(text, "image/svg+xml").documentElement));
  for (const [name, paints] of Object.entries(data.paints)) {
    svg.querySelectorAll(`.figure-${name}`).forEach((/** @type {Element} */ part) => Object.entries(paints).forEach(([key, value]) => part.setAttribute(key, value)));
  }
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", "A swimmer, to be judged by what is seen");
  svg.classList.add("judged");
  svg.classList.toggle("is-mirrored", mirrored);
  return svg;
}

/** A lane rope along the upper edge of a picture from above: floats of two colours, four at a time. */
const rope = () =>
  Array.from({ length: WIDTH / FLOAT }, (_, at) => `<circle class="figure-${Math.floor(at / 4) % 2 ? "wall" : "gear"}" cx="${(at + 0.5) * FLOAT}" cy="4" r="3"/>`).join("");

/** @param {boolean} moves whether the focus goes to the question */
function ask(moves) {
  const asked = next(data, Math.random, lately);
  lately = LATELY ? [...lately, asked.drawing.fault].slice(-LATELY) : [];
  const svg = picture(asked);
  one("[data-picture]").replaceChildren(svg, make("p", { class: "from" }, view(asked)));
  one("[data-count]").textContent = `Picture ${count + 1} of ${ROUND}, ${right} right so far`;
  one("[data-next]").hidden = true;
  choose("What do you see?", asked.see, (ok) => (asked.wrong ? where(asked, svg, ok) : tell(asked, missed({ [SEEN]: ok }))), moves);
}

/** @param {Asked} asked */
const view = ({ drawing }) => (drawing.deck ? "Seen as from the deck; what is under water is dim." : drawing.above ? "Seen from over the water." : "Seen from the side.");

/**
 * @param {string} question
 * @param {Choice[]} choices
 * @param {(ok: boolean) => void} then
 * @param {boolean} [moves]
 */
function choose(question, choices, then, moves = true) {
  const buttons = choices.map(({ words, right: ok }) => {
    const button = make("button", { type: "button", class: "option" }, words);
    button.addEventListener("click", () => then(ok));
    return make("li", {}, button);
  });
  put(question, make("ul", { class: "options" }, ...buttons), moves);
}

/** A question in the place of the last one, with the focus, which the pressed button would take away with it.
 * @param {string} question
 * @param {Element} answers
 * @param {boolean} moves whether the focus goes there: not when the page is opened */
function put(question, answers, moves) {
  const heading = make("h2", { tabindex: "-1" }, question);
  box.replaceChildren(heading, answers);
  if (moves) {
    heading.focus({ preventScroll: true });
  }
}

/** Where it is: by a touch of the picture, or from the list.
 * @param {Asked} asked
 * @param {SVGSVGElement} svg
 * @param {boolean} saw */
function where(asked, svg, saw) {
  const { fault, drawing, mirrored, along } = asked;
  const [there, deep] = placeOf(drawing, along);
  const list = /** @type {HTMLTemplateElement} */ (one("[data-places]")).content.cloneNode(true);
  const places = make("p", { class: "tools" });
  places.append(list);
  put("Where? Touch it, or choose.", places, true);
  const done = (/** @type {boolean} */ ok) => {
    svg.onclick = null;
    choose("What first?", asked.first, (first) => choose("What do you say?", asked.say, (say) => tell(asked, missed({ [SEEN]: saw, "where it is": ok, "what first": first, "what to say": say }))));
  };
  svg.onclick = (event) => {
    const frame = svg.getBoundingClientRect();
    const x = ((event.clientX - frame.left) / frame.width) * WIDTH;
    const y = ((event.clientY - frame.top) / frame.height) * drawing.height;
    done(Math.hypot((mirrored ? WIDTH - x : x) - there, y - deep) <= NEAR * drawing.ring);
  };
  for (const button of all("[data-place]", places)) {
    button.addEventListener("click", () => done(button.dataset.place === fault.place));
  }
}

/** A place as its button calls it. @param {string} place */
const placeName = (place) =>
  /** @type {HTMLTemplateElement} */ (one("[data-places]")).content.querySelector(`[data-place="${place}"]`)?.textContent ?? place;

/** Which of the questions were answered wrong.
 * @param {Record<string, boolean>} answers
 * @returns {string[]} */
const missed = (answers) => Object.keys(answers).filter((name) => !answers[name]);

/** @param {Asked} asked
 * @param {string[]} wrongly the questions that were answered wrong */
function tell({ fault, drawing, wrong, along }, wrongly) {
  const ok = !wrongly.length;
  count += 1;
  right += Number(ok);
  const link = make("a", { href: fault.href }, fault.title);
  const eye = wrong
    ? [make("p", {}, "It is ", link, `: ${fault.sign}. The eye goes to the ${placeName(fault.place)}. ${fault.see}`),
       make("p", {}, `Say: ${fault.words.join(" · ")}. First: ${fault.drills.join(", ")}.`)]
    : [make("p", {}, `Nothing to mend here: ${fault.right}. What is off by less than a coach would mend is let go.`)];
  box.replaceChildren(make("p", { class: "verdict" }, ok ? "All right." : `Not right: ${wrongly.join(", ")}.`), ...eye);
  if (wrong) {
    mark(placeOf(drawing, along), drawing.ring);
  }
  if (count === ROUND) {
    keep(kept().shape, { on: today, right });
    tellReady();
    box.append(make("p", { class: "verdict" }, `Round over: ${right} of ${ROUND}.`));
    [count, right] = [0, 0];
  }
  one("[data-next]").hidden = false;
  one("[data-next]").focus();
}

/** Ring the place in the picture.
 * @param {[number, number]} place
 * @param {number} ring */
function mark([x, y], ring) {
  const circle = document.createElementNS("http://www.w3.org/2000/svg", "circle");
  Object.entries({ cx: x, cy: y, r: ring, class: "judge-ring" }).forEach(([name, value]) => circle.setAttribute(name, String(value)));
  one("svg", one("[data-picture]")).append(circle);
}

function tellReady() {
  one("[data-ready]").textContent = readyWords(rounds(kept().shape));
}

if (askedOf(data).length) {
  one("[data-next]").addEventListener("click", () => {
    ask(true);
    one("[data-count]").scrollIntoView(); // a long answer has moved the picture out of sight
  });
  one("[data-judge]").hidden = false;
  tellReady();
  ask(false);
}
