// An entry's id and a family's name, by the rule of paths.py and `almanac new`, in their words. Pure.

import * as words from "./words.js";

const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const DEVICE = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/;
const ALIKE = 0.8;

/** A name made from any text: lower-case letters, digits and single hyphens; "" where it holds none. */
const slug = (text) =>
  text
    .normalize("NFD")
    .toLowerCase()
    .replace(/\p{M}/gu, "")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");

/** What is amiss with a name as it is spelt: `{message, mend}`, or null. `what` is file or folder. */
function amissWith(name, what, most) {
  const ending = what === "file" ? ".yml" : "";
  if (!ID.test(name)) {
    const better = name.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "");
    const message = `'${name}' is no id: an id is lower-case letters, digits and single hyphens`;
    return { message, mend: better ? `rename the ${what} ${better}${ending}` : `rename the ${what}` };
  }
  if (DEVICE.test(name)) {
    return { message: `'${name}' is a device's name on some computers`, mend: `rename the ${what}` };
  }
  if (name.length > most) {
    return { message: `the id has ${name.length} characters, at most ${most}`, mend: `shorten the ${what}'s name` };
  }
  return null;
}

/** What is amiss with the id of a new entry of a kind: as it is spelt, or because it is taken. */
function amissWithId(id, kind, names) {
  const spelt = amissWith(id, "file", names.limits.id);
  if (spelt) {
    return spelt;
  }
  const taken = [...names.reference[kind].map(([known, , file]) => [known, file]), ...Object.entries(names.moved[kind] ?? {})];
  const same = taken.find(([known]) => known.toLowerCase() === id.toLowerCase());
  return same ? { message: `the ${kind} '${same[0]}' exists already: ${same[1]}`, mend: "choose another id, or change that entry" } : null;
}

/** An entry of the kind whose id is spelt nearly the same: [id, title], or null. */
function nearlyThere(id, kind, names) {
  const near = words.nearest(id, names.reference[kind].map(([known]) => known), ALIKE);
  return near ? names.reference[kind].find(([known]) => known === near) : null;
}

export { slug, amissWith, amissWithId, nearlyThere };
