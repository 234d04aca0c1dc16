// A practice by what of it is chosen, piece by piece, laid out for the wishes; one that cannot stand is refused in a sentence. Pure. Of
// composing/chosen.py.

import { costOf } from "./fit.js";
import { laid, unsafe, whole } from "./order.js";
import { COOL_DOWN, isHeld, MAIN, MAINS, ROLES, tableOf, TENTHS, WARM_UP } from "./pieces.js";
import { BadWish, wishesOf } from "./request.js";
import { Asked } from "./wishes.js";
import { said } from "./words.js";

/** @typedef {import("./types.js").Practice} Practice */
/** @typedef {import("./types.js").Chosen} Chosen */
/** @typedef {import("./types.js").Request} Request */
/** @typedef {import("./fit.js").Slot} Slot */
/** @typedef {import("./around.js").Found} Found */

/** A proposal, to be changed. @param {import("./types.js").Proposal} proposal @returns {Practice} */
export const practiceOf = ({ parts }) => ({ parts: parts.map(({ as: role, piece, number }) => ({ role, piece, number, kept: false })), out: [] });

/** The wishes of a request. @param {object} data @param {Request} request */
export function askedOf(data, request) {
  const table = tableOf(data);
  return new Asked(table, wishesOf(table, request));
}

/** @param {Asked} asked @param {string} key @param {Record<string, string | number>} [filled] @returns {never} */
export function refuse({ table }, key, filled = {}) {
  throw new BadWish(said(table, key, filled));
}

/** A practice laid out, with its points. @param {Asked} asked @param {Practice} practice @returns {Found} */
export function standing(asked, practice) {
  const order = ordered(asked, practice), reason = whole(order) > asked.slot ? "minutes" : unsafe(asked, order);
  if (reason) {
    refuse(asked, `broken-${reason}`);
  }
  return { order, cost: costOf(asked, order.map(({ role, own }) => [role, own])) };
}

/** A practice laid out, however long it is. @param {Asked} asked @param {Practice} practice */
export function ordered(asked, practice) {
  checkRoles(asked, practice);
  const order = practice.parts.map((own) => /** @type {import("./order.js").Standing} */ ([own.role, sizedOf(asked, own)]));
  if (new Set(order.map(([, own]) => own.place)).size < order.length) {
    refuse(asked, "bad-twice");
  }
  return laid(asked, order);
}

/** A practice as its wishes have it, piece by piece. Throws BadWish for a request or a practice that cannot be.
 * @param {object} data @param {Request} request @param {Practice} practice */
export function stoodOf(data, request, practice) {
  const asked = askedOf(data, request);
  return { asked, order: standing(asked, practice).order };
}

/** The places of a practice, each with the other sizes of its piece; with none where it is kept. @param {Asked} asked @param {Practice} practice @returns {Slot[]} */
export const slotsOf = (asked, { parts }) =>
  parts.map((own) => ({
    role: own.role,
    now: sizedOf(asked, own),
    others: own.kept ? [] : sizesOf(asked, own).filter((size) => size.number !== own.number),
  }));

/** What is offered of a piece. @param {Asked} asked @param {Chosen} own */
function offerOf(asked, { piece: key, role }) {
  const place = asked.table.pieceOf.get(key), piece = asked.table.pieces[place ?? -1];
  if (!piece) {
    return refuse(asked, "bad-place", { what: said(asked.table, "what-piece"), id: key });
  }
  if (!piece.roles.includes(MAINS.includes(role) ? MAIN : role)) {
    refuse(asked, "bad-keep", { key });
  }
  const offer = asked.offers.find((one) => one.piece === piece), reason = offer ? asked.whyNot(offer, role) : "groups";
  if (reason || !offer) {
    return refuse(asked, "bad-stand", { title: piece.title, because: said(asked.table, `because-${reason}`) });
  }
  return offer;
}

/** The sizes of a piece, with its own talk before it. @param {Asked} asked @param {Chosen} own */
function sizesOf(asked, own) {
  const sizes = asked.sized(offerOf(asked, own)), talk = own.talk_s;
  return talk === undefined ? sizes : sizes.map((size) => ({ ...size, piece: { ...size.piece, talk: TENTHS * talk } }));
}

/** @param {Asked} asked @param {Chosen} own */
export const sizedOf = (asked, own) =>
  sizesOf(asked, own).find((size) => size.number === own.number) ?? refuse(asked, "bad-keep", { key: own.piece });

/** @param {Asked} asked @param {Practice} practice */
function checkRoles(asked, { parts }) {
  if (!standsSo(parts.map(({ role }) => role))) {
    refuse(asked, "bad-roles");
  }
}

/** Whether a practice of these roles begins with a warm-up, ends with a cool-down and has a main set, each role once. One that is written stands as it does. @param {import("./types.js").Role[]} roles */
export function standsSo(roles) {
  const isUsual = roles[0] === WARM_UP && roles.at(-1) === COOL_DOWN && roles.includes(MAIN);
  const isKnown = new Set(roles).size === roles.length && roles.every((role) => isHeld(role) || ROLES.includes(role) || MAINS.includes(role));
  return isKnown && (isUsual || roles.some(isHeld));
}
