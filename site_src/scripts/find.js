// Find: the box, the choices, the address and the lists, kept in step.

import { fromAddress, toAddress } from "./find/address.js";
import { askedFor, isHeardAlone } from "./find/asked.js";
import { toFirst, walk } from "./find/by-keys.js";
import { choicesOf, say } from "./find/choices.js";
import { engine } from "./find/engine.js";
import { fitOf, minutesUntil } from "./find/fit.js";
import { besideGuides, withGuides } from "./find/guides.js";
import { entriesOf, inOrder, isNothing, LISTS, nothing, sift } from "./find/list.js";
import { offerPools } from "./find/pools.js";
import { forget, lookedFor, remember } from "./find/recent.js";
import { bringFirst, resultLists } from "./find/results.js";
import { speaker } from "./find/spoken.js";
import { many, teller } from "./find/told.js";
import { writer } from "./find/written.js";
import { all, one, tool } from "./lib/dom.js";
import { MOST_GROUPS } from "./lib/my-groups.js";
import * as preferences from "./lib/preferences.js";

/** @import {Data, Entry, Facet, List} from "./find/list.js" */

const form = one("[data-finder]");
const page = one("[data-found]");
const wordsInput = /** @type {HTMLInputElement} */ (one("#find-words", form));
/** @type {Data} */
const data = JSON.parse(one("#finder-data").textContent ?? "");
const entries = entriesOf(data);
const search = engine(data, entries);
const tell = teller(data);
const state = { choice: nothing(), until: "", mine: preferences.mine(), isRun: false };
let question = search.question("");
let byPointer = false;
let fitsFor = "";
/** @type {Map<Entry, import("./find/fit.js").Fit>} */
const fits = new Map();

/** @type {(facet: Facet) => string} */
const told = (facet) => tell.choice(state.choice, facet, state.until);
const choices = choicesOf(form, told);
const speak = speaker(page, tell.first);
const written = writer(() => toAddress(state.choice, { pool: preferences.chosen("pool"), groups: state.mine }));

/** What fits is asked for. */
const held = () => ({
  pool: preferences.chosen("pool"),
  groups: question.groups.length ? question.groups.slice(0, MOST_GROUPS) : state.mine,
  minutes: state.choice.minutes ?? question.minutes,
  lanes: state.choice.lanes ?? question.lanes,
  swimmers: state.choice.swimmers ?? question.swimmers,
  adults: question.adults,
});

/** What fits is worked out anew where something else is asked for. */
function forgetFits() {
  const asked = JSON.stringify(held());
  if (asked !== fitsFor) {
    fits.clear();
    fitsFor = asked;
  }
}

/** @param {Entry} entry */
function fit(entry) {
  const known = fits.get(entry) ?? fitOf(data, entry, held());
  fits.set(entry, known);
  return known;
}

/** @param {Entry} entry */
function way(entry) {
  const { cut } = fit(entry);
  return cut ? `${entry.href.replace("sets/", "sets/scaled/")}#${cut[0]}` : entry.href;
}

const lists = resultLists(one("[data-results]", page), {
  kinds: tell.kinds,
  told: (entry) => tell.hit(entry, fit(entry), held()),
  way,
  narrow: (kind) => {
    state.choice.kind = new Set([kind]);
    refresh();
    form.scrollIntoView({ block: "start" });
    toFirst(page, { preventScroll: true }); // the button that was pressed is gone
  },
});

/**
 * @param {Entry[]} found
 * @param {number} untimed
 * @param {number} unsure
 * @param {boolean} isAtRest nothing is asked and nothing chosen: no hit is shown
 */
