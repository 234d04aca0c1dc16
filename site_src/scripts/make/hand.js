// A composed practice handed on: to the run of this phone, as a file, as a link and as a code to scan.

import { make } from "../lib/dom.js";
import { qrCode } from "../lib/qr.js";
import { write } from "../lib/storage.js";
import { versionOf } from "./names.js";

/** @import {RunData} from "./types.js" */

export const MADE = "run-made";

/** Keep a run for the page that runs it; false where the browser keeps nothing.
 * @param {Omit<RunData, "version">} run
 * @param {string} made the words of the address that makes it */
export function keepRun(run, made) {
  return write(MADE, { ...run, version: versionOf(JSON.stringify({ ...run, page: "" })), made });
}

/** Offer a text as a file.
 * @param {string} name
 * @param {string} text */
export function saveFile(name, text) {
  const link = document.createElement("a");
  const address = URL.createObjectURL(new Blob([text], { type: "application/yaml" }));
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 1000);
}

/** Share a link, or copy it; gives what came of it.
 * @param {string} title
 * @param {string} url */
async function handOn(title, url) {
  try {
    if ("share" in navigator) {
      await navigator.share({ title, url });
      return "";
    }
    await /** @type {Navigator} */ (navigator).clipboard.writeText(url);
    return "The link is copied.";
  } catch {
    return "Copy the link above.";
  }
}

// Bytes that the largest QR code holds with the least correction (ISO/IEC 18004, version 40-L).
const QR_BYTES = 2953;

/** Hand a link on; it stands there in any case, as a code to scan too, with what came of it.
 * @param {string} title
 * @param {string} link */
export function handed(title, link) {
  const [field, told] = [make("input", { id: "make-link", readonly: "", value: link }), make("p", { role: "status" })];
  const scanned = link.length > QR_BYTES ? [] : [qrCode(link, "practice")];
  field.addEventListener("focus", () => field.select());
  handOn(title, link).then((words) => { told.textContent = words; });
  return [make("p", { class: "make-field" }, make("label", { for: "make-link" }, "A link that makes this practice on another phone"), field), told, ...scanned];
}
