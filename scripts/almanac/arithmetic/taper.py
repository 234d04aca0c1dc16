"""A taper: the days that it runs over, against the loading weeks before it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from statistics import fmean
from typing import Protocol

from almanac.arithmetic.balance import Balance
from almanac.arithmetic.block_days import DayPlan
from almanac.model.block import Block, Week

LOADING_WEEKS = 2
DAYS_A_WEEK = 7


class PlannedWeek(Protocol):
    """A week of a block, added up."""

    @property
    def number(self) -> int: ...
    @property
    def week(self) -> Week: ...
    @property
    def days(self) -> tuple[DayPlan, ...]: ...
    @property
    def balance(self) -> Balance: ...


@dataclass(frozen=True)
class Taper:
    """A taper for one lane group. ``weeks`` are the numbers of those that it touches.

    ``before_m`` is the mean distance of the loading weeks in ``against``, ``during_m`` that of the
    taper, a week; both are None where a day of them is missing or nothing was swum before.
    ``light_days`` are its days that are lighter than the mean day in the water of those weeks, None
    as the others are.
    """

    first: date
    last: date
    weeks: tuple[int, ...]
    against: tuple[int, ...]
    before_m: float | None
    during_m: float | None
    light_days: int | None

    @property
    def cut(self) -> float | None:
        """How far it cuts the distance of the weeks before it: 0.5 is half."""
        if not self.before_m or self.during_m is None:
            return None
        return 1 - self.during_m / self.before_m


def taper(block: Block, weeks: Sequence[PlannedWeek]) -> Taper | None:
    """The distance of a taper, a week of it, against the mean of the last two loading weeks before
    it: cut = 1 − taper / before, a share. A taper between dates is taken for seven days: distance
    over its days, times seven.

    For swimmers under about 14 no percentage is shown; three to five lighter days are counted
    (common practice; the policy names the levels). The policy's ``taper_cut_least`` and
    ``taper_cut_most`` say how large a cut it asks for, and from which source. No number where no
    loading week stands before it, or a day of either is missing.
    """
    days = [day for week in weeks for day in week.days if _is_in(block, week.week, day)]
    if not days:
        return None
    first, last = days[0].on, days[-1].on
    loading = [week for week in weeks if week.week.is_loading and week.days[-1].on < first]
    before = loading[-LOADING_WEEKS:]
    known = before and all(day.day for week in before for day in week.days)
    before_m = fmean(week.balance.metres for week in before) if known else None
    swum = [day.metres for week in before for day in week.days if day.metres]
    usual_m = fmean(swum) if swum else 0.0
    whole = bool(before_m) and all(day.day for day in days)
    return Taper(
        first,
        last,
        tuple(week.number for week in weeks if any(day in days for day in week.days)),
        tuple(week.number for week in before),
        before_m or None,
        DAYS_A_WEEK * sum(day.metres for day in days) / len(days) if whole else None,
        sum(day.metres < usual_m for day in days) if whole else None,
    )


def _is_in(block: Block, week: Week, day: DayPlan) -> bool:
    if block.taper is None:
        return week.is_taper
    return block.taper.first <= day.on <= block.taper.last
