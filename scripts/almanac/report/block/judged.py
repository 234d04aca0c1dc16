"""A block beside what is wished of it, hand-made or composed, by its figures and not by a plan."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.block_wishes import (
    full_load,
    goals_of,
    loads_of,
    practices_for,
    weeks_run,
)
from almanac.arithmetic.planning.choices import Choice
from almanac.arithmetic.planning.costs import AGAIN_DAYS
from almanac.model.block import ShareRange
from almanac.report.planning.practices import choice_of


@dataclass(frozen=True)
class JudgedWeek:
    """A week: its load, also in hundredths of a full one, None where a day of it is not known; what
    was wished of it, None where nothing was. Where that was, ``races`` weigh beside both.
    """

    number: int
    kind: str
    sessions: int
    load: float
    of_full: float | None
    wished: int | None
    metres: float
    kick: float | None
    supine: float | None
    races: float = 0.0


@dataclass(frozen=True)
class JudgedShare:
    """A share of the whole block beside its range."""

    name: str
    share: float | None
    wished: ShareRange

    @property
    def is_met(self) -> bool:
        """Whether it lies in its range."""
        return self.wished.holds(self.share)


@dataclass(frozen=True)
class JudgedCount:
    """How many there are, and how many are wished."""

    name: str
    found: int
    wished: int


@dataclass(frozen=True)
class Again:
    """A main set that comes again too soon: on which days."""

    main: str
    first: date
    second: date


@dataclass(frozen=True)
class JudgedBlock:
    """A block for the squad's first lane group."""

    summary: BlockSummary
    weeks: tuple[JudgedWeek, ...]
    shares: tuple[JudgedShare, ...]
    goals: tuple[JudgedCount, ...]
    untested: tuple[tuple[str, int], ...]
    again: tuple[Again, ...]
    warm_ups: int


def judged(analysis: Analysis, summary: BlockSummary) -> JudgedBlock:
    """A block beside what it says itself was wished of it."""
    days = [*_choices(analysis, summary)]
    return JudgedBlock(
        summary,
        tuple(_weeks(summary)),
        tuple(
            JudgedShare(name, getattr(summary.balance, name), wished)
            for name, wished in summary.block.wished_shares.items()
        ),
        tuple(
            JudgedCount(own.goal, round(practices_for(own).value), own.wished)
            for own in goals_of(summary)
        ),
        tuple(_untested(analysis, summary)),
        tuple(again_in(days)),
        len({own.opens for _, _, own in days}),
    )


def _choices(analysis: Analysis, summary: BlockSummary) -> Iterator[tuple[date, int, Choice]]:
    for week in summary.weeks:
        for day in week.days:
            for practice in day.practices:
                yield day.on, week.number, choice_of(analysis, practice)


def _weeks(summary: BlockSummary) -> Iterator[JudgedWeek]:
    wished = {own.week.number: own for own in loads_of(summary)}
    loads = [week.load.total if week.load else 0.0 for week in summary.weeks]
    whole_week = full_load(summary)
    for load, week in zip(loads, summary.weeks, strict=True):
        whole = whole_week and week.load and week.load.is_whole
        wish = wished.get(week.number)
        yield JudgedWeek(
            week.number,
            "taper" if week.week.is_taper else week.week.kind,
            sum(len(day.practices) for day in week.days),
            load,
            wish.part if wish else 100 * load / whole_week if whole else None,
            wish.wished if wish else None,
            week.balance.metres,
            week.balance.kick_share,
            week.balance.supine_share,
            wish.of_races if wish else 0.0,
        )


def _untested(analysis: Analysis, summary: BlockSummary) -> Iterator[tuple[str, int]]:
    run = weeks_run(summary, analysis.catalogue.benchmarks)
    for number, week in enumerate(summary.block.weeks, 1):
        for benchmark in week.benchmarks:
            if number not in run[benchmark]:
                yield benchmark, number


def again_in(days: Sequence[tuple[date, int, Choice]]) -> Iterator[Again]:
    """Main sets that come again too soon, from the practices of days in order."""
    last: dict[str, date] = {}
    for on, _, choice in days:
        for main in choice.mains:
            if main in last and 0 < (on - last[main]).days < AGAIN_DAYS:
                yield Again(main, last[main], on)
            last[main] = on
