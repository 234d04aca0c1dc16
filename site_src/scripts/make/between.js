// What the scripts of Make a practice tell each other: the questions, which are there first, the proposals, which are fetched after
// them, and what lays these on the clock. Scripts of a page share no variable, so these are events of the document.

/** @import {Asked} from "./asked.js" */
/** @import {Data, File, PoolRuns, Proposal, Request, RunData, Sources} from "./types.js" */

/** @typedef {ReturnType<typeof import("./lay.js").laid>} Made */
/** @typedef {Omit<RunData, "version">} Run */

/** @typedef {{
 *   "make-soon": {data: Data, request: Request},
 *   "make-try": {data: Data, request: Request, problem: string, field: string},
 *   "make-show": {data: Data, asked: Asked, file: File | null} | null,
 *   "make-ask": {data: Data, squad: string, request: Request, problem: string, field: string},
 *   "make-lay": {data: Data, request: Request, proposal: Proposal, told: Parameters<typeof import("./lay.js").laid>[3], sources: Sources, here: PoolRuns | null,
 *     made: Made | null},
 *   "make-made": {box: HTMLElement, made: Made, proposal: Proposal, data: Data, asked: Asked, file: File | null},
 *   "make-keep": {run: Run, made: string, problem: string},
 *   "make-hand": {title: string, link: string, nodes: Node[]},
 *   "make-save": ReturnType<typeof import("../compose/chosen.js").stoodOf> & {name: string, start: string, changed: (Omit<import("./saved.js").Changed, "composed" | "from"> & {wanted: Asked}) | null, nodes: Node[]},
 *   "make-sheets": {data: Data, asked: Asked, file: File | null, proposal: Proposal, written: (import("./types.js").WrittenPart | null)[], made: Made, adults: number, unit: string, sheets: HTMLElement[]},
 * }} Told `make-soon`: what may be asked next; `make-try`: whether a request can be, `problem` is the answer, `field` the question that it is of; `make-show`: what an address asks for, with the practice that it opens; null where something else is
 *   shown; `make-ask`: the questions as a request answers them, and what of it can't be; `make-lay`: a proposal to be laid,
 *   `made` is the answer; `make-made`: rows to be filled; `make-keep`: a run to be kept for its page, `problem` is the answer; `make-hand`: a link to be handed on, `nodes` is the answer; `make-save`: an entry, composed or changed, `nodes`
 *   are the answer, that it is saved and what it does not have; `make-sheets`: `sheets` is the answer */

/**
 * @template {keyof Told} N
 * @param {N} name
 * @param {Told[N]} detail */
export const tell = (name, detail) => document.dispatchEvent(new CustomEvent(name, { detail }));

/**
 * @template {keyof Told} N
 * @param {N} name
 * @param {(detail: Told[N]) => void} act */
export const hear = (name, act) => document.addEventListener(name, (event) => act(/** @type {CustomEvent} */ (event).detail));
