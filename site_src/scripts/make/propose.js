// The proposals of Make a practice: shown, changed, run, printed, saved and handed on. Fetched once the questions are there. What was changed
// stands in the address, so that a reload, a way back and another phone come to the same.

import { change } from "../compose/change.js";
import { inMinutes } from "../compose/minutes.js";
import { BadWish } from "../compose/request.js";
import { make, one } from "../lib/dom.js";
import { ahead, beforeOthers, drawnNow } from "./ahead.js";
import { answerOf, answerTo, sentence, standOf } from "./answer.js";
import { toAddress } from "./asked.js";
import { hear, tell as tellOther } from "./between.js";
import { asRun, hand, laying, run, save } from "./deeds.js";
import { whyNot } from "./here.js";
import { bringOpen, focusOf, movedWords, page, writtenOf } from "./proposal.js";
import { adultsOf, isEntry, opened } from "./opened.js";

/** @import {Asked} from "./asked.js" */
/** @import {Shown, Slot, Stand, Told} from "./proposal.js" */
/** @import {Role} from "../compose/types.js" */
/** @import {Data, File} from "./types.js" */

const SOON_MS = 100;
const WAITS = "The sheets are fetched first, and printed then.";
const NO_SHEETS = "No signal, and what lays the sheets out is not here: nothing is printed. Try again with one.";
const GONE = "The practice that this link opens is no longer here.";
const box = one("[data-make]");
const paper = one("[data-make-paper]");
/** @type {{stand: Stand, told: Told, asked: Asked}[]} what was before each change, and what it moved */
let before = [];
/** @type {Shown | null} */
let shown = null;
let drawn = 0;
/** Until what the run data tell stands, sheets and all. */
let filling = Promise.resolve();

/** Show this in place of what was there; what is still being worked out for that is dropped.
 * @param {...Node} nodes */
function say(...nodes) {
  drawn++;
  paper.replaceChildren();
  box.replaceChildren(...nodes);
}

/** @param {Asked} asked */
const go = (asked) => { location.hash = toAddress(asked); };

/** As it stands now, without another step of the way back.
 * @param {Asked} asked */
const stay = (asked) => history.replaceState(null, "", `#${toAddress(asked)}`);

/** @param {Asked} wanted
 * @param {File | null} known */
const whyGone = ({ from }, known) => (from && !known ? GONE : "");

/** What an address asks for.
 * @param {Data} squadData
 * @param {Asked} wanted
 * @param {File | null} known the practice that it opens */
async function arriveAt(squadData, wanted, known) {
  const gone = whyGone(wanted, known), { data, asked, told: unopened } = opened(squadData, wanted, known);
  const answer = known && asked.practice ? answerOf(data, asked.request) : answerTo(data, asked.request);
  if (answer instanceof BadWish) {
    tellOther("make-ask", { data, squad: asked.squad, request: asked.request, problem: gone || answer.message, field: gone ? "" : answer.field });
    return;
  }
  before = [];
  shown = arrived(data, asked, answer, known, gone || unopened);
  if (wanted.from) {
    stay(shown.asked);
  }
  if (!await draw()) {
    return;
  }
  beforeOthers(squadData, shown);
  if (asked.code && shown?.stand) {
    await begin(asked.code);
  }
  one("h2, p", box).scrollIntoView({ block: "nearest" });
}

/** What is shown at first.
 * @param {Data} data
 * @param {Asked} asked
 * @param {import("../compose/types.js").Answer} answer
 * @param {File | null} known
 * @param {string} unopened
 * @returns {Shown} */
function arrived(data, asked, answer, known, unopened) {
  const number = Math.min(asked.number, answer.proposals.length || 1), [stand, told, isFollowed] = standOf(data, asked, answer.proposals[number - 1]);
  const practice = stand && isFollowed ? stand.practice : null, file = practice ? known : null;
  return { data, asked: { ...asked, number, practice }, answer, stand, file, unopened, told: unread(told), open: "", isOwn: Boolean(practice) };
}

/** Draw what was proposed, with what its run data tells where that is soon here, so that no row grows under a finger.
 * @returns {Promise<boolean>} whether it is there: not where something else was asked for meanwhile */
async function draw() {
  if (!shown) {
    return false;
  }
  const [own, refocus] = [shown, focusOf(box)];
  const making = own.stand && asRun({ ...own, stand: own.stand }).catch(() => null); // not here: the rows say what there is
  await Promise.race([making, new Promise((resolve) => { setTimeout(resolve, SOON_MS); })]);
  if (shown !== own) {
    return false;
  }
  say(...page(own, { ask: (request) => go({ ...own.asked, request, number: 1, practice: isEntry(own.asked) ? own.asked.practice : null }), show, change: act, fit: (slot) => fit(slot), takeBack, read: () => tell(lastTold()), onOpen: (role) => { own.open = role; bringOpen(box); }, again: () => again(own), run: () => begin(""), print: printed, save: () => handed(save), hand: () => handed(hand) }));
  refocus();
  bringOpen(box);
  if (own.stand && making) {
    filling = fill({ ...own, stand: own.stand }, making);
  }
  return true;
}

