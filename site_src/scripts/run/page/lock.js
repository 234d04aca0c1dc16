// Lock touch: all is black but the next send-off, and Stop. Two corners, one after the other, open it.

import { make } from "../../lib/dom.js";
import { rows } from "../view.js";
import { crewName, left } from "../words.js";
import { button } from "./press.js";
import { put } from "./put.js";

const BOTH_MS = 3000;

/** @param {import("./app.js").App} app */
export function lock(app) {
  const session = /** @type {import("./session.js").Session} */ (app.session);
  const [time, who] = [make("strong", { class: "lock-time" }), make("span", { class: "lock-who" })];
  const pressed = [-Infinity, -Infinity];
  const corner = (/** @type {number} */ k, /** @type {string} */ name) => button(`lock-corner lock-${k}`, [name], () => {
    pressed[k] = performance.now();
    if (pressed[k] - pressed[1 - k] < BOTH_MS) {
      app.close();
    }
  });
  app.show({
    title: "Locked: press both corners", name: "lock-panel", isBare: true, nodes: [corner(0, "this corner"), corner(1, "and this one"), time, who],
    tick() {
      const next = rows(session.now()).find(({ isNext }) => isNext);
      put(time, next ? left(next.in_ms) : "–");
      put(who, next ? crewName(next) : "no send-off to come");
    },
  });
}
