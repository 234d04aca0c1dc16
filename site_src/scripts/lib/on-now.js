// The run that is on, as Home and Tonight put it before all else.

import { make } from "./dom.js";
import { mineUntil } from "./mine-until.js";
import { read } from "./storage.js";
import { today } from "./today.js";

/** @typedef {{on: boolean, day: string, href: string, title: string}} Run the run that this device holds, as scripts/run keeps it */

/** The way back to it; null where none is on today. */
export function onNow() {
  const run = read("run", /** @type {Partial<Run>} */ ({}));
  return run.on && run.day === today && run.href && run.title ? make(
    "header",
    { class: "band" },
    make("p", { class: "band-kind" }, "On now"),
    make("h2", {}, run.title),
    ...(mineUntil() ? [make("p", { class: "lead" }, `until ${mineUntil()}`)] : []),
    make("a", { class: "tool is-main", href: run.href }, "Back to the run"),
  ) : null;
}
