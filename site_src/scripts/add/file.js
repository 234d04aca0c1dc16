// The file that the entry becomes: its family and id, what is amiss with them, and the ways to send it.

import { make, root } from "../lib/dom.js";
import * as identity from "./identity.js";
import * as send from "./send.js";
import { fieldSlot } from "./slots.js";

const ID_HINT =
  "Its name on this site and in other entries, for good: lower-case letters, digits and single hyphens. Made from the title until you change it.";

function control(value, attributes = {}) {
  const made = make("input", { type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false", ...attributes });
  made.value = value;
  return made;
}

/** The fields of the file's name, put into `place`: the family where there are some, and the id, made from the title until it is typed. */
export function fileFields(place, kind, draft, names) {
  const id = fieldSlot({ label: "Id", hint: ID_HINT }, control(draft.id));
  const hint = "The folder of drills that it belongs to; a new name makes a new one.";
  const family = fieldSlot({ label: "Family", hint }, control(draft.family, { list: "add-list-families" }));
  const isDeep = names.kinds[kind].in_families;
  place.replaceChildren(make("legend", {}, "File"), ...(isDeep ? [family.element] : []), id.element);
  const typed = (slot) => slot.control.value.trim();

  function familyFindings() {
    const none = { code: "no-name", message: "this stands in no family: each family has a folder of its own", mend: "choose one, or name a new one" };
    const amiss = typed(family) ? identity.amissWith(typed(family), "folder", names.limits.id) : none;
    return isDeep && amiss ? [{ code: "bad-id", ...amiss, slot: family }] : [];
  }

  function idFindings() {
    const none = { code: "no-name", message: "the file has no name yet", mend: "write its id" };
    const amiss = typed(id) ? identity.amissWithId(typed(id), kind, names) : none;
    return amiss ? [{ code: "bad-id", ...amiss, slot: id }] : [];
  }

  return {
    idControl: id.control,
    id: () => typed(id),
    family: () => (isDeep ? typed(family) : ""),
    findings: () => [...familyFindings(), ...idFindings()],
    /** Where the file goes; null while it has no good name. */
    place() {
      return familyFindings().length || idFindings().length ? null : send.placeOf(kind, typed(id), typed(family), names);
    },
  };
}

/** Say in `place` that an entry of nearly the same id is there, with a link to it. */
export function showNear(place, kind, id, names) {
  const near = id ? identity.nearlyThere(id, kind, names) : null;
  if (!near || near[0] === id) {
    place.replaceChildren();
    return;
  }
  const address = new URL(`${names.kinds[kind].pages}/${near[0]}.html`, root).href;
  place.replaceChildren(`There is already a ${kind} `, make("a", { href: address, target: "_blank" }, near[1]), ": look at it before you go on.");
}

function advice(place, offer) {
  if (!place) {
    return "The file needs a good name before it can be sent.";
  }
  if (!offer) {
    return `This site does not say where its repository is. Copy or download the text, and send it to whoever keeps the catalogue as ${place.folder}/${place.name}.`;
  }
  return offer.isWhole
    ? "The link opens the repository host's page for a new file, with this text in it. Nothing is sent before you press the button there."
    : "The text is too long for a link. Copy it first; the link opens an empty file of the right name, to paste it into.";
}

/** Offer the pull request in `page`, or say what to do instead. */
export function showProposal(page, place, yaml, names) {
  const offer = place && send.proposal(names.repository, place, yaml);
  const link = page.querySelector("[data-propose]");
  link.hidden = !offer;
  if (offer) {
    link.href = offer.address;
  } else {
    link.removeAttribute("href");
  }
  page.querySelector("[data-propose-told]").textContent = advice(place, offer);
}
