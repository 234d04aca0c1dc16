// A practice that is an entry, opened to be changed: the data of its squad with each of its parts held as it is written, and those of them that
// are pieces like any other in the roles of a composed one. Pure.

import { askedOf, sizedOf, standing } from "../compose/chosen.js";
import { inMinutes } from "../compose/minutes.js";
import { MAINS } from "../compose/pieces.js";
import { BadWish } from "../compose/request.js";
import { MINUTES_MOST } from "../compose/wishes.js";
import { pieceOf } from "./places.js";

/** @import {Asked} from "./asked.js" */
/** @import {Data, File, Practice, Proposal, Request} from "./types.js" */
/** @import {Chosen, Role} from "../compose/types.js" */

const BETWEEN = /** @type {Role[]} */ (["s", "m", "n", "o", "e"]);
const MOST_GOALS = 3, TENTHS = 10;

/** @type {WeakMap<File, Data>} */
const known = new WeakMap();

/** The data of the squad with the parts of an opened practice, which no other practice is offered. What it does as it is written may be done: the whole
 * of it has been checked where it was written.
 * @param {Data} data
 * @param {File} file
 * @returns {Data} */
export function withParts(data, file) {
  let found = known.get(file);
  if (!found) {
    const first = data.pieces.length, { squad } = data, { pool } = file;
    const offers = file.offers.map(([place, ...others]) => /** @type {[number, ...unknown[]]} */ ([first + place, ...others]));
    found = { ...data, pieces: [...data.pieces, ...file.pieces], squad: { ...squad, taught: [...squad.taught, ...file.taught],
      limits: file.limits, offers: { ...squad.offers, [pool]: [...(squad.offers[pool] ?? []), ...offers] } } };
    known.set(file, found);
  }
  return found;
}

/** What the parts of a practice are called that are held, by their places in it.
 * @param {File} file
 * @param {number} part from 0 */
export const heldKey = ({ id }, part) => `held/${id}/${part}`;

/** Which part of the opened practice a piece is, done as it was there; -1 where it is another, or done otherwise.
 * @param {Data} data
 * @param {File | null} file
 * @param {Chosen} own */
export const partOf = (data, file, { piece, number, talk_s: talk }) => (file ? file.parts.findIndex((part, k) => piece === heldKey(file, k)
  || (part.as === piece && number === oftenOf(data, part) && (talk ?? usualTalk(data, piece)) === (part.talk ?? 0))) : -1);

/** @param {Data} data
 * @param {string} piece */
const usualTalk = (data, piece) => (pieceOf(data, piece)?.talk ?? 0) / TENTHS;

/** How often a part is done that is a piece like any other.
 * @param {Data} data
 * @param {File["parts"][number]} part */
const oftenOf = (data, { as = "", number = 0 }) => number || pieceOf(data, as)?.written || 1;

/** A part as it is written: held, or as the piece that it is.
 * @param {Data} data
 * @param {File} file
 * @param {number} part
 * @param {Role | ""} role "" of what is held
 * @returns {Chosen} */
function chosen(data, file, part, role) {
  const { as = "", talk = 0 } = file.parts[part];
  return role ? { role, piece: as, number: oftenOf(data, file.parts[part]), kept: false, ...(talk === usualTalk(data, as) ? {} : { talk_s: talk }) }
    : { role: /** @type {Role} */ (file.pieces[part].roles), piece: heldKey(file, part), number: 1, kept: false };
}

/** The role of each part, "" of what is held: as many as can be in roles, each once, a warm-up first and a cool-down last.
 * @param {Data} data
 * @param {File} file
 * @param {string} usual the roles that they had, where it was composed
 * @returns {(Role | "")[]} */
export function rolesOf(data, { parts }, usual = "") {
  const suits = (/** @type {number} */ k, /** @type {Role} */ role) => {
    const piece = pieceOf(data, parts[k].as ?? ""), isOnce = parts.every((own, other) => other >= k || own.as !== parts[k].as);
    return Boolean(piece) && isOnce && (piece.roles ?? "").includes(MAINS.includes(role) ? "m" : role);
  };
  if (usual.length === parts.length && parts.every((_, k) => suits(k, /** @type {Role} */ (usual[k])))) {
    return /** @type {Role[]} */ ([...usual]);
  }
  /** @type {(k: number, free: Role[]) => (Role | "")[]} */
  const best = (k, free) => {
    if (k === parts.length) {
      return [];
    }
    const isBeforeTest = parts.slice(k).some(({ stays }) => stays === "test"); // nobody comes to a test tired
    const may = k === 0 ? ["w"] : k === parts.length - 1 ? ["c"] : free.filter((role) => (role !== "n" || !free.includes("m")) && (role !== "o" || !free.includes("n")) && (!isBeforeTest || role === "s" || role === "e"));
    const ways = /** @type {Role[]} */ (may).filter((role) => suits(k, role)).map((role) => [role, ...best(k + 1, free.filter((own) => own !== role))]);
    const count = (/** @type {string[]} */ way) => way.filter(Boolean).length;
    return /** @type {(Role | "")[]} */ ([...ways, ["", ...best(k + 1, free)]].reduce((most, way) => (count(way) > count(most) ? way : most)));
  };
  return best(0, BETWEEN);
}

