"""The page of a season: the year on one sheet, a row a week, and each squad's blocks and tests."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.season_days import (
    monday_of,
    mondays,
    runs_of_tests,
)
from almanac.arithmetic.season_weeks import SquadWeek, squad_weeks
from almanac.arithmetic.training_load import DAYS_A_WEEK
from almanac.checks.season_days import test_rules
from almanac.checks.seasons import blocks_in
from almanac.findings import Finding
from almanac.model.season import Season, Stretch
from almanac.report.shown import date_words, day_words
from almanac.rounding import show_number
from almanac.site.entry_page import entry_page, findings_on
from almanac.site.links import Page, link, links
from almanac.site.season_notes import SeasonNote, notes_of
from almanac.site.season_squads import squad_year, summaries

_DAYS_TO_SUNDAY = timedelta(days=6)


@dataclass(frozen=True)
class WeekCell:
    """A week of a squad: its load, what is in it, how heavy it is in tenths, and whether a block
    holds it, an outline, or nothing.
    """

    words: str
    kinds: tuple[str, ...]
    step: int
    sort: str


@dataclass(frozen=True)
class WeekRow:
    """A week of the year, or as many in which nobody trains: its Monday, how many days, a cell for
    each squad, what begins or is in it.
    """

    monday: date
    days: int
    cells: tuple[WeekCell, ...]
    notes: tuple[SeasonNote, ...]

    @property
    def day(self) -> str:
        """Its Monday, or from when to when."""
        first, last = self.monday, self.monday + timedelta(days=self.days - 1)
        begins = f"{first.day} {first:%b}"
        return begins if self.days == DAYS_A_WEEK else f"{begins} to {last.day} {last:%b}"

    def takes(self, later: WeekRow) -> bool:
        """Whether it goes on with the next: nobody trains in either, and nothing begins there."""
        cells = {cell.sort for cell in (*self.cells, *later.cells)}
        return cells == {"shut"} and not later.notes


def season_page(analysis: Analysis, season: Season, findings: Sequence[Finding]) -> Page:
    """The page of a season."""
    catalogue = analysis.catalogue
    columns = [_cells(analysis, season, squad) for squad in season.squads]
    return entry_page(
        catalogue,
        season,
        first=date_words(season.first),
        last=date_words(season.last),
        heads=[catalogue.club.squads[id].title for id in season.squads],
        weeks=_folded(
            WeekRow(monday, DAYS_A_WEEK, tuple(own), tuple(notes_of(analysis, season, monday)))
            for monday, *own in zip(mondays(season), *columns, strict=True)
        ),
        squads=[squad_year(analysis, season, id) for id in season.squads],
        dates=[
            (title, [(own.title, stretch_words(own)) for own in each])
            for title, each in (
                ("Terms", season.terms),
                ("Closures", season.closures),
                ("Exams", season.exams),
                ("Other courses", season.courses),
            )
            if each
        ],
        meets=[
            (link(meet), date_words(meet.first))
            for meet in sorted(
                (catalogue.meets[id] for id in season.meets), key=lambda own: own.first
            )
        ],
        timetables=links(catalogue.timetables[id] for id in season.timetables),
        findings=findings_on(season, findings),
    )


def _folded(weeks: Iterable[WeekRow]) -> list[WeekRow]:
    """Weeks of a holiday as one row."""
    rows: list[WeekRow] = []
    for week in weeks:
        if rows and rows[-1].takes(week):
            rows[-1] = replace(rows[-1], days=rows[-1].days + week.days)
        else:
            rows.append(week)
    return rows


def stretch_words(own: Stretch) -> str:
    """From when to when, with the year."""
    if own.first == own.last:
        return date_words(own.first)
    first = day_words(own.first) if own.first.year == own.last.year else date_words(own.first)
    return f"{first} to {date_words(own.last)}"


def _weeks(analysis: Analysis, season: Season, squad: str) -> list[SquadWeek]:
    blocks = blocks_in(analysis, season, squad)
    return squad_weeks(season, season.squads[squad], blocks, summaries(analysis, season, squad))


def _cells(analysis: Analysis, season: Season, squad: str) -> Iterator[WeekCell]:
    """Each week of a season for a squad: its load, and in small what sort of week it is, tests,
    exams, another course.
    """
    rules = test_rules(analysis, season, squad)
    runs = runs_of_tests(season, season.squads[squad], blocks_in(analysis, season, squad), rules)
    tested = {monday_of(on) for days in runs.values() for on in days}
    for monday, own in zip(mondays(season), _weeks(analysis, season, squad), strict=True):
        if not any(season.is_term(monday + timedelta(days=n)) for n in range(DAYS_A_WEEK)):
            yield WeekCell("", (), 0, "shut")
            continue
        kinds = [
            own.week.week.kind_told if own.week else "",
            "test" if monday in tested else "",
            *_around(season, squad, monday),
        ]
        words = "" if own.block is None else "?" if own.load is None else show_number(own.load, 0)
        sort = "held" if own.block else "outlined" if own.outline else "bare"
        yield WeekCell(words, tuple(dict.fromkeys(filter(None, kinds))), own.step, sort)


def _around(season: Season, squad: str, monday: date) -> Iterator[str]:
    """Exams and another course of a squad in a week."""
    sunday = monday + _DAYS_TO_SUNDAY
    if any(squad in one.squads and one.meets(monday, sunday) for one in season.exams):
        yield "exams"
    for one in season.courses:
        if squad in one.squads and one.meets(monday, sunday):
            yield one.course.shown