function showTotal(found, untimed, unsure, isAtRest) {
  const { minutes, lanes, swimmers } = held();
  say(one("[data-total]", page), isAtRest ? `${many(found.length, "page", "pages")}.` : tell.total(found, unsure, question));
  const isTimed = Boolean(minutes || lanes || swimmers);
  one("[data-ask-groups]", page).hidden = !isTimed || held().groups.length > 0;
  say(one("[data-whose]", page), isTimed ? tell.whose(held()) : "");
  const show = one("[data-untimed]", page);
  show.hidden = !untimed && !state.choice.untimed;
  say(show, state.choice.untimed ? "Leave out what has no computed time" : `Show also ${untimed} without a computed time`);
  for (const button of all("[data-done]", form)) {
    say(button, `Show ${many(found.length, "hit", "hits")}`);
  }
}

/**
 * Nothing found: the nearest word and what it finds; which choice to drop, the most helpful first.
 * @param {Entry[]} found
 * @param {Record<string, number>} without
 */
function showWayOut(found, without) {
  const wayOut = one("[data-nothing]", page);
  wayOut.hidden = found.length > 0;
  if (found.length) {
    return;
  }
  const near = question.words ? search.nearest(question) : null;
  const helpful = /** @type {[Facet, number][]} */ (Object.entries(without)).sort(([, first], [, next]) => next - first);
  const useful = helpful.filter(([, number]) => number);
  one("[data-ways]", wayOut).replaceChildren(
    ...(near ? [tool(`Nearest word: ${near.word} (${many(near.hits, "hit", "hits")})`, () => ask(near.word), { "data-nearest": near.word })] : []),
    ...(useful.length ? useful : helpful).map(([facet, number]) =>
      tool(`Without ${data.titles[facet].toLowerCase()}: ${told(facet)}${number ? ` (${number})` : ""}`, () => drop(facet))),
  );
}

/** @param {string} words */
function ask(words) {
  state.choice.words = wordsInput.value = words;
  refresh();
  wordsInput.focus();
}

/** @param {Facet} facet */
function drop(facet) {
  const isTime = facet === "minutes" || facet === "lanes"; // what fits in minutes, lanes and swimmers is one question
  const none = isTime ? { minutes: null, lanes: null, swimmers: null } : { [facet]: nothing()[facet] };
  state.choice = { ...state.choice, ...none };
  state.until = isTime ? "" : state.until;
  wordsInput.value = state.choice.words;
  refresh();
  wordsInput.focus();
}

/** The last things looked for, where the box is empty. */
function showRecent() {
  const recent = one("[data-recent]", page);
  const words = state.choice.words ? [] : lookedFor();
  recent.hidden = !words.length;
  one("[data-looked-for]", recent).replaceChildren(...words.map((own) => tool(own, () => ask(own))));
}

/** @type {(fault: string) => number[]} */
const firstFor = (fault) => data.first[data.words.fault.findIndex(([id]) => id === fault)] ?? [];

function refresh(keepAddress = false) {
  state.mine = preferences.mine();
  question = search.question(state.choice.words);
  forgetFits();
  const answered = state.choice.words ? search.answers(question) : null;
  const scored = answered?.scores ?? null;
  const wanted = askedFor(state.choice, question, held(), { isLeft: state.isRun || state.until !== "", sure: answered?.sure ?? null });
  const sure = answered && isHeardAlone(state.choice, question) ? answered.sure : null;
  const { found, counts, without, untimed } = sift(entries, wanted, { fit, scores: scored, steps: choices.steps, narrowed: data.narrowed, sure });
  choices.show(state, counts);
  const isAtRest = isNothing(state.choice);
  one("[data-clear]", form).hidden = isAtRest;
  one("[data-plain-lists]").toggleAttribute("data-at-rest", isAtRest);
  showRecent();
  offerPools(form, found, data.narrowed);
  const { hits, guides } = withGuides(isAtRest ? [] : inOrder(found, wanted, scored, { firstFor, fit }), entries, wanted, { question, meant: search.meant(question), fit, groups: data.groups, alarms: data.alarms });
  /** @type {import("./find/results.js").IsSure} */
  const isSure = (entry) => !answered || answered.sure.has(entry.number) || guides.includes(entry);
  const { shown, unknown } = besideGuides({ found, unknown: tell.unknown(search.unknown(question)) }, hits, guides);
  say(one("[data-unknown]", page), unknown);
  showWayOut(shown, without);
  showTotal(shown, untimed, found.filter((entry) => !isSure(entry)).length, isAtRest);
  speak(lists.show(hits, { isOneKind: state.choice.kind.size === 1, isAsked: scored !== null, isSure }));
  if (!keepAddress) {
    written.soon();
  }
}

