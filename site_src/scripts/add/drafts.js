// Drafts: one a kind, kept on this device as it is typed, so that a closed tab loses nothing.
"use strict";

(function (deck) {
  const add = (deck.add = deck.add ?? {});
  const subject = (kind) => `draft-${kind}`;

  /** The draft of a kind, as it was kept: `{at, id, family, entry}`; null where there is none. */
  function read(kind) {
    const kept = deck.read(subject(kind), {});
    return add.isObject(kept.entry) ? { at: String(kept.at ?? ""), id: String(kept.id ?? ""), family: String(kept.family ?? ""), entry: kept.entry } : null;
  }

  /** Keep a draft; false where this browser keeps nothing, or no more. */
  const keep = (kind, draft) => deck.write(subject(kind), { ...draft, at: new Date().toISOString() });

  const discard = (kind) => deck.write(subject(kind), {});

  /** When a draft was kept, for people; "" where that is not known. */
  function when({ at }) {
    const date = new Date(at);
    return Number.isNaN(date.getTime()) ? "" : date.toLocaleString(document.documentElement.lang, { dateStyle: "medium", timeStyle: "short" });
  }

  add.drafts = { read, keep, discard, when };
})(window.deck);
