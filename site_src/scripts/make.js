// Make a practice: three questions. What is asked stands in the address; the proposals for it, with all that is done to them, are another
// script (make/propose.js), which is fetched once the questions are there.

import { make, one, tool } from "./lib/dom.js";
import { write } from "./lib/storage.js";
import { today } from "./lib/today.js";
import { answersOf, requestOf } from "./make/answers.js";
import { fromAddress, toAddress } from "./make/asked.js";
import { hear, tell } from "./make/between.js";
import { fetchScript } from "./make/fetch-script.js";
import { form } from "./make/form.js";
import { atFirst, fetched, here, LAST, mySquad, starts, whyNot } from "./make/here.js";
import { lately } from "./make/lately.js";
import { mended, unreadable } from "./make/link.js";
import { whose } from "./make/names.js";
import { point } from "./make/point.js";

/** @import {Asked} from "./make/asked.js" */
/** @import {Answers, Known} from "./make/answers.js" */
/** @import {SquadHere} from "./make/here.js" */
/** @import {Data} from "./make/types.js" */

const SOON_MS = 100; // after the last of what is typed and ticked
const NO_SQUAD = "There is no such squad here.";
const NO_MINUTES = "Say how many minutes, or until when.", NO_GROUP = "No lane group is ticked: say who swims.";
const LONG = 12 * 60; // minutes: nobody means an end that is further away
const box = one("[data-make]");
/** @type {Map<string, Answers>} by squad */
const answered = new Map();
let turn = 0; // of what was asked for: what comes late for another turn is dropped

/** The script of the proposals. Rejects where it can't be had. */
const proposals = () => fetchScript(box.dataset.proposals ?? "");

/** Show this in place of what was there.
 * @param {...(Node | string)} nodes */
function say(...nodes) {
  tell("make-show", null);
  box.replaceChildren(...nodes.map((node) => (typeof node === "string" ? make("p", { role: "alert" }, node) : node)));
}

/** Do this, and say why where it can't be done and nothing else was asked for since.
 * @param {(isStill: () => boolean) => Promise<void>} work */
async function inTurn(work) {
  const own = ++turn;
  try {
    await work(() => own === turn);
  } catch (problem) {
    if (own === turn) {
      say(whyNot(problem));
    }
  }
}

/** Ask for the squad: whose practice it is, is known of no phone that has no groups.
 * @param {string} [problem] why a link can't be followed */
function askSquad(problem = "") {
  const rows = here.squads.map(([id, title]) => tool(title, () => ask(id)));
  say(...(problem ? [problem] : []), make("h2", {}, "Whose practice?"), make("div", { class: "tools" }, ...rows), make("p", { class: "hint" }, "Settings keeps your groups, so that this is not asked."));
}

/** The questions of a squad.
 * @param {string} id
 * @param {string} [problem] what of them cannot be
 * @param {string} [field] the question that it is of */
const ask = (id, problem = "", field = "") => inTurn(async (isStill) => {
  const squad = here.squads.find(([own]) => own === id);
  if (!squad) {
    say(NO_SQUAD);
    return;
  }
  /** @type {Data} */
  const data = await fetched(`compose/${id}`);
  if (isStill()) {
    questions(data, squad, { problem, field }, isStill);
  }
});

/** What works out the answer to the questions as they stand while they are being answered, once there is a pause.
 * @param {Known} known
 * @param {() => boolean} isStill whether they are what is shown */
function ahead(known, isStill) {
  let wait = 0;
  const soon = () => isStill() && tell("make-soon", { data: known.data, request: requestOf(known) });
  return () => {
    const later = () => {
      clearTimeout(wait);
      wait = setTimeout(soon, SOON_MS);
    };
    proposals().then(later).catch(() => { /* asked for again when it is needed */ });
  };
}

/** @param {Data} data
 * @param {SquadHere} squad
 * @param {{problem: string, field: string}} what of them cannot be
 * @param {() => boolean} isStill */
