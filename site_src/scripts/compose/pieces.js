// The table that practices are composed from, read from its data: whole numbers alone. Pure. Of scripts/almanac/arithmetic/composing/pieces.py.

/** @typedef {[drill: number, plain: number, strict: number]} Dose permille; plain is UNKNOWN where some of it is not */
/** @typedef {{number: number, distance: number, times: number[], fast: number, resisted: number, plates: number, under: number,
 *   goesUnder: number, calm: number, doses: Dose[]}} Size */
/** @typedef {{place: number, key: string, of: "set" | "part" | "drill" | "held", id: string, part: number, title: string, roles: string, goals: number[],
 *   shares: number[], shows: string[], drills: number[], asks: number[], strokes: number[], kick: number, hardest: number, effort: number, gear: number[], begins: number[], ends: number[],
 *   mostInLane: number, talk: number, what: "" | "rounds" | "reps", written: number, cue: string, called: string,
 *   items: Record<string, unknown>[], scaled: (string | number)[]}} Piece */
/** @typedef {{piece: Piece, adults: number, room: number[], sizes: Size[]}} Offer */
/** @typedef {{id: string, title: string}} Named */
/** @typedef {{id: string, title: string, lanes: number, heads: number, gap: number}} Group */
/** @typedef {{id: string, title: string, owned: number, change: number}} Gear */
/** @typedef {{id: string, title: string, unit: string, lanes: number}} Pool */
/** @typedef {{goals: Named[], efforts: Named[], gentle: number, fast: number, strokes: Named[], gear: Gear[], drills: string[], strokesSwum: number[], pools: Pool[],
 *   squad: {id: string, title: string, groups: Group[], taught: number[], minutes: number,
 *     limits: {fast: number, resisted: number, plates: number, under: number, underAfterFast: number},
 *     watch: Record<string, number[]>, offers: Offers},
 *   progressions: {id: string, title: string, stages: number[][]}[], practices: {id: string, pieces: number[]}[],
 *   pieces: Piece[], pieceOf: Map<string, number>, words: Record<string, string>, partWords: Record<string, string>}} Table */

export const TENTHS = 10;
export const UNKNOWN = -1;
export const [WARM_UP, SKILL, MAIN, EASY, COOL_DOWN] = /** @type {["w", "s", "m", "e", "c"]} */ (["w", "s", "m", "e", "c"]);
export const ROLES = "wsmec";
export const SECOND = "n", THIRD = "o"; // among the roles of a piece main sets like the first
export const MAINS = /** @type {import("./types.js").Role[]} */ ([MAIN, SECOND, THIRD]);

/** Whether a part of a practice that is opened stands as it is written, by its place there: it is swapped for nothing. @param {string} role */
export const isHeld = (role) => role.length === 1 && "0123456789AB".includes(role);

/** @type {WeakMap<object, Table>} */
const known = new WeakMap();

/**
 * The table of a squad's data (data/v1/compose/SQUAD.json), read once.
 * @param {any} data
 * @returns {Table}
 */
export function tableOf(data) {
  let table = known.get(data);
  if (!table) {
    known.set(data, (table = read(data)));
  }
  return table;
}

/** @param {any} data @returns {Table} */
function read(data) {
  /** @type {Piece[]} */
  const pieces = data.pieces.map((/** @type {any} */ own, /** @type {number} */ place) => pieceOf(own, place, data.shows));
  const { squad } = data;
  const [fast, resisted, plates, under, underAfterFast] = squad.limits;
  return {
    goals: data.goals.map(named),
    efforts: data.efforts.map(named),
    gentle: data.gentle,
    fast: data.fast,
    strokes: data.strokes.map(named),
    gear: data.gear.map((/** @type {any[]} */ [id, title, owned, change]) => ({ id, title, owned, change })),
    drills: data.drills,
    strokesSwum: data.strokes_swum,
    pools: data.pools.map((/** @type {any[]} */ [id, title, course, lanes]) => ({ id, title, unit: course.replace(/^\d+/, ""), lanes })),
    squad: {
      id: squad.id,
      title: squad.title,
      groups: squad.groups.map((/** @type {any[]} */ [id, title, lanes, heads, gap]) => ({ id, title, lanes, heads, gap })),
      taught: squad.taught,
      minutes: squad.minutes,
      limits: { fast, resisted, plates, under, underAfterFast },
      watch: squad.watch,
      offers: new Offers(squad.offers, pieces),
    },
    progressions: data.progressions.map((/** @type {any[]} */ [id, title, stages]) => ({ id, title, stages })),
    practices: data.practices.map((/** @type {any[]} */ [id, , own]) => ({ id, pieces: own })),
    pieces,
    pieceOf: new Map(pieces.map((piece) => [piece.key, piece.place])),
    words: data.words,
    partWords: data.part_words,
  };
}

