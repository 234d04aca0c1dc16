// The last change, which stays on the page with "Take back" until the next; and the list of all of tonight's.

import { make } from "../../lib/dom.js";
import { standing } from "../replay.js";
import { said, timeOfDay } from "../words.js";
import { held } from "./press.js";

/** @typedef {import("./app.js").App} App */
/** @typedef {import("./session.js").Session} Session */

/** @param {App} app */
export function lastChange(app) {
  const session = /** @type {Session} */ (app.session);
  const number = session.run.changes.length;
  const mark = `${session.run.begun} ${number} ${session.role}`;
  if (app.last.dataset.of === mark) {
    return;
  }
  app.last.dataset.of = mark;
  const change = session.run.changes[number - 1];
  const following = session.role === "follow" ? `Same as coach’s up to change ${number}` : "";
  const words = make("span", {}, following || (change ? `${number}. ${said(change, session.data)}` : ""));
  const canTake = change && session.role === "lead" && standing(session.run).includes(number);
  const back = held("run-small", ["Take back"], () => app.change({ do: "back", of: [number] }));
  app.last.replaceChildren(...(change || following ? [words] : []), ...(canTake ? [back] : []));
  app.last.hidden = !app.last.childElementCount;
}

/** @param {App} app */
export function showAll(app) {
  const session = /** @type {Session} */ (app.session);
  const stands = new Set(standing(session.run));
  const lines = session.run.changes.map((change, k) => {
    const words = make("span", { class: stands.has(k + 1) || change.do === "back" ? "" : "is-gone" }, `${k + 1}. ${timeOfDay(change.at, true)} ${said(change, session.data)}`);
    const back = held("run-small", ["Take back"], () => app.change({ do: "back", of: [k + 1] }) && showAll(app));
    return make("li", {}, words, ...(stands.has(k + 1) && session.role === "lead" ? [back] : []));
  });
  const list = make("ol", { class: "run-list" }, ...lines.reverse());
  app.show({ title: "All changes of tonight", nodes: lines.length ? [list] : [make("p", {}, "No change yet.")] });
}
