"""The pieces of an entry that keep somebody safe, as its schema marks them: the keyword ``looser``
says which change of a value lets more happen than before.

``more``: a larger number, a later time, a word farther on in its vocabulary; of a list, another
item. ``less``: the contrary; of a list, an item that goes. ``other``: any change of what stands.
``any``: that, and where it comes, because what is left out means something too. ``neither``: none,
said so that nobody has to wonder. Of a limit its ``value`` counts, of a span its ``to``. A limit
whose name ends in ``_most`` or ``_least`` need not say it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from almanac.kinds import KIND
from almanac.source import schemas
from almanac.source.reader import DataPath

WAYS = ("more", "less", "other", "any", "neither")
_BY_NAME = {"_most": "more", "_least": "less"}
_LIMITS = ("#/$defs/limit", "#/$defs/limit_above_zero")
_BESIDE = ("if", "then", "else", "allOf", "anyOf", "oneOf")
_DEEPEST = 40  # levels of a schema: one that names itself ends here


@dataclass(frozen=True)
class Guard:
    """A marked piece of an entry's data: which way is looser, its value (None where nothing stands
    and there is no default), and the vocabulary whose order its words have, "" for none.
    """

    way: str
    value: Any
    vocabulary: str = ""


def guards(kind: str, data: Mapping[str, Any]) -> dict[DataPath, Guard]:
    """Every marked piece of an entry, by path; a limit that is left out as its default says. Asks
    nothing of the data: it need not be sound.
    """
    found: dict[DataPath, Guard] = {}
    for path, guard in _walk(kind, {"properties": schemas.fields(kind)}, data, (), 0):
        found.setdefault(path, guard)
    if kind == "policy":
        for path, guard in _left_out_of_levels(data):
            found.setdefault(path, guard)
    return found


@cache
def guarded_vocabularies() -> frozenset[str]:
    """The vocabularies that a marked field takes its words from, itself or in its items."""

    def named(kind: str, piece: Any) -> Iterator[str]:
        if isinstance(piece, list):
            for item in piece:
                yield from named(kind, item)
        if not isinstance(piece, Mapping):
            return
        if isinstance(piece.get("looser"), str):
            opened = _opened(kind, piece)
            items = opened.get("items")
            own = [opened, _opened(kind, items) if isinstance(items, Mapping) else {}]
            yield from (name for one in own if isinstance(name := one.get("vocabulary"), str))
        for value in piece.values():
            yield from named(kind, value)

    return frozenset(name for kind in KIND for name in named(kind, schemas.raw(kind)))


def _walk(
    kind: str, piece: Any, value: Any, path: DataPath, depth: int
) -> Iterator[tuple[DataPath, Guard]]:
    if not isinstance(piece, Mapping) or depth > _DEEPEST:
        return
    piece = _opened(kind, piece)
    if "looser" in piece:
        vocabulary = piece.get("vocabulary", "")
        yield path, Guard(piece["looser"], value, vocabulary)
        return
    for keyword in _BESIDE:
        beside = piece.get(keyword, ())
        for other in beside if isinstance(beside, list) else [beside]:
            yield from _walk(kind, other, value, path, depth + 1)
    if isinstance(value, list):
        for number, item in enumerate(value):
            yield from _walk(kind, piece.get("items"), item, (*path, number), depth + 1)
        return
    own = value if isinstance(value, Mapping) else {}
    fields = piece.get("properties", {})
    for name, field in fields.items():
        default = field.get("default") if isinstance(field, Mapping) else None
        is_whole = not (path and path[0] == "levels")  # there a default holds one for each level
        given = own.get(name, default if is_whole else None)
        way = way_of(name, field) if given is not None else ""
        if given is not None or _has_defaults(kind, field):
            marked = {**field, "looser": way} if way else field
            yield from _walk(kind, marked, given, (*path, name), depth + 1)
    for name in own:
        if name not in fields:
            rest = piece.get("additionalProperties")
            yield from _walk(kind, rest, own[name], (*path, name), depth + 1)


def way_of(name: str, field: Any) -> str:
    """Which way a field is looser: as it says, else by a limit's name; "" for what guards
    nothing.
    """
    if not isinstance(field, Mapping):
        return ""
    is_limit = field.get("$ref") in _LIMITS
    by_name = next((way for end, way in _BY_NAME.items() if is_limit and name.endswith(end)), "")
    return str(field.get("looser", by_name))


def _has_defaults(kind: str, field: Any) -> bool:
    """Whether a field that is left out holds fields with defaults."""
    inside = _opened(kind, field).get("properties", {}) if isinstance(field, Mapping) else {}
    return any("default" in own for own in inside.values())


def _opened(kind: str, piece: Mapping[str, Any]) -> Mapping[str, Any]:
    """A piece with its ``$ref`` opened, into the shared pieces or those of its own file."""
    for _ in range(_DEEPEST):
        target = str(piece.get("$ref", ""))
        if target.startswith("#/$defs/"):
            other = schemas.raw(kind)["$defs"][target.removeprefix("#/$defs/")]
        elif target.startswith("common.json#/$defs/"):
            other = schemas.raw("common")["$defs"][target.rpartition("/")[2]]
        else:
            return piece
        piece = {**other, **{key: value for key, value in piece.items() if key != "$ref"}}
    return piece


def _left_out_of_levels(data: Mapping[str, Any]) -> Iterator[tuple[DataPath, Guard]]:
    """The limits by level that a policy leaves out, as their defaults say."""
    limits = _opened("policy", schemas.fields("policy")["levels"])["additionalProperties"]
    by_level, own = schemas.level_defaults(), data.get("levels")
    for level in dict.fromkeys([*by_level, *(own if isinstance(own, Mapping) else ())]):
        for name, value in by_level.get(level, by_level[""]).items():
            if level and (way := way_of(name, limits["properties"][name])):
                yield ("levels", level, name), Guard(way, value)
