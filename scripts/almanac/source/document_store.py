"""What reading and checking the shape of entry files gave before, by the bytes of the files.

Only a file without a finding is remembered: its data, and every word that its schema looked up with
the answer that it got. It is taken as read while the present names still answer so.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from almanac.cache import Cache, digest
from almanac.source.names import Answer, Names, Question

_NAME = "documents"


@dataclass(frozen=True)
class Remembered:
    """A file's data, and what was asked of the names when it was checked."""

    data: dict[str, Any]
    asked: Mapping[Question, Answer]

    def holds(self, names: Names) -> bool:
        """Whether these names give every answer that was given then."""
        return all(names.answer(*question) is answer for question, answer in self.asked.items())


class DocumentStore:
    """What is remembered of the files below one root. ``load`` reads it and fills it; ``save``
    keeps it for the next run.
    """

    def __init__(self, root: Path) -> None:
        self._cache = Cache(_NAME)
        self._key = str(root.resolve())
        self._kept = _unpacked(self._cache.get(self._key))
        self._used: dict[str, Remembered] = {}
        self._is_changed = False

    def find(self, kind: str, raw: bytes) -> Remembered | None:
        """What is remembered of a file of this kind with these bytes."""
        key = _key(kind, raw)
        found = self._used.get(key) or self._kept.get(key)
        if found is not None:
            self._used[key] = found
        return found

    def keep(self, kind: str, raw: bytes, remembered: Remembered) -> None:
        """Remember a file that gave no finding."""
        self._used[_key(kind, raw)] = remembered
        self._is_changed = True

    def forget_unused(self) -> None:
        """Drop what no file has asked for since the last time: the files of this run are all there
        are.
        """
        self._is_changed = self._is_changed or self._used.keys() != self._kept.keys()
        self._kept, self._used = self._used, {}

    def save(self) -> None:
        """Keep what the last run used for the next one, where it is not kept already."""
        if self._is_changed:
            self._cache.put(self._key, _packed(self._kept))
            self._cache.trim()
            self._is_changed = False


def _key(kind: str, raw: bytes) -> str:
    return digest(kind, raw).hex()


def _packed(kept: Mapping[str, Remembered]) -> bytes:
    rows = {key: [own.data, [[*question, answer] for question, answer in own.asked.items()]]
            for key, own in kept.items()}  # fmt: skip
    return json.dumps(rows, separators=(",", ":")).encode()


def _unpacked(stored: bytes | None) -> dict[str, Remembered]:
    rows = json.loads(stored) if stored else {}
    return {
        key: Remembered(
            data, {(keyword, name, word): answer for keyword, name, word, answer in asked}
        )
        for key, (data, asked) in rows.items()
    }
