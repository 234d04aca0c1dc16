// Make a practice: three questions, then proposals that may be changed, run, printed, saved and handed on. What is asked and what was changed
// stands in the address, so that a reload, a way back and another phone come to the same.

import { change } from "./compose/change.js";
import { make, one } from "./lib/dom.js";
import { write } from "./lib/storage.js";
import { inWords, time, today } from "./lib/today.js";
import { answerTo, standOf, whyNot } from "./make/answer.js";
import { fromAddress, toAddress } from "./make/asked.js";
import { asRun, hand, run, save } from "./make/deeds.js";
import { answersOf, requestOf } from "./make/answers.js";
import { form } from "./make/form.js";
import { atFirst, fetched, here, LAST, mySquad, tonight } from "./make/here.js";
import { lately } from "./make/lately.js";
import { sheets } from "./make/paper.js";
import { bringOpen, dangers, focusOf, movedWords, page, tappedWords, whose } from "./make/proposal.js";
import { showSwims } from "./make/rows.js";
import { opened } from "./make/written.js";

/** @import {Asked} from "./make/asked.js" */
/** @import {Answers} from "./make/answers.js" */
/** @import {Shown, Stand, Told} from "./make/proposal.js" */
/** @import {Data} from "./make/types.js" */

const SOON_MS = 300;
const NO_SQUAD = "There is no such squad here.";
const box = one("[data-make]");
const paper = one("[data-make-paper]");
/** @type {Map<string, Answers>} by squad */
const answered = new Map();
/** @type {{stand: Stand, told: Told}[]} what was before each change, and what it moved */
let before = [];
/** @type {Shown | null} */
let shown = null;
let drawn = 0;
let turn = 0; // of what was asked for: what comes late for another turn is dropped

/** Show this in place of what was there; what is still being worked out for that is dropped.
 * @param {...(Node | string)} nodes */
function say(...nodes) {
  drawn++;
  paper.replaceChildren();
  box.replaceChildren(...nodes.map((node) => (typeof node === "string" ? make("p", { role: "alert" }, node) : node)));
}

/** Ask for the squad: whose practice it is, is known of no phone that has no groups. */
function askSquad() {
  const rows = here.squads.map(([id, title]) => {
    const own = make("button", { type: "button", class: "tool" }, title);
    own.addEventListener("click", () => ask(id));
    return own;
  });
  say(make("h2", {}, "Whose practice?"), make("div", { class: "tools" }, ...rows), make("p", { class: "hint" }, "Settings keeps your groups, so that this is not asked."));
}

/** The questions of a squad.
 * @param {string} id
 * @param {string} [problem] what of them cannot be */
async function ask(id, problem = "") {
  const squad = here.squads.find(([own]) => own === id);
  if (!squad) {
    say(NO_SQUAD);
    return;
  }
  const mine = ++turn;
  try {
    /** @type {Data} */
    const data = await fetched(`compose/${id}`);
    if (mine !== turn) {
      return;
    }
    const answers = answered.get(id) ?? atFirst(squad);
    answered.set(id, answers);
    const known = { data, done: lately(data, here.kept, today), answers, squads: here.squads.map(([own, title]) => /** @type {[string, string]} */ ([own, title])) };
    const told = make("p", { class: "make-problem", role: "alert" }, problem);
    const questions = form(known, {
      propose: () => {
        const request = requestOf(known);
        write(LAST, { squad: id, day: today, goals: answers.goals, gone: [...answers.gone] });
        const answer = answerTo(data, request);
        told.textContent = typeof answer === "string" ? answer : "";
        if (typeof answer !== "string") {
          go({ squad: id, request, on: today, start: answers.until ? time : (tonight(id)?.[2] ?? squad[4]), number: 1, practice: null, code: "" });
        }
      },
      squad: (other) => ask(other),
    });
    one(".make-go", questions).before(told);
    shown = null;
    say(make("p", { class: "lead" }, whose(data, { squad: id, request: { pool: answers.pool, minutes: 0, goals: [], groups: answers.groups.length < squad[2].length ? answers.groups : [] }, on: "", start: "", number: 1, practice: null, code: "" })), questions);
    if (problem) {
      told.scrollIntoView({ block: "center" });
    }
  } catch (problem_) {
    if (mine === turn) {
      say(whyNot(problem_));
    }
  }
}

/** @param {Asked} asked */
const go = (asked) => { location.hash = toAddress(asked); };

/** As it stands now, without another step of the way back.
 * @param {Asked} asked */
const stay = (asked) => history.replaceState(null, "", `#${toAddress(asked)}`);

/** What an address asks for.
 * @param {Asked} wanted */
async function arriveAt(wanted) {
  const own = turn;
  /** @type {Data} */
  const data = await fetched(`compose/${wanted.squad}`);
  if (own !== turn) {
    return;
  }
  const [asked, unopened] = opened(data, wanted), answer = answerTo(data, asked.request);
  if (typeof answer === "string") {
    answerAs(data, asked);
    await ask(asked.squad, answer);
    return;
  }
  before = [];
  const number = Math.min(asked.number, answer.proposals.length || 1);
  const [stand, told] = standOf(data, asked, answer.proposals[number - 1]);
  const practice = stand && !told ? asked.practice : null;
  shown = { data, asked: { ...asked, number, practice }, answer, stand, unopened, told: unread(told), open: "", isOwn: Boolean(practice) };
  if (wanted.from) {
    stay(shown.asked);
  }
  await draw();
  if (asked.code && stand) {
    await begin(asked.code);
  }
  one("h2, p", box).scrollIntoView({ block: "nearest" });
}

