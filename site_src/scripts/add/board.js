// The whiteboard of a set that is being written: its lines in the words of the set's page (board.py). What is not filled in
// yet stands as "…". Pure.

import { isObject } from "./schema.js";
import { tidy } from "./times.js";

/**
 * @typedef {import("./names.js").Names} Names
 * @typedef {Record<string, any>} Item of a set, as far as it is filled in
 * @typedef {Record<"drill" | "effort" | "gear" | "group" | "how", (id: any) => string>} Titles of an id, of a list of gear, of an item's
 *   start, partner and team
 * @typedef {{depth: number, what: string, effort: string, gear: string, how: string, go: string, aim: string, result: string,
 *   note: string}} Line
 */

const OPEN = "…";
/** @type {Record<string, string>} */
const TO_MARK = {
  wall: "to the wall", flags: "to the flags", "near-flags": "to the first flags",
  middle: "to the middle", "15m": "to 15 m", end: "to the end",
};

/** @param {unknown} value */
const text = (value) => (value === undefined || value === null || typeof value === "object" ? OPEN : String(value));
/** @type {(value: unknown) => any[]} */
const list = (value) => (Array.isArray(value) ? value : []);

/**
 * An effort in words: `steady`, `descend steady to fast`.
 * @param {unknown} effort
 * @param {Titles} told
 */
function effortWords(effort, told) {
  if (!isObject(effort)) {
    return effort === undefined ? "" : told.effort(effort);
  }
  const each = Object.entries(effort).map(([form, words]) => {
    const efforts = list(words).map(told.effort);
    return form === "rotate" ? `in turn ${efforts.join(", ")}` : `${form} ${efforts[0] ?? OPEN} to ${efforts[1] ?? OPEN}`;
  });
  return each.sort((one, other) => Number(other.startsWith("descend")) - Number(one.startsWith("descend"))).join(", each ");
}

/** Who swims while who rests: `in 2 waves`, `2 at a time`.
 * @param {unknown} waves */
function wavesWords(waves) {
  if (!isObject(waves)) {
    return "";
  }
  return waves.number === undefined ? `${text(waves.swimmers)} at a time` : `in ${text(waves.number)} waves`;
}

/** How hard, and in how many waves.
 * @param {Item} item
 * @param {Titles} told */
const howHard = ({ effort, parts, waves }, told) =>
  [parts ? "" : effortWords(effort, told), wavesWords(waves)].filter(Boolean).join(", ");

/** @param {unknown} rounds */
const roundsWords = (rounds) => `${text(rounds)} ${Number(rounds) === 1 ? "round" : "rounds"}`;

/** One time, or one for each rep.
 * @param {unknown} times */
const timesWords = (times) => (Array.isArray(times) ? times.map(tidy).join(", ") : tidy(times));

/** @param {unknown} sendoff
 * @param {Titles} told */
function sendoffWords(sendoff, told) {
  if (!isObject(sendoff)) {
    return `on ${timesWords(sendoff)}`;
  }
  const times = Object.entries(sendoff).map(([group, time]) => [told.group(group), timesWords(time)]);
  const isOne = times.length > 1 && new Set(times.map(([, time]) => time)).size === 1;
  return isOne ? `on ${times[0][1]}` : times.map(([group, time]) => `${group} on ${time}`).join("; ");
}

/** A change of reps, as its own words: what it does not name stays out.
 * @param {Item} change
 * @param {Titles} told */
function changeWords(change, told) {
  const parts = list(change.parts).filter(isObject).map((part) => partWords(part, told)).join(", then ");
  const count = change.reps === undefined ? "" : `${change.reps} ×`;
  const far = change.time === undefined ? (change.distance ?? "") : tidy(change.time);
  const what = [count, far, change.do === undefined ? "" : told.drill(change.do)].filter((word) => word !== "").join(" ");
  const bare = Array.isArray(change.gear) && !change.gear.length ? "without gear" : "";
  const rounds = change.rounds === undefined ? "" : roundsWords(change.rounds);
  return [rounds, what, parts && `as ${parts}`, bare].filter(Boolean).join(", ");
}

/**
 * What is different for a lane group or in a round, a line each.
 * @param {Item} item
 * @param {Titles} told
 * @param {number} depth
 * @returns {Generator<Line>}
 */
function* changeLines(item, told, depth) {
  /** @type {(changes: unknown) => [string, any][]} */
  const each = (changes) => (isObject(changes) ? Object.entries(changes) : []);
  const [groups, rounds] = [[...each(item.by_group), ...each(item.by_variant)], each(item.by_round)];
  const whose = [
    ...groups.map(([group, change]) => ({ who: told.group(group), change })),
    ...rounds.map(([round, change]) => ({ who: round === "last" ? "Last round" : `Round ${round}`, change })),
  ];
  for (const { who, change } of whose.filter((one) => isObject(one.change))) {
    const what = changeWords(change, told);
    yield {
      depth, what: what ? `${who}: ${what}` : who, effort: howHard(change, told), gear: told.gear(change.gear),
      go: goWords(change, told), how: told.how(change), aim: aimWords(change.aim, told), result: "", note: change.note ?? "",
    };
  }
}

/** What a board needs of the catalogue: the titles of efforts, drills and gear.
 * @param {Names} names
 * @returns {Titles} */
