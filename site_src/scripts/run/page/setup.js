// Before a run: for whom, at which pool, at which marks parts begin; what this phone can't do, said after trying it. Two touches run
// tonight's practice: Begin, Go.

import { make } from "../../lib/dom.js";
import { keepUntil, mineUntil } from "../../lib/mine-until.js";
import { keptGroups } from "../../lib/my-groups.js";
import { noted } from "../../lib/noted.js";
import { read, write } from "../../lib/storage.js";
import { plannedStart } from "../code.js";
import { crewName, timeOfDay } from "../words.js";
import { offeredCode } from "./pass.js";
import { button } from "./press.js";
import { newRun, poolClock, Session } from "./session.js";
import { choices } from "./settings.js";
import { ask } from "./wake.js";

const NOT_KEPT = "The site is not kept on this phone: with no signal a reload loses this page. Settings keeps it.";

/** @typedef {import("./app.js").App} App */
/** @typedef {import("../types.js").RunData} RunData */
/** @typedef {import("./session.js").Shared} Shared */

const POOL = "run-pool";
const MOST_ROWS = 3;
const MINUTE_MS = 60_000;
const MARKS = [0, 15, 30, 45];

/** Crews at first: of a practice those that it is meant for, my groups first, and no more than three; of a set the one that its page
 * shows, the first of my groups that it is meant for, else the first that has times for it.
 * @param {RunData} data */
function first(data) {
  const own = keptGroups().flatMap((group) => data.crews.filter((crew) => crew.group === group));
  const meant = data.crews.filter(({ meant: isMeant }) => isMeant);
  const all = [...own.filter((crew) => meant.includes(crew)), ...(data.kind === "set" ? own : []), ...(meant.length ? meant : data.crews)];
  return [...new Set(all)].slice(0, data.kind === "set" ? 1 : MOST_ROWS).map(({ key }) => key);
}

/** The pools that a set may be run at: of its own course.
 * @param {RunData} data
 * @param {Shared} shared */
const poolsFor = (data, shared) =>
  Object.entries(shared.pools).filter(([key, { course }]) => (data.pool ? key === data.pool : data.course === "land" || course === data.course));

/** The one pool; of several the one of last time.
 * @param {string[]} keys */
function poolAtFirst(keys) {
  const last = read(POOL, { pool: "" }).pool;
  return keys.length === 1 ? keys : keys.filter((key) => key === last);
}

/**
 * A row of chips of which some are on.
 * @param {[value: string, title: string][]} all
 * @param {Set<string>} on changed
 * @param {{label: string, most?: number, isOne?: boolean}} rule `label`: what they are of, for who does not see what stands over them
 */
function chips(all, on, { label, most = Infinity, isOne = false }) {
  const made = all.map(([value, title]) => {
    const chip = button("run-chip", [title], () => {
      if (isOne) {
        on.clear();
      }
      if (!isOne && on.has(value) && on.size > 1) {
        on.delete(value);
      } else if (on.size < most) {
        on.add(value);
      }
      made.forEach((other, k) => other.setAttribute("aria-pressed", String(on.has(all[k][0]))));
    });
    chip.setAttribute("aria-pressed", String(on.has(value)));
    return chip;
  });
  return make("div", { class: "run-chips", role: "group", "aria-label": label }, ...made);
}

/** Until when the water is theirs: the end of the slot, else as it was said today.
 * @param {RunData} data */
function untilAtFirst(data) {
  const planned = plannedStart(data, poolClock().now());
  return planned !== null && data.minutes ? timeOfDay(planned + data.minutes * MINUTE_MS) : mineUntil();
}

/** @param {App} app
 * @param {RunData} data
 * @param {Shared} shared */