/** Draw what was proposed, with what its run data tells where that is soon here, so that no row grows under a finger. */
async function draw() {
  if (!shown) {
    return;
  }
  const [own, refocus] = [shown, focusOf(box)];
  const making = own.stand && asRun({ ...own, stand: own.stand });
  await Promise.race([making, new Promise((resolve) => { setTimeout(resolve, SOON_MS); })]);
  if (shown !== own) {
    return;
  }
  say(...page(own, { ask: (request) => go({ ...own.asked, request, number: 1, practice: null }), show, change: act, takeBack, read: () => tell(lastTold()), onOpen: (role) => { own.open = role; bringOpen(box); }, again: () => again(own), run: () => begin(""), print: () => print(), save: () => handed(save), hand: () => handed(hand) }));
  refocus();
  bringOpen(box);
  if (own.stand && making) {
    fill({ ...own, stand: own.stand }, making);
  }
}

/** What the run data of a proposal tells: the swim of each row, the dangers, the sheets.
 * @param {Shown & {stand: Stand}} own
 * @param {ReturnType<typeof asRun>} making */
async function fill(own, making) {
  const number = drawn;
  const made = await making;
  if (number === drawn) {
    showSwims(box, made.run, own.stand.proposal);
    bringOpen(box);
    one("[data-danger]", box).replaceChildren(...dangers(made.run.hazards ?? []));
    const tapped = one("[data-tapped]", box);
    tapped.textContent = tappedWords(made.tapped);
    tapped.hidden = !made.tapped.length;
    const { parts } = own.stand.proposal;
    const gear = new Set(parts.flatMap((part) => part.gear.map(({ id, in_use }) => `${in_use} × ${own.data.gear.find(([known]) => known === id)?.[1].toLowerCase()}`)));
    paper.replaceChildren(...sheets(made.run, { where: whose(own.data, { ...own.asked, start: "" }).split(" · ")[1] ?? "", day: inWords(own.asked.on || today), gear: [...gear], adults: own.stand.proposal.adults,
      unit: own.answer.unit, isKnown: (part) => own.answer.unit === "m" || !made.tapped.includes(parts[part]),
      printed: `Composed; not in the club’s repository. Printed ${inWords(today)}.` }));
  }
}

/** @param {number} number of a proposal */
function show(number) {
  if (shown) {
    go({ ...shown.asked, number, practice: null });
  }
}

/** The questions as an address answers them.
 * @param {Data} data
 * @param {Asked} asked */
const answerAs = (data, { squad, request }) => answered.set(squad, answersOf(request, data.squad.groups.map(([id]) => id), lately(data, here.kept, today)));

/** The questions again, as they were answered.
 * @param {Shown} own */
function again({ data, asked }) {
  answerAs(data, asked);
  history.pushState(null, "", location.pathname + location.search);
  ask(asked.squad);
}

/** What has to be read, and cannot be taken back.
 * @param {string} said
 * @returns {Told} */
const unread = (said) => ({ said, besides: "", way: said ? "ok" : "" });

/** What the last change moved that still stands. */
const lastTold = () => before[before.length - 1]?.told ?? unread("");

/** @param {Told} told */
function tell(told) {
  if (shown) {
    shown = { ...shown, told };
    draw();
  }
}

/** @param {import("./compose/types.js").Deed} deed */
function act(deed) {
  if (!shown?.stand) {
    return;
  }
  const { data, asked, stand } = shown, found = change(data, asked.request, stand.practice, deed);
  if ("refused" in found) {
    tell(unread(found.refused));
  } else {
    before.push({ stand, told: movedWords(data, stand.proposal, found, deed) });
    settle(found, lastTold());
  }
}

function takeBack() {
  const last = before.pop();
  if (last) {
    const { said, besides, way } = lastTold();
    settle(last.stand, { said: said ? `Taken back. ${said}` : "Taken back.", besides, way });
  }
}

/** @param {Stand} stand
 * @param {Told} told */
function settle({ practice, proposal }, told) {
  const own = /** @type {Shown} */ (shown);
  shown = { ...own, stand: { practice, proposal }, told, asked: { ...own.asked, practice: before.length || own.isOwn ? practice : null } };
  stay(shown.asked);
  draw();
}

/** Go to the run.
 * @param {string} code of another phone, or "" */
async function begin(code) {
  if (shown?.stand && !await run({ ...shown, stand: shown.stand }, code)) {
    tell(unread("This browser keeps nothing, so that a run of it can’t be begun. Print it, or open its pieces one by one."));
  }
}

/** @param {typeof save} deed */
function handed(deed) {
  if (shown?.stand) {
    one("[data-handed]", box).replaceChildren(...deed({ ...shown, stand: shown.stand }));
  }
}

async function arrive() {
  const own = ++turn;
  const asked = fromAddress(location.hash.slice(1));
  shown = null; // what is still being drawn of it is dropped
  try {
    if (!here.squads.length) {
      say("No squad of this club has a pool and a lane group: practices are made for the water alone.");
    } else if (asked) {
      await (here.squads.some(([id]) => id === asked.squad) ? arriveAt(asked) : say(NO_SQUAD));
    } else {
      const squad = mySquad();
      await (squad ? ask(squad[0]) : askSquad());
    }
  } catch (problem) {
    if (own === turn) {
      say(whyNot(problem));
    }
  }
}

window.addEventListener("hashchange", arrive);
arrive();
