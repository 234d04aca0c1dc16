// A request by ids made into wishes by places in the table; and what of it cannot be. Pure. Of composing/request.py.

import { MAIN, ROLES, SECOND, UNKNOWN } from "./pieces.js";
import { Asked, at, GOALS_MOST, MINUTES_LEAST, MINUTES_MOST } from "./wishes.js";
import { listed, roleWord, said } from "./words.js";

/** @typedef {import("./pieces.js").Table} Table */
/** @typedef {import("./types.js").Request} Request */
/** @typedef {import("./wishes.js").Wishes} Wishes */

const MOST = 200; // no more heads or lanes are taken for a number that is meant
const SHOWN = 25; // of more names none is told

/** A wish that cannot be; its message is one sentence that says why, its field the question that it is of, "" where that is none. */
export class BadWish extends Error {
  /** @param {string} message @param {string} [field] */
  constructor(message, field = "") {
    super(message);
    this.field = field;
  }
}

/** The question that a sentence is of, by the beginning of its key. */
const FIELDS = [["bad-minutes", "minutes"], ["no-goals", "goals"], ["bad-goal", "goals"], ["bad-gear", "gear"], ["no-gear", "gear"], ["bad-lanes", "lanes"], ["bad-adults", "adults"]];

/**
 * The wishes of a request. Throws BadWish for the first that cannot be.
 * @param {Table} table
 * @param {Request} request
 * @returns {Wishes}
 */
export function wishesOf(table, request) {
  places(table, "pool", [request.pool], ids(table.pools));
  checkMinutes(table, request.minutes);
  const { done = [], taught = {}, keep = [], leave_out: leaveOut = [], gear = {}, effort = "", adults = UNKNOWN } = request;
  const wishes = {
    ...groupsOf(table, request),
    pool: request.pool,
    minutes: request.minutes,
    goals: goalsOf(table, request),
    gear: gearOf(table, gear),
    effort: effort ? at(places(table, "effort", [effort], ids(table.efforts)), 0) : UNKNOWN,
    adults,
    days: daysOf(table, done),
    taught: taughtOf(table, taught),
    kept: keptOf(table, keep),
    leftOut: new Set(places(table, "piece", leaveOut, [...table.pieceOf.keys()])),
  };
  checkRoom(table, wishes);
  checkKept(table, wishes);
  return wishes;
}

/** Which lane groups swim; lanes and heads of each. @param {Table} table @param {Request} request */
function groupsOf(table, { pool, groups = [], lanes = {}, heads = {} }) {
  const { squad } = table, names = ids(squad.groups), most = { lanes: table.pools.find((own) => own.id === pool)?.lanes ?? 0, heads: MOST };
  const chosen = places(table, "group", groups.length ? groups : names, names);
  for (const [what, own] of /** @type {["lanes" | "heads", Record<string, number>][]} */ ([["lanes", lanes], ["heads", heads]])) {
    places(table, "group", Object.keys(own), names);
    squad.groups.forEach((group) => checkNumber(table, what, group, own[group.id] ?? 1, most[what]));
  }
  return {
    groups: chosen.sort((a, b) => a - b),
    lanes: squad.groups.map((group) => lanes[group.id] ?? group.lanes),
    heads: squad.groups.map((group) => heads[group.id] ?? group.heads),
  };
}

/** @param {Table} table @param {string} what @param {{id: string, title: string}} group @param {number} number @param {number} most */
function checkNumber(table, what, { id, title }, number, most) {
  if (!(number > 0 && number <= most)) {
    bad(table, number > 0 ? "bad-number" : "bad-none", { what: said(table, `what-${what}`), group: title, number, most }, `${what}-${id}`);
  }
}

/** @param {Table} table @param {string} key @param {Record<string, string | number>} filled @param {string} [field] @returns {never} */
function bad(table, key, filled, field = FIELDS.find(([begins]) => key.startsWith(begins ?? key))?.[1]) {
  throw new BadWish(said(table, key, filled), field);
}

/** @param {{id: string}[]} every */
const ids = (every) => every.map((own) => own.id);

/** @param {Table} table @param {string} what @param {string[]} wanted @param {string[]} known */
function places(table, what, wanted, known) {
  const unique = [...new Set(wanted)];
  for (const id of unique) {
    if (known.includes(id)) {
      continue;
    }
    bad(table, known.length > SHOWN ? "bad-place" : "bad-place-known", { what: said(table, `what-${what}`), id, known: known.join(", ") });
  }
  return unique.map((id) => known.indexOf(id));
}

/** @param {Table} table @param {number} minutes */
function checkMinutes(table, minutes) {
  const { squad } = table;
  if (!(minutes >= MINUTES_LEAST && minutes <= MINUTES_MOST)) {
    bad(table, "bad-minutes", { minutes, least: MINUTES_LEAST, most: MINUTES_MOST });
  }
  if (minutes > squad.minutes) {
    bad(table, "bad-minutes-squad", { minutes, squad: squad.title, most: squad.minutes });
  }
}

