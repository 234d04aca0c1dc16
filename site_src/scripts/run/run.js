// The page on which a practice or a set is run. It begins from run.html#practice=ID, with &code=… where another phone passes it on, and
// finds the run that is on, where there is one.

import { make, one, root } from "../lib/dom.js";
import { read } from "../lib/storage.js";
import { timeOfDay } from "./words.js";
import { App } from "./page/app.js";
import { changes } from "./page/change.js";
import { helper } from "./page/helper.js";
import { follow } from "./page/pass.js";
import { button, held } from "./page/press.js";
import { keepClock, keptRun, poolClock, Session } from "./page/session.js";
import { setUp } from "./page/setup.js";
import { emergency, stopped } from "./page/stopped.js";
import { ask } from "./page/wake.js";

const FORM = 1;
const OLD_MS = 12 * 3600_000;
const app = new App(one("[data-run]"));

/** What the address asks for.
 * @returns {{name: string, code: string, start: string} | null} `start` of the slot on this day, HH:MM or "" */
function asked() {
  const words = new URLSearchParams(location.hash.slice(1));
  const [kind, id] = [...words].find(([name]) => name === "practice" || name === "set") ?? [];
  const start = /^\d\d:\d\d$/.exec(words.get("start") ?? "")?.[0] ?? "";
  return id && /^[a-z0-9-]+$/.test(id) ? { name: `${kind}s/${id}`, code: words.get("code") ?? "", start } : null;
}

/** A practice that was composed on this phone, where that is the one.
 * @param {string} file
 * @returns {import("./types.js").RunData | null} */
function made(file) {
  const own = read("run-made", /** @type {Partial<import("./types.js").RunData>} */ ({}));
  return own.form === FORM && file === `practices/${own.id}` ? /** @type {import("./types.js").RunData} */ (own) : null;
}

/** @param {string} file */
async function fetched(file) {
  const own = made(file);
  if (own) {
    return own;
  }
  const response = await fetch(new URL(`data/v1/run/${file}.json`, root));
  if (!response.ok) {
    throw new Error(`${file}: ${response.status}`);
  }
  const data = await response.json();
  if (data.form !== FORM) {
    throw new Error(`${file} is of another form than this page knows: renew this phone’s copy`);
  }
  return data;
}

/** @param {string} title
 * @param {(Node | string)[]} nodes */
const say = (title, ...nodes) => app.show({ title, nodes: nodes.map((node) => (typeof node === "string" ? make("p", {}, node) : node)), isBare: true });

/** @param {string} name
 * @param {string} code
 * @param {string} start */
async function open(name, code, start) {
  try {
    const [data, shared] = await Promise.all([fetched(name), fetched("shared")]);
    const problem = code ? follow(app, code, data, shared) : "";
    if (!code || problem) {
      setUp(app, start ? { ...data, start } : data, shared);
      app.schedule();
    }
    if (problem) {
      one(".panel-body").prepend(make("p", { class: "run-danger", role: "alert" }, problem));
    }
  } catch (problem) {
    say("This can’t be run here", problem instanceof TypeError ? "No signal, and this practice is not kept on this phone." : String(problem), links());
  }
}

/** Ways from here where there is nothing to run. */
const links = () => make("p", { class: "run-besides" }, ...[["practices/index.html", "Practices"], ["sets/index.html", "Sets"], ["index.html", "Home"]].map(([to, title]) =>
  make("a", { class: "run-button", href: new URL(to, root).href }, title)));

/** Ask the phone to stay lit, and say so where it does not. */
const keepLit = () => ask().then((wake) => {
  app.wake = wake;
  app.draw();
});

/** The rows, or the emergency page where the run stands.
 * @param {string} told */
