"""Every planned practice of the blocks by its day, and the page that shows them: Tonight.

A site is built once and read on other days: which day it is only the browser knows. Without a
script, all days stand on Tonight.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from itertools import groupby

from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import SessionPlan, day_of_all
from almanac.report.shown import day_words
from almanac.site.links import Link, Page, link
from almanac.site.templates import script_json

_TIME = "%H:%M"


@dataclass(frozen=True)
class PlannedPractice:
    """A practice, by its id, on a day: ``start`` to ``end`` as HH:MM, "" where no start is said."""

    on: date
    start: str
    end: str
    id: str
    practice: Link
    squad: str
    groups: tuple[str, ...]

    @property
    def run(self) -> str:
        """Where it is run, from the site's root, with the start of that day."""
        start = f"&start={self.start}" if self.start else ""
        return f"run.html#practice={self.id}{start}"


def planned(analysis: Analysis) -> list[PlannedPractice]:
    """Every practice that a block plans, by day and start."""
    found = {
        (own.on, own.start, own.practice.href): own
        for block in analysis.blocks.values()
        for days in zip(*(own.days for own in block.values()), strict=True)
        for own in _of_day(analysis, days[0].on, day_of_all(days).sessions)
    }
    return [found[key] for key in sorted(found)]


def _of_day(
    analysis: Analysis, on: date, sessions: tuple[SessionPlan, ...]
) -> Iterator[PlannedPractice]:
    for own in sessions:
        if own.practice is not None:
            practice = own.practice.practice
            squad = analysis.catalogue.club.squads[practice.squad].title
            groups = own.session.groups or tuple(own.practice.groups)
            end = _end(on, own.start, practice.slot.minutes)
            yield PlannedPractice(on, own.start, end, practice.id, link(practice), squad, groups)


def _end(on: date, start: str, minutes: int) -> str:
    if not start:
        return ""
    begins = datetime.combine(on, time.fromisoformat(start))
    return (begins + timedelta(minutes=minutes)).strftime(_TIME)


COLUMNS = ("on", "start", "end", "href", "title", "squad", "groups")


def home_data(analysis: Analysis) -> Markup:
    """Every planned practice as a table in JSON that stands in Home, and what lane groups are
    called.
    """
    groups = analysis.catalogue.lane_groups
    rows = [
        [own.on.isoformat(), own.start, own.end, own.practice.href, own.practice.title, own.squad,
         own.groups]
        for own in planned(analysis)
    ]  # fmt: skip
    titles = {id: group.title for id, group in groups.items()}
    return script_json({"titles": titles, "columns": COLUMNS, "rows": rows})


@dataclass(frozen=True)
class WeekOfPractices:
    """A week of planned practices: what it is called, the squads, day by day, and how many."""

    title: str
    squads: str
    days: tuple[tuple[str, str, tuple[PlannedPractice, ...]], ...]
    count: int


def tonight_page(analysis: Analysis) -> Page:
    """The page that lists the practices week by week; a script puts today first."""
    weeks = groupby(planned(analysis), key=lambda own: own.on - timedelta(own.on.weekday()))
    return Page("tonight.md", "tonight", {"weeks": [_week(on, [*own]) for on, own in weeks]})


def _week(monday: date, own: list[PlannedPractice]) -> WeekOfPractices:
    days = groupby(own, key=lambda one: one.on)
    return WeekOfPractices(
        f"Week from {day_words(monday)}",
        ", ".join(dict.fromkeys(one.squad for one in own)),
        tuple((on.isoformat(), f"{on:%A} {day_words(on)}", tuple(each)) for on, each in days),
        len(own),
    )