const known = /** @type {Record<List | "kind" | "gear" | "groups" | "pool", Set<string>>} */ ({
  ...Object.fromEntries([...LISTS, "gear"].map((facet) => [facet, new Set(data.words[/** @type {List} */ (facet)].map(([id]) => id))])),
  kind: new Set(tell.kinds.keys()),
  groups: new Set(data.groups.map(({ id }) => id)),
  pool: new Set(data.pools),
});
known.gear.add("none");

function readAddress(address = location.hash || location.search) {
  const asked = fromAddress(address, known);
  state.choice = asked.choice;
  const minutes = minutesUntil(asked.until, new Date());
  state.until = minutes ? asked.until : "";
  state.choice.minutes = minutes || state.choice.minutes;
  if (asked.pool) {
    preferences.choose("pool", asked.pool, false);
  }
  if (asked.groups.length) {
    preferences.setMine(asked.groups, false);
  }
  state.isRun = state.isRun || asked.isRun;
  one("[data-back]").hidden = !state.isRun;
  wordsInput.value = state.choice.words;
  choices.open(asked.open);
  refresh(true);
}

form.hidden = page.hidden = false;
choices.onOpen(() => refresh(true));
form.addEventListener("pointerdown", () => { byPointer = true; });
form.addEventListener("keydown", () => { byPointer = false; });
form.addEventListener("submit", (event) => {
  event.preventDefault();
  remember(state.choice.words);
  toFirst(page); // and the keys of a phone go out of the way
});
walk(wordsInput, page);
form.addEventListener("change", ({ target }) => {
  if (target instanceof HTMLInputElement && target !== wordsInput && target.dataset.myGroup === undefined) {
    choices.take(state, target);
    refresh();
    if (byPointer && choices.close(target.name) && !choices.goOn()) {
      bringFirst(page);
    }
  }
});
wordsInput.addEventListener("input", () => {
  state.choice.words = wordsInput.value.trim();
  refresh();
});
page.addEventListener("click", ({ target }) => {
  if (target instanceof Element && target.closest(".hits a")) {
    written.flush();
    remember(state.choice.words);
  }
});
one("[data-forget]", page).addEventListener("click", () => {
  forget();
  refresh(true);
  wordsInput.focus();
});
one("[data-untimed]", page).addEventListener("click", () => {
  state.choice.untimed = !state.choice.untimed;
  refresh();
});
for (const button of all("[data-done]", form)) {
  button.addEventListener("click", () => {
    choices.open();
    page.scrollIntoView({ block: "start" });
  });
}
one("[data-choose-groups]", page).addEventListener("click", () => {
  choices.open(["lanes"]);
  one("[data-facet=lanes]", form).scrollIntoView({ block: "start" });
});
one("[data-clear]", form).addEventListener("click", () => {
  state.choice = nothing();
  state.until = wordsInput.value = "";
  refresh();
});
window.addEventListener("hashchange", ({ newURL }) => {
  written.drop();
  const address = new URL(newURL).hash;
  history.replaceState(null, "", address || "#");
  readAddress(address);
});
readAddress();
if (state.isRun) {
  bringFirst(page);
}
if (!location.hash) {
  wordsInput.focus({ preventScroll: true });
}
search.warm(() => {
  page.dataset.texts = "read";
  if (state.choice.words && !page.contains(document.activeElement)) { // who has gone on to a hit keeps it
    refresh(true);
  }
});
preferences.onChange(() => refresh(!state.choice.minutes));
