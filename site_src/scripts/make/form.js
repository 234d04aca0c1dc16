// The questions of Make a practice: minutes, goals and the gear that is not here; the rest is taken from my groups, from what is planned
// and from what was done, and stands under More.

import { make, tool } from "../lib/dom.js";
import { keepUntil } from "../lib/mine-until.js";
import { minutesUntil } from "./asked.js";
import { leftTonight } from "./here.js";

/** @import {Answers, Known} from "./answers.js" */
/** @import {Data} from "./types.js" */

export const MOST_GOALS = 3;
const MINUTE_STEP = 5;

/** @typedef {{propose: () => void, squad: (id: string) => void, changed: () => void}} Deeds */

/** @param {string} title
 * @param {...(Node | string)} children */
const question = (title, ...children) => make("fieldset", { class: "make-question" }, make("legend", {}, title), ...children);

/**
 * A chip to tick.
 * @param {"checkbox" | "radio"} type
 * @param {string} name
 * @param {[value: string, title: string]} own
 * @param {boolean} isOn
 * @param {(isOn: boolean) => void} act
 */
function chip(type, name, [value, title], isOn, act) {
  const input = make("input", { type, name, value });
  input.checked = isOn;
  input.addEventListener("change", () => act(input.checked));
  return make("label", { class: "chip" }, input, make("span", { class: "chip-title" }, title));
}

/**
 * A field with its name; what is typed goes to `act`.
 * @param {string} id
 * @param {string} title
 * @param {Record<string, string>} attributes
 * @param {(value: string) => void} act
 */
function field(id, title, attributes, act) {
  const input = make("input", { id, autocomplete: "off", ...attributes });
  input.addEventListener("input", () => act(input.value));
  return make("p", { class: "make-field" }, make("label", { for: id }, title), input);
}

/**
 * @param {string} id
 * @param {string} title
 * @param {[value: string, title: string][]} options
 * @param {string} value
 * @param {(value: string) => void} act
 */
function choice(id, title, options, value, act) {
  const select = make("select", { id }, ...options.map(([own, words]) => make("option", { value: own }, words)));
  select.value = value;
  select.addEventListener("change", () => act(select.value));
  return make("p", { class: "make-field" }, make("label", { for: id }, title), select);
}

/** That the slot runs already, and from when what is asked for is counted.
 * @param {string} squad */
function running(squad) {
  const left = leftTonight(squad, new Date());
  return left ? [make("p", { class: "hint" }, `The slot has begun: ${left} of its minutes are left. What is made begins now.`)] : [];
}

/** @param {Known} known */
function minutes({ answers, data }) {
  const typed = field("make-minutes", "Minutes", { type: "number", inputmode: "numeric", value: answers.minutes, min: "20", max: "120", required: "" }, (value) => {
    answers.minutes = value;
    answers.until = until.value = "";
  });
  const input = /** @type {HTMLInputElement} */ (typed.querySelector("input"));
  const step = (/** @type {number} */ by) => tool(by < 0 ? "−5" : "+5", () => {
    input.value = String(Math.max(MINUTE_STEP, (Number(input.value) || 0) + by));
    input.dispatchEvent(new Event("input", { bubbles: true }));
  }, { "aria-label": by < 0 ? "Five minutes less" : "Five minutes more" });
  input.before(step(-MINUTE_STEP));
  input.after(step(MINUTE_STEP));
  const by = field("make-until", "or from now until", { type: "time", value: answers.until }, (value) => {
    answers.until = value;
    keepUntil(value);
    answers.minutes = input.value = value ? String(minutesUntil(new Date(), value)) : answers.minutes;
  });
  const until = /** @type {HTMLInputElement} */ (by.querySelector("input"));
  return question("How long?", make("div", { class: "make-fields" }, typed, by), ...running(data.squad.id));
}

/** What a squad may do in a pool.
 * @param {Data} data
 * @param {string} pool */
const piecesIn = (data, pool) => (data.squad.offers[pool] ?? []).map(([place]) => data.pieces[place]);

