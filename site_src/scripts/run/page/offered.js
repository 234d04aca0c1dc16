// What may be done, as buttons that keep up with the clock: what each leads to is worked out anew with every second. None changes its place
// under a finger: what may not be done any more stays where it is, and tells so when it is pressed.

import { make } from "../../lib/dom.js";
import { nextRep } from "../changes.js";
import { rows } from "../view.js";
import { count, inSentence, swum, timeOfDay, what, whose } from "../words.js";
import { held, HOLD_MS } from "./press.js";
import { put } from "./put.js";

/** @typedef {import("./app.js").App} App */
/** @typedef {import("../offers.js").Offer} Offer */
/** @typedef {import("../types.js").State} State */
/** @typedef {import("./session.js").Session} Session */
/** @typedef {{button: HTMLElement, offer: Offer | null, means: string, since: number}} Slot `since` it has meant this */

/** The crew that a change is for.
 * @param {State} state
 * @param {Offer} offer */
const crewOf = (state, { change }) => state.crews.find(({ key }) => key === change.who);

/** @param {Offer} offer
 * @param {Session} session */
function named({ change }, session) {
  const state = session.now();
  const crew = state.crews.find(({ key }) => key === change.who);
  const block = crew ? nextRep(crew)?.block : undefined;
  if (change.do === "fewer") {
    return block?.fewer === 2 ? "Two reps fewer" : "One rep fewer";
  }
  return change.do === "sit" ? (block?.sit === 2 ? "Sit two reps out" : "Sit this rep out") : what(change, session.data);
}

/** Target and rest as they are then, where rest grows.
 * @param {Offer} offer */
function restThen(offer) {
  const crew = offer.change.do === "more" ? crewOf(offer.after, offer) : undefined;
  const { target, rest } = (crew && nextRep(crew)) ?? {};
  return [typeof target === "number" ? `target ${swum(target)}` : "", typeof rest === "number" ? `rest ${count(Math.round(rest))}` : ""].filter(Boolean).join(", ");
}

/** When whom goes, after a stop.
 * @param {Session} session
 * @param {Offer} offer */
function goesThen({ data }, { change, after }) {
  const off = change.do === "on" ? rows(after).filter(({ look }) => look === "counts") : [];
  return off.map(({ key, in_ms }) => `${inSentence(whose(data, key))} at ${timeOfDay(after.now + in_ms, true)}`).join(", ");
}

/** Who waits longest for the others, and how long; "" where nobody does.
 * @param {Session} session
 * @param {Offer} offer */
const waitOf = ({ data }, { wait_ms, waiter }) =>
  wait_ms >= 1000 ? `${inSentence(whose(data, waiter))}: wait ${count(Math.round(wait_ms / 1000))}` : "";

/** What a change leads to: rest, send-offs, the end, what is lost, and who waits for how long.
 * @param {Session} session
 * @param {Offer} offer
 * @param {string} said what is said already */
export function leadsTo(session, offer, said = "") {
  const { change, ends, isFrom, less_m } = offer;
  const wait = waitOf(session, offer);
  const lost = less_m ? `${Math.round(less_m)} m less` : "";
  const over_min = Math.ceil((ends - (change.do === "cut" ? (change.until ?? ends) : ends)) / 60_000);
  const end = `ends ${isFrom ? "from " : ""}${timeOfDay(ends, true)}${over_min > 0 ? `, ${over_min} min over` : ""}`;
  return [restThen(offer), goesThen(session, offer), end, lost, wait === said ? "" : wait].filter(Boolean).join("; ");
}

/** What a button stands for as long as its words do not change: the reps or the part that it is of.
 * @param {Session} session
 * @param {Offer} offer */
function meaning(session, offer) {
  const crew = ["more", "fewer", "sit"].includes(offer.change.do) ? crewOf(session.now(), offer) : undefined;
  return `${named(offer, session)} ${crew ? nextRep(crew)?.run : ""}`;
}

/** @param {Offer} offer */
const keyOf = ({ change: { do: deed, s, n, part, how, by } }) => [deed, s, n, deed === "skip" ? part : "", how, by].join(" ");

export class Offered {
  /**
   * @param {App} app
   * @param {() => Offer[]} wanted what may be done at this moment
   * @param {{hold_ms?: number, made?: (app: App) => void, called?: (offer: Offer) => string, isOnce?: boolean, isShort?: boolean}} how `made` is
   *   done afterwards: back to the rows; `isOnce`: a wait that is the same for all is said once; `isShort`: two stand beside each other
   */
  constructor(app, wanted, { hold_ms = HOLD_MS, made = () => app.close(), called, isOnce = false, isShort = false } = {}) {
    this.app = app;
    this.wanted = wanted;
    this.hold_ms = hold_ms;
    this.made = made;
    this.called = called;
    /** What holds for all of them. */
    this.all = isOnce ? make("p", { class: "run-once" }) : null;
    this.offers = make("div", { class: `run-offers ${isShort ? "is-short" : ""}` });
    this.box = make("div", {}, ...(this.all ? [this.all] : []), this.offers);
    /** @type {Map<string, Slot>} */
    this.slots = new Map();
    this.tick();
  }

  /** Work all of it out anew. */
  tick() {
    const session = /** @type {Session} */ (this.app.session);
    const now = new Map(this.wanted().map((offer) => [keyOf(offer), offer]));
    const said = this.all ? [...new Set([...now.values()].map((offer) => waitOf(session, offer)))] : [];
    this.said = said.length === 1 ? said[0] : "";
    if (this.all) {
      put(this.all, this.said ? `Whichever it is: ${this.said}.` : "");
    }
    now.forEach((_, key) => this.slots.has(key) || this.slots.set(key, this.slot(key)));
    this.slots.forEach((slot, key) => this.fill(session, slot, now.get(key) ?? null));
  }

  /** @param {string} key
   * @returns {Slot} */
  slot(key) {
    const button = held("run-offer", [make("strong"), make("small")], () => this.take(key), this.hold_ms);
    this.offers.append(button);
    return { button, offer: null, means: "", since: -Infinity };
  }

  /** @param {Session} session
   * @param {Slot} slot
   * @param {Offer | null} offer */
  fill(session, slot, offer) {
    const [name, about] = /** @type {[Element, Element]} */ ([...slot.button.children]);
    const means = offer ? (this.called?.(offer) ?? meaning(session, offer)) : "";
    if (means !== slot.means) {
      slot.since = slot.means ? performance.now() : -Infinity;
    }
    Object.assign(slot, { offer, means });
    slot.button.setAttribute("aria-disabled", String(offer === null));
    if (offer) {
      put(name, this.called?.(offer) ?? named(offer, session));
    }
    put(about, offer ? leadsTo(session, offer, this.said) : "not any more");
  }

  /** Make a change, as it was said when the press began; where it may not be made any more, or is another by now, say so.
   * @param {string} key */
  take(key) {
    this.tick();
    const { offer, since } = /** @type {Slot} */ (this.slots.get(key));
    if (offer && performance.now() - since >= this.hold_ms && this.app.change(offer.change)) {
      this.made(this.app);
    } else {
      this.app.show({ title: "Too late for that", nodes: [make("p", {}, "A send-off has gone by meanwhile. Nothing was changed.")] });
    }
  }
}

