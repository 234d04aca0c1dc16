"""What the schemas say of a field by its name alone, where no more than that is known of a line:
that only entries have it, that it holds fields.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any

from almanac.kinds import KIND
from almanac.source import schemas


@cache
def of_entries_alone() -> frozenset[str]:
    """Fields that entries have and nothing within them."""
    tops = {name for kind in KIND for name in schemas.fields(kind)}
    return frozenset(tops - {*_sorts()})


@cache
def _sorts() -> dict[str, set[str]]:
    """By the name of each field within fields the types that it has in any schema."""
    found: dict[str, set[str]] = {}

    def look(piece: Any, is_top: bool) -> None:
        if isinstance(piece, list):
            for own in piece:
                look(own, is_top=False)
        elif isinstance(piece, dict):
            for name, own in piece.get("properties", {}).items():
                if not is_top:
                    sort = schemas.resolve(own).get("type", "")
                    found.setdefault(name, set()).add(str(sort))
            for own in piece.values():
                look(own, is_top=False)

    for kind in KIND:
        look({key: own for key, own in schemas.raw(kind).items() if key != "$defs"}, is_top=True)
        for own in schemas.raw(kind).get("$defs", {}).values():
            look(own, is_top=False)
    for own in schemas.raw("common")["$defs"].values():
        look(own, is_top=False)
    return found


def holds_fields(name: str) -> bool:
    """Whether what stands under a field is fields in every kind that has it."""
    sorts = {str(schemas.resolve(own[name]).get("type")) for own in _tops() if name in own}
    return (sorts | _sorts().get(name, set())) == {"object"}


def _tops() -> Iterator[Any]:
    return (schemas.fields(kind) for kind in KIND)