/** @param {Known} known
 * @param {() => void} changed */
function goals({ data, answers }, changed) {
  const served = new Set(piecesIn(data, answers.pool).flatMap(({ goals: own = [] }) => own));
  const offered = data.goals.filter((_, place) => served.has(place));
  answers.goals = answers.goals.filter((goal) => offered.some(([id]) => id === goal));
  const chips = offered.map((own) => chip("checkbox", "goal", own, answers.goals.includes(own[0]), (isOn) => {
    answers.goals = isOn ? [...answers.goals, own[0]] : answers.goals.filter((goal) => goal !== own[0]);
    show();
    changed();
  }));
  function show() {
    chips.forEach((own, k) => {
      const input = /** @type {HTMLInputElement} */ (own.firstElementChild);
      const place = answers.goals.indexOf(offered[k][0]);
      input.disabled = place < 0 && answers.goals.length >= MOST_GOALS;
      own.dataset.order = place < 0 || answers.goals.length < 2 ? "" : String(place + 1);
    });
  }
  show();
  return question("What for? One to three, the chief one first", make("div", { class: "chips" }, ...chips));
}

/** @param {Known} known */
function gear({ data, answers }) {
  const used = new Set(piecesIn(data, answers.pool).flatMap(({ gear: own = [] }) => own));
  const offered = data.gear.filter(([, , owned], place) => owned && used.has(place));
  const chips = offered.map(([id, title]) => chip("checkbox", "gear", [id, title], answers.gone.has(id), (isOn) => {
    isOn ? answers.gone.add(id) : answers.gone.delete(id);
  }));
  return question("What is not here?", chips.length ? make("div", { class: "chips" }, ...chips) : make("p", {}, "Nothing that they do here needs gear."));
}

/** @param {Known} known
 * @param {Deeds} deeds
 * @param {() => void} again */
function whose({ data, answers, squads }, deeds, again) {
  const { groups } = data.squad;
  const lanes = groups.filter(([id]) => answers.groups.includes(id)).flatMap(([id, title, usual, heads]) => [
    field(`make-lanes-${id}`, `${title}: lanes`, { type: "number", inputmode: "numeric", min: "1", value: answers.lanes[id] ?? String(usual) }, (value) => { answers.lanes[id] = value; }),
    field(`make-heads-${id}`, `${title}: swimmers`, { type: "number", inputmode: "numeric", min: "1", value: answers.heads[id] ?? String(heads) }, (value) => { answers.heads[id] = value; }),
  ]);
  return [
    ...(squads.length > 1 ? [question("Whose?", make("div", { class: "chips" }, ...squads.map((own) => chip("radio", "squad", own, own[0] === data.squad.id, () => deeds.squad(own[0])))))] : []),
    question("Lane groups", make("div", { class: "chips" }, ...groups.map(([id, title]) => chip("checkbox", "group", [id, title], answers.groups.includes(id), (isOn) => {
      const before = answers.groups;
      answers.groups = groups.map(([own]) => own).filter((own) => (own === id ? isOn : before.includes(own)));
      again();
    })))),
    choice("make-pool", "Pool", data.pools.map(([id, title]) => [id, title]), answers.pool, (value) => {
      answers.pool = value;
      again();
    }),
    make("p", { class: "hint" }, "Practices are made for the water alone; circuits on land are in Find."),
    make("div", { class: "make-fields" }, ...lanes),
    choice("make-effort", "How hard is the main set?", [["", "as it comes"], ...data.efforts.map(([id, title]) => /** @type {[string, string]} */ ([id, title]))], answers.effort, (value) => { answers.effort = value; }),
    field("make-adults", "Adults who are there, if few", { type: "number", inputmode: "numeric", min: "0", value: answers.adults }, (value) => { answers.adults = value; }),
  ];
}

/** @param {number} days */
const ago = (days) => (days === 0 ? "today" : days === 1 ? "yesterday" : `${days} days ago`);

