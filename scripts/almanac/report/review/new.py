"""What is new: each drill and set by what it is for and how dangerous it is said to be."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from almanac.analysis.comparison import Comparison
from almanac.findings import Place, counted
from almanac.model.compare import EntryChange
from almanac.report.fenced import fenced, linked
from almanac.report.values_told import WHOLE, words_in_a_row

_OF_NEW = ("title", "level", "goals", "effort", "dose", "gear", "course")
_MOST = 2  # told one by one before all of them are counted
_MOST_NAMED = 8  # of those that tell no danger


def told_as_new(review: Comparison) -> list[EntryChange]:
    """The new entries that are told one by one where little room is."""
    new = _new(review)
    return new if len(new) <= _MOST else []


def in_full(review: Comparison, address: str) -> Iterator[str]:
    """What is new, for whom, and how dangerous it is said to be."""
    for change in _new(review):
        link = linked(change.id, Place(change.file), address)
        facts = "; ".join(
            f"{name} {fenced(words_in_a_row(change.data[name]))}"
            for name in _OF_NEW
            if change.data.get(name)
        )
        dangers = _dangers(change.data.get("safety"))
        yield f"- **New {change.kind}.** {link}: {facts}. {dangers}"


def in_brief(review: Comparison, address: str) -> Iterator[str]:
    """The same where they are few; else how many, and which of them tell no danger."""
    new = _new(review)
    if len(new) <= _MOST:
        yield from in_full(review, address)
        return
    kinds = [change.kind for change in new]
    each = " and ".join(counted(kinds.count(kind), kind) for kind in dict.fromkeys(kinds))
    bare = [change for change in new if not _hazards(change.data.get("safety"))]
    links = ", ".join(linked(one.id, Place(one.file), address) for one in bare[:_MOST_NAMED])
    more = f" and {len(bare) - _MOST_NAMED:,} more" if len(bare) > _MOST_NAMED else ""
    silent = f"no danger is told of {links}{more}" if bare else "dangers are told of each"
    yield f"- **New.** {each}; {silent}."


def _new(review: Comparison) -> list[EntryChange]:
    return [
        own
        for own in review.entries
        if own.what == "added" and ("level" in own.data or own.kind in ("drill", "set"))
    ]


def _hazards(told: Any) -> list[Any]:
    if not isinstance(told, list):
        return []
    return [one.get("hazard") for one in told if isinstance(one, Mapping)]


def _dangers(told: Any) -> str:
    listed = _hazards(told)
    if not listed:
        return "It tells no danger."
    return f"{counted(len(listed), 'danger')} told: {fenced(', '.join(map(str, listed)), WHOLE)}."
