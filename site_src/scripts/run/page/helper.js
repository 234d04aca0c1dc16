// A helper's page of the same run: one group or one station. Place, what they do now, what to look for, what to say, the danger, when to
// change over and whose gear comes next. No control but Stop and "Tell the coach".

import { make } from "../../lib/dom.js";
import { rows } from "../view.js";
import { crewName, inSentence, left, timeOfDay } from "../words.js";
import { button } from "./press.js";
import { put } from "./put.js";

/** @typedef {import("./app.js").App} App */
/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("../types.js").State} State */
/** @typedef {import("../types.js").Crew} Crew */

const SHOWN = 3;

/** The stations of a run: those who lead parts, and places.
 * @param {Session} session */
const stationsOf = ({ data }) => [...new Set(data.parts.flatMap(({ turn, led_by, place }) => (turn ? [place ?? led_by ?? ""] : [])))].filter(Boolean);

/** @param {App} app */
export function choosePart(app) {
  const session = /** @type {Session} */ (app.session);
  const groups = session.data.crews.filter(({ key }) => session.run.crews.includes(key));
  const all = [
    ...groups.map((crew) => button("run-offer", [crewName(crew)], () => helper(app, { crew: crew.key }))),
    ...stationsOf(session).map((station) => button("run-offer", [`Station: ${station}`], () => helper(app, { station }))),
  ];
  app.show({ title: "Helper’s page of", nodes: [make("div", { class: "run-offers" }, ...all)] });
}

/** @param {import("../types.js").Part | undefined} part */
const stationOf = (part) => part?.place ?? part?.led_by;

/** The crew that a helper sees now.
 * @param {Session} session
 * @param {State} state
 * @param {{crew?: string, station?: string}} of */
function crewOf({ data }, state, { crew, station }) {
  const isHere = (/** @type {Crew} */ one) => {
    const part = data.parts[one.left[0]?.part ?? -1];
    return station !== undefined && stationOf(part) === station;
  };
  return state.crews.find((one) => one.key === crew || isHere(one));
}

/** When a crew's present part ends, by what is left of it; null where a length is not known.
 * @param {Crew} crew */
function overAt(crew) {
  const part = crew.left[0]?.part;
  const own = crew.left.filter((step) => step.part === part);
  return crew.mode !== "running" || own.some(({ ms }) => ms === null) ? null : crew.t + own.reduce((sum, { ms }) => sum + (ms ?? 0), 0);
}

/** Who needs a part's gear after it.
 * @param {Session} session
 * @param {Crew} crew */
function gearLines({ data, shared }, crew) {
  const p = crew.left[0]?.part ?? -1;
  const gear = [...new Set((data.parts[p]?.items ?? []).flatMap((item) => item.gear ?? []))];
  return gear.map((id) => {
    const next = data.parts.slice(p + 1).find(({ items }) => items.some((item) => item.gear?.includes(id)));
    const whose = next ? Object.keys(next.crews).map((key) => data.crews.find((one) => one.key === key)).filter((one) => one !== undefined) : [];
    return `${shared.gear[id] ?? id}: ${whose.length ? `then ${whose.map((one) => inSentence(crewName(one))).join(" and ")}` : "then put away"}`;
  });
}

/** The send-off that a helper sees: what is on until all are home, else what comes.
 * @param {import("../view.js").Row} row
 * @param {Crew} crew */
const stepOf = ({ told, on, next }, crew) => (told === "next" ? null : on) ?? next ?? crew.left.find(({ kind }) => kind === "rep") ?? on;

/** What stands on the page, as heading and lines.
 * @param {Session} session
 * @param {State} state
 * @param {Crew} crew
 * @returns {[string, string[]][]} */
function said(session, state, crew) {
  const row = rows(state).find(({ key }) => key === crew.key);
  const step = row ? stepOf(row, crew) : undefined;
  if (!row || !step) {
    return [["Now", ["Nothing more for this group."]]];
  }
  const part = session.data.parts[step.part];
  const item = part.items[step.item ?? 0];
  const over = overAt(crew);
  return [
    ["Where", [[crewName(row), part.place, part.led_by].filter(Boolean).join("; ")]],
    nowOf(item, step, step === row.on),
    ...ofDrill(item, session.shared.drills[item.drills?.[0] ?? ""], part.hazards ?? []),
    ["Change over", [over === null ? "At the coach’s word" : `At ${timeOfDay(over)}`]],
    ["Gear", gearLines(session, crew)],
  ];
}

/** At a station that nobody is at: who comes next, when that was planned to be, and what to read before they do.
 * @param {Session} session
 * @param {State} state
 * @param {string | undefined} station
 * @returns {[string, string[]][]} */
