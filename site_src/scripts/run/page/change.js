// Change: for whom, first the row that was touched; what may be done now, each with the new end and the wait before it is taken. Below it
// everything else that a run can do.

import { make, root } from "../../lib/dom.js";
import { forecast } from "../forecast.js";
import { notSkipped, offers, waysToCut } from "../offers.js";
import { crewName, cutWords, inSentence, timeOfDay, whose } from "../words.js";
import { finish } from "./finish.js";
import { choosePart } from "./helper.js";
import { showAll } from "./last.js";
import { lock } from "./lock.js";
import { Offered } from "./offered.js";
import { pads } from "./pads.js";
import { passOn, takeUp } from "./pass.js";
import { button } from "./press.js";
import { put } from "./put.js";
import { settings } from "./settings.js";

/** @typedef {import("./app.js").App} App */
/** @typedef {import("../offers.js").Offer} Offer */
/** @typedef {import("./session.js").Session} Session */

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
  const { offered, lists } = ways(app, chosen, isForAll);
  app.show({
    title: "Change for", tick: () => offered.tick(),
    nodes: [...(crews.length > 1 ? [chips(app, crews, chosen)] : []), offered.box, make("div", { class: "run-offers" }, ...lists), ...ofMade(session), make("h3", {}, "Besides"), besides(app)],
  });
}

/** For whom: first the row that was touched; none changes its place when another is chosen.
 * @param {App} app
 * @param {import("../types.js").CrewData[]} crews
 * @param {string | null} chosen */
function chips(app, crews, chosen) {
  const all = [...crews.map((crew) => ({ key: /** @type {string | null} */ (crew.key), name: crewName(crew) })), { key: null, name: "All" }];
  const whom = all.sort((a, b) => Number(b.key === app.open) - Number(a.key === app.open)).map(({ key, name }) => {
    const chip = button("run-chip", [name], () => changes(app, key));
    chip.setAttribute("aria-pressed", String(key === chosen));
    return chip;
  });
  return make("div", { class: "run-chips" }, ...whom);
}

/** That nothing of a practice that was made or changed on a phone is cut while it runs: it is changed from an entry, or somebody goes under water.
 * A short one may have a part to skip, and none that goes to end at a time.
 * @param {Session} session */
const ofMade = ({ data: { page = "", cuts, parts } }) => (page.startsWith("make.html") && !cuts?.length && !parts.some(({ skip }) => skip)
  ? [make("p", { class: "quiet" }, "Made or changed here, it is not cut while it runs: a rule of rest may need all of it. Make a practice makes it shorter before it begins.")] : []);

/** What is offered in a list of its own. */
const APART = new Set(["late", "skip"]);

/** What may be done now.
 * @param {App} app
 * @param {string | null} chosen
 * @param {boolean} isForAll */
function ways(app, chosen, isForAll) {
  const session = /** @type {Session} */ (app.session);
  const offered = new Offered(app, () => offers(session.now(), chosen).filter(({ change }) => !APART.has(change.do)));
  const apart = (/** @type {string} */ deed, /** @type {string | null} */ who) => offers(session.now(), who).filter(({ change }) => change.do === deed);
  /** @type {(title: string, deed: string, who: string | null, after?: Node[]) => HTMLElement[]} */
  const way = (title, deed, who, after) => (apart(deed, who).length ? [button("run-offer", [`${title} …`], () => choose(app, title, () => apart(deed, who), after))] : []);
  return { offered, lists: [
    ...way(chosen === null ? "Late" : `Late, ${inSentence(whose(session.data, chosen))}`, "late", chosen),
    ...(session.data.cuts?.length ? [button("run-offer", ["Cut to end at a time …"], () => cutTo(app))] : []),
    ...(isForAll ? way("Skip a part", "skip", null, notes(session)) : []),
  ] };
}

/** What may not be skipped, and why.
 * @param {Session} session */
const notes = (session) =>
  notSkipped(session.now()).map((title) => make("p", { class: "quiet" }, `Not offered: ${title} (a rule of rest or safety, or the last part).`));