/** @param {Known} known */
function lately({ done, answers }) {
  const chips = done.map(({ id, title, days }) => chip("checkbox", "done", [id, `${title}, ${ago(days)}`], !answers.notDone.has(id), (isOn) => {
    isOn ? answers.notDone.delete(id) : answers.notDone.add(id);
  }));
  return question("What was done lately", ...(chips.length ? [make("p", { class: "hint" }, "As planned, as kept, and as run on this phone. A main set of the last seven days does not come again."), make("div", { class: "chips make-long" }, ...chips)]
    : [make("p", {}, "Nothing was planned in the last four weeks, and nothing made here was run.")]));
}

/** What the pieces that serve the goals need first, as progressions.
 * @param {Known} known */
function taught({ data, answers }) {
  const wished = new Set(answers.goals.map((goal) => data.goals.findIndex(([id]) => id === goal)));
  const asks = new Set(data.pieces.filter(({ goals: own = [] }) => own.some((goal) => wished.has(goal))).flatMap(({ asks: own = [] }) => own));
  const found = data.progressions.filter(([, , stages]) => stages.some((stage) => stage.some((drill) => asks.has(drill))));
  const selects = found.map(([id, title, stages]) => choice(`make-taught-${id}`, title,
    [["", "as the plan has it"], ["0", "nothing yet"], ...stages.map((_, k) => /** @type {[string, string]} */ ([String(k + 1), `${k + 1} of ${stages.length} stages`]))],
    answers.taught[id] ?? "", (value) => { answers.taught[id] = value; }));
  const hint = !answers.goals.length ? "Choose a goal: what is asked here hangs on it." : found.length ? "What comes first of that is left out until it has been taught." : "Nothing that serves these goals needs teaching first.";
  return question("What has been taught?", make("p", { class: "hint" }, hint), ...selects);
}

/** How much under More is not as usual.
 * @param {Answers} answers
 * @param {Data} data */
export function setUnderMore(answers, data) {
  const own = data.squad.groups.flatMap(([id, , lanes, heads]) => [Boolean(answers.lanes[id]) && answers.lanes[id] !== String(lanes), Boolean(answers.heads[id]) && answers.heads[id] !== String(heads)]);
  return [...own, answers.effort, answers.adults, answers.notDone.size, ...Object.values(answers.taught)].filter(Boolean).length;
}

/**
 * The questions.
 * @param {Known} known its answers are changed
 * @param {Deeds} deeds
 */
export function form(known, deeds) {
  const { answers, data } = known;
  const [body, count, taughtBox] = [make("div", { class: "fold-body" }), make("span", { class: "fold-count" }), make("div")];
  const forGoals = make("div");
  const forGear = make("div");
  const tell = () => {
    const set = setUnderMore(answers, data);
    count.textContent = set ? `${set} set` : "";
    deeds.changed();
  };
  const showTaught = () => taughtBox.replaceChildren(taught(known));
  const again = () => {
    forGoals.replaceChildren(goals(known, showTaught));
    forGear.replaceChildren(gear(known));
    const focused = document.activeElement?.id || /** @type {HTMLInputElement | null} */ (document.activeElement)?.value;
    body.replaceChildren(...whose(known, deeds, again), lately(known), taughtBox);
    showTaught();
    /** @type {HTMLElement | null} */ (body.querySelector(`[id="${focused}"], [value="${focused}"]`))?.focus();
  };
  again();
  tell();
  const own = make("form", { class: "make-form", novalidate: "", autocomplete: "off" }, minutes(known), forGoals, forGear,
    make("details", { class: "fold" }, make("summary", {}, make("h2", {}, "More"), " ", count, " ", make("span", { class: "fold-first" }, "groups, pool, effort, what was done, what has been taught")), body),
    make("p", { class: "make-go" }, make("button", { class: "tool is-main" }, "Propose a practice")));
  own.addEventListener("input", tell);
  own.addEventListener("change", tell);
  own.addEventListener("submit", (event) => {
    event.preventDefault();
    deeds.propose();
  });
  return own;
}
