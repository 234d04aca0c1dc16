"""What a change of the catalogue may show on: that is redone first."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from almanac.findings import Finding
from almanac.model.catalogue import Catalogue, Key
from almanac.model.entry import Entry
from almanac.model.policy import Vocabulary
from almanac.source.reader import Document

_FOUNDATIONS = {"club", "policy"}
_TELLING = 12  # letters: so many that stand on a page are hardly there by chance


Documents = Mapping[Key, Document]


def lost(before: Documents, after: Documents) -> set[str]:
    """Texts of ``before`` that no longer stand where they stood: pages that hold one are likely to
    be others now. Long ones are in pieces of a few words, so that one is found on a page that has
    a link or a letter of its own within the others.
    """
    found: set[str] = set()
    for key, old in before.items():
        new = after.get(key)
        if new is None or old.text != new.text:
            texts = {*_texts(old.data)} - {*_texts(new.data if new else None)}
            found.update(piece for text in texts for piece in _pieces(text))
    return found


def _texts(data: object) -> Iterator[str]:
    """Every text in the data of a document."""
    if isinstance(data, str):
        yield data
    elif isinstance(data, Mapping):
        for part in data.values():
            yield from _texts(part)
    elif isinstance(data, list):
        for part in data:
            yield from _texts(part)


def _pieces(text: str) -> Iterator[str]:
    """A text in runs of words, each long enough to tell it; a short one as a whole, and none where
    it is a time or the like, which stands on any page.
    """
    run: list[str] = []
    for word in text.split():
        run.append(word)
        if len(whole := " ".join(run)) >= _TELLING:
            yield whole
            run = []
    if len(text) < _TELLING and any(map(str.isalpha, text)):
        yield text


def touched(before: Catalogue, after: Catalogue) -> dict[Key, None]:
    """The entries of ``after`` that differ from ``before``, then those that the difference may
    reach, nearest first: what names a changed entry, and so on; what one names, or named. All where
    the club or the policy is another.
    """
    changed = [key for key in {**before.entries, **after.entries}
               if before.entries.get(key) != after.entries.get(key)]  # fmt: skip
    found = dict.fromkeys(changed)
    waiting = list(changed)
    while waiting:
        key = waiting.pop(0)
        for near in _using(before, after, key):
            if near not in found:
                found[near] = None
                waiting.append(near)
    for side in (before, after):
        for key in changed:
            entry = side.entries.get(key)
            if entry is not None:
                found.update(dict.fromkeys((ref.kind, ref.id) for ref in entry.references()))
                found.update(dict.fromkeys(_holding(before, after, entry)))
    if any(kind in _FOUNDATIONS for kind, _ in changed):
        found.update(dict.fromkeys(after.entries))
    return {key: None for key in found if key in after.entries}


def retold(
    before: Sequence[Finding], after: Sequence[Finding], catalogue: Catalogue
) -> dict[Key, None]:
    """The entries in whose files something is found that was not, or no more: keys of a dict for
    their order, its values say nothing.
    """
    files = {finding.place.file for finding in {*before} ^ {*after}}
    return {key: None for key, entry in catalogue.entries.items() if entry.file in files}


def _using(before: Catalogue, after: Catalogue, key: Key) -> Iterator[Key]:
    for side in (before, after):
        entry = side.entries.get(key)
        if entry is not None:
            yield from ((user.kind, user.id) for user in side.users(entry, Entry))


def _holding(before: Catalogue, after: Catalogue, entry: Entry) -> Iterator[Key]:
    """Where a vocabulary has changed: the entries that hold one of the words that did."""
    if not isinstance(entry, Vocabulary):
        return
    old, new = (side.vocabularies.get(entry.id) for side in (before, after))
    words = [
        word
        for word in {**(old.words if old else {}), **(new.words if new else {})}
        if (old.words.get(word) if old else None) != (new.words.get(word) if new else None)
    ]
    for key in after.entries:
        text = after.documents[key].text
        if any(word in text for word in words):
            yield key