/** @param {Table} table @param {Request} request */
function goalsOf(table, { goals, pool }) {
  const found = places(table, "goal", goals, ids(table.goals));
  if (!found.length || found.length > GOALS_MOST) {
    bad(table, found.length ? "bad-goals" : "no-goals", { number: found.length, most: GOALS_MOST });
  }
  const known = table.squad.offers.in(pool).flatMap(({ piece }) => piece.goals);
  const lacking = found.find((goal) => !known.includes(goal));
  if (lacking !== undefined) {
    const served = table.goals.filter((_, goal) => known.includes(goal));
    bad(table, "bad-goal", { squad: table.squad.title, goal: table.goals[lacking]?.title.toLowerCase() ?? "", known: ids(served).join(", ") });
  }
  return found;
}

/** @param {Table} table @param {Record<string, number>} atHand */
function gearOf(table, atHand) {
  places(table, "gear", Object.keys(atHand), ids(table.gear));
  for (const { id, owned } of table.gear) {
    const number = atHand[id] ?? 0;
    if (number > owned || number < 0) {
      bad(table, owned ? "bad-gear" : "no-gear", { number, gear: id, owned });
    }
  }
  return table.gear.map(({ id, owned }) => atHand[id] ?? owned);
}

/** By piece the days since it was last done. @param {Table} table @param {[string, number][]} done */
function daysOf(table, done) {
  /** @type {Map<number, number>} */
  const found = new Map();
  for (const [key, days] of done) {
    const own = table.practices.find(({ id }) => id === key);
    const pieces = own ? own.pieces : places(table, "done", [key], [...table.pieceOf.keys()]);
    if (days < 0) {
      bad(table, "bad-days", { key, days });
    }
    for (const piece of pieces) {
      found.set(piece, Math.min(days, found.get(piece) ?? days));
    }
  }
  return found;
}

/** The drills that have been taught: the squad's own, but of a progression the stages that are told. @param {Table} table @param {Record<string, number>} stages */
function taughtOf(table, stages) {
  const known = new Map(table.progressions.map((own) => [own.id, own.stages]));
  places(table, "progression", Object.keys(stages), [...known.keys()]);
  const found = new Set(table.squad.taught);
  for (const id of Object.keys(stages)) {
    for (const drill of known.get(id)?.flat() ?? []) {
      found.delete(drill);
    }
  }
  for (const [id, told] of Object.entries(stages)) {
    const own = known.get(id) ?? [];
    if (!(told >= 0 && told <= own.length)) {
      bad(table, "bad-stages", { id, stages: own.length, told });
    }
    for (const drill of own.slice(0, told).flat()) {
      found.add(drill);
    }
  }
  return found;
}

/** @param {Table} table @param {NonNullable<Request["keep"]>} keep */
function keptOf(table, keep) {
  /** @type {import("./wishes.js").Kept[]} */
  const found = [];
  for (const [key, role, number] of keep) {
    const [piece = UNKNOWN] = places(table, "piece", [key], [...table.pieceOf.keys()]), letter = role === SECOND ? MAIN : role;
    if (!ROLES.includes(letter) || !table.pieces[piece]?.roles.includes(letter)) {
      bad(table, ...notAs(table, key, letter, table.pieces[piece]?.roles ?? ""));
    }
    if (found.some((own) => own.role === role)) {
      bad(table, "bad-keep-twice", { key });
    }
    found.push({ piece, role, number });
  }
  return found;
}

/** That a piece cannot stand in a role, and in which it can. @param {Table} table @param {string} key @param {string} letter @param {string} roles
 * @returns {[key: string, filled: Record<string, string>]} */
function notAs(table, key, letter, roles) {
  const words = [...roles].map((own) => roleWord(table, own).toLowerCase());
  return ROLES.includes(letter) && roles ? ["bad-keep-role", { key, role: roleWord(table, letter).toLowerCase(), roles: listed(table, words, "or") }] : ["bad-keep", { key }];
}

/** What is kept may stand, whatever stands beside it. @param {Table} table @param {Wishes} wishes */
function checkKept(table, wishes) {
  const asked = new Asked(table, wishes);
  for (const own of wishes.kept) {
    const offer = asked.offers.find((one) => one.piece.place === own.piece), piece = table.pieces[own.piece];
    const reason = offer ? asked.whyNot(offer, own.role) : "groups", title = piece?.title ?? "";
    if (piece && reason === "gear") {
      const used = asked.usedAtOnce(piece), gear = piece.gear.find((id) => used > at(wishes.gear, id)) ?? 0;
      bad(table, "bad-keep-gear", { title, used, gear: table.gear[gear]?.title.toLowerCase() ?? "", here: at(wishes.gear, gear) });
    }
    if (reason) {
      bad(table, `bad-keep-${reason}`, { title });
    }
  }
}

/** The lanes are there, and with them the adults that so many heads need. @param {Table} table @param {Wishes} wishes */
function checkRoom(table, wishes) {
  const asked = new Asked(table, wishes), pool = table.pools.find((own) => own.id === wishes.pool);
  const lanes = asked.sum(wishes.lanes), title = pool?.title ?? "", { adults } = wishes, least = asked.adultsLeast;
  if (pool && lanes > pool.lanes) {
    bad(table, "bad-lanes", { lanes, pool: title, most: pool.lanes });
  }
  if (adults !== UNKNOWN && adults < least) {
    bad(table, adults === 1 ? "bad-adults-1" : "bad-adults", { adults, heads: asked.sum(wishes.heads), pool: title, least });
  }
}
