// What may be done with a proposal: run it, save it as a file, hand it on by a link.

import { stoodOf } from "../compose/chosen.js";
import { titled } from "../compose/named.js";
import { make, one, root } from "../lib/dom.js";
import { today } from "../lib/today.js";
import { toAddress } from "./asked.js";
import { tell } from "./between.js";
import { fetchScript } from "./fetch-script.js";
import { fetched, here, NO_SIGNAL } from "./here.js";
import { noteRun } from "./lately.js";
import { changedTitle, idOf } from "./names.js";
import { adultsOf, isUnchanged, placesOf } from "./opened.js";
import { fileOf } from "./places.js";

/** @import {Asked} from "./asked.js" */
/** @import {Stand} from "./proposal.js" */
/** @import {Data, File, Proposal, Request, Sources} from "./types.js" */

/** @typedef {{data: Data, asked: Asked, stand: Stand, file: File | null}} Own a proposal as it stands; `file`: the practice that was opened */

/** What it is called as an entry.
 * @param {Own} own */
const nameOf = (own) => idOf(own.file?.id ?? titleNow(own), own.asked.on || today);

/** What it is called, saved or run.
 * @param {Own} own */
export function titleNow({ data, asked, stand, file }) {
  if (file) {
    return changedTitle(file, asked.on || today);
  }
  const { asked: wished, order } = stoodOf(data, asked.request, stand.practice);
  return titled(wished, order);
}

/** What it is called on paper and in a run: an entry that nobody has changed by its own title.
 * @param {Own} own */
const titleHere = (own) => (isUnchanged(own.data, own.file, own.stand.practice) ? own.file?.title ?? "" : titleNow(own));

/** @param {Own} own */
const address = ({ asked }) => toAddress({ ...asked, code: "" });

/** The script that lays it on the clock, fetched once. */
export const laying = () => fetchScript(one("[data-make]").dataset.laid ?? "");

/** What the build has worked out for its pieces: what each is run by, as it is written and in this pool.
 * @param {Data} data
 * @param {Request} request
 * @param {Proposal} proposal
 * @param {File | null} [file] */
export async function readRuns(data, request, { parts }, file = null) {
  const names = [...new Set([...parts.map(fileOf).filter(Boolean), ...(file ? [`practices/${file.id}`] : [])])];
  /** @type {Sources} */
  const sources = {};
  const pieces = fetched(`compose/runs/${data.squad.id}/${request.pool}`).catch(() => null); // not kept here: as its sources
  await Promise.all(names.map(async (name) => {
    try {
      sources[name] = await fetched(`run/${name}`);
    } catch {
      // not kept here: its part is run by taps
    }
  }));
  return { sources, here: await pieces };
}

/** It as a run, from what the build has worked out for its pieces. Rejects where the script that lays it is not here.
 * @param {Own} own
 * @returns {Promise<import("./between.js").Made>} */
export async function asRun(own) {
  const { data, asked, file, stand: { proposal, practice } } = own;
  const [runs] = await Promise.all([readRuns(data, asked.request, proposal, file), laying()]);
  const talks = Object.fromEntries(practice.parts.flatMap(({ piece, talk_s: talk }) => (talk === undefined ? [] : [[piece, talk]])));
  const entry = file && runs.sources[`practices/${file.id}`];
  const written = entry ? { written: { run: entry, file, places: placesOf(data, file, practice), chosen: practice.parts } } : {};
  const told = { ...written, talks, id: nameOf(own), title: titleHere(own), page: `make.html#${address(own)}`, start: asked.start, gravities: here.gravities, words: here.parts };
  const lay = { data, request: asked.request, proposal, told, ...runs, made: null };
  tell("make-lay", lay);
  return /** @type {import("./between.js").Made} */ (/** @type {unknown} */ (lay.made));
}

/** Go to the run of it; gives what is in the way, "" where nothing is.
 * @param {Own} own
 * @param {string} code of another phone that passes it on, or ""
 * @returns {Promise<string>} */
export async function run(own, code) {
  if (!code && isUnchanged(own.data, own.file, own.stand.practice)) {
    location.assign(new URL(`run.html#practice=${own.file?.id}`, root)); // with all that may be changed of it on the deck
    return "";
  }
  const made = await asRun(own);
  const kept = { run: made.run, made: address(own), problem: "" };
  tell("make-keep", kept);
  if (kept.problem) {
    return kept.problem;
  }
  noteRun(own.asked.on || today, own.stand.proposal.parts.map(({ piece }) => piece));
  location.assign(new URL(`run.html#practice=${made.run.id}${code ? `&code=${code}` : ""}`, root));
  return "";
}

/** Offer the entry as a file.
 * @param {Own} own
 * @returns {Node[]} what to say of it */
export function save(own) {
  const name = `${nameOf(own)}.yml`, { data, asked, stand: { practice }, file } = own;
  const changed = file && {
    file, places: placesOf(data, file, practice), chosen: practice.parts, data, wanted: asked, adults: adultsOf(data, asked.request, file, own.stand), title: titleNow(own),
  };
  const saved = { ...stoodOf(data, asked.request, practice), start: asked.start, changed, name, nodes: [make("p", { role: "alert" }, NO_SIGNAL)] };
  tell("make-save", saved);
  return saved.nodes;
}

/** Share the link that makes it, or copy it; it stands there in any case.
 * @param {Own} own
 * @returns {Node[]} what to say of it */
export function hand(own) {
  const { asked, stand: { practice } } = own, handed = { title: titleNow(own), link: new URL(`make.html#${toAddress({ ...asked, practice, code: "" })}`, root).href, nodes: [] };
  tell("make-hand", handed);
  return handed.nodes;
}