function titles({ vocabulary, reference }) {
  /** @type {(known: import("./names.js").Known[] | undefined, id: unknown) => string} */
  const titled = (known, id) => known?.find(([own]) => own === id)?.[1] ?? text(id);
  return {
    effort: (id) => titled(vocabulary.efforts, id).toLowerCase(),
    drill: (id) => titled(reference.drill, id),
    group: (id) => titled(reference.lane_group, id),
    how: ({ start, partner, team }) =>
      [["starts", start], ["partners", partner], ["teams", team]]
        .filter(([, word]) => word !== undefined)
        .map(([list_, word]) => titled(vocabulary[list_], word))
        .map((title) => title.slice(0, 1).toLowerCase() + title.slice(1)).join(", "),
    gear: (ids) => list(ids).map((id) => titled(reference.gear, id).toLowerCase()).join(" and "),
  };
}

/** @type {Record<string, string>} */
const ORDERS = {
  rotate: "in turn", medley: "in medley order", reverse_medley: "in reverse medley order",
};

/** What is done: a drill, or several in turn.
 * @param {unknown} what
 * @param {Titles} told */
function doWords(what, told) {
  if (!isObject(what)) {
    return told.drill(what);
  }
  const [[order, drills] = ["", []]] = Object.entries(what);
  return `${ORDERS[order] ?? OPEN}: ${list(drills).map(told.drill).join(", ")}`;
}

/** The time to hold.
 * @param {unknown} aim
 * @param {Titles} told */
function aimWords(aim, told) {
  if (aim === undefined) {
    return "";
  }
  const times = isObject(aim) ? Object.entries(aim).map(([group, time]) => `${tidy(time)} ${told.group(group)}`) : [tidy(aim)];
  return `hold ${times.join(", ")}`;
}

/**
 * @param {Item} part
 * @param {Titles} told
 */
function partWords(part, told) {
  const worn = list(part.gear).length ? ` with ${told.gear(part.gear)}` : "";
  const passing = part.in_passing === undefined ? "" : ", gear changed in passing";
  const rest = part.rest === undefined ? "" : `, ${tidy(part.rest)} rest`;
  const what = doWords(part.do, told);
  const swum = part.to === undefined ? `${text(part.distance)} ${what}` : `${what} ${TO_MARK[part.to] ?? OPEN}`;
  return `${swum} (${effortWords(part.effort, told) || OPEN})${worn}${passing}${rest}`;
}

/** @param {Item} item
 * @param {Titles} told */
function goWords({ sendoff, rest, pause_between: pause }, told) {
  if (pause !== undefined) {
    return `${tidy(pause)} between rounds`;
  }
  if (sendoff !== undefined) {
    return sendoffWords(sendoff, told);
  }
  return rest === undefined ? "" : `${tidy(rest)} rest`;
}

/**
 * @param {Item} item
 * @param {Titles} told
 * @param {number} depth
 * @returns {Line}
 */
function repsLine(item, told, depth) {
  const parts = list(item.parts).filter(isObject);
  const whole = item.distance ?? parts.reduce((sum, part) => sum + Number(part.distance), 0);
  const each = item.time === undefined ? text(item.distance) : tidy(item.time);
  const swum = parts.map((part) => partWords(part, told)).join(", then ");
  const shared = list(item.do?.split);
  const share = `${text(item.distance)}, ${Math.round((10 * item.distance) / shared.length) / 10 || OPEN} each of`;
  const alone = shared.length ? `${share} ${shared.map(told.drill).join(", ")}` : `${each} ${doWords(item.do, told)}`;
  return {
    depth,
    what: `${text(item.reps)} × ${parts.length ? `${whole || OPEN} as ${swum}` : alone}`,
    effort: howHard({ ...item, parts: parts.length ? parts : undefined }, told),
    gear: told.gear(item.gear),
    how: told.how(item),
    go: goWords(item, told),
    aim: aimWords(item.aim, told),
    result: item.note_result === undefined ? "" : `note the ${text(item.note_result)}`,
    note: item.note ?? "",
  };
}

/**
 * @param {unknown} items
 * @param {Titles} told
 * @param {number} depth
 * @returns {Generator<Line>}
 */
function* lines(items, told, depth = 0) {
  for (const item of /** @type {Item[]} */ (list(items).filter(isObject))) {
    const line = { depth, effort: "", gear: "", how: "", go: "", aim: "", result: "", note: item.note ?? "" };
    if (Object.hasOwn(item, "pause")) {
      yield { ...line, what: `Pause ${tidy(item.pause)}` };
    } else if (Object.hasOwn(item, "rounds") || Object.hasOwn(item, "items")) {
      const go = item.pause_between === undefined ? "" : `${tidy(item.pause_between)} between rounds`;
      yield { ...line, what: `${roundsWords(item.rounds)} of`, go: Number(item.rounds) === 1 ? "" : go };
      yield* lines(item.items, told, depth + 1);
      yield* changeLines(item, told, depth + 1);
    } else if (Object.keys(item).length) {
      yield repsLine(item, told, depth);
      yield* changeLines(item, told, depth + 1);
    }
  }
}

/**
 * The lines of a set's items, in order.
 * @param {unknown} items
 * @param {Names} names
 */
export const boardOf = (items, names) => [...lines(items, titles(names))];