/** @param {App} app
 * @param {string} title
 * @param {() => Offer[]} some
 * @param {Node[]} [after] */
function choose(app, title, some, after = []) {
  const isShort = some().every(({ change }) => change.do === "late");
  const offered = new Offered(app, some, { isOnce: isShort, isShort });
  app.show({ title, nodes: [offered.box, ...after], tick: () => offered.tick() });
}

const MINUTE_MS = 60_000;

/** The end that is asked for at first: when the water is no longer ours, else that of the slot; where there is none, the minute before the end
 * as it is.
 * @param {Session} session
 * @param {number} ends */
function wantedEnd({ run, data }, ends) {
  const slot = run.planned !== null && data.minutes ? run.planned + data.minutes * MINUTE_MS : null;
  return run.until ?? slot ?? Math.floor((ends - 1) / MINUTE_MS) * MINUTE_MS;
}

/** Cut to end at a time: the planned end first, earlier or later by minutes. Two or three ways, each with what goes and the new end.
 * @param {App} app
 * @param {number} [wanted] */
function cutTo(app, wanted) {
  const session = /** @type {Session} */ (app.session);
  const { ends } = forecast(session.now());
  const until = wanted ?? wantedEnd(session, ends);
  const end = Math.ceil(ends / MINUTE_MS) * MINUTE_MS; // earlier is earlier than it ends as it is
  const step = (/** @type {number} */ by) => button("run-chip", [by > 0 ? `+${by}` : `−${-by}`, make("span", { class: "unseen" }, " min")], () => cutTo(app, (by < 0 ? Math.min(until, end) : until) + by * MINUTE_MS));
  const cuts = () => waysToCut(session.now(), until);
  const offered = new Offered(app, cuts, { isOnce: true, called: (offer) => cutWords(offer.cuts ?? [], session.data).join("; ") });
  const told = make("p");
  const tick = () => {
    put(told, asItIs(session, cuts(), until));
    told.classList.toggle("run-danger", told.textContent?.startsWith("Not enough") ?? false);
    offered.tick();
  };
  app.show({ title: `End by ${timeOfDay(until)}`, nodes: [make("div", { class: "run-chips" }, step(-5), step(-1), step(1), step(5)), told, offered.box], tick });
}

/** How it ends as it is, and whether a cut is enough.
 * @param {Session} session
 * @param {Offer[]} offered
 * @param {number} until */
function asItIs(session, offered, until) {
  const { ends } = forecast(session.now());
  if (ends <= until) {
    return `It ends by then as it is: at ${timeOfDay(ends)}.`;
  }
  const isEnough = offered.some((offer) => offer.ends <= until);
  return `${isEnough ? "" : offered.length ? "Not enough, even with all that may go. " : "Nothing more can be cut. "}As it is, it ends at ${timeOfDay(ends)}.`;
}

/** What else fits into the water that is left, for these groups. The run goes on, and is found again under Tonight.
 * @param {Session} session */
function fits({ run, data }) {
  const groups = new Set(data.crews.filter(({ key }) => run.crews.includes(key)).map(({ group }) => group));
  location.assign(new URL(`find.html#until=${timeOfDay(run.until ?? 0)}&groups=${[...groups].join(",")}&run=on`, root));
}

/** @param {App} app */
function besides(app) {
  const session = /** @type {Session} */ (app.session);
  const isTimed = session.data.parts.some(({ items }) => items.some(({ result }) => result));
  const isLeader = session.role === "lead";
  /** @type {[string, () => void][]} */
  const all = [
    ["Pass it on", () => passOn(app)], ["All changes", () => showAll(app)], ...(isTimed ? [/** @type {[string, () => void]} */ (["Results", () => pads(app)])] : []),
    ...(session.run.until === null ? [] : [/** @type {[string, () => void]} */ ([`What fits until ${timeOfDay(session.run.until)}`, () => fits(session)])]),
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
