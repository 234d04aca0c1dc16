"""An entry before and after damage, and where that must be told."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from almanac.source.reader import DataPath


@dataclass(frozen=True)
class Sound:
    """An entry before anything happens to it."""

    kind: str
    id: str
    file: str
    text: str
    data: Any


@dataclass(frozen=True)
class Case:
    """A damaged entry; what was done; and where that must be told, as far as it is known: a code
    with line and column, or the path of the value that was damaged.
    """

    sound: Sound
    done: str
    raw: bytes
    told: tuple[str, int, int] | None = None
    path: DataPath | None = None
