"""What each squad does in a season: its blocks and outlines by date, and its tests."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.season_days import (
    last_day,
    overdue,
    runs_of_tests,
)
from almanac.arithmetic.season_weeks import AfterBlock, after_blocks
from almanac.checks.season_days import test_rules
from almanac.checks.seasons import blocks_in
from almanac.findings import counted
from almanac.model.season import Season
from almanac.report.shown import day_words
from almanac.rounding import show_change
from almanac.site.links import Link, link


def summaries(analysis: Analysis, season: Season, squad: str) -> dict[str, BlockSummary]:
    """By id the blocks of a squad that can be worked out, for its first lane group."""
    blocks = blocks_in(analysis, season, squad)
    known = {block.id: analysis.blocks.get(block.id, {}) for block in blocks}
    return {id: next(iter(groups.values())) for id, groups in known.items() if groups}


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


def squad_year(analysis: Analysis, season: Season, squad: str) -> SquadYear:
    """What a squad does in a season."""
    own, title = season.squads[squad], analysis.catalogue.club.squads[squad].title
    plans = sorted(_plans(analysis, season, squad, title), key=lambda plan: plan.first)
    return SquadYear(squad, title, own.aim, tuple(plans), tuple(_tests(analysis, season, squad)))


def _plans(analysis: Analysis, season: Season, squad: str, title: str) -> Iterator[Plan]:
    blocks = blocks_in(analysis, season, squad)
    for block, after in after_blocks(blocks, summaries(analysis, season, squad)):
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