/** What a practice is for, of what is served here: as it was composed, else what most of it serves.
 * @param {Data} data
 * @param {string} pool
 * @param {File} file
 * @returns {string[]} */
export function goalsOf(data, pool, { goals }) {
  const served = new Set((data.squad.offers[pool] ?? []).flatMap(([place]) => data.pieces[place].goals ?? []));
  const here = data.goals.flatMap(([id], goal) => (served.has(goal) ? [id] : []));
  const own = goals.filter((id) => here.includes(id)).slice(0, MOST_GOALS);
  return own.length ? own : here.slice(0, 1);
}

/** @param {() => unknown} work
 * @returns {string} why not */
function refusal(work) {
  try {
    work();
    return "";
  } catch (problem) {
    if (problem instanceof BadWish) {
      return problem.message;
    }
    throw problem;
  }
}

/** The practice as it is written, as many of its parts as can be to be changed and every other held; its clock is that of its page.
 * Throws BadWish for a request that cannot be.
 * @param {Data} data with its parts
 * @param {Request} request
 * @param {File} file
 * @param {string} [roles] that they had, where it was composed
 * @returns {{practice: Practice} | {refused: string}} */
export function asWritten(data, request, file, roles = "") {
  const asked = askedOf(data, { ...request, minutes: Math.max(request.minutes, Math.min(data.squad.minutes, MINUTES_MOST)) }), all = file.parts.map((_, k) => chosen(data, file, k, "")), may = rolesOf(data, file, roles);
  const why = refusal(() => standing(asked, { parts: all, out: [] }));
  if (why) {
    return { refused: why };
  }
  const starts = (/** @type {Chosen[]} */ parts) => standing(asked, { parts, out: [] }).order.map(({ lead, own }) => `${lead} ${own.takes}`).join();
  const clock = starts(all);
  for (const [k, role] of may.entries()) {
    const own = all.map((one, other) => (other === k && role ? chosen(data, file, k, role) : one));
    if (role && !refusal(() => { if (sizedOf(asked, own[k]).takes && starts(own) !== clock) { throw new BadWish("another clock"); } })) {
      all[k] = own[k];
    }
  }
  const practice = { parts: all, out: [] }, cut = inMinutes(data, request, practice);
  return "refused" in cut ? cut : { practice };
}

/** What an address asks for, with a practice that is an entry opened; and why not, where it can't be.
 * @param {Data} data
 * @param {Asked} asked
 * @param {File | null} file
 * @returns {{data: Data, asked: Asked, told: string}} */
export function opened(data, asked, file) {
  const { request, practice, roles } = asked;
  if (!file) {
    return { data, asked, told: "" };
  }
  const goals = request.goals.length ? request.goals : goalsOf(data, request.pool, file), wanted = { ...asked, request: { ...request, goals } };
  const own = withParts(data, file), found = practice ? { practice } : asWritten(own, wanted.request, file, roles);
  return "refused" in found ? { data, asked: wanted, told: `${file.title} can’t be opened here: ${found.refused} What follows is for the same goals.` }
    : { data: own, asked: { ...wanted, practice: found.practice }, told: "" };
}

/** Whether it is an entry, as it is or changed, and no proposal.
 * @param {Asked} asked */
export const isEntry = ({ from, practice }) => Boolean(from && practice);

/** Whether an opened practice stands as it is written.
 * @param {Data} data
 * @param {File | null} file
 * @param {Practice} practice */
export const isUnchanged = (data, file, practice) => Boolean(file) && practice.parts.length === file?.parts.length && placesOf(data, file, practice).every((part, k) => part === k);

/** Which part of the opened practice each part is now.
 * @param {Data} data
 * @param {File | null} file
 * @param {Practice} practice */
export const placesOf = (data, file, { parts }) => parts.map((own) => partOf(data, file, own));

/** The adults that it takes: of what stands as it is written, those that it takes there.
 * @param {Data} data
 * @param {Request} request
 * @param {File | null} file
 * @param {{practice: Practice, proposal: Proposal}} stand */
export function adultsOf(data, request, file, { practice, proposal }) {
  const asked = askedOf(data, request), each = practice.parts.map((own) => /** @type {number} */ (file?.offers[partOf(data, file, own)]?.[1] ?? sizedOf(asked, own).adults));
  return file ? Math.max(asked.adultsLeast, ...each) : proposal.adults;
}