/** What the run data of a proposal tells: the swim of each row, the dangers, the sheets.
 * @param {Shown & {stand: Stand}} own
 * @param {Promise<Awaited<ReturnType<typeof asRun>> | null>} making */
async function fill(own, making) {
  const number = drawn;
  const made = await making;
  if (made && number === drawn) {
    tellOther("make-made", { ...own, box, made, proposal: own.stand.proposal });
    bringOpen(box);
    await drawnNow();
  }
  if (made && number === drawn) {
    /** @type {import("./between.js").Told["make-sheets"]} */
    const paged = { ...own, proposal: own.stand.proposal, written: writtenOf(own), made, adults: adultsOf(own.data, own.asked.request, own.file, own.stand), unit: own.answer.unit, sheets: [] };
    tellOther("make-sheets", paged);
    paper.replaceChildren(...paged.sheets);
  }
}

/** @param {number} number of a proposal */
function show(number) {
  if (shown) {
    go({ ...shown.asked, number, practice: null });
  }
}

/** Print the sheets, as soon as they are there; where they cannot be, that is said.
 * @returns {Promise<void>} */
async function printed() {
  const told = one("[data-handed]", box), number = drawn;
  const waits = setTimeout(() => told.replaceChildren(make("p", { role: "status" }, WAITS)), SOON_MS);
  await filling;
  if (!paper.childElementCount && shown?.stand) { // perhaps it is here by now
    await fill({ ...shown, stand: shown.stand }, asRun({ ...shown, stand: shown.stand }).catch(() => null));
  }
  clearTimeout(waits);
  if (number === drawn) {
    told.replaceChildren(...(paper.childElementCount ? [] : [make("p", { role: "alert" }, NO_SHEETS)]));
  }
  if (paper.childElementCount) {
    print();
  }
}

/** The questions again, as they were answered.
 * @param {Shown} own */
function again({ data, asked: { squad, request } }) {
  history.pushState(null, "", location.pathname + location.search);
  tellOther("make-ask", { data, squad, request, problem: "", field: "" });
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

/** @param {import("../compose/types.js").Deed} deed */
function act(deed) {
  if (!shown?.stand) {
    return;
  }
  const { data, asked, stand } = shown, found = change(data, asked.request, stand.practice, deed);
  if ("refused" in found) {
    tell(unread(found.refused));
  } else {
    before.push({ stand, asked, told: movedWords(data, stand.proposal, found, deed) });
    settle(found, lastTold());
  }
}

/** In other minutes, or from another moment on, perhaps without some of its pieces.
 * @param {Slot} slot
 * @param {Role[]} [out] the roles of what is taken out */
function fit(slot, out = []) {
  if (!shown?.stand) {
    return;
  }
  const { data, asked, stand } = shown, request = { ...asked.request, minutes: slot.minutes };
  try {
    const found = inMinutes(data, request, stand.practice, out);
    if ("refused" in found) {
      tell({ ...unread(found.refused), ...(found.out?.length ? { out: () => fit(slot, found.out) } : {}) });
    } else {
      before.push({ stand, asked, told: movedWords(data, stand.proposal, found) });
      shown.asked = { ...asked, ...slot, request };
      settle(found, lastTold());
    }
  } catch (problem) {
    if (!(problem instanceof BadWish)) {
      throw problem;
    }
    tell(unread(sentence(problem.message)));
  }
}

function takeBack() {
  const last = before.pop();
  if (last) {
    const told = lastTold();
    /** @type {Shown} */ (shown).asked = last.asked;
    settle(last.stand, { ...told, said: told.said ? `Taken back. ${told.said}` : "Taken back." });
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
  try {
    const problem = shown?.stand && await run({ ...shown, stand: shown.stand }, code);
    if (problem) {
      tell(unread(problem));
    }
  } catch (problem) {
    tell(unread(whyNot(problem)));
  }
}

/** @param {typeof save} deed */
function handed(deed) {
  if (shown?.stand) {
    one("[data-handed]", box).replaceChildren(...deed({ ...shown, stand: shown.stand }));
  }
}

/** Whatever is being drawn is no longer asked for. */
function drop() {
  shown = null;
  drawn++;
  paper.replaceChildren();
}

laying().catch(() => { /* asked for again with the first proposal */ });
hear("make-soon", ahead);
hear("make-try", (own) => {
  const answer = answerTo(own.data, own.request);
  [own.problem, own.field] = answer instanceof BadWish ? [answer.message, answer.field] : ["", ""];
});
hear("make-show", (own) => {
  drop();
  if (own) {
    arriveAt(own.data, own.asked, own.file).catch((problem) => say(make("p", { role: "alert" }, whyNot(problem))));
  }
});