/** What a squad may do by pool; each pool is read when it is first asked for. */
class Offers {
  /** @param {Record<string, any[][]>} data @param {Piece[]} pieces */
  constructor(data, pieces) {
    this.data = data;
    this.pieces = pieces;
    /** @type {Map<string, Offer[]>} */
    this.known = new Map();
  }

  /** @param {string} pool */
  in(pool) {
    let found = this.known.get(pool);
    if (!found) {
      found = (Object.hasOwn(this.data, pool) ? (this.data[pool] ?? []) : []).map((own) => offerOf(own, this.pieces));
      this.known.set(pool, found);
    }
    return found;
  }
}

/** @param {string[]} own @returns {Named} */
const named = ([id = "", title = ""]) => ({ id, title });

const EMPTY = {
  part: 0, goals: [], shares: [], shows: [], drills: [], asks: [], strokes: [], kick: 0, hardest: 0, effort: 0, gear: [], begins: [], ends: [], talk: 0, what: "", written: 0, cue: "", called: "",
  items: [], scaled: [], most_in_lane: 0,
};

/** @param {any} given @param {number} place @param {string[]} texts @returns {Piece} */
function pieceOf(given, place, texts) {
  const { most_in_lane: mostInLane, ...own } = { ...EMPTY, ...given };
  const shows = own.goals.map((/** @type {number} */ _, /** @type {number} */ at) => texts[(own.shows[at] ?? 0) - 1] ?? "");
  return { ...own, place, mostInLane, shows, key: ["part", "held"].includes(own.of) ? `${own.of}/${own.id}/${own.part}` : `${own.of}/${own.id}` };
}

/** @param {any[]} own @param {Piece[]} pieces @returns {Offer} */
function offerOf([place, adults, room, runs], pieces) {
  const piece = /** @type {Piece} */ (pieces[place]);
  return { piece, adults, room, sizes: runs.flatMap(sizesOf) };
}

/** The sizes of a run: the first, and each of those that grow from it. @param {any[]} run @returns {Size[]} */
function sizesOf([first, more = 0, each]) {
  const one = sizeOf(first);
  if (!each) {
    return [one];
  }
  const by = sizeOf(each);
  return Array.from({ length: more + 1 }, (_, times) => grown(one, by, times));
}

/** @param {Size} first @param {Size} each @param {number} times @returns {Size} */
const grown = (first, each, times) => ({
  number: first.number + times * each.number,
  distance: first.distance + times * each.distance,
  times: first.times.map((time, group) => (time === UNKNOWN ? UNKNOWN : time + times * Math.max(0, each.times[group] ?? 0))),
  fast: first.fast + times * each.fast,
  resisted: first.resisted + times * each.resisted,
  plates: first.plates + times * each.plates,
  under: first.under + times * each.under,
  goesUnder: first.goesUnder,
  calm: first.calm,
  doses: first.doses.map(([drill, plain, strict], at) => {
    const [, morePlain, moreStrict] = each.doses[at] ?? [0, 0, 0];
    return [drill, plain + times * morePlain, strict + times * moreStrict];
  }),
});

/** @param {any[]} own @returns {Size} */
function sizeOf([number, distance, times, doses = [], [fast, resisted, plates, under] = [0, 0, 0, 0], [goesUnder, calm] = [UNKNOWN, UNKNOWN]]) {
  return {
    number, distance, fast, resisted, plates, under, goesUnder, calm,
    times: times.map((/** @type {number} */ time) => time || UNKNOWN),
    doses: doses.map((/** @type {number[]} */ [drill, plain, strict]) => [drill, plain, strict ?? plain]),
  };
}
