"""What is said beside a week of a season: what begins in it, and its meets."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from almanac.analysis.analysis import Analysis
from almanac.checks.seasons import blocks_in
from almanac.model.entry import Ids
from almanac.model.season import Closure, Season
from almanac.site.links import Link, link


@dataclass(frozen=True)
class SeasonNote:
    """A line: of which sort it is, its words, and the page that they lead to."""

    sort: str
    words: str
    to: Link | None = None


def notes_of(analysis: Analysis, season: Season, monday: date) -> Iterator[SeasonNote]:
    """What begins in a week, and the meets in it."""
    sunday = monday + timedelta(days=6)
    for begins, note in _all(analysis, season):
        if monday <= begins <= sunday:
            yield note


def _all(analysis: Analysis, season: Season) -> Iterator[tuple[date, SeasonNote]]:
    """Every line of a year with its day, in the order in which those of a week stand."""
    catalogue = analysis.catalogue
    squads = catalogue.club.squads

    def names(ids: Ids) -> str:
        return ", ".join(squads[id].title for id in ids)

    for meet in (catalogue.meets[id] for id in season.meets):
        yield meet.first, SeasonNote("meet", f"{meet.title}, {names(meet.squads)}", link(meet))
    for own in season.closures:
        yield own.first, SeasonNote("shut", f"{own.title}{_shut_pools(analysis, own)}")
    for term in season.terms:
        yield term.first, SeasonNote("term", f"{term.title} begins")
    for exams in season.exams:
        yield exams.first, SeasonNote("exams", f"{exams.title}, {names(exams.squads)}")
    for one in season.courses:
        words = f"{one.title} ({one.course.shown}), {names(one.squads)}"
        yield one.first, SeasonNote("course", words)
    for id, plan in season.squads.items():
        for block in blocks_in(analysis, season, id):
            yield block.starts, SeasonNote("block", block.title, link(block))
        for outline in plan.outlines:
            yield outline.first, SeasonNote("outline", f"{squads[id].title}: {outline.title}")


def _shut_pools(analysis: Analysis, closure: Closure) -> str:
    titles = [analysis.catalogue.club.pools[id].title for id in closure.pools]
    return f": {', '.join(titles)}" if titles else ""
