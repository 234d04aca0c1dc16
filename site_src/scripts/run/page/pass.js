// Pass it on: the run as a QR code that opens it on another phone, and as a short code to type. No network is needed where the site is kept
// on both. Another version of the data is told, never guessed over.

import { make, root } from "../../lib/dom.js";
import { qrCode } from "../../lib/qr.js";
import { readCode, shortVersion, versionOf, written } from "../code.js";
import { button } from "./press.js";
import { poolClock, Session } from "./session.js";

/** @typedef {import("./app.js").App} App */
/** @typedef {import("../types.js").RunData} RunData */
/** @typedef {import("./session.js").Shared} Shared */

/** @param {Shared} shared */
const poolKeys = (shared) => Object.keys(shared.pools).sort();

/** @param {App} app */
export function passOn(app) {
  const session = /** @type {Session} */ (app.session);
  const code = written(session.run, session.data, poolKeys(session.shared));
  const buttons = session.role === "lead" ? [button("run-button", ["Follow another"], () => takeUp(app))] : [];
  if (code === null) {
    app.show({ title: "Pass it on", buttons, nodes: [make("p", {}, "This run has more changes than a code holds: begin it anew on the other phone.")] });
    return;
  }
  const { made, kind, id } = session.data; // what was composed here, the other phone composes first
  const address = new URL(`${made ? `make.html#${made}` : `run.html#${kind}=${id}`}&code=${code.replaceAll(" ", "")}`, root).href;
  const number = session.run.changes.length;
  app.show({
    title: "Pass it on", buttons, nodes: [
      make("p", {}, `As it is now, ${number ? `up to change ${number}` : "before any change"}. Show this, or say the code below it.`),
      qrCode(address, "run"), make("p", { class: "run-code" }, code),
    ],
  });
}

/** What a typed code says, told where it is not a run of this data.
 * @param {string} text
 * @param {RunData} data
 * @param {Shared} shared
 * @returns {import("../types.js").Run | string} */
function told(text, data, shared) {
  const version = versionOf(text);
  if (version === null) {
    return "That is no code of a run: see whether a letter is wrong.";
  }
  if (version === -1) {
    return "That code is of another version of this page than this phone has. Renew this phone’s copy; nothing is guessed.";
  }
  if (version !== shortVersion(data.version)) {
    const other = Object.entries(shared.runs ?? {}).find(([, [, own]]) => shortVersion(own) === version);
    return other ? `That code is of “${other[1][0]}”: open that one here first.`
      : "That code is of another practice, or of another version of the data than this phone has. Renew this phone’s copy; nothing is guessed.";
  }
  return readCode(text, data, poolKeys(shared), poolClock().now()) ?? "That is no code of a run: see whether a letter is wrong.";
}

/** Follow another phone by its code. Gives what to say where that can't be.
 * @param {App} app
 * @param {string} text
 * @param {RunData} data
 * @param {Shared} shared */
export function follow(app, text, data, shared) {
  const run = told(text, data, shared);
  if (typeof run === "string") {
    return run;
  }
  app.session = new Session(data, shared, run, poolClock(), "follow");
  app.session.keep();
  app.begin("");
  return "";
}

/** A field for a code.
 * @param {App} app
 * @param {RunData} data
 * @param {Shared} shared */
export function offeredCode(app, data, shared) {
  const input = make("input", { type: "text", id: "run-typed", autocapitalize: "characters", autocomplete: "off", spellcheck: "false", enterkeyhint: "go" });
  const answer = make("p", { class: "run-danger", role: "alert", hidden: "" });
  const go = button("run-button", ["Follow"], () => {
    answer.textContent = follow(app, input.value, data, shared);
    answer.hidden = !answer.textContent;
  });
  input.addEventListener("keydown", (event) => event.key === "Enter" && go.click());
  return make("div", { class: "run-typed" }, make("label", { for: "run-typed" }, "Code from the coach’s phone"), input, go, answer);
}

/** A newer code of the phone that leads; or the first one, where the lead has gone from this phone to another.
 * @param {App} app */
export function takeUp(app) {
  const session = /** @type {Session} */ (app.session);
  const isLeader = session.role === "lead";
  const said = isLeader ? [make("p", {}, "By the other phone’s code this one follows: it goes by that list of changes, and no longer by its own.")] : [];
  app.show({ title: isLeader ? "Follow another phone" : "The coach’s newer code", nodes: [...said, offeredCode(app, session.data, session.shared)] });
}
