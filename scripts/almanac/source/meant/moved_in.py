"""A field of the entry that blanks before it put among the named things of the field above: what
stands below it then reads as more of those, and fails in each of its fields. Or a few lines too far
in or out, which makes all of what is told of them.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import chain

from almanac.findings import Finding, Place, error
from almanac.source import schemas
from almanac.source.reader import Document
from almanac.source.syntax.dashes_meant import dash_meant
from almanac.source.syntax.hashed_lines import hashed_line
from almanac.source.syntax.lined_up import lined_up
from almanac.source.syntax.tried import Trial

_SEVERAL = 2  # of one alone its own words say more
_PLACES_TRIED, _FEW = 3, 20


def moved_in(document: Document, kind: str) -> Finding | None:
    """The one thing to tell of it, or None."""
    fields = schemas.fields(kind)
    for top, held in document.data.items():
        by_id = schemas.resolve(fields[top]).get("additionalProperties") if top in fields else None
        if not isinstance(held, dict) or not isinstance(by_id, dict):
            continue
        for key, value in held.items():
            if value is None and key in fields and key not in document.data:
                place = document.place((top, key), of_key=True)
                message = f"'{key}' is a field of the entry, and begins too far in"
                hint = "write it at the margin, without blanks before it"
                return error("missing-key", place, message, hint)
    return None


def moved_lines(document: Document, found: Iterable[Finding], amiss: list[str]) -> Finding | None:
    """The one thing to tell where a move of a few lines mends whatever has not the shape that it
    should; None where nothing does. ``amiss`` are the files with errors so far: what many have is
    no slip of lines, and each takes a while.
    """
    places = sorted({own.place.line or 1 for own in found if own.is_error})
    if document.lent or not places:
        return None
    amiss.append(document.file)
    if len(amiss) > _FEW:
        return None
    trial = Trial.of(document.text.split("\n"), document.file)
    if trial is None or (trial.amiss is not None and trial.amiss < _SEVERAL):
        return None
    numbers = [line - 1 for line in places[:_PLACES_TRIED]]
    tried = chain(
        (hashed_line(number, trial) for number in numbers),
        (dash_meant(number, trial) for number in numbers),
        (lined_up(number, trial) for number in numbers),
    )
    for at, message, hint in filter(None, tried):
        place = Place(document.file, at[0] + 1, at[1] + 1)
        return error("unknown-key", place, message, hint)
    return None
