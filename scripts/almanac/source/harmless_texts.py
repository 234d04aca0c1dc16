"""What the texts of an entry's file ask for; a file whose texts ask for no danger is remembered by
its bytes, and not read again.
"""

from __future__ import annotations

import hashlib
from collections.abc import Collection, Mapping
from typing import Any

from almanac.cache import Cache
from almanac.source.texts import Text, texts_of
from almanac.wording.reading import Asking, asked_for

Told = list[tuple[Text, Asking]]

_NAME, _KEY = "harmless-texts", "files"
_DIGEST_BYTES = 16
_MOST_FILES = 200_000


def told_in(kind: str, id: str, data: Mapping[str, Any]) -> Told:
    """The dangers that the texts of an entry ask for, each with its text."""
    texts = texts_of(kind, id, data)
    return [(text, asking) for text in texts for asking in asked_for(text.text, text.tells)]


def mark_of(kind: str, id: str, text: str) -> bytes:
    """What a file is remembered by: all that its texts hang on."""
    written = f"{kind}\0{id}\0{text}".encode()
    return hashlib.blake2b(written, digest_size=_DIGEST_BYTES).digest()


class HarmlessFiles:
    """The marks of files whose texts ask for no danger."""

    def __init__(self) -> None:
        self._store = Cache(_NAME)
        kept = self._store.get(_KEY) or b""
        starts = range(0, len(kept), _DIGEST_BYTES)
        self._known = {kept[at : at + _DIGEST_BYTES] for at in starts}

    def __contains__(self, mark: bytes) -> bool:
        return mark in self._known

    def remember(self, marks: Collection[bytes]) -> None:
        """Keep these marks for the next run."""
        if marks:
            room = len(self._known) + len(marks) <= _MOST_FILES
            self._store.put(_KEY, b"".join(sorted({*marks, *(self._known if room else ())})))
            self._store.trim()
