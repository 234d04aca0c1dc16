// A script of this page that is fetched when it is wanted, once.

import { make } from "../lib/dom.js";
import { NoSignal } from "./here.js";

/** @type {Map<string, Promise<unknown>>} */
const loading = new Map();

/** The script, there and run. Rejects where it can't be had; the next time it is tried again.
 * @param {string} address
 * @returns {Promise<unknown>} */
export function fetchScript(address) {
  const known = loading.get(address) ?? new Promise((done, failed) => {
    const script = make("script", { src: address });
    script.addEventListener("load", done);
    script.addEventListener("error", () => {
      loading.delete(address);
      failed(new NoSignal());
    });
    document.head.append(script);
  });
  loading.set(address, known);
  return known;
}
