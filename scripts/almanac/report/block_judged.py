"""A block beside what is wished of it, hand-made or composed, by its figures and not by a plan."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.balance import Balance, balance_of
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.planning_choices import Choice
from almanac.arithmetic.planning_costs import AGAIN_DAYS
from almanac.arithmetic.planning_wishes import BlockWishes, Permille
from almanac.model import vocabularies as words
from almanac.report.planning_practices import choice_of


@dataclass(frozen=True)
class JudgedWeek:
    """A week: its load in hundredths of a full one, None where a day of it is not known; what was
    wished of it, None where nothing was.
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


@dataclass(frozen=True)
class JudgedShare:
    """A share of the whole block beside its range."""

    name: str
    share: float | None
    wished: Permille

    @property
    def is_met(self) -> bool:
        """Whether it lies in its range; nothing swum is nothing missed."""
        least, most = self.wished
        return self.share is None or least <= 1000 * self.share <= most


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
class Judged:
    """A block for the squad's first lane group."""

    summary: BlockSummary
    weeks: tuple[JudgedWeek, ...]
    shares: tuple[JudgedShare, ...]
    strokes: tuple[tuple[str, int, float], ...]
    goals: tuple[JudgedCount, ...]
    untested: tuple[tuple[str, int], ...]
    again: tuple[Again, ...]
    warm_ups: int


def judged(
    analysis: Analysis,
    id: str,
    wishes: BlockWishes,
    wanted: Mapping[str, int],
    loads: bool = True,
    full: int | None = None,
) -> Judged | None:
    """A block of the catalogue beside wishes; None where it cannot be worked out. ``wanted`` is by
    goal how many sessions are to serve it; without ``loads`` none are wished. ``full`` is the load
    of a full week: the heaviest one's where it is not known.
    """
    groups = analysis.blocks.get(id)
    if not groups:
        return None
    summary = next(iter(groups.values()))
    days = [*_choices(analysis, summary)]
    return Judged(
        summary,
        tuple(_weeks(summary, wishes if loads else None, full)),
        tuple(
            JudgedShare(name, _share(summary.balance, name), wished)
            for name, wished in wishes.shares.items()
        ),
        tuple(_strokes(summary, wishes)),
        tuple(
            JudgedCount(goal, sum(goal in own.goals for _, _, own in days), count)
            for goal, count in wanted.items()
        ),
        tuple(_untested(days, wishes)),
        tuple(again_in(days)),
        len({own.opens for _, _, own in days}),
    )


def _choices(analysis: Analysis, summary: BlockSummary) -> Iterator[tuple[date, int, Choice]]:
    for week in summary.weeks:
        for day in week.days:
            for practice in day.practices:
                yield day.on, week.number, choice_of(analysis, practice)


def _weeks(
    summary: BlockSummary, wishes: BlockWishes | None, full: int | None
) -> Iterator[JudgedWeek]:
    loads = [week.load.total if week.load else 0.0 for week in summary.weeks]
    known = [
        load
        for load, week in zip(loads, summary.weeks, strict=True)
        if week.load and week.load.is_whole
    ]
    whole_week = full or max(known, default=0.0)
    for load, week in zip(loads, summary.weeks, strict=True):
        whole = whole_week and week.load and week.load.is_whole
        wish = wishes.weeks[week.number - 1] if wishes else None
        yield JudgedWeek(
            week.number,
            "taper" if week.week.is_taper else week.week.kind,
            sum(len(day.practices) for day in week.days),
            load,
            100 * load / whole_week if whole else None,
            wish.load if wish and not _is_raced(wishes, week.number) else None,
            week.balance.metres,
            week.balance.kick_share,
            week.balance.supine_share,
        )


def _is_raced(wishes: BlockWishes | None, number: int) -> bool:
    """Whether a race weighs in a week, which no load that is wished has in it."""
    return wishes is not None and any(wishes.week_of(on) == number - 1 for on in wishes.races)


def _share(balance: Balance, name: str) -> float | None:
    if name == "dolphin_share":
        dolphin = balance.by.get("kick", {}).get(words.DOLPHIN, 0.0)
        return dolphin / balance.metres if balance.metres else None
    found: float | None = getattr(balance, name)
    return found


def _strokes(summary: BlockSummary, wishes: BlockWishes) -> Iterator[tuple[str, int, float]]:
    """Strokes that have too little of two weeks: stroke, the first of them, its share."""
    for at in range(0, len(summary.weeks) - 1, 2) if wishes.strokes else ():
        days = [day for week in summary.weeks[at : at + 2] for day in week.days]
        own = balance_of(swum for day in days for swum in day.swum)
        for stroke in wishes.four if own.metres else ():
            share = own.by.get("stroke", {}).get(stroke, 0.0) / own.metres
            if 1000 * share < wishes.strokes:
                yield stroke, at + 1, share


def _untested(
    days: Sequence[tuple[date, int, Choice]], wishes: BlockWishes
) -> Iterator[tuple[str, int]]:
    for number, week in enumerate(wishes.weeks, 1):
        for benchmark in week.benchmarks:
            if not any(own == number and benchmark in one.tests for _, own, one in days):
                yield benchmark, number


def again_in(days: Sequence[tuple[date, int, Choice]]) -> Iterator[Again]:
    """Main sets that come again too soon, from the practices of days in order."""
    last: dict[str, date] = {}
    for on, _, choice in days:
        for main in choice.mains:
            if main in last and 0 < (on - last[main]).days < AGAIN_DAYS:
                yield Again(main, last[main], on)
            last[main] = on
