"""A block added up: distance and load by day and week, for one lane group, and how they move."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from statistics import fmean

from almanac.arithmetic.balance import Balance, balance_of
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.session_load import planned_load
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.training_load import Deviation, WeekLoad, session_load, week_load
from almanac.model.plans import Block, Day, Week

DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


@dataclass(frozen=True)
class DayPlan:
    """One day of a block: what it holds, and its load; None for a day that is missing, or whose
    load is not known.

    ``swum`` is what the lane group swims of its practice, ``metres`` how far.
    """

    name: str
    on: date
    day: Day | None
    practice: PracticeSummary | None
    swum: Swum | None
    load: float | None
    metres: float
    balance: Balance

    @property
    def is_off(self) -> bool:
        """Whether the day is named as rest."""
        return self.day is not None and self.day.rest


@dataclass(frozen=True)
class WeekPlan:
    """One week of a block for one lane group. ``load`` is None where no day of it is known."""

    number: int
    week: Week
    days: tuple[DayPlan, ...]
    balance: Balance
    load: WeekLoad | None

    @property
    def days_off(self) -> int:
        """Days named as rest."""
        return sum(day.is_off for day in self.days)


@dataclass(frozen=True)
class Taper:
    """How far the taper's weeks cut the distance of the weeks before them: a share, 0.5 is half."""

    weeks: tuple[int, ...]
    before_m: float
    cut: float


@dataclass(frozen=True)
class BlockSummary:
    """A block added up for one lane group."""

    block: Block
    group: str
    weeks: tuple[WeekPlan, ...]
    balance: Balance
    taper: Taper | None


def summarise_block(
    block: Block,
    practices: Mapping[str, PracticeSummary],
    group: str,
    convention: Deviation = Deviation.SAMPLE,
) -> BlockSummary:
    """Add a block up from the summaries of its practices. Raises KeyError for a practice without
    one.
    """
    weeks: list[WeekPlan] = []
    for number, week in enumerate(block.weeks):
        monday = block.starts + timedelta(weeks=number)
        days = tuple(_days(week, monday, practices, group))
        balance = balance_of(day.swum for day in days if day.swum)
        loads = [day.load for day in days]
        load = week_load(loads, convention) if any(load is not None for load in loads) else None
        weeks.append(WeekPlan(number + 1, week, days, balance, load))
    everything = [day.swum for week in weeks for day in week.days if day.swum]
    return BlockSummary(block, group, tuple(weeks), balance_of(everything), taper(weeks))


def _days(
    week: Week, monday: date, practices: Mapping[str, PracticeSummary], group: str
) -> Iterator[DayPlan]:
    for number, name in enumerate(DAYS):
        day = week.days.get(name)
        practice = practices[day.practice] if day and day.practice else None
        swum = practice.of(group) if practice else None
        metres = swum.metres if swum else 0.0
        on, load = monday + timedelta(days=number), _day_load(day, practice, group)
        balance = balance_of([swum] if swum else [])
        yield DayPlan(name, on, day, practice, swum, load, metres, balance)


def _day_load(day: Day | None, practice: PracticeSummary | None, group: str) -> float | None:
    """Planned load of the practice plus minutes times rating of other work; rest is zero, a missing
    day is None.
    """
    if day is None:
        return None
    planned = planned_load(practice, group) if practice else None
    if practice is not None and planned is None:
        return None
    return (planned.value if planned else 0.0) + session_load(day.rating, day.minutes)


def taper(weeks: Sequence[WeekPlan]) -> Taper | None:
    """The cut of the weeks marked as taper against the mean of up to three weeks before them.

    The policy's ``taper_cut_least`` and ``taper_cut_most`` say how large a cut it asks for, and
    from which source. None where no week is marked, or none stands before.
    """
    marked = [week for week in weeks if week.week.taper]
    if not marked:
        return None
    before = [week.balance.metres for week in weeks if week.number < marked[0].number][-3:]
    if not before or not fmean(before):
        return None
    return Taper(
        tuple(week.number for week in marked),
        fmean(before),
        1 - fmean(week.balance.metres for week in marked) / fmean(before),
    )
