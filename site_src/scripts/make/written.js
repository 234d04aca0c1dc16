// A practice that is an entry, opened to be changed: its pieces put into the roles of a composed one, and what it is for. Pure.

import { proposalOf } from "../compose/change.js";
import { askedOf } from "../compose/chosen.js";
import { many } from "../run/words.js";
import { pieceOf } from "./lay.js";

/** @import {Asked, Written} from "./asked.js" */
/** @import {Data, Practice, Request} from "./types.js" */
/** @import {Stand} from "./proposal.js" */
/** @import {Role} from "../compose/types.js" */

const BETWEEN = /** @type {Role[]} */ (["s", "m", "n", "e"]);
const MOST_GOALS = 3, TENTHS = 10;

/** Every way to choose so many of some roles, in whatever order; first those that keep the usual one.
 * @param {Role[]} roles
 * @param {number} count
 * @returns {Role[][]} */
const choices = (roles, count) => (count ? roles.flatMap((own) => choices(roles.filter((role) => role !== own), count - 1).map((others) => [own, ...others])) : [[]]);

/** Whether a piece may stand in a role.
 * @param {Data} data
 * @param {string} piece
 * @param {Role} role */
const suits = (data, piece, role) => (/** @type {{roles?: string}} */ (pieceOf(data, piece)).roles ?? "").includes(role === "n" ? "m" : role);

/** What a practice is for: the chief goals of its work, those of its longest piece first.
 * @param {Data} data
 * @param {string} pool
 * @param {Written[]} written
 * @returns {string[]} none where nothing of it is known here */
export function goalsOf(data, pool, written) {
  const served = new Set((data.squad.offers[pool] ?? []).flatMap(([place]) => data.pieces[place].goals ?? []));
  const work = written.slice(1, -1).map(({ piece }) => pieceOf(data, piece)).filter((piece) => piece?.goals);
  const ranked = [...work.filter(({ of }) => of === "set"), ...work];
  return [...new Set(ranked.map(({ goals = [] }) => goals[0]))].filter((goal) => served.has(goal)).slice(0, MOST_GOALS).map((goal) => data.goals[goal][0]);
}

/** How often a piece is done as it is written.
 * @param {Data} data
 * @param {Written} own */
const oftenOf = (data, { piece, number }) => number || pieceOf(data, piece).written || 1;

/** How often each piece is done: as often as it was, or as near below that as is offered here, so that it fits; else as near above it.
 * @param {Data} data
 * @param {Request} request
 * @param {Written[]} written */
function nearest(data, request, written) {
  const { offers } = askedOf(data, request);
  return written.map((own) => {
    const often = oftenOf(data, own), { piece } = own;
    const sizes = offers.find((offer) => offer.piece.key === piece)?.sizes ?? [];
    const numbers = sizes.map((size) => size.number).sort((one, other) => one - other);
    return numbers.filter((number) => number <= often).pop() ?? numbers[0] ?? often;
  });
}

/** Its own talk before a piece, where that is not the usual.
 * @param {Data} data
 * @param {Written} own */
const talkOf = (data, { piece, talk_s: talk = 0 }) => (TENTHS * talk === (pieceOf(data, piece).talk ?? 0) ? {} : { talk_s: talk });

/** It as a practice that may be changed, or the sentence that says why not. Throws BadWish for a request that cannot be.
 * @param {Data} data
 * @param {Request} request
 * @param {Written[]} written
 * @param {string} [known] the roles of its pieces, where it was composed
 * @returns {Stand | {refused: string}} */
export function placed(data, request, written, known = "") {
  if (written.length < 3 || written.length > BETWEEN.length + 2 || written.some(({ piece }) => !pieceOf(data, piece))) {
    return { refused: "not all of its parts are pieces that a practice is made of." };
  }
  let refused = "its parts can’t stand as a warm-up, skill, main sets, relief and a cool-down.";
  const numbers = nearest(data, request, written);
  const ways = choices(BETWEEN, written.length - 2).map((between) => /** @type {Role[]} */ (["w", ...between, "c"]));
  for (const roles of known.length === written.length ? [/** @type {Role[]} */ ([...known]), ...ways] : ways) {
    if (roles.includes("m") && roles.every((role, k) => suits(data, written[k].piece, role))) {
      /** @type {Practice} */
      const practice = { parts: written.map((own, k) => ({ role: roles[k], piece: own.piece, number: numbers[k], kept: false, ...talkOf(data, own) })), out: [] };
      const found = proposalOf(data, request, practice);
      if ("proposal" in found) {
        return { practice, proposal: found.proposal };
      }
      refused = found.refused;
    }
  }
  return { refused };
}

/** Whether it is what the page of a practice asks for: pieces that have no roles yet.
 * @param {Asked} asked */
const isWritten = ({ from, written = [], practice }) => Boolean(from && written.length && !practice);

/** What the page of a practice asks for, for the goals that its pieces serve.
 * @param {Data} data
 * @param {Asked} asked
 * @returns {Asked} */
export function withGoals(data, asked) {
  const { request, written = [] } = asked;
  return isWritten(asked) && !request.goals.length ? { ...asked, request: { ...request, goals: goalsOf(data, request.pool, written) } } : asked;
}

/** What is done more or less often than on its page, where it can't be done so often here.
 * @param {Data} data
 * @param {Written[]} written
 * @param {Stand} found */
const otherwise = (data, written, { proposal }) => proposal.parts.flatMap(({ role, number, of }, k) => {
  const often = oftenOf(data, written[k]);
  return of && often !== number ? [`${role}: ${many(number, of.slice(0, -1))} here, ${often} on its page.`] : [];
}).join(" ");

/** The same with its pieces in their roles; and why not, where they can't be, or what of it is otherwise. Throws BadWish for a request that cannot be.
 * @param {Data} data
 * @param {Asked} asked
 * @returns {[asked: Asked, told: string]} */
export function opened(data, asked) {
  const { request, written = [], from = "", roles } = asked;
  if (!isWritten(asked)) {
    return [asked, ""];
  }
  const found = placed(data, request, written, roles);
  return "refused" in found ? [asked, `${titleOf(data, from)} can’t be opened here: ${found.refused.charAt(0).toLowerCase()}${found.refused.slice(1)} What follows is for the same goals.`] : [{ ...asked, practice: found.practice }, otherwise(data, written, found)];
}

/** Whether it is an entry, as it is or changed, and no proposal.
 * @param {Asked} asked */
export const isEntry = ({ from, practice }) => Boolean(from && practice);

/** What an entry is called.
 * @param {Data} data
 * @param {string} id */
export const titleOf = (data, id) => data.practices.find(([own]) => own === id)?.[1] ?? id;