function saidBefore({ data, run, shared }, state, station) {
  const all = state.crews.flatMap(({ key, left: steps }) => {
    const step = steps.find(({ kind, part }) => kind === "rep" && stationOf(data.parts[part]) === station);
    return step ? [{ key, step }] : [];
  });
  const next = all.sort((a, b) => a.step.part - b.step.part)[0];
  const crew = data.crews.find(({ key }) => key === next?.key);
  if (!next || !crew) {
    return [["Now", ["Nobody comes to this station any more."]]];
  }
  const part = data.parts[next.step.part];
  const item = part.items[next.step.item ?? 0];
  const isPlanned = run.planned !== null && typeof part.starts_s === "number";
  return [
    ["Next here", [`${crewName(crew)}: ${part.title}`, isPlanned ? `Planned ${timeOfDay((run.planned ?? 0) + (part.starts_s ?? 0) * 1000)}` : "", item.what ?? item.line]],
    ...ofDrill(item, shared.drills[item.drills?.[0] ?? ""], part.hazards ?? []),
  ];
}

/** What they do now; where they rest or wait, what comes next.
 * @param {import("../types.js").Item} item
 * @param {import("../types.js").Step} step
 * @param {boolean} isNow
 * @returns {[string, string[]]} */
const nowOf = (item, step, isNow) => [isNow ? "Now" : "Next", [`${item.line}: ${(step.rep ?? 0) + 1} of ${step.reps}`, item.note ?? ""]];

/** What to look for, what to say, and the danger.
 * @param {import("../types.js").Item} item
 * @param {import("./session.js").DrillSaid | undefined} drill
 * @param {import("../types.js").Hazard[]} hazards of the part
 * @returns {[string, string[]][]} */
function ofDrill(item, drill, hazards) {
  const dangers = [...hazards, ...(drill?.danger ?? [])].slice(0, SHOWN);
  return [
    ["Look for", (drill?.look ?? []).slice(0, SHOWN).map(({ from, see }) => `${from}: ${see}`)],
    ["Say", (drill?.say ?? [item.cue ?? ""]).slice(0, SHOWN)],
    ["Danger", dangers.map(({ title, control }) => (control ? `${title}. ${control}` : title))],
  ];
}

/** @param {Session} session
 * @param {{crew?: string, station?: string} | null} of */
function helps(session, of) {
  session.helps = of;
  session.keep();
}

/** @param {App} app
 * @param {{crew?: string, station?: string}} of */
export function helper(app, of) {
  const session = /** @type {Session} */ (app.session);
  helps(session, of); // a page that is loaded again shows the same
  const [time, list] = [make("strong", { class: "helper-time" }), make("dl", { class: "helper-lines" })];
  app.show({
    title: of.station ?? "Helper", name: "helper-panel", isBare: true, nodes: [time, list],
    buttons: [button("run-button stop-on", ["Tell the coach"], () => tell(app, of))],
    tick() {
      const state = session.now();
      const crew = crewOf(session, state, of);
      const row = rows(state).find(({ key }) => key === crew?.key);
      put(time, row ? (row.look === "counts" || row.look === "ends" ? left(row.in_ms) : row.look) : "–");
      const lines = (crew ? said(session, state, crew) : saidBefore(session, state, of.station)).filter(([, texts]) => texts.some(Boolean));
      const text = JSON.stringify(lines);
      if (list.dataset.text !== text) {
        list.dataset.text = text;
        list.replaceChildren(...lines.flatMap(([title, texts]) => [
          make("dt", {}, title), make("dd", title === "Danger" ? { class: "run-danger" } : {}, ...texts.filter(Boolean).map((line) => make("p", {}, line))),
        ]));
      }
    },
  });
}

/** What to hold up to the coach: there is no network.
 * @param {App} app
 * @param {{crew?: string, station?: string}} of */
function tell(app, of) {
  const session = /** @type {Session} */ (app.session);
  const state = session.now();
  const crew = crewOf(session, state, of);
  const row = rows(state).find(({ key }) => key === crew?.key);
  const step = row?.on ?? row?.next;
  const words = [row ? crewName(row) : (of.station ?? ""), step ? `rep ${(step.rep ?? 0) + 1} of ${step.reps}` : "", timeOfDay(state.now, true)].filter(Boolean);
  app.show({
    title: "Hold this up, or go to the coach", name: "tell-panel", isBare: true, nodes: [make("p", { class: "tell-words" }, "Coach, please"), ...words.map((line) => make("p", { class: "tell-words" }, line))],
    buttons: [button("run-button", ["Back"], () => helper(app, of)), button("run-button", ["Leave this page"], () => {
      helps(session, null);
      app.close();
    })],
  });
}

