// Change: for whom, first the row that was touched; what may be done now, each with the new end and the wait before it is taken. Below it
// everything else that a run can do.

import { make } from "../../lib/dom.js";
import { forecast } from "../forecast.js";
import { notSkipped, offers, tried } from "../offers.js";
import { count, crewName, cutWords, inSentence, timeOfDay, what, whose } from "../words.js";
import { finish } from "./finish.js";
import { choosePart } from "./helper.js";
import { showAll } from "./last.js";
import { lock } from "./lock.js";
import { pads } from "./pads.js";
import { passOn, takeUp } from "./pass.js";
import { button, held } from "./press.js";
import { settings } from "./settings.js";

/** @typedef {import("./app.js").App} App */
/** @typedef {import("../offers.js").Offer} Offer */
/** @typedef {import("./session.js").Session} Session */

/** What a change leads to.
 * @param {Session} session
 * @param {Offer} offer */
function leadsTo({ data }, { ends, isFrom, wait_ms, waiter }) {
  const wait = wait_ms >= 1000 ? `; ${inSentence(whose(data, waiter))}: wait ${count(Math.round(wait_ms / 1000))}` : "";
  return `ends ${isFrom ? "from " : ""}${timeOfDay(ends, true)}${wait}`;
}

/** @param {App} app
 * @param {Offer} offer
 * @returns {HTMLElement} */
function offered(app, offer) {
  const session = /** @type {Session} */ (app.session);
  const words = [make("strong", {}, namedFor(offer, session)), make("small", {}, leadsTo(session, offer))];
  return held("run-offer", words, () => made(app, offer));
}

/** Make a change; where it may not be made any more, since a send-off has gone by meanwhile, say so.
 * @param {App} app
 * @param {Offer} offer */
function made(app, offer) {
  if (app.change(offer.change)) {
    app.close();
  } else {
    app.show({ title: "Too late for that", nodes: [make("p", {}, "A send-off has gone by meanwhile. Nothing was changed.")] });
  }
}

/** @param {Offer} offer
 * @param {Session} session */
function namedFor({ change }, session) {
  const block = change.who ? session.now().crews.find(({ key }) => key === change.who)?.left.find(({ kind }) => kind === "rep")?.block : undefined;
  if (change.do === "fewer") {
    return block?.fewer === 2 ? "Two reps fewer" : "One rep fewer";
  }
  return change.do === "sit" ? (block?.sit === 2 ? "Sit two reps out" : "Sit this rep out") : what(change, session.data);
}

/** @param {App} app
 * @param {string | null} [who] */
export function changes(app, who = app.open) {
  const session = /** @type {Session} */ (app.session);
  if (session.role === "follow") {
    more(app);
    return;
  }
  const crews = session.data.crews.filter(({ key }) => session.run.crews.includes(key));
  const chosen = crews.length > 1 ? who : (crews[0]?.key ?? null);
  const isForAll = chosen === null || crews.length === 1;
  app.show({
    title: "Change for",
    nodes: [...(crews.length > 1 ? [chips(app, crews, chosen)] : []), make("div", { class: "run-offers" }, ...ways(app, chosen, isForAll)), make("h3", {}, "Besides"), besides(app)],
  });
}

/** For whom: first the row that was touched.
 * @param {App} app
 * @param {import("../types.js").CrewData[]} crews
 * @param {string | null} chosen */
function chips(app, crews, chosen) {
  const all = [...crews.map((crew) => ({ key: /** @type {string | null} */ (crew.key), name: crewName(crew) })), { key: null, name: "All" }];
  const whom = all.sort((a, b) => Number(b.key === chosen) - Number(a.key === chosen)).map(({ key, name }) => {
    const chip = button("run-chip", [name], () => changes(app, key));
    chip.setAttribute("aria-pressed", String(key === chosen));
    return chip;
  });
  return make("div", { class: "run-chips" }, ...whom);
}

/** What may be done now.
 * @param {App} app
 * @param {string | null} chosen
 * @param {boolean} isForAll */
