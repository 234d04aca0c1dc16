"""The dangers that the texts of a catalogue ask for; a file whose texts ask for none is remembered
by its bytes, and not read again.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from typing import NamedTuple

from almanac.cache import Cache
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry
from almanac.source.reader import Document
from almanac.source.texts import Text, texts_of
from almanac.wording.reading import Asking, asked_for

_NAME, _KEY = "harmless-texts", "files"
_DIGEST_BYTES = 16
_MOST_FILES = 200_000


class Asked(NamedTuple):
    """A danger that a text of an entry asks for."""

    entry: Entry
    text: Text
    asking: Asking


def askings(catalogue: Catalogue) -> tuple[Asked, ...]:
    """Every danger that a text of an entry asks for."""
    store = Cache(_NAME)
    kept = store.get(_KEY) or b""
    known = {kept[at : at + _DIGEST_BYTES] for at in range(0, len(kept), _DIGEST_BYTES)}
    found: list[Asked] = []
    harmless: set[bytes] = set()
    for (kind, id), entry in catalogue.entries.items():
        document = catalogue.documents[kind, id]
        mark = _mark(kind, id, document)
        own = [] if mark in known else list(_of_document(entry, document))
        found += own
        if not own:
            harmless.add(mark)
    if not harmless <= known:
        others = known if len(known) + len(harmless) <= _MOST_FILES else set()
        store.put(_KEY, b"".join(sorted(harmless | others)))
        store.trim()
    return tuple(found)


def _of_document(entry: Entry, document: Document) -> Iterator[Asked]:
    for text in texts_of(entry.kind, entry.id, document.data):
        for asking in asked_for(text.text, text.tells):
            yield Asked(entry, text, asking)


def _mark(kind: str, id: str, document: Document) -> bytes:
    written = f"{kind}\0{id}\0{document.text}".encode()
    return hashlib.blake2b(written, digest_size=_DIGEST_BYTES).digest()
