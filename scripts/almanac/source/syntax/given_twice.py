"""Fields that are given twice, told once by their cause: a second entry in the file, a block pasted
in a second time, a dash left out before an item of a list.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from almanac.findings import Finding, Place, error
from almanac.source.suggest import listed
from almanac.source.syntax.dashes_meant import dash_meant
from almanac.source.syntax.hashed_lines import hashed_line
from almanac.source.syntax.tried import Trial

_FIELD = re.compile(r"[\"']?([\w-]+)[\"']?:(?:\s|$)")
_SEVERAL = 2


def given_twice(text: str, file: str, twice: Sequence[Finding]) -> list[Finding]:
    """What to tell in place of the findings on fields given twice, which are left where each is a
    slip of its own.
    """
    lines = [line.rstrip() for line in text.split("\n")]
    again = [own.place.line or 1 for own in twice if own.place.column == 1]
    if len(again) >= _SEVERAL and (found := _second_block(again, lines, file)):
        block, told = found
        return [told, *(own for own in twice if own.place.line not in block)]
    inner = [own.place for own in twice if own.place.column != 1]
    trial = Trial.of(lines, file) if len(inner) == len(twice) else None
    number = (twice[0].place.line or 1) - 1
    if trial and (meant := hashed_line(number, trial) or dash_meant(number, trial)):
        (line, column), message, hint = meant
        return [error("duplicate-key", Place(file, line + 1, column + 1), message, hint)]
    return [*twice]


def _second_block(
    again: Sequence[int], lines: Sequence[str], file: str
) -> tuple[range, Finding] | None:
    """The lines of the first row of the entry's own fields that stand above as well, and what is
    told of it; None where there is no such row.
    """
    fields = {at: own[1] for at, line in enumerate(lines, 1) if (own := _FIELD.match(line))}
    start, end = again[0], len(lines) + 1
    name = fields.get(start)
    if name == next(iter(fields.values()), ""):
        return range(start, end), _second_entry(start, name, lines, file)
    for at in fields:
        if at > start and at not in again:
            end = at
            break
    row = {at: own for at, own in fields.items() if start <= at < end}
    if len(row) < _SEVERAL:
        return None
    return range(start, end), _row_again(row, fields, file)


def _second_entry(start: int, name: str, lines: Sequence[str], file: str) -> Finding:
    above, below = ("\n".join(own).strip() for own in (lines[: start - 1], lines[start - 1 :]))
    last = len("\n".join(lines).rstrip().split("\n"))
    message = f"a second entry begins here: its '{name}' is not the first of the file"
    hint = "one entry a file: move what stands from here on into a file of its own"
    if above == below:
        message = "the whole entry stands in this file a second time from here on"
        hint = f"take lines {start} to {last} out"
    return error("several-documents", Place(file, start, 1), message, hint)


def _row_again(row: Mapping[int, str], fields: Mapping[int, str], file: str) -> Finding:
    names = listed(f"'{own}'" for own in row.values()).replace(" or ", " and ")
    first = [at for at, own in fields.items() if own in row.values() and at < min(row)]
    message = f"{names} are given a second time from here on"
    hint = f"keep one of each: the first stand on lines {listed(map(str, first))}"
    return error("duplicate-key", Place(file, min(row), 1), message, hint.replace(" or ", " and "))
