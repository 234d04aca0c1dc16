"""The brief of a set or a practice as text: each danger, what is done about it, and its source."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from almanac.arithmetic.brief import BriefHazard
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry


def brief_lines(catalogue: Catalogue, brief: Iterable[BriefHazard]) -> Iterator[str]:
    """The lines under the word Brief."""
    yield "Brief:"
    for line in brief:
        titles = "; ".join(source_titles(catalogue, line.sources))
        yield f"  - {line.hazard.rstrip('.')}: {line.control} [{titles}]"


def source_titles(catalogue: Catalogue, ids: tuple[str, ...]) -> list[str]:
    """The titles of the entries that a danger comes from."""
    tables: tuple[Mapping[str, Entry], ...] = (
        catalogue.drills,
        catalogue.gear,
        catalogue.sets,
        catalogue.practices,
    )
    return [next((known[id].title for known in tables if id in known), id) for id in ids]
