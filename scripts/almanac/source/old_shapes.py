"""What entries of an older form are known by: shapes that no entry of the present form has.

No field ever changes what it means: what means something else has another name or another shape.
So an entry says by itself that it is older, and what is not of such a shape is left as it is.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from almanac.findings import Place
from almanac.source.reader import DataPath, Document

HAZARD, CITATION, NOT_FOR, SPEED = "hazard", "source", "not_for", "speed"
_FIGURE, STILL, FROM_STILL = "figure", "still", "from_still"
_WITH_HAZARDS = ("safety", "hazards")
_WORDS, _EVIDENCE = "words", "evidence"


@dataclass(frozen=True)
class OldShape:
    """A place of an entry in form 1: a danger in a sentence where a word now stands, a publication
    in words where its entry is named, a list of whom gear is not for, or the first of a drawing's
    speeds, where a swimmer lies still. ``path`` leads to what is in the way.
    """

    sort: str
    path: DataPath

    def place(self, document: Document) -> Place:
        """Where ``check`` finds fault with it."""
        return document.place(self.path, of_key=self.sort == CITATION)


def old_shapes(document: Document) -> Iterator[OldShape]:
    """Every place of an entry that is in form 1, in the order of the text."""
    for key, value in document.data.items():
        if key in _WITH_HAZARDS:
            yield from _hazards(value, (key,))
        elif key == _WORDS and isinstance(value, dict):
            for word, about in value.items():
                for inner, own in about.items() if isinstance(about, dict) else ():
                    if inner in _WITH_HAZARDS:
                        yield from _hazards(own, (key, word, inner))
        elif key == _EVIDENCE:
            for number, item in _fields(value):
                if isinstance(item.get(CITATION), str) and "sources" not in item:
                    yield OldShape(CITATION, (key, number, CITATION))
        elif key == NOT_FOR and _is_list_of_texts(value):
            yield OldShape(NOT_FOR, (key,))
        elif key == _FIGURE and _begins_still(value):
            yield OldShape(SPEED, (key, SPEED, 0))


def _begins_still(figure: Any) -> bool:
    if not isinstance(figure, dict) or FROM_STILL in figure:
        return False
    speeds = figure.get(SPEED)
    return isinstance(speeds, list) and len(speeds) > 1 and speeds[0] == STILL


def _hazards(value: Any, path: DataPath) -> Iterator[OldShape]:
    for number, item in _fields(value):
        hazard = item.get(HAZARD)
        if isinstance(hazard, str) and " " in hazard.strip() and "own" not in item:
            yield OldShape(HAZARD, (*path, number, HAZARD))


def _fields(value: Any) -> Iterator[tuple[int, dict[str, Any]]]:
    """The items of a list that are fields, with their numbers."""
    for number, item in enumerate(value if isinstance(value, list) else ()):
        if isinstance(item, dict):
            yield number, item


def _is_list_of_texts(value: Any) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(it, str) for it in value)
