// Whether an entry fits: its clock as the build worked it out, for the slowest of my lane groups, with the talk and the gear that
// goes before it. Pure: adds seconds, works out no pace.

/** @import {Data, Entry, Group} from "./list.js" */

/**
 * @typedef {object} Held what fits is asked for
 * @property {string} pool
 * @property {string[]} groups my lane groups, one to three; none where none were chosen: then it is each that an entry is written for
 * @property {number | null} minutes
 * @property {number | null} lanes
 * @property {number | null} swimmers
 * @property {number | null} adults
 *
 * @typedef {object} Fit
 * @property {number | null} seconds all that it takes; null where that is not known
 * @property {number | null} least the same of its smallest size
 * @property {boolean} fits
 * @property {[number, string, string[]] | null} cut the number that it is cut to, the same in words, and how far it then is
 * @property {boolean} isAssumed
 * @property {boolean} isForOthers whether it is written for none of my groups
 * @property {string} crowded how many in a lane there is room for, and how many there are; "" where there is room
 */

const PRACTICE = "practice"; // its talk and gear are in its clock, and its pool is its own

/** What lanes and swimmers were chosen comes to in the fullest lane of a group, beside the group as it is.
 * @param {Held} held
 * @param {Group[]} groups my groups
 * @param {Group} group */
function heads({ lanes, swimmers }, groups, group) {
  const usual = Math.ceil(group.heads / group.lanes);
  const all = groups.reduce((sum, own) => sum + own.heads, 0);
  const wide = groups.reduce((sum, own) => sum + own.lanes, 0);
  const asked = lanes || swimmers ? Math.ceil((swimmers ?? all) / (lanes ?? wide)) : usual;
  return { usual, asked };
}

/** Room in a lane, in words, where what is asked for is more than there is, and than is usual.
 * @type {(most: number, asked: number, usual: number) => string} */
const crowding = (most, asked, usual) => (most && asked > Math.max(most, usual) ? `${asked} in a lane, room for ${most}` : "");

/** Whether the groups that have a time are enough: each of mine; of all groups, where none is mine, any.
 * @type {(held: Held, timed: Group[], groups: Group[]) => boolean} */
const isEnough = (held, timed, groups) => !held.groups.length || timed.length === groups.length;

/**
 * The slowest of some groups on the clock: seconds, whether they hang on an assumed time, how many fit in a lane. null where one
 * of them has no time.
 * @param {(number[] | undefined)[]} takes by lane group of the club
 * @param {Data} data
 * @param {Held} held
 * @param {Group[]} groups
 */
function slowest(takes, data, held, groups) {
  const found = { seconds: 0, isAssumed: false, crowded: "" };
  const timed = groups.filter((group) => takes[data.groups.indexOf(group)]?.[0]);
  if (!timed.length || !isEnough(held, timed, groups)) {
    return null;
  }
  for (const group of timed) {
    const [clock = 0, home = 0, most = 0] = takes[data.groups.indexOf(group)] ?? [];
    const { usual, asked } = heads(held, held.groups.length ? groups : [group], group);
    const tail = home ? Math.max(0, asked - usual) * group.gap_s : 0; // more swimmers in a lane come home later
    found.seconds = Math.max(found.seconds, Math.abs(clock), home + tail);
    found.isAssumed ||= clock < 0;
    found.crowded ||= crowding(most, asked, usual);
  }
  return found;
}

/** Seconds that go before an entry: talk, in which gear is put on.
 * @type {(data: Data, entry: Entry) => number} */
const before = (data, { kind, gearS }) => (kind === PRACTICE ? 0 : Math.max(data.talk_s, gearS));

/** The smaller sizes of a set that are known and have room, the largest first.
 * @type {(data: Data, entry: Entry, held: Held, groups: Group[], pool: string) => {number: number, words: string, seconds: number, distance: string[]}[]} */
