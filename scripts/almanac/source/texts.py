"""Every text of an entry, as its schema tells which of its values are texts.

A text is what an author words: a string that no list, date or clock fixes, a key that an author
coins, and the name of the file. The keyword ``tells`` marks a text that says what goes wrong or
what somebody found, and not what to do.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, cached_property
from typing import Any, NamedTuple

from almanac.source import schemas
from almanac.source.reader import DataPath

_FIXED = frozenset({"vocabulary", "reference", "enum", "const", "format", "clock"})
_BESIDE = ("then", "else", "allOf", "anyOf", "oneOf")
_A_SENTENCE = "Swim it as you like"  # what a pattern that fixes a value does not match
_REF = "#/$defs/"


class Text(NamedTuple):
    """A text of an entry: where it stands, whether it is a key there, whether it tells."""

    path: DataPath
    text: str
    is_key: bool = False
    tells: bool = False


def texts_of(kind: str, id: str, data: Mapping[str, Any]) -> Iterator[Text]:
    """Every text of an entry, its id first."""
    found = [Text((), id)]
    _root(kind).gather(data, (), found)
    return iter(found)


@cache
def _root(kind: str) -> _Shape:
    return _shape(kind, _opened(kind, [schemas.bundled(kind)]))


class _Pieces(tuple[Any, ...]):
    """Pieces of a schema that hold for the same value, as a key of what is made of them."""

    __slots__ = ()

    def __hash__(self) -> int:
        return hash(tuple(map(id, self)))

    def __eq__(self, other: object) -> bool:
        return isinstance(other, tuple) and [*map(id, self)] == [*map(id, other)]


@cache
def _shape(kind: str, pieces: _Pieces) -> _Shape:
    return _Shape(kind, pieces)


def _opened(kind: str, pieces: Iterable[Any]) -> _Pieces:
    """The pieces with what they refer to, and with what holds beside them in some case."""
    found: list[Any] = []
    waiting = [piece for piece in pieces if isinstance(piece, dict)]
    while waiting:
        piece = waiting.pop()
        if any(piece is known for known in found):
            continue
        found.append(piece)
        target = str(piece.get("$ref", ""))
        if target.startswith(_REF):
            waiting.append(schemas.bundled(kind)["$defs"][target.removeprefix(_REF)])
        for keyword in _BESIDE:
            beside = piece.get(keyword, [])
            waiting.extend(beside if isinstance(beside, list) else [beside])
    return _Pieces(found)


@dataclass(frozen=True, eq=False)
class _Shape:
    """What may stand at one place of an entry."""

    kind: str
    pieces: _Pieces

    def gather(self, value: Any, path: DataPath, found: list[Text]) -> None:
        """Add every text inside a value at a path to those that were found."""
        if isinstance(value, str):
            if self._is_text:
                found.append(Text(path, value, tells=self._tells))
        elif isinstance(value, dict):
            for key, inner in value.items():
                shape, coined = self._under(key)
                if coined is not None and isinstance(key, str):
                    found.append(Text((*path, key), key, True, coined))
                if shape.may_hold(inner):
                    shape.gather(inner, (*path, key), found)
        elif isinstance(value, list):
            shape = self._items
            for number, inner in enumerate(value):
                if shape.may_hold(inner):
                    shape.gather(inner, (*path, number), found)

    def may_hold(self, value: Any) -> bool:
        """Whether a value here may be a text or hold one: most are numbers, ids and words of a
        list.
        """
        return self._is_text if isinstance(value, str) else isinstance(value, (dict, list))

    @cached_property
    def _is_text(self) -> bool:
        return _is_text(self.pieces)

    @cached_property
    def _tells(self) -> bool:
        return any(piece.get("tells") for piece in self.pieces)

    @cached_property
    def _items(self) -> _Shape:
        return self._of(piece["items"] for piece in self.pieces if "items" in piece)

    @cached_property
    def _named(self) -> Mapping[str, _Shape]:
        names = {name for piece in self.pieces for name in piece.get("properties", {})}
        return {
            name: self._of(
                piece["properties"][name]
                for piece in self.pieces
                if name in piece.get("properties", {})
            )
            for name in names
        }

    @cached_property
    def _others(self) -> _Shape:
        return self._of(piece.get("additionalProperties") for piece in self.pieces)

    @cached_property
    def _coined(self) -> bool | None:
        """Whether the keys that an author coins tell; None where none may be coined."""
        names = _opened(
            self.kind, (piece["propertyNames"] for piece in self.pieces if "propertyNames" in piece)
        )
        if not names or any(_FIXED & piece.keys() for piece in names):
            return None
        return any(piece.get("tells") for piece in names)

    def _under(self, key: Any) -> tuple[_Shape, bool | None]:
        if key in self._named:
            return self._named[key], None
        return self._others, self._coined

    def _of(self, pieces: Iterable[Any]) -> _Shape:
        return _shape(self.kind, _opened(self.kind, pieces))


def _is_text(pieces: Iterable[Mapping[str, Any]]) -> bool:
    """Whether a string here is worded by the author."""
    types = [piece["type"] for piece in pieces if "type" in piece]
    if not any("string" in ([one] if isinstance(one, str) else one) for one in types):
        return False
    if any(_FIXED & piece.keys() for piece in pieces):
        return False
    patterns = (piece["pattern"] for piece in pieces if "pattern" in piece)
    return all(re.search(pattern, _A_SENTENCE) for pattern in patterns)
