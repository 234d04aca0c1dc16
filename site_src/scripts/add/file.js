// The file that the entry becomes: its family and id, what is amiss with them, and the ways to send it.

import { make, one, root } from "../lib/dom.js";
import * as identity from "./identity.js";
import * as send from "./send.js";
import { fieldSlot } from "./slots.js";

/** @typedef {import("./names.js").Names} Names */
/** @typedef {import("./summary.js").Placed} Placed */

const ID_HINT =
  "Its name on this site and in other entries, for good: lower-case letters, digits and single hyphens." +
  " Made from the title until you change it.";

/**
 * @param {string} value
 * @param {Record<string, string>} attributes
 */
function control(value, attributes = {}) {
  const plain = { type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false" };
  const made = make("input", { ...plain, ...attributes });
  made.value = value;
  return made;
}

/**
 * The fields of the file's name, put into `place`: the family where there are some, and the id.
 * @param {Element} place
 * @param {string} kind
 * @param {{id: string, family: string}} draft
 * @param {Names} names
 */
export function fileFields(place, kind, draft, names) {
  const idControl = control(draft.id);
  const id = fieldSlot({ label: "Id", hint: ID_HINT }, idControl);
  const hint = "The folder of drills that it belongs to; a new name makes a new one.";
  const familyControl = control(draft.family, { list: "add-list-families" });
  const family = fieldSlot({ label: "Family", hint }, familyControl);
  const isDeep = names.kinds[kind].in_families;
  place.replaceChildren(make("legend", {}, "File"), ...(isDeep ? [family.element] : []), id.element);
  const typedId = () => idControl.value.trim();
  const typedFamily = () => familyControl.value.trim();

  /** @returns {Placed[]} */
  function familyFindings() {
    const message = "this stands in no family: each family has a folder of its own";
    const none = { code: "no-name", message, hint: "choose one, or name a new one" };
    const amiss = typedFamily() ? identity.amissWith(typedFamily(), names.limits.id) : none;
    return isDeep && amiss ? [{ code: "bad-id", ...amiss, slot: family }] : [];
  }

  /** @returns {Placed[]} */
  function idFindings() {
    const none = { code: "no-name", message: "the file has no name yet", hint: "write its id" };
    const amiss = typedId() ? identity.amissWithId(typedId(), kind, names) : none;
    return amiss ? [{ code: "bad-id", ...amiss, slot: id }] : [];
  }

  return {
    idControl,
    id: typedId,
    family: () => (isDeep ? typedFamily() : ""),
    findings: () => [...familyFindings(), ...idFindings()],
    /** Where the file goes; null while it has no good name. */
    place() {
      const isAmiss = familyFindings().length + idFindings().length > 0;
      return isAmiss ? null : send.placeOf(kind, typedId(), typedFamily(), names);
    },
  };
}

/**
 * Say in `place` that an entry of nearly the same id is there, with a link to it.
 * @param {Element} place
 * @param {string} kind
 * @param {string} id
 * @param {Names} names
 */
export function showNear(place, kind, id, names) {
  const near = id ? identity.nearlyThere(id, kind, names) : null;
  if (!near || near[0] === id) {
    place.replaceChildren();
    return;
  }
  const { pages } = names.kinds[kind];
  const address = new URL(`${pages}/${near[0]}.html`, root).href;
  const link = pages ? make("a", { href: address, target: "_blank" }, near[1]) : near[1];
  place.replaceChildren(`There is already a ${kind} `, link, ": look at it before you go on.");
}

/**
 * @param {send.FilePlace | null} place
 * @param {ReturnType<typeof send.proposal>} offer
 */
function advice(place, offer) {
  if (!place) {
    return "The file needs a good name before it can be sent.";
  }
  if (!offer) {
    const path = `${place.folder}/${place.name}`;
    const what = `Copy or download the text, and send it to whoever keeps the catalogue as ${path}.`;
    return `This site does not say where its repository is. ${what}`;
  }
  return offer.isWhole
    ? "The link opens the repository host's page for a new file, with this text in it." +
      " Nothing is sent before you press the button there."
    : "The text is too long for a link." +
      " Copy it first; the link opens an empty file of the right name, to paste it into.";
}

/**
 * Offer the pull request in `page`, or say what to do instead.
 * @param {Element} page
 * @param {send.FilePlace | null} place
 * @param {string} yaml
 * @param {Names} names
 */
export function showProposal(page, place, yaml, names) {
  const offer = place && send.proposal(names.repository, place, yaml);
  const link = /** @type {HTMLAnchorElement} */ (one("[data-propose]", page));
  link.hidden = !offer;
  if (offer) {
    link.href = offer.address;
  } else {
    link.removeAttribute("href");
  }
  one("[data-propose-told]", page).textContent = advice(place, offer);
}
