"""Fields that stand further in than they belong: one of the fields around is of that name, or a
named thing stands in another of its sort.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from almanac.source import schemas
from almanac.source.failure import Failure, quote


def further_out(failure: Failure, key: str) -> str:
    """Where a key belongs that is no field here and one of a mapping around, and is not there; ""
    for nowhere. The entry itself counts where a list lies between: nobody writes by chance what
    only the entry has.
    """
    path, data = failure.path, failure.document.data
    around: list[Any] = [data]
    for step in path:
        around.append(around[-1][step])
    pieces = list(_way(failure))
    for at in range(len(path) - 1, -1, -1):
        held, piece = around[at], pieces[at]
        if not isinstance(held, dict) or key in held:
            continue
        name = f"{quote(path[at])}" if at < len(path) else ""
        if any(key in own.get("properties", {}) for own in _branches(failure, piece)):
            where = "at the margin, without blanks" if not at else f"lined up with {name}"
            return f"it belongs further out: write it {where}"
        by_id = [own.get("additionalProperties") for own in _branches(failure, piece)]
        inner = next((own for own in by_id if isinstance(own, dict)), None)
        value = failure.value[key]
        if inner is not None and isinstance(value, dict) and value:
            known = {*failure.resolved(inner).get("properties", {})}
            if {*value} <= known:
                return f"it belongs further out: write it lined up with {name}"
    return ""


def stands_further_in(failure: Failure, key: str) -> bool:
    """Whether a key that is missing here stands in a mapping below, where it is no field, and so is
    told there.
    """
    return _is_strange_below(failure, list(_way(failure))[-1], failure.value, key)


def _is_strange_below(failure: Failure, piece: schemas.Schema, held: Any, key: str) -> bool:
    steps = held.items() if isinstance(held, dict) else enumerate(held)
    for step, value in steps:
        if not isinstance(value, dict | list):
            continue
        below = _below(failure, piece, step)
        if isinstance(value, dict) and key in value:
            known = [own.get("properties", {}) for own in _branches(failure, below)]
            if any(known) and not any(key in own for own in known):
                return True
        if _is_strange_below(failure, below, value, key):
            return True
    return False


def flag_beside(failure: Failure) -> str:
    """A free field beside a value that is true or not, and of which the value is the name; "" for
    none.
    """
    if failure.on_key or not failure.path or failure.value in failure.siblings:
        return ""
    for piece in _branches(failure, list(_way(failure))[-2]):
        own = failure.resolved(piece.get("properties", {}).get(str(failure.value), {}))
        if own.get("const") is True or own.get("type") == "boolean":
            return str(failure.value)
    return ""


def _way(failure: Failure) -> Iterator[schemas.Schema]:
    """The piece of the schema for each mapping or list on the way to the value."""
    piece: schemas.Schema = schemas.bundled(failure.kind)
    yield piece
    for step in failure.path:
        piece = _below(failure, piece, step)
        yield piece


def _below(failure: Failure, piece: schemas.Schema, step: str | int) -> schemas.Schema:
    for own in _branches(failure, piece):
        found: Any = own.get("items") if isinstance(step, int) else None
        if isinstance(step, str):
            found = own.get("properties", {}).get(step) or own.get("additionalProperties")
        if isinstance(found, dict):
            return found
    return {}


def _branches(failure: Failure, piece: schemas.Schema) -> Iterator[schemas.Schema]:
    """A piece of a schema with those that it leads to for the same value."""
    piece = failure.resolved(piece)
    yield piece
    for name in ("then", "else"):
        if isinstance(piece.get(name), dict):
            yield from _branches(failure, piece[name])
    for own in piece.get("allOf", []):
        yield from _branches(failure, own)
