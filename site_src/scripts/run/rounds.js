// A round fewer or more, within what the build allows. Every round keeps its own targets; what has begun stays. Pure but for the crew.

import { between } from "./steps.js";

/** @typedef {import("./types.js").Crew} Crew */
/** @typedef {import("./types.js").RoundsBlock} RoundsBlock */
/** @typedef {import("./types.js").Step} Step */

/** The block of rounds of a crew's part whose number may change.
 * @param {Crew} crew
 * @param {number} part
 * @returns {RoundsBlock | undefined} */
export function changeable(crew, part) {
  const own = crew.left.filter((step) => step.part === part).flatMap((step) => step.rounds.map(({ node }) => node));
  return own.find(({ least, most }) => least !== undefined || most !== undefined);
}

/** The number of the round of a block that a step belongs to.
 * @param {Step} step
 * @param {RoundsBlock} node */
const noOf = (step, node) => step.rounds.find((round) => round.node === node)?.no;

/** The rounds of a part, by number: those begun, and all.
 * @param {Crew} crew
 * @param {number} part
 * @param {RoundsBlock} node */
export function counted(crew, part, node) {
  /** @param {Step[]} steps */
  const numbers = (steps) => [...new Set(steps.filter((step) => step.part === part).map((step) => noOf(step, node)))].filter((no) => no !== undefined);
  const begun = numbers(crew.done.filter(({ undone }) => !undone).map(({ step }) => step));
  const all = [...new Set([...begun, ...numbers(crew.left)])].sort((a, b) => a - b);
  return { begun: new Set(begun), all };
}

/** @param {Crew} crew
 * @param {number} part */
function fewer(crew, part) {
  const node = changeable(crew, part);
  if (!node || node.least === undefined) {
    return false;
  }
  const { begun, all } = counted(crew, part, node);
  const out = all[all.length - (node.keeps_last ? 2 : 1)];
  const waitsFor = crew.done[crew.done.length - 1]?.step.before;
  const isWaitedFor = waitsFor?.node === node && waitsFor.no === out;
  if (all.length <= node.least || out === undefined || begun.has(out) || isWaitedFor) {
    return false;
  }
  crew.left = crew.left.filter(
    (step) => step.part !== part || (noOf(step, node) !== out && !(step.before?.node === node && step.before.no === out)),
  );
  return true;
}

/** @param {Crew} crew
 * @param {number} part */
function more(crew, part) {
  const node = changeable(crew, part);
  if (!node || node.most === undefined || node.copies === undefined) {
    return false;
  }
  const { begun, all } = counted(crew, part, node);
  const later = all.filter((no) => no > /** @type {number} */ (node.copies) && no % 1 === 0);
  if (all.length >= node.most || later.some((no) => begun.has(no)) || !all.some((no) => Math.floor(no) === node.copies)) {
    return false;
  }
  const last = Math.max(...all.filter((no) => Math.floor(no) === node.copies)); // of the round and its copies
  const no = Math.round((last + 0.01) * 100) / 100;
  const steps = [...crew.done.filter(({ undone }) => !undone).map(({ step }) => step), ...crew.left];
  const copied = steps.filter((step) => step.part === part && noOf(step, node) === node.copies);
  const fresh = copied.map((step) => again(step, node, no));
  const depth = copied[0].rounds.findIndex((round) => round.node === node);
  const outer = { ...copied[0], path: copied[0].id, rounds: copied[0].rounds.slice(0, depth) };
  if (node.between) {
    fresh.unshift(between(node, outer, { node, no }));
  }
  const isOfLast = crew.left.map((step) => step.part === part && noOf(step, node) === last);
  crew.left.splice(isOfLast.lastIndexOf(true) + 1, 0, ...fresh);
  return true;
}

/** A step of a round done once more.
 * @param {Step} step
 * @param {RoundsBlock} node
 * @param {number} no
 * @returns {Step} */
function again(step, node, no) {
  const rounds = step.rounds.map((round) => (round.node === node ? { node, no } : round));
  const run = step.run ? { run: `${step.run}+${no}` } : {};
  return { ...step, id: `${step.id}+${no}`, rounds, ...run, opens: false, sat: false };
}

/** One round fewer of a part, for each of some crews that may; false where none may.
 * @param {Crew[]} crews
 * @param {number} part */
export const fewerRounds = (crews, part) => crews.map((crew) => fewer(crew, part)).some(Boolean);

/** One round more of a part.
 * @param {Crew[]} crews
 * @param {number} part */
export const moreRounds = (crews, part) => crews.map((crew) => more(crew, part)).some(Boolean);
