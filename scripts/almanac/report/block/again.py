"""Main sets of a block that come again within a week, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from almanac.model.catalogue import Catalogue
from almanac.report.block.judged import Again
from almanac.report.planning.practices import WORK

_DRILLS = 3
"""So many drills of a main set that stands in no file are named."""


def again_words(catalogue: Catalogue, again: Sequence[Again]) -> Iterator[str]:
    """A line for what comes again on the same days, each of which is within a week of the one
    before.
    """
    runs: dict[str, list[list[date]]] = {}
    for own in again:
        of = runs.setdefault(own.main, [])
        if of and of[-1][-1] == own.first:
            of[-1].append(own.second)
        else:
            of.append([own.first, own.second])
    whose: dict[tuple[date, ...], list[str]] = {}
    for main, each in runs.items():
        for days in each:
            whose.setdefault(tuple(days), []).append(_title(catalogue, main))
    for span, titles in sorted(whose.items()):
        *first, last = (f"{on:%a} {on}" for on in span)
        yield f"again within a week: {', '.join(titles)}: {', '.join(first)} and {last}"


def _title(catalogue: Catalogue, main: str) -> str:
    """A set by its title; one that stands in no file by its drills."""
    if main in catalogue.sets:
        return f"'{catalogue.sets[main].title}'"
    titles = [f"'{catalogue.drills[id].title}'" for id in main.partition(WORK)[0].split()]
    more = [f"{len(titles) - _DRILLS} more"] if len(titles) > _DRILLS else []
    return " and ".join([", ".join(titles[:_DRILLS]), *more])
