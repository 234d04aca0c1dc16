// Times and changes in words. Pure.

/** @typedef {import("./types.js").Change} Change */
/** @typedef {import("./types.js").RunData} RunData */

/** @param {number} number */
const two = (number) => String(number).padStart(2, "0");

/** The time of day, to the minute or the second.
 * @param {number} moment milliseconds
 * @param {boolean} [seconds] */
export function timeOfDay(moment, seconds = false) {
  const day = new Date(moment);
  return `${two(day.getHours())}:${two(day.getMinutes())}${seconds ? `:${two(day.getSeconds())}` : ""}`;
}

/** A count as on a pace clock: 0:25, 12:05, 1:02:30.
 * @param {number} seconds whole */
export function count(seconds) {
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
  const end = `${hours ? two(minutes) : minutes}:${two(seconds % 60)}`;
  return hours ? `${hours}:${end}` : end;
}

/** So many of a thing: 1 line, 2 lines.
 * @param {number} number
 * @param {string} word */
export const many = (number, word) => `${number} ${word}${number === 1 ? "" : "s"}`;

/** Time left, so that it reads 0:01 until the moment has come.
 * @param {number} ms */
export const left = (ms) => count(Math.ceil(ms / 1000));

/** Time gone by.
 * @param {number} ms */
export const gone = (ms) => count(Math.max(0, Math.floor(ms / 1000)));

/** A target, to the tenth where it is not whole: 0:52.4.
 * @param {number} seconds */
export function swum(seconds) {
  const tenths = Math.round(seconds * 10);
  return count(Math.floor(tenths / 10)) + (tenths % 10 ? `.${tenths % 10}` : "");
}

/** Lanes as they are said: 1–3, 5.
 * @param {number[]} lanes */
export function laneList(lanes) {
  /** @type {number[][]} */
  const runs = [];
  for (const lane of [...lanes].sort((a, b) => a - b)) {
    const last = runs[runs.length - 1];
    if (last && lane === last[last.length - 1] + 1) {
      last.push(lane);
    } else {
      runs.push([lane]);
    }
  }
  return runs.map((run) => (run.length > 1 ? `${run[0]}–${run[run.length - 1]}` : `${run[0]}`)).join(", ");
}

/** A crew as its row is headed.
 * @param {{title: string, lanes: number[], half?: string}} crew */
export const crewName = (crew) =>
  crew.lanes.length ? `${crew.lanes.length > 1 ? "Lanes" : "Lane"} ${[laneList(crew.lanes), crew.half].filter(Boolean).join(", ")}` : shortName(crew).replace("\n", " ");

const TITLED = /^(.+?), lanes? (\d+)(?: (?:to|and) (\d+))?$/;

/** A crew in the width of a row: its lanes, or the squad over the lanes that its title says; else the title.
 * @param {{title: string, lanes: number[], half?: string}} crew */
export function shortName({ title, lanes, half }) {
  const [, squad, from, to] = TITLED.exec(title) ?? [];
  return lanes.length ? [laneList(lanes), half].filter(Boolean).join("\n") : squad ? `${squad}\n${to ? `${from}–${to}` : from}` : title;
}

/** Whom a change is for.
 * @param {RunData} data
 * @param {string | null | undefined} who */
export function whose(data, who) {
  const crew = data.crews.find(({ key }) => key === who);
  return crew ? crewName(crew) : "all";
}

/** A crew's name within a sentence: lanes, not Lanes.
 * @param {string} name */
export const inSentence = (name) => name.replace(/^Lane/, "lane");

/** @param {number} seconds */
const later = (seconds) => (seconds < 60 ? `${seconds} s` : `${seconds / 60} min`);

/** @param {RunData} data
 * @param {number | undefined} part */
const titleOf = (data, part) => data.parts[part ?? -1]?.title ?? "";

/** @type {Record<import("./types.js").By, string>} */
const BY = { order: "", rounds: ", by rounds", parts: ", by whole parts", end: ", the wind-down first" };

const ON = { same: "the same rep again", next: "the next rep", part: "the next part" };

/** @type {Record<import("./types.js").Deed, (change: Change, data: RunData) => string>} */
const WHAT = {
  go: () => "Go",
  hold: () => "Hold",
  stop: () => "Stop",
  on: ({ how }) => `On after the stop: ${ON[how ?? "next"]}`,
  more: ({ s }) => `${s} s more from the next rep`,
  fewer: () => "Fewer reps",
  sit: () => "Sit out",
  meet: () => "Meet the others at the next part",
  round: ({ n, part }, data) => `${titleOf(data, part)}: a round ${n === 1 ? "more" : "fewer"}`,
  skip: ({ part }, data) => `Skip: ${titleOf(data, part)}`,
  late: ({ s }) => `${later(s ?? 0)} later`,
  cut: ({ until, by }) => `Cut to end at ${timeOfDay(until ?? 0)}${BY[by ?? "order"]}`,
  end: () => "End",
  back: ({ of }) => `Taken back: change ${of?.join(", ")}`,
};

/** A change in words, without whom it is for.
 * @param {Change} change
 * @param {RunData} data */
export const what = (change, data) => WHAT[change.do](change, data);

/** A change in words, as the list has it.
 * @param {Change} change
 * @param {RunData} data */
export const said = (change, data) =>
  change.who === undefined || change.who === null ? what(change, data) : `${what(change, data)}, ${inSentence(whose(data, change.who))}`;

/** @param {number} number
 * @param {string} word */
const fewer = (number, word) => `${number === 1 ? `a ${word}` : `${number} ${word}s`} fewer`;

/** What cuts take, a line a part; of parts that are the same, one line.
 * @param {import("./types.js").Cut[]} cuts
 * @param {RunData} data */
export function cutWords(cuts, data) {
  /** @param {number} part */
  const line = (part) => {
    const own = cuts.filter((cut) => cut.part === part);
    const times = (/** @type {string} */ deed) => own.filter((cut) => cut.do === deed).length;
    return `${titleOf(data, part)}: ${times("skip") ? "left out" : times("round") ? fewer(times("round"), "round") : "shorter"}`;
  };
  const lines = [...new Set(cuts.map(({ part }) => part))].map(line);
  return [...new Set(lines)].map((own) => {
    const times = lines.filter((other) => other === own).length;
    return times === 1 ? own : `${own}, ${times === 2 ? "both" : `all ${times}`} times`;
  });
}