function sizes(data, entry, held, groups, pool) {
  const cuts = entry.ownPool === pool || !entry.ownPool ? entry.cuts : [];
  return cuts.flatMap(([number, words, takes, distance]) => {
    const own = slowest(takes, data, held, groups);
    return own ? [{ number, words, seconds: before(data, entry) + own.seconds, distance }] : [];
  });
}

/** The groups that an entry is laid on the clock for, and the pool: a practice's are its own, mine among them where some are.
 * @type {(data: Data, entry: Entry, held: Held, mine: Group[]) => {pool: string, groups: Group[]}} */
const laidFor = (data, entry, held, mine) => {
  if (entry.kind !== PRACTICE) {
    return { pool: held.pool, groups: mine };
  }
  const own = data.groups.filter(({ id }) => entry.meant.includes(id));
  const both = own.filter((group) => mine.includes(group));
  return { pool: entry.ownPool, groups: both.length ? both : own };
};

/** @type {(entry: Entry, held: Held) => boolean} */
const isTooMuch = ({ kind, lanes, adults }, held) => kind === PRACTICE && (lanes > (held.lanes ?? Infinity) || adults > (held.adults ?? Infinity));

/**
 * @param {Data} data
 * @param {Entry} entry
 * @param {Held} held
 * @returns {Fit}
 */
export function fitOf(data, entry, held) {
  const isOpen = !held.groups.length;
  const mine = data.groups.filter(({ id }) => (isOpen ? !entry.meant.length || entry.meant.includes(id) : held.groups.includes(id)));
  const isForOthers = !isOpen && entry.meant.length > 0 && !mine.some(({ id }) => entry.meant.includes(id));
  const { pool, groups } = laidFor(data, entry, held, mine);
  const whole = slowest(entry.takes[data.pools.indexOf(pool)] ?? [], data, held, groups);
  if (!whole) {
    return { seconds: null, least: null, fits: false, cut: null, isAssumed: false, isForOthers, crowded: "" };
  }
  const most = held.minutes ? 60 * held.minutes : Infinity;
  const full = { number: 0, words: "", seconds: before(data, entry) + whole.seconds, distance: entry.distance };
  const every = [full, ...sizes(data, entry, held, groups, pool)];
  const chosen = every.find((own) => own.seconds <= most);
  const { seconds, number, words, distance } = chosen ?? full;
  return {
    ...whole,
    isForOthers,
    least: Math.min(...every.map((own) => own.seconds)),
    fits: !isTooMuch(entry, held) && chosen !== undefined,
    seconds,
    cut: number ? [number, words, distance] : null,
  };
}

/** Seconds as a coach writes them: 11:20.
 * @param {number} seconds */
export const clockTold = (seconds) => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;

/**
 * How long it takes, in words: "11:20 of 12:00" where minutes are asked for, else whole minutes; "" where it is not known.
 * @param {Data} data
 * @param {Entry} entry
 * @param {Fit} fit
 * @param {Held} held
 */
export function timeTold(data, entry, fit, { minutes }) {
  if (fit.seconds === null) {
    return "";
  }
  const whole = Math.ceil((fit.seconds - before(data, entry)) / 60);
  const own = minutes ? `${clockTold(fit.seconds)} of ${clockTold(60 * minutes)}` : `${whole} min`;
  return `${own}${fit.isAssumed ? " (assumed)" : ""}${fit.cut ? `, cut to ${fit.cut[1]}` : ""}`;
}

/** Minutes from one time of day until another, the next day's where it has passed; null where there is none.
 * @param {string} until "19:45"
 * @param {Date} now */
export function minutesUntil(until, now) {
  const [, hours, minutes] = /^(\d\d):(\d\d)$/.exec(until) ?? [];
  if (!hours || !minutes) {
    return null;
  }
  const left = 60 * Number(hours) + Number(minutes) - 60 * now.getHours() - now.getMinutes() - now.getSeconds() / 60;
  return Math.floor(left < 0 ? left + 24 * 60 : left);
}
