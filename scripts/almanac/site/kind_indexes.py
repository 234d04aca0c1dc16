"""The index of each kind of entry: what its list is ordered by."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.model.block import Block
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.meet import Meet
from almanac.model.practice import Practice
from almanac.model.published import Source
from almanac.model.season import Season
from almanac.model.timetable import Timetable
from almanac.report.shown import day_words
from almanac.site.links import Link, link, links, page_of
from almanac.site.lists import grouped, section, set_link
from almanac.site.source_page import SORTS

Sections = list[dict[str, Any]]


def _drills(analysis: Analysis) -> Sections:
    """By family, the largest first, each in teaching order."""
    order = {id: number for number, id in enumerate(analysis.teaching_order)}
    drills = analysis.catalogue.drills.values()
    families: dict[str, list[Drill]] = {}
    for drill in sorted(drills, key=lambda drill: order.get(drill.id, len(order))):
        families.setdefault(drill.family, []).append(drill)
    return [
        section(
            family, family.replace("-", " ").capitalize(), "", ("", [link(drill) for drill in own])
        )
        for family, own in sorted(families.items(), key=lambda item: -len(item[1]))
    ]


def _sets(analysis: Analysis) -> Sections:
    catalogue = analysis.catalogue
    return grouped(
        catalogue,
        "levels",
        catalogue.sets.values(),
        lambda item: [item.level],
        lambda item: set_link(analysis, item),
    )


def _by_word(
    vocabulary: str, entries: Callable[[Catalogue], Mapping[str, Any]], field: str
) -> Callable[[Analysis], Sections]:
    """By the words of a vocabulary, one of which each entry has in a field."""
    return lambda analysis: grouped(
        analysis.catalogue,
        vocabulary,
        entries(analysis.catalogue).values(),
        lambda entry: [getattr(entry, field)],
    )


def _by_squad(catalogue: Catalogue, entries: Iterable[Practice | Block]) -> Sections:
    ordered = sorted(entries, key=lambda entry: entry.title.casefold())
    return [
        section(id, squad.title, "", ("", [link(entry) for entry in ordered if entry.squad == id]))
        for id, squad in catalogue.club.squads.items()
    ]


def _sources(analysis: Analysis) -> Sections:
    """By sort, those that were measured first; each as it is cited."""
    ordered = sorted(analysis.catalogue.sources.values(), key=lambda own: own.cited.casefold())
    return [
        section(
            sort,
            title,
            means,
            ("", [_cited(own) for own in ordered if own.sort == sort]),
        )
        for sort, (title, means) in SORTS.items()
    ]


def _needs(analysis: Analysis) -> Sections:
    """One list, in the order of the alphabet."""
    return [section("needs", "Needs", "", ("", links(analysis.catalogue.needs.values())))]


def _by_year(entries: Iterable[Meet | Timetable | Season]) -> Sections:
    """By the year in which they begin, each in order."""
    ordered = sorted(entries, key=lambda own: (own.first, own.id))
    return [
        section(
            f"in-{year}",
            str(year),
            "",
            ("", [_dated(own) for own in ordered if own.first.year == year]),
        )
        for year in dict.fromkeys(own.first.year for own in ordered)
    ]


def _dated(own: Meet | Timetable | Season) -> Link:
    return Link(page_of(own), own.title, f"{day_words(own.first)}. {own.summary}")


def _cited(source: Source) -> Link:
    return Link(page_of(source), source.cited, source.summary)


INDEXES: Mapping[str, Callable[[Analysis], Sections]] = {
    "drill": _drills,
    "fault": _by_word("strokes", lambda catalogue: catalogue.faults, "stroke"),
    "gear": _by_word("effects", lambda catalogue: catalogue.gear, "effect"),
    "benchmark": _by_word("modes", lambda catalogue: catalogue.benchmarks, "mode"),
    "progression": _by_word("levels", lambda catalogue: catalogue.progressions, "level"),
    "practice": lambda analysis: _by_squad(
        analysis.catalogue, analysis.catalogue.practices.values()
    ),
    "block": lambda analysis: _by_squad(analysis.catalogue, analysis.catalogue.blocks.values()),
    "set": _sets,
    "meet": lambda analysis: _by_year(analysis.catalogue.meets.values()),
    "season": lambda analysis: _by_year(analysis.catalogue.seasons.values()),
    "timetable": lambda analysis: _by_year(analysis.catalogue.timetables.values()),
    "source": _sources,
    "need": _needs,
}
