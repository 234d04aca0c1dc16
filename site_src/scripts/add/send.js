// What becomes of the text: copied, downloaded, or carried by a link to the repository host's page for a new file.
// Nothing is sent from here: the link is followed by whoever presses it.

import { make } from "../lib/dom.js";

/** @typedef {{folder: string, name: string}} FilePlace below the root of the repository */

const LONGEST_ADDRESS = 8000; // characters: hosts refuse more
const BRANCH = "main";

/**
 * Where the file goes. A family that is new is part of the name, as its folder is not there yet.
 * @param {string} kind
 * @param {string} id
 * @param {string} family
 * @param {import("./names.js").Names} names
 * @returns {FilePlace}
 */
function placeOf(kind, id, family, names) {
  const { folder, in_families } = names.kinds[kind];
  if (!in_families) {
    return { folder, name: `${id}.yml` };
  }
  return names.families.includes(family)
    ? { folder: `${folder}/${family}`, name: `${id}.yml` }
    : { folder, name: `${family}/${id}.yml` };
}

/**
 * The address of the host's page for a new file: with the text in it, or without where that is too long; null where no
 * host is named.
 * @param {string} repository
 * @param {FilePlace} place
 * @param {string} yaml
 */
function proposal(repository, { folder, name }, yaml) {
  if (!/^https?:\/\//.test(repository)) {
    return null;
  }
  const page = `${repository}/new/${BRANCH}/${folder}?filename=${encodeURIComponent(name)}`;
  const whole = `${page}&value=${encodeURIComponent(yaml)}`;
  return whole.length > LONGEST_ADDRESS ? { address: page, isWhole: false } : { address: whole, isWhole: true };
}

/**
 * Put text on the clipboard; where the browser refuses, mark it in `shown`, so that one key copies it.
 * @param {string} text
 * @param {HTMLElement} shown
 */
async function copy(text, shown) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    getSelection()?.selectAllChildren(shown);
    shown.focus();
    return false;
  }
}

/**
 * @param {string} text
 * @param {string} name
 */
function download(text, name) {
  const address = URL.createObjectURL(new Blob([text], { type: "application/yaml" }));
  make("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

export { placeOf, proposal, copy, download };