function ways(app, chosen, isForAll) {
  const session = /** @type {Session} */ (app.session);
  const state = session.now();
  const all = offers(state, chosen);
  const late = all.filter(({ change }) => change.do === "late");
  const skips = isForAll ? offers(state, null).filter(({ change }) => change.do === "skip") : [];
  return [
    ...all.filter(({ change }) => change.do !== "late" && change.do !== "skip").map((offer) => offered(app, offer)),
    ...(late.length ? [button("run-offer", ["Late …"], () => choose(app, `Late, ${whose(session.data, chosen)}`, late))] : []),
    ...(session.data.cuts?.length ? [button("run-offer", ["Cut to end at a time …"], () => cutTo(app))] : []),
    ...(skips.length ? [button("run-offer", ["Skip a part …"], () => choose(app, "Skip", skips, notes(session)))] : []),
  ];
}

/** What may not be skipped, and why.
 * @param {Session} session */
const notes = (session) =>
  notSkipped(session.now()).map((title) => make("p", { class: "quiet" }, `Not offered: ${title} (a rule of rest or safety, or the last part).`));

/** @param {App} app
 * @param {string} title
 * @param {Offer[]} some
 * @param {Node[]} [after] */
function choose(app, title, some, after = []) {
  app.show({ title, nodes: [make("div", { class: "run-offers" }, ...some.map((offer) => offered(app, offer))), ...after] });
}

const MINUTE_MS = 60_000;

/** The end that is asked for at first: of the slot; where there is none, the minute before the end as it is.
 * @param {Session} session
 * @param {number} ends */
function wantedEnd({ run, data }, ends) {
  const isPlanned = run.planned !== null && data.minutes;
  return isPlanned ? (run.planned ?? 0) + (data.minutes ?? 0) * MINUTE_MS : Math.floor((ends - 1) / MINUTE_MS) * MINUTE_MS;
}

/** Cut to end at a time: the planned end first, earlier or later by minutes; what goes is said before it does.
 * @param {App} app
 * @param {number} [wanted] */
function cutTo(app, wanted) {
  const session = /** @type {Session} */ (app.session);
  const state = session.now();
  const { ends } = forecast(state);
  const until = wanted ?? wantedEnd(session, ends);
  const end = Math.ceil(ends / MINUTE_MS) * MINUTE_MS; // earlier is earlier than it ends as it is
  const step = (/** @type {number} */ by) => button("run-chip", [by > 0 ? `+${by}` : `−${-by}`, make("span", { class: "unseen" }, " min")], () => cutTo(app, (by < 0 ? Math.min(until, end) : until) + by * MINUTE_MS));
  const offer = tried(state, { at: state.now, do: "cut", until });
  const told = offer ? goes(app, offer, until) : [make("p", {}, ends <= until ? `It ends by then as it is: at ${timeOfDay(ends)}.` : "Nothing more can be cut.")];
  app.show({ title: `End by ${timeOfDay(until)}`, nodes: [make("div", { class: "run-chips" }, step(-5), step(-1), step(1), step(5)), ...told] });
}

/** @param {App} app
 * @param {Offer} offer
 * @param {number} until */
function goes(app, offer, until) {
  const session = /** @type {Session} */ (app.session);
  const cuts = cutWords(offer.cuts ?? [], session.data).map((line) => make("li", {}, line));
  const short = offer.ends > until ? [make("p", { class: "run-danger" }, `Even with all of it, it ends at ${timeOfDay(offer.ends)}.`)] : [];
  const take = held("run-offer", [make("strong", {}, "Cut it"), make("small", {}, leadsTo(session, offer))], () => made(app, offer));
  return [make("ul", { class: "run-plain" }, ...cuts), ...short, take];
}

/** @param {App} app */
function besides(app) {
  const session = /** @type {Session} */ (app.session);
  const isTimed = session.data.parts.some(({ items }) => items.some(({ result }) => result));
  const isLeader = session.role === "lead";
  /** @type {[string, () => void][]} */
  const all = [
    ["Pass it on", () => passOn(app)], ["All changes", () => showAll(app)], ...(isTimed ? [/** @type {[string, () => void]} */ (["Results", () => pads(app)])] : []),
    ["Helper’s page", () => choosePart(app)], ["Lock touch", () => lock(app)], ["Settings", () => settings(app)],
    ...(isLeader ? [] : [/** @type {[string, () => void]} */ (["Newer code", () => takeUp(app)])]), ["End", () => finish(app)],
  ];
  return make("div", { class: "run-besides" }, ...all.map(([name, action]) => button("run-button", [name], action)));
}

/** For a phone that follows: all but changes.
 * @param {App} app */
function more(app) {
  app.show({ title: "More", nodes: [make("p", { class: "quiet" }, "This phone follows. It changes nothing until it leads."), besides(app)] });
}
