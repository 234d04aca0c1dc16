// What can be set during a run: bright or dark, the signs, the pool's clock.

import { make } from "../../lib/dom.js";
import { timeOfDay } from "../words.js";
import { atOnce, button, held } from "./press.js";
import { put } from "./put.js";
import { keepClock, poolClock } from "./session.js";
import { choose, isMissing, said, signs } from "./signs.js";
import { SAID } from "./wake.js";

/** @typedef {import("./app.js").App} App */
/** @typedef {import("./signs.js").Sign} Sign */

/** @type {Record<Sign, [title: string, none: string]>} */
const SIGNS = {
  flash: ["Flash of the row", "No flash here."], sound: ["Sound", "No sound here."], vibration: ["Vibration", "No vibration here."],
};

/** A switch that is tried when it is put on.
 * @param {Sign} sign
 * @param {() => void} changed */
function switchOf(sign, changed) {
  const [title, none] = SIGNS[sign];
  const made = button("run-chip", [isMissing(sign) ? none : title], async () => {
    const wanted = !signs()[sign];
    const can = await choose(sign, wanted);
    made.setAttribute("aria-pressed", String(wanted && can));
    put(made, can ? title : none);
    changed();
  });
  made.setAttribute("aria-pressed", String(signs()[sign]));
  return made;
}

/** Signs, the look and the pool's clock, as the set-up and the settings show them.
 * @param {App} app */
export function choices(app) {
  const told = make("ul", { class: "run-told" });
  const clock = () => app.session?.clock ?? poolClock();
  const time = make("p", { class: "quiet" });
  const tell = () => told.replaceChildren(...notes(app).map((line) => make("li", {}, line)));
  const tick = () => put(time, `The run’s clock: ${timeOfDay(clock().now(), true)}`);
  const looks = [["bright", "Bright"], ["dark", "Dark"]].map(([look, title]) => {
    const made = button("run-chip", [title], () => {
      app.setLook(look);
      looks.forEach((other) => other.setAttribute("aria-pressed", String(other === made)));
    });
    made.setAttribute("aria-pressed", String(app.look() === look));
    return made;
  });
  const hand = app.session ? held("run-offer", ["Set this phone by the pool’s clock …"], () => byTheHand(app)) : handOf(clock, tick);
  tell();
  tick();
  const nodes = [
    make("div", { class: "run-chips" }, ...looks), make("p", { class: "quiet" }, "Signs of a send-off: reminders, never the time."),
    make("div", { class: "run-chips" }, switchOf("flash", tell), switchOf("sound", tell), switchOf("vibration", tell)), told, hand, time,
  ];
  return { nodes, tick, tell };
}

/** The hand of the pool's clock: the moment of the touch counts.
 * @param {() => import("../clock.js").PoolClock} clock
 * @param {() => void} changed */
const handOf = (clock, changed) => atOnce("run-offer", ["Press when the pool clock’s hand is at the top"], () => {
  const own = clock();
  own.atTheTop();
  keepClock(own);
  changed();
});

/** During a run only after a long press: every send-off is shown by this clock.
 * @param {App} app */
function byTheHand(app) {
  const clock = () => /** @type {import("./session.js").Session} */ (app.session).clock;
  const time = make("p", {});
  const tick = () => put(time, `The run’s clock: ${timeOfDay(clock().now(), true)}`);
  app.show({ title: "The pool’s clock", nodes: [handOf(clock, () => app.close()), time], tick });
}

/** What cannot be had, or is off, a line each.
 * @param {App} app */
export const notes = (app) => [...(app.wake ? [SAID[app.wake]] : []), "A dark or locked phone gives no sign.", ...said()];

/** @param {App} app */
export function settings(app) {
  const { nodes, tick } = choices(app);
  app.show({ title: "Settings", nodes, tick });
}
