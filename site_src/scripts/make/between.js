// What the two scripts of Make a practice tell each other: the questions, which are there first, and the proposals, which are fetched after
// them. Scripts of a page share no variable, so these are events of the document.

/** @import {Asked} from "./asked.js" */
/** @import {Data, File, Request} from "./types.js" */

/** @typedef {{
 *   "make-try": {data: Data, request: Request, problem: string},
 *   "make-show": {data: Data, asked: Asked, file: File | null} | null,
 *   "make-ask": {data: Data, squad: string, request: Request, problem: string},
 * }} Told `make-try`: whether a request can be, `problem` is the answer; `make-show`: what an address asks for, with the practice that it opens; null where something else is
 *   shown; `make-ask`: the questions as a request answers them, and what of it can't be */

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
