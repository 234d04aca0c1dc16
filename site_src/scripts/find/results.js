// The finder's results as a list on the page: a screenful first, more when asked for.

import { make, one, root } from "../lib/dom.js";

/** @import {Entry} from "./list.js" */
/** @typedef {(entry: Entry) => string} Minutes in words */
/** @typedef {Record<string, Record<string, string>>} Titles by facet and word */

const AT_ONCE = 12;

/** @param {Entry} entry */
function picture(entry) {
  const attributes = { alt: "", loading: "lazy", width: "96", height: "42", class: "result-figure" };
  return entry.figure ? make("img", { ...attributes, src: new URL(`figures/${entry.figure}.svg`, root).href }) : "";
}

/**
 * What stands under a result's line: kind, level, gear, effort, length, minutes.
 * @param {Entry} entry
 * @param {Titles} titles
 * @param {Minutes} minutes
 */
function facts(entry, titles, minutes) {
  const efforts = entry.has.effort.map((word) => titles.effort[word].toLowerCase());
  const gear = entry.needs.map((id) => titles.gear[id].toLowerCase()).join(", ");
  return [
    titles.kind[entry.kind],
    titles.level[entry.has.level[0]],
    gear ? `needs ${gear}` : "no gear",
    efforts.length > 1 ? `${efforts[0]} to ${efforts.at(-1)}` : efforts[0],
    entry.distance,
    minutes(entry),
  ].filter(Boolean).join(" · ");
}

/**
 * @param {Entry} entry
 * @param {Titles} titles
 * @param {Minutes} minutes
 */
function result(entry, titles, minutes) {
  const text = make("span", { class: "result-text" },
    make("strong", {}, entry.title), make("span", { class: "about" }, entry.summary),
    make("span", { class: "result-facts" }, facts(entry, titles, minutes)));
  return make("li", {}, make("a", { href: new URL(entry.href, root).href }, picture(entry), text));
}

/**
 * A list in `place` (with [data-results] and [data-more] in it) that shows entries.
 * @param {Element} place
 * @param {Titles} titles
 * @param {Minutes} minutes
 */
export function resultList(place, titles, minutes) {
  const list = one("[data-results]", place);
  const more = one("[data-more]", place);
  /** @type {Map<Entry, HTMLElement>} kept: the same entries come back with most choices */
  const made = new Map();
  /** @type {Entry[]} */
  let rest = [];

  /** @param {Entry} entry */
  function item(entry) {
    const shown = made.get(entry) ?? result(entry, titles, minutes);
    made.set(entry, shown);
    return shown;
  }

  function extend() {
    const [next, after] = [rest.slice(0, AT_ONCE), rest.slice(AT_ONCE)];
    rest = after;
    list.append(...next.map(item));
    more.hidden = !rest.length;
    more.textContent = `Show ${Math.min(AT_ONCE, rest.length)} more of ${rest.length}`;
    return next.length;
  }

  more.addEventListener("click", () => {
    const shown = extend();
    list.children[list.children.length - shown]?.querySelector("a")?.focus();
  });
  return {
    /** @param {Entry[]} entries */
    show(entries) {
      rest = entries;
      list.replaceChildren();
      extend();
    },
    forget: () => made.clear(),
  };
}
