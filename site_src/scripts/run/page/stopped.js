// Stop: every group stands, the time since counts up, no sign sounds, and the pool's own emergency page fills the screen. No advice of ours.
// Going on needs a press of one second.

import { make } from "../../lib/dom.js";
import { waysOn } from "../offers.js";
import { gone } from "../words.js";
import { finish } from "./finish.js";
import { Offered } from "./offered.js";
import { button, held, LONG_HOLD_MS } from "./press.js";
import { put } from "./put.js";

/** @typedef {import("./app.js").App} App */
/** @typedef {import("./session.js").Session} Session */

/** @type {[key: string, title: string][]} */
const LINES = [
  ["call", "Call"], ["address", "Address"], ["telephone", "Telephone"], ["defibrillator", "Defibrillator"], ["first_aid", "First aid"], ["way_in", "Way in for help"],
];

/** @param {App} app */
export function stopped(app) {
  const { session } = app;
  if (session && session.stoppedAt() === null) {
    const isTold = session.role === "lead" && session.change({ do: "stop" });
    if (!isTold) {
      session.stoppedHere = session.clock.now(); // one that follows, or is not begun, stands by itself
      session.keep();
    }
  }
  const shown = session ?? app.ready?.();
  if (shown) {
    shown.stoppedHere ??= session ? null : shown.clock.now();
    emergency(app, shown);
  }
}

/** @param {App} app
 * @param {Session} session */
export function emergency(app, session) {
  const since = make("strong", { class: "stop-since", role: "timer" });
  const told = session.pool()?.emergency ?? {};
  const lines = LINES.flatMap(([key, title]) => [make("dt", {}, title), make("dd", told[key] ? { class: `stop-${key}` } : { class: "stop-none" }, told[key] ?? "not written down")]);
  const where = session.pool()?.title ?? "No pool was named";
  const further = session.role === "follow" ? [make("p", {}, "The coach’s phone has not heard of this: tell the coach.")] : [];
  app.show({
    title: "Stopped", name: "stop-panel", isBare: true,
    beside: [since], nodes: [make("p", { class: "stop-where" }, where), ...further, make("dl", { class: "stop-lines" }, ...lines)],
    buttons: [button("run-button stop-on", ["Go on …"], () => goOn(app, session))],
    tick() {
      const at = session.stoppedAt();
      put(since, at === null ? "" : gone(session.clock.now() - at));
    },
  });
}

/** @type {Record<string, string>} */
const WAYS = { same: "The same rep again", next: "The next rep", part: "The next part" };

/** The ways on that a rule bars, or that there are not.
 * @param {Session} session */
function barred(session) {
  const open = new Set(waysOn(session.now()).map(({ change }) => change.how));
  const shut = Object.keys(WAYS).filter((how) => !open.has(/** @type {"same"} */ (how))).map((how) => WAYS[how].toLowerCase());
  return shut.length ? [make("p", { class: "quiet" }, `Not offered: ${shut.join(", ")} (a rule of rest or safety, or there is none).`)] : [];
}

/** @param {App} app
 * @param {Session} session */
function goOn(app, session) {
  const isList = session.state.stopped !== null && session.role === "lead";
  const ways = isList ? new Offered(app, () => waysOn(session.now()), {
    hold_ms: LONG_HOLD_MS, called: ({ change }) => WAYS[change.how ?? "next"], made: () => {
      session.stoppedHere = null;
      session.keep();
      app.close();
    },
  }) : null;
  /** @type {(words: string, action: () => void) => HTMLElement} */
  const way = (words, action) => held("run-offer", [make("strong", {}, words)], () => {
    session.stoppedHere = null;
    if (app.session) {
      session.keep();
    }
    action();
  }, LONG_HOLD_MS);
  const others = isList
    ? [way("End here", () => end(app)), way("Pressed by mistake: as it was", () => takeBack(app))]
    : [way("Back", () => (app.session ? app.close() : app.again()))];
  app.show({
    title: "Go on: press 1 s", name: "stop-panel", isBare: true, tick: () => ways?.tick(),
    nodes: [...(ways ? [ways.box] : []), make("div", { class: "run-offers" }, ...others), ...(ways ? barred(session) : [])],
    buttons: [button("run-button", ["Back"], () => emergency(app, session))],
  });
}

/** @param {App} app */
function takeBack(app) {
  const session = /** @type {Session} */ (app.session);
  const number = session.run.changes.map((change) => change.do).lastIndexOf("stop") + 1;
  app.change({ do: "back", of: [number] });
  app.close();
}

/** @param {App} app */
function end(app) {
  app.change({ do: "end" });
  finish(app);
}
