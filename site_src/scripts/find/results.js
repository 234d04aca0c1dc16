// What was found, as lists on the page: the best three of any kind first, then by kind; of one kind a screenful at a time.

import { make, root } from "../lib/dom.js";

/** @import {Entry} from "./list.js" */
/** @typedef {(entry: Entry) => string} Told what stands beside the kind: one fact, or minutes, metres, gear and lanes */
/** @typedef {(entry: Entry) => string} Way the address that a hit leads to */
/** @typedef {Map<string, {one: string, many: string}>} Kinds */
/** @typedef {{kind: string, entries: Entry[]}} Shelf */
/** @typedef {(entry: Entry) => boolean} IsSure whether an entry answers most of what was asked for */

const BEST = 3;
const ON_A_SHELF = 3;
const AT_ONCE = 20;

/** The found by kind, in the order in which kinds first come.
 * @param {Entry[]} entries
 * @returns {Shelf[]} */
export function shelves(entries) {
  /** @type {Map<string, Entry[]>} */
  const found = new Map();
  for (const entry of entries) {
    found.set(entry.kind, [...(found.get(entry.kind) ?? []), entry]);
  }
  return [...found].map(([kind, own]) => ({ kind, entries: own }));
}

const isWide = () => window.matchMedia("(min-width: 60em)").matches;

/** The first hits into the first screen, where the choices leave no room for them.
 * @param {Element} page */
export function bringFirst(page) {
  const first = page.querySelector(".hits a");
  if (first && first.getBoundingClientRect().bottom > 0.8 * window.innerHeight) {
    page.scrollIntoView({ block: "start" });
  }
}

/** @param {Entry} entry */
function picture(entry) {
  const attributes = { alt: "", loading: "lazy", width: "96", height: "42", class: "hit-figure" };
  return entry.figure ? make("img", { ...attributes, src: new URL(`drills/${entry.figure}.svg`, root).href }) : "";
}

/**
 * @param {Element} place
 * @param {{kinds: Kinds, told: Told, way: Way, narrow: (kind: string) => void}} known
 */
export function resultLists(place, { kinds, told, way, narrow }) {
  /** @type {Map<Entry, {told: string, hasRoom: boolean, hit: HTMLLIElement}>} what stands as it did is not made anew at each key */
  const made = new Map();

  /** @type {(entry: Entry, hasRoom: boolean) => HTMLLIElement} */
  function hit(entry, hasRoom) {
    const own = `${told(entry)}\n${way(entry)}`;
    const known = made.get(entry);
    if (known?.told === own && known.hasRoom === hasRoom) {
      return known.hit;
    }
    const fresh = newHit(entry, hasRoom);
    made.set(entry, { told: own, hasRoom, hit: fresh });
    return fresh;
  }

  /** @type {(entry: Entry, hasRoom: boolean) => HTMLLIElement} */
  function newHit(entry, hasRoom) {
    const kind = make("b", {}, kinds.get(entry.kind)?.one ?? "");
    const more = told(entry);
    const fact = make("span", { class: "hit-fact" }, kind, more ? ` · ${more}` : "");
    const text = make("span", { class: "hit-text" }, make("strong", {}, entry.title), fact);
    const link = make("a", { href: new URL(way(entry), root).href }, text);
    if (hasRoom) {
      text.append(make("span", { class: "hit-about" }, entry.summary));
      link.prepend(picture(entry));
    }
    return make("li", {}, link);
  }

  /** @param {Entry[]} entries */
  function hits(entries) {
    const hasRoom = isWide();
    return entries.map((entry) => hit(entry, hasRoom));
  }

  /** @type {(entries: Entry[], more?: Record<string, string>) => HTMLOListElement} */
  const list = (entries, more = {}) => make("ol", { class: "hits", ...more }, ...hits(entries));

  /** The first of a kind that do not stand above, the sure ones alone where there are any, and how many there are of it in all.
   * @type {(shelf: Shelf, above: Entry[], isSure: IsSure) => HTMLElement} */
  function onShelf({ kind, entries }, above, isSure) {
    const heading = make("h2", {}, `${kinds.get(kind)?.many} `, make("span", { class: "count" }, String(entries.length)));
    const left = entries.filter((entry) => !above.includes(entry));
    const shown = (left.some(isSure) ? left.filter(isSure) : left).slice(0, ON_A_SHELF);
    /** @type {HTMLElement[]} */
    const parts = [heading, list(shown, { "data-kind": kind })];
    if (entries.length > shown.length) {
      const all = make("button", { type: "button", class: "tool" }, `All ${entries.length} ${kinds.get(kind)?.many.toLowerCase()}`);
      all.addEventListener("click", () => narrow(kind));
      parts.push(all);
    }
    return make("section", {}, ...parts);
  }

  /** @param {"p" | "li"} tag */
  const line = (tag) => make(tag, { class: "less-sure", "data-less-sure": "" }, "Less sure");

  /** One list, as much of it as fits a few screens; what is less sure below a line.
   * @type {(sure: Entry[], unsure: Entry[]) => HTMLElement[]} */
  function whole(sure, unsure) {
    const entries = [...sure, ...unsure];
    const own = list([]);
    const more = make("button", { type: "button", class: "tool", "data-more": "" });
    let shown = 0;
    const showMore = () => {
      const next = hits(entries.slice(shown, shown + AT_ONCE));
      const at = sure.length - shown;
      own.append(...next.slice(0, Math.max(at, 0)), ...(at >= 0 && at < next.length ? [line("li")] : []), ...next.slice(Math.max(at, 0)));
      shown += next.length;
      more.hidden = shown >= entries.length;
      more.textContent = `Show ${Math.min(AT_ONCE, entries.length - shown)} more of ${entries.length - shown}`;
      return next[0];
    };
    more.addEventListener("click", () => showMore()?.querySelector("a")?.focus());
    showMore();
    return [own, more];
  }

  return {
    /**
     * @param {Entry[]} entries
     * @param {{isOneKind: boolean, isAsked: boolean, isSure: IsSure}} how whether one kind was chosen; whether words were asked for
     * @returns {Entry | undefined} the first
     */
    show(entries, { isOneKind, isAsked, isSure }) {
      const sure = entries.filter(isSure);
      const unsure = entries.filter((entry) => !isSure(entry));
      if (isOneKind) {
        place.replaceChildren(...whole(sure, unsure));
        return sure[0] ?? unsure[0];
      }
      const best = isAsked ? sure.slice(0, BEST) : [];
      const weak = isAsked ? unsure.slice(0, BEST - best.length) : [];
      const above = [...best, ...weak];
      const rest = shelves(entries).filter((shelf) => shelf.entries.some((entry) => !above.includes(entry)));
      /** @type {(shelf: Shelf) => boolean} */
      const hasSure = (shelf) => shelf.entries.some((entry) => isSure(entry) && !above.includes(entry));
      /** @type {(shelf: Shelf) => HTMLElement} */
      const own = (shelf) => onShelf(shelf, above, isSure);
      place.replaceChildren(
        ...(best.length ? [list(best, { "data-best": "", "aria-label": "Best" })] : []), ...rest.filter(hasSure).map(own),
        ...(unsure.length ? [line("p")] : []), ...(weak.length ? [list(weak, { "aria-label": "Less sure" })] : []), ...rest.filter((shelf) => !hasSure(shelf)).map(own),
      );
      return sure[0] ?? unsure[0];
    },
  };
}
