// A composed practice as it is run: what the build has worked out for its sets, parts and drills in each of their sizes, laid one after the
// other. Nothing here computes a pace or a rest: what is not on this phone is run by taps, without times. Pure.

/** @import {Data, File, Hazard, Part, Piece, PieceRun, PoolRuns, Practice, Proposal, Request, RunData, Sources} from "./types.js" */
/** @import {Now} from "./as-written.js" */
/** @import {Part as RunPart} from "../run/types.js" */

/** @typedef {{run: RunData, file: File, places: number[], chosen: Practice["parts"]}} Written an entry that is opened, as it is run, and it as it stands now. `places`: which
 *   part of it each part is, as it stands there, -1 of another */

import { asWritten } from "./as-written.js";
import { cutsOf, mayGo } from "./may-go.js";
import { fitted, withoutOffers } from "./offers.js";
import { byTaps, each } from "./often.js";
import { otherwiseOf } from "./otherwise.js";
import { fileOf, pieceOf } from "./places.js";
import { sourceOf, unsaid } from "./source.js";

const TENTHS = 10;

/** Of each lane group of the squad the numbers of its lanes, from the first on.
 * @param {Data} data
 * @param {Request} request */
function lanesOf({ squad }, { lanes: asked = {} }) {
  let taken = 0;
  return new Map(squad.groups.map(([id, , usual]) => {
    const lanes = Array.from({ length: asked[id] ?? usual }, () => ++taken);
    return [id, lanes];
  }));
}

/** @param {Data} data
 * @param {Request} request
 * @param {string} id of a lane group */
function extraOf({ squad }, { lanes = {}, heads = {} }, id) {
  const [, , usualLanes, usualHeads] = /** @type {import("./types.js").Group} */ (squad.groups.find(([own]) => own === id));
  const inLane = (/** @type {number} */ some, /** @type {number} */ own) => Math.ceil(some / own);
  return Math.max(0, inLane(heads[id] ?? usualHeads, lanes[id] ?? usualLanes) - inLane(usualHeads, usualLanes));
}

/** What a part is called: its role is not said twice, and relief is no main set.
 * @param {Part} part
 * @param {Record<string, string>} words */
function titleOf({ as, role, title }, words) {
  const word = as === "e" ? role : words[as] ?? role;
  return title.startsWith(`${word} of `) ? title : `${word}: ${title}`;
}

/** Where nothing is known of a piece: one line, a tap, and its dangers.
 * @param {Data} data
 * @param {Piece} piece
 * @param {Part} part
 * @param {string[]} groups
 * @returns {PieceRun & {isTimed: boolean}} */
function nothingOf(data, { of, id: own, title }, { distance, number }, groups) {
  const far = distance / number; // reps of a drill are alike
  const line = of === "drill" && Number.isInteger(far) && far > 0 ? `${far} ${title}` : title;
  const crews = Object.fromEntries(groups.map((id) => [id, { blocks: [{ item: 0, reps: 1, every: null }] }]));
  return { items: [{ line }], crews, hazards: of === "drill" ? data.drill_hazards[own] : [], isTimed: false };
}

/** Dangers of all pieces, each once, the gravest first.
 * @param {Hazard[][]} found
 * @param {string[]} gravities their titles, the gravest first
 * @returns {Hazard[]} */
export function gravest(found, gravities) {
  /** @type {Map<string, Hazard>} */
  const known = new Map();
  for (const own of found.flat()) {
    known.set(own.title, { ...own, ...known.get(own.title) });
  }
  const place = (/** @type {Hazard} */ { gravity }) => (gravities.indexOf(gravity ?? "") + gravities.length + 1) % (gravities.length + 1);
  return [...known.values()].sort((one, other) => place(one) - place(other));
}

/**
 * @param {Data} data
 * @param {Request} request
 * @param {Proposal} proposal
 * @param {{id: string, title: string, page: string, start: string, gravities: string[], words: Record<string, string>, talks?: Record<string, number>, written?: Written}} own
 *   `words`: what the parts of a practice are called; `talks`: the seconds of talk before a piece, where they are not the usual
 * @param {Sources} sources
 * @param {PoolRuns | null} [here] of the squad's pieces in this pool
 * @returns {{run: Omit<RunData, "version">, tapped: Part[], isRead: boolean}} `tapped`: the parts that are run by taps; `isRead`: not because what
 *   they are run by could not be read
 */