export function setUp(app, data, shared) {
  app.again = () => setUp(app, data, shared);
  const pools = poolsFor(data, shared);
  const [crews, marks, pool, onward] = [new Set(first(data)), new Set(MARKS.map(String)), new Set(poolAtFirst(pools.map(([key]) => key))), new Set()];
  const until = make("input", { type: "time", id: "run-until", value: untilAtFirst(data) });
  const run = () => newRun(data, {
    crews: data.crews.map(({ key }) => key).filter((key) => crews.has(key)), marks: MARKS.filter((mark) => marks.has(String(mark))),
    onward: onward.has("on"), pool: [...pool][0] ?? null, until: until.value,
  }, poolClock().now());
  const begin = button("run-main is-go", [make("strong", {}, "Begin")], async () => {
    if (pools.length && !pool.size) {
      app.show({ title: "Which pool?", nodes: [make("p", {}, "Choose it under “Pool”: its emergency page is what Stop shows.")], isBare: true, buttons: [button("run-button", ["Back"], app.again)] });
      return;
    }
    write(POOL, { pool: [...pool][0] ?? "" });
    keepUntil(until.value);
    app.session = new Session(data, shared, run(), poolClock());
    const isKept = app.session.keep();
    app.wake = await ask();
    app.begin(isKept ? "" : "This browser keeps nothing: a reload would lose the run.");
  });
  app.ready = () => new Session(data, shared, run(), poolClock());
  const { nodes, tick, tell } = choices(app);
  const by = onwardChip(onward);
  const beside = gravest(data);
  app.show({
    title: data.title, isBare: true, name: "setup-panel", tick, buttons: [begin, ...beside],
    nodes: [
      ...(data.crews.length > 1 ? [make("h3", {}, "For"), chips(data.crews.map((crew) => [crew.key, nameOf(crew)]), crews, { label: "For", most: MOST_ROWS })] : []),
      ...(pools.length > 1 ? [make("h3", {}, "Pool"), chips(pools.map(([key, { title }]) => [key, title]), pool, { label: "Pool", isOne: true })] : []),
      make("h3", {}, "Parts begin at Go, when the hand is at"), chips(MARKS.map((mark) => [String(mark), String(mark)]), marks, { label: "Seconds at which parts begin" }), ...besideSheet(data), by,
      button("run-offer", ["Follow another phone, by its code …"], () => byCode(app, data, shared)),
      make("h3", {}, make("label", { for: "run-until" }, `The ${data.course === "land" ? "hall" : "water"} is ours until`)), until,
      make("h3", {}, "This phone"), ...nodes, whetherKept(),
      ...dangersOf(app, data),
    ],
  });
  ask().then((wake) => {
    app.wake = wake;
    tell();
  });
}

/** Not a run of its own but that of another phone.
 * @param {App} app
 * @param {RunData} data
 * @param {Shared} shared */
function byCode(app, data, shared) {
  app.show({ title: "Follow another phone", isBare: true, nodes: [offeredCode(app, data, shared)], buttons: [button("run-button", ["Back"], app.again)] });
  document.getElementById("run-typed")?.focus();
}

/** Where the sheet has a part at another second than a run begins one: said once.
 * @param {RunData} data */
function besideSheet(data) {
  const planned = plannedStart(data, poolClock().now());
  const times = planned === null ? [] : data.parts.flatMap(({ starts_s }) => (typeof starts_s === "number" ? [planned + starts_s * 1000] : []));
  const other = times.find((moment) => !MARKS.includes(new Date(moment).getSeconds()));
  return other === undefined ? [] : [make("p", { class: "quiet" }, `The run sheet’s times are to the second, such as ${timeOfDay(other, true)}: a part begins at the mark after Go.`)];
}

/** The gravest dangers with what is done about them; the others at a touch.
 * @param {App} app
 * @param {RunData} data */
function dangersOf(app, { hazards = [] }) {
  const lines = hazards.map(({ title, control }) => make("li", {}, make("strong", {}, title), control ? `: ${control}` : ""));
  const list = make("ul", { class: "run-danger" }, ...lines.slice(0, MOST_ROWS));
  const rest = lines.length - MOST_ROWS;
  const more = button("run-button", [`and ${rest} more`], () => {
    list.append(...lines.slice(MOST_ROWS));
    more.remove();
    app.measure();
  });
  return lines.length ? [make("h3", {}, "Dangers"), list, ...(rest > 0 ? [more] : [])] : [];
}

/** The first danger by name, so that nobody begins without having seen one; what is done about it stands below.
 * @param {RunData} data */
function gravest({ hazards }) {
  const [worst] = hazards ?? [];
  return worst ? [make("p", { class: "run-danger setup-danger" }, make("strong", {}, worst.title))] : [];
}

/** @param {{title: string, lanes: number[]}} crew */
const nameOf = (crew) => (crew.lanes.length ? crewName(crew) : crew.title);

/** A line that says so where the site is not kept; none where that can't be known. */
function whetherKept() {
  const line = make("p", {});
  if ("caches" in window) {
    noted().then((note) => line.replaceChildren(note ? "" : NOT_KEPT), () => {});
  }
  return line;
}

/** Running on by itself: off at first.
 * @param {Set<string>} onward */
function onwardChip(onward) {
  const chip = button("run-chip", ["Parts run on by themselves"], () => {
    onward.has("on") ? onward.delete("on") : onward.add("on");
    chip.setAttribute("aria-pressed", String(onward.has("on")));
  });
  chip.setAttribute("aria-pressed", "false");
  return make("div", { class: "run-chips" }, chip);
}
