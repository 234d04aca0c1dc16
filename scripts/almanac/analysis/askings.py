"""The dangers that the texts of a catalogue ask for; a file whose texts ask for none is remembered
by its bytes, and not read again.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from functools import cached_property
from typing import NamedTuple

from almanac.cache import Cache
from almanac.model.catalogue import Catalogue, Key
from almanac.model.entry import Entry
from almanac.source.reader import Document
from almanac.source.texts import Text, texts_of
from almanac.wording.reading import Asking, asked_for

_NAME, _KEY = "harmless-texts", "files"
_DIGEST_BYTES = 16
_MOST_FILES = 200_000


Told = list[tuple[Text, Asking]]


class AskingText(NamedTuple):
    """A danger that a text of an entry asks for."""

    entry: Entry
    text: Text
    asking: Asking


class Readings:
    """The texts of a catalogue, read document by document: by whom and in which order is all the
    same.
    """

    def __init__(self, catalogue: Catalogue) -> None:
        self._catalogue = catalogue
        self._store = Cache(_NAME)
        kept = self._store.get(_KEY) or b""
        starts = range(0, len(kept), _DIGEST_BYTES)
        self._harmless = {kept[at : at + _DIGEST_BYTES] for at in starts}
        self._marks = {key: _mark(key, catalogue.documents[key]) for key in catalogue.entries}
        self._found: dict[Key, Told] = {}

    @property
    def unread(self) -> list[Key]:
        """The entries whose texts are neither read nor remembered."""
        marks, read = self._marks.items(), self._found
        return [key for key, mark in marks if mark not in self._harmless and key not in read]

    def read(self, key: Key) -> Told:
        """The dangers that the texts of an entry ask for."""
        texts = texts_of(*key, self._catalogue.documents[key].data)
        return [(text, asking) for text in texts for asking in asked_for(text.text, text.tells)]

    def take(self, found: Mapping[Key, Told]) -> None:
        """Know what somebody has read."""
        self._found.update(found)

    @cached_property
    def askings(self) -> tuple[AskingText, ...]:
        """Every danger that a text of an entry asks for."""
        self.take({key: self.read(key) for key in self.unread})
        self._remember({self._marks[key] for key, own in self._found.items() if not own})
        entries = self._catalogue.entries
        return tuple(
            AskingText(entries[key], *own) for key in entries for own in self._found.get(key, ())
        )

    def _remember(self, harmless: set[bytes]) -> None:
        if harmless:
            known = self._harmless if len(self._harmless) + len(harmless) <= _MOST_FILES else set()
            self._store.put(_KEY, b"".join(sorted(harmless | known)))
            self._store.trim()


def _mark(key: Key, document: Document) -> bytes:
    written = "\0".join([*key, document.text]).encode()
    return hashlib.blake2b(written, digest_size=_DIGEST_BYTES).digest()