function questions(data, squad, { problem, field }, isStill) {
  const [id, , groups] = squad;
  const answers = answered.get(id) ?? atFirst(squad);
  answered.set(id, answers);
  const known = { data, done: lately(data, here.kept, today), answers, squads: here.squads.map(([own, title]) => /** @type {[string, string]} */ ([own, title])) };
  const told = make("p", { class: "make-problem", id: "make-problem", role: "alert" });
  const soon = ahead(known, isStill);
  const own = form(known, { propose: () => propose(known, squad, told), squad: (other) => ask(other), changed: soon });
  one(".make-go", own).before(told);
  say(make("p", { class: "lead" }, whose(data, { request: { pool: answers.pool, groups: answers.groups.length < groups.length ? answers.groups : [] }, start: "" })), own);
  point(own, told, problem, field);
  soon();
}

/** Ask for proposals, or tell by the questions which of them can't be.
 * @param {Known} known
 * @param {SquadHere} squad
 * @param {HTMLElement} told */
const propose = (known, squad, told) => inTurn(async (isStill) => {
  const { data, answers } = known, request = requestOf(known), tried = { data, request, problem: "", field: "" };
  const start = starts(squad, answers.until, new Date());
  write(LAST, { squad: squad[0], day: today, goals: answers.goals, gone: [...answers.gone] });
  const lacks = [[answers.minutes.trim(), NO_MINUTES, "minutes"], [answers.groups.length, NO_GROUP, "groups"]].find(([own]) => !own);
  if (lacks) {
    point(one(".make-form", box), told, String(lacks[1]), String(lacks[2]));
    return;
  }
  try {
    await proposals();
    tell("make-try", tried);
  } catch (problem) {
    tried.problem = whyNot(problem);
  }
  if (!isStill()) {
    return;
  }
  const { until } = answers, long = tried.field !== "minutes" || !until ? "" : request.minutes > LONG ? `${until} is past. ` : `Until ${until} there are `; // nobody typed so many
  point(one(".make-form", box), told, `${long}${tried.problem}`, tried.field);
  if (!tried.problem) {
    location.hash = toAddress({ squad: squad[0], request, on: today, start, number: 1, practice: null, code: "" });
  }
});

/** What an address asks for.
 * @param {Asked} asked */
const show = (asked) => inTurn(async (isStill) => {
  const [data] = await Promise.all([/** @type {Promise<Data>} */ (fetched(`compose/${asked.squad}`)), proposals()]);
  const file = data.practices.some(([id]) => id === asked.from) ? await fetched(`compose/practices/${asked.from}`) : null;
  const [, , , usual] = /** @type {SquadHere} */ (here.squads.find(([own]) => own === asked.squad)), mend = mended(asked.request, data, usual);
  if (isStill() && mend) {
    askAgain(data, asked.squad, mend.request, mend.said, mend.field);
  } else if (isStill()) {
    tell("make-show", { data, asked, file });
  }
});

function arrive() {
  const address = location.hash.slice(1), asked = fromAddress(address), squad = mySquad();
  turn++;
  if (!here.squads.length) {
    say("No squad of this club has a pool and a lane group: practices are made for the water alone.");
  } else if (asked) {
    here.squads.some(([id]) => id === asked.squad) ? show(asked) : askSquad(NO_SQUAD);
  } else {
    const problem = unreadable(address);
    squad ? ask(squad[0], problem) : askSquad(problem);
  }
}

/** The questions as a request answers them, and what of it can't be.
 * @param {Data} data
 * @param {string} squad
 * @param {import("./make/types.js").Request} request
 * @param {string} problem
 * @param {string} field */
function askAgain(data, squad, request, problem, field) {
  answered.set(squad, answersOf(request, data.squad.groups.map(([id]) => id), lately(data, here.kept, today)));
  ask(squad, problem, field);
}

hear("make-ask", ({ data, squad, request, problem, field }) => askAgain(data, squad, request, problem, field));
window.addEventListener("hashchange", arrive);
arrive();