export function laid(data, request, proposal, own, sources, here = null) {
  const names = namesOf(data, request), crews = crewsOf(data, request, names, own.written);
  const goes = own.written ? null : mayGo(data, request, proposal);
  const otherwise = own.written ? otherwiseOf(data, own.written.file, own.written.chosen, own.written.places) : [];
  /** @type {Part[]} */
  const tapped = [];
  const hazards = own.written ? [own.written.run.hazards ?? []] : [];
  let [at, stage] = [0, 0];
  const parts = proposal.parts.flatMap((part, place) => {
    const now = { at, place, stage, names, lead: part.talk_s }, written = own.written?.places[place] ?? -1;
    const rows = own.written && written >= 0 ? asWritten(own.written.run, written, now) : [{ ...newPart(part, now), ...saidThere(own.written, otherwise[place]?.part ?? -1) }];
    at += part.talk_s + part.takes_s;
    stage = (rows[rows.length - 1]?.stage ?? stage) + 1;
    return rows;
  });

  /** A part that is laid anew. @param {Part} part @param {Now} now @returns {RunPart} */
  function newPart(part, now) {
    const piece = pieceOf(data, part.piece), source = sourceOf(data, piece, part.number, request.pool, sources, here) ?? nothingOf(data, piece, part, names);
    hazards.push(piece.hazards ? piece.hazards.map((hazard) => data.hazards[hazard]) : source.hazards ?? []);
    const found = source.isTimed ? source : byTaps(source, piece, part.number), known = names.filter((id) => found.crews[id]);
    if (!source.isTimed) {
      tapped.push(part);
    }
    const talk_s = Math.min(part.talk_s, own.talks?.[part.piece] ?? (piece.talk ?? 0) / TENTHS), starts = now.at + part.talk_s;
    const blocks = (/** @type {string} */ id) => withoutOffers(each(found.crews[id].blocks, (block) => fitted(block, part.as, extraOf(data, request, id))), Boolean(goes?.[now.place]));
    return {
      stage: now.stage, number: now.place + 1, word: data.part_words[part.as], title: titleOf(part, own.words),
      ...(piece.of === "set" ? { set: piece.id } : {}), talk_s, gear_s: tenths(part.talk_s - talk_s), starts_s: tenths(starts),
      items: unsaid(found.items, piece), ...(goes?.[now.place] ? { skip: true } : {}),
      crews: Object.fromEntries(crews.flatMap(({ key, group }) => (known.includes(group) ? [[key, { ends_s: tenths(starts + part.takes_s), blocks: blocks(group) }]] : []))),
    };
  }

  return {
    tapped, isRead: !tapped.length || (here !== null && tapped.every(({ piece }) => !fileOf({ piece }) || sources[fileOf({ piece })])),
    run: {
      form: 1, kind: "practice", id: own.id, title: own.title, page: own.page, squad: data.squad.id, start: own.start, minutes: request.minutes,
      pool: request.pool, course: data.pools.find(([id]) => id === request.pool)?.[2] ?? "", ends_s: tenths(at), crews,
      hazards: gravest(hazards, own.gravities), parts, cuts: goes ? cutsOf(parts) : [],
    },
  };
}

/** What is said of a part that is done more or less often than in the practice that is opened: where, by whom it is led, who helps, the note.
 * @param {Written | undefined} written
 * @param {number} part of it, -1 of none
 * @returns {Partial<RunPart>} */
function saidThere(written, part) {
  const { place: where, led_by: leads, helpers, note } = written?.run.parts.find(({ number }) => number === part + 1) ?? {};
  return { ...(where ? { place: where } : {}), ...(leads ? { led_by: leads } : {}), ...(helpers ? { helpers } : {}), ...(note ? { note } : {}) };
}

/** @param {Data} data
 * @param {Request} request */
const namesOf = ({ squad }, { groups }) => squad.groups.flatMap(([id]) => (!groups?.length || groups.includes(id) ? [id] : []));

/** Who swims: as they are in the practice that is opened, else each lane group from lane 1 on.
 * @param {Data} data
 * @param {Request} request
 * @param {string[]} names
 * @param {Written} [written]
 * @returns {RunData["crews"]} */
function crewsOf(data, request, names, written) {
  const lanes = lanesOf(data, request);
  return written ? written.run.crews.filter(({ group }) => names.includes(group)) : data.squad.groups.filter(([id]) => names.includes(id)).map(([id, title, , heads]) => (
    { key: id, group: id, half: "", title, lanes: lanes.get(id) ?? [], heads: request.heads?.[id] ?? heads, meant: true }));
}

/** @param {number} seconds */
const tenths = (seconds) => Math.round(seconds * TENTHS) / TENTHS;
