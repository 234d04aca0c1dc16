// Drafts: one a kind, kept on this device as it is typed, so that a closed tab loses nothing.

import { read as readKept, write } from "../lib/storage.js";
import { isObject } from "./check.js";

const subject = (kind) => `draft-${kind}`;

/** The draft of a kind, as it was kept: `{at, id, family, entry}`; null where there is none. */
function read(kind) {
  const kept = readKept(subject(kind), {});
  return isObject(kept.entry) ? { at: String(kept.at ?? ""), id: String(kept.id ?? ""), family: String(kept.family ?? ""), entry: kept.entry } : null;
}

/** Keep a draft; false where this browser keeps nothing, or no more. */
const keep = (kind, draft) => write(subject(kind), { ...draft, at: new Date().toISOString() });

const discard = (kind) => write(subject(kind), {});

/** When a draft was kept, for people; "" where that is not known. */
function when({ at }) {
  const date = new Date(at);
  return Number.isNaN(date.getTime()) ? "" : date.toLocaleString(document.documentElement.lang, { dateStyle: "medium", timeStyle: "short" });
}

export { read, keep, discard, when };