app.begin = (told) => {
  const session = /** @type {Session} */ (app.session);
  history.replaceState(null, "", `#${session.data.kind}=${session.data.id}`); // a reload must not take an old code anew
  history.pushState({ run: true }, "");
  if (session.stoppedAt() !== null) {
    emergency(app, session);
  } else if (told) {
    app.show({ title: "Before you begin", nodes: [make("p", {}, told)] });
  } else {
    app.close();
  }
  app.schedule();
  keepLit();
};
app.onStop = () => stopped(app);
app.onChange = () => changes(app);
app.onParted = () => {
  const clock = /** @type {Session} */ (app.session).clock;
  const choose = (/** @type {() => void} */ action) => () => {
    action();
    keepClock(clock);
    app.close();
  };
  app.show({
    title: "This phone’s clocks have parted", name: "parted-panel", isBare: true, nodes: [
      make("p", {}, "Which of the two agrees with the pool’s clock?"),
      make("div", { class: "run-offers" },
        held("run-offer", [make("strong", {}, `${timeOfDay(clock.now(), true)} and going on`), make("small", {}, "the run’s own clock")], choose(() => clock.keep())),
        held("run-offer", [make("strong", {}, `${timeOfDay(clock.byDay(), true)} and going on`), make("small", {}, "this phone’s time of day")], choose(() => clock.follow()))),
    ],
  });
};

/** Going back asks: the run goes on either way. */
window.addEventListener("popstate", () => {
  const { session } = app;
  if (session && !history.state?.run) {
    history.pushState({ run: true }, "");
    app.show({
      title: "Leave the run?", nodes: [
        make("p", {}, "It goes on by the clock, and is found again under Tonight. Away from this page there is no sign."),
        button("run-offer", ["Leave"], () => location.assign(new URL(session.data.page, root))),
      ],
    });
  }
});

/** @typedef {NonNullable<ReturnType<typeof keptRun>>} Kept */

/** Hold the run that this phone keeps.
 * @param {Kept} kept */
function take({ kept, data, shared }) {
  app.session = new Session(data, shared, kept.run, poolClock(), kept.role);
  app.session.stoppedHere = kept.stoppedHere;
  return app.session;
}

/** Go on with it.
 * @param {Kept} found */
function resume(found) {
  const { kept } = found;
  const session = take(found);
  app.begin("");
  if (kept.helps && session.stoppedAt() === null) {
    helper(app, kept.helps);
  }
}

/** Another run is on: go to it, or leave it; until then Stop is its own.
 * @param {Kept} found
 * @param {{name: string, start: string}} wanted */
function askWhich(found, { name, start }) {
  take(found);
  const go = button("run-offer", ["Go to it"], () => {
    location.hash = found.kept.href.split("#")[1];
    location.reload();
  });
  const leave = held("run-offer", [make("strong", {}, "Leave it, and set up the other")], () => {
    app.leave();
    open(name, "", start);
  });
  say(`“${found.kept.title}” is being run on this phone`, make("div", { class: "run-offers" }, go, leave));
  app.schedule();
  keepLit(); // it goes on, and may be gone on with from Stop
}

/** The run that is on, unless it is of another day.
 * @returns {Kept | null} */
function present() {
  const found = keptRun();
  return found && Date.now() - found.kept.run.begun < OLD_MS ? found : null;
}

function arrive() {
  const [wanted, kept] = [asked(), present()];
  const own = kept ? `${kept.kept.run.kind}s/${kept.kept.run.id}` : "";
  if (location.protocol === "file:") {
    say("This can’t be run from a folder", "A run reads its times from the site: open it over https, or keep the site on this phone.");
  } else if (kept && !wanted?.code && (!wanted || wanted.name === own)) {
    resume(kept);
  } else if (kept && wanted && !wanted.code) {
    askWhich(kept, wanted);
  } else if (wanted) {
    open(wanted.name, wanted.code, wanted.start);
  } else {
    say("What is to be run?", "Open a practice or a set, and press Run there.", links());
  }
}

window.addEventListener("hashchange", () => location.reload()); // another link into this page, of this page
arrive();
