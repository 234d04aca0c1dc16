"""The page of a season: the year on one sheet, a row a week, and each squad's blocks and tests."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.season_days import (
    last_day,
    monday_of,
    mondays,
    overdue,
    runs_of_tests,
)
from almanac.arithmetic.season_weeks import AfterBlock, SquadWeek, after_blocks, squad_weeks
from almanac.arithmetic.training_load import DAYS_A_WEEK
from almanac.checks.season_days import test_rules
from almanac.checks.seasons import blocks_in
from almanac.findings import Finding, counted
from almanac.model.season import Season, Stretch
from almanac.report.shown import date_words, day_words
from almanac.rounding import show_change, show_number
from almanac.site.entry_page import entry_page, findings_on
from almanac.site.links import Link, Page, link, links
from almanac.site.season_notes import SeasonNote, notes_of

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
        squads=[_squad(analysis, season, id) for id in season.squads],
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


def _summaries(analysis: Analysis, season: Season, squad: str) -> dict[str, BlockSummary]:
    """By id the blocks of a squad that can be worked out, for its first lane group."""
    blocks = blocks_in(analysis, season, squad)
    known = {block.id: analysis.blocks.get(block.id, {}) for block in blocks}
    return {id: next(iter(groups.values())) for id, groups in known.items() if groups}


def _weeks(analysis: Analysis, season: Season, squad: str) -> list[SquadWeek]:
    blocks = blocks_in(analysis, season, squad)
    return squad_weeks(season, season.squads[squad], blocks, _summaries(analysis, season, squad))


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
        kinds = [_kind(own), "test" if monday in tested else "", *_around(season, squad, monday)]
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


def _kind(own: SquadWeek) -> str:
    """The kind of a week of a block, where it is no loading week."""
    week = own.week.week if own.week else None
    return "" if week is None or week.is_loading else "taper" if week.is_taper else week.kind


@dataclass(frozen=True)
class Plan:
    """A block, with the link to it, or an outline: from when to when, its name with the squad's,
    and what else is said of it.
    """

    first: date
    last: date
    title: str
    says: str
    to: Link | None = None

    @property
    def when(self) -> str:
        """From when to when."""
        return f"{day_words(self.first)} to {day_words(self.last)}"


@dataclass(frozen=True)
class SquadYear:
    """What a squad does: its aim, its blocks and outlines by date, its tests."""

    id: str
    title: str
    aim: str
    plans: tuple[Plan, ...]
    tests: tuple[tuple[Link, str, str], ...]


def _squad(analysis: Analysis, season: Season, squad: str) -> SquadYear:
    own, title = season.squads[squad], analysis.catalogue.club.squads[squad].title
    plans = sorted(_plans(analysis, season, squad, title), key=lambda plan: plan.first)
    return SquadYear(squad, title, own.aim, tuple(plans), tuple(_tests(analysis, season, squad)))


def _plans(analysis: Analysis, season: Season, squad: str, title: str) -> Iterator[Plan]:
    blocks = blocks_in(analysis, season, squad)
    for block, after in after_blocks(blocks, _summaries(analysis, season, squad)):
        name = block.title if block.title.startswith(title) else f"{title}: {block.title}"
        yield Plan(block.starts, last_day(block), name, _after_words(after), link(block))
    for own in season.squads[squad].outlines:
        yield Plan(own.first, own.last, f"{title}: {own.title}", own.meant)


def _after_words(after: AfterBlock | None) -> str:
    """How a block stands to the one before it."""
    if after is None:
        return ""
    if after.change is not None:
        change = show_change(after.change.value)
        return f"First week {change} in load against the last weeks of '{after.before.title}'."
    if after.days < 0:
        return ""
    if not after.weeks:
        return f"Straight after '{after.before.title}'."
    return f"{counted(after.weeks, 'week')} after '{after.before.title}'."


def _tests(analysis: Analysis, season: Season, squad: str) -> Iterator[tuple[Link, str, str]]:
    """Each benchmark of a squad with the days on which it was and will be run, and what is due."""
    own, rules = season.squads[squad], test_rules(analysis, season, squad)
    runs = runs_of_tests(season, own, blocks_in(analysis, season, squad), rules)
    late = analysis.catalogue.policy.limit("test_late_most")
    due = {one.benchmark: one.due for one in reversed([*overdue(season, runs, rules, late)])}
    for id, days in runs.items():
        when = ", ".join(f"{on.day} {on:%b}" for on in days) or "not run"
        words = f"due by {day_words(due[id])}, and not run then" if id in due else ""
        yield link(analysis.catalogue.benchmarks[id]), when, words
