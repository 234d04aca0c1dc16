"""How far a week of a block lies above or below the weeks before it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from statistics import median

from almanac.arithmetic.balance import Balance
from almanac.arithmetic.block import WeekPlan
from almanac.arithmetic.working import Difference, Known, Quotient, Working

WEEKS_BEFORE = 4

Number = Callable[[WeekPlan], float | None]  # a number of a week, None where a part is missing


@dataclass(frozen=True)
class WeekOfBlock:
    """A week of a block, and the weeks before it in order."""

    week: WeekPlan
    earlier: tuple[WeekPlan, ...] = ()
    least_load: float = 0.0
    group: str = ""

    @property
    def balance(self) -> Balance:
        """The balance of the week."""
        return self.week.balance

    @property
    def follows_a_break(self) -> bool:
        """Whether the week before was a holiday or of a taper: a rise is then what was meant."""
        return bool(self.earlier) and (
            self.earlier[-1].is_holiday or self.earlier[-1].week.is_taper
        )


def week_change(of: WeekOfBlock, number: Number, unit: str) -> Working | None:
    """A number of a week over the median of it in the last four weeks of the block (all there are,
    where they are fewer), less one. Weeks of which a part is missing are left out.

    None for a first week, after a holiday or a taper, where a part of the week itself is missing,
    and where the median is zero. No numeric limit of such a step has evidence (Impellizzeri et al.
    2020, J Athl Train 55(9)).
    """
    now = number(of.week)
    if now is None or of.follows_a_break:
        return None
    known = [(week.number, own) for week in of.earlier if (own := number(week)) is not None]
    last = known[-WEEKS_BEFORE:]
    usual = median(own for _, own in last) if last else 0.0
    if not usual:
        return None
    weeks = [str(week) for week, _ in last]
    name = f"median of weeks {', '.join(weeks)}" if len(weeks) > 1 else f"week {weeks[0]}"
    after = Known(now, f"week {of.week.number}", unit)
    return Difference(Quotient(after, Known(usual, name, unit)), Known(1))


def distance_change(of: WeekOfBlock) -> Working | None:
    """Metres of the week over the median of the last four weeks, less one."""
    return week_change(of, _planned(lambda week: week.balance.metres), "m")


def resisted_change(of: WeekOfBlock) -> Working | None:
    """Resisted metres of the week over the median of the last four weeks, less one."""
    return week_change(of, _planned(lambda week: week.balance.resisted_m), "m")


def fast_change(of: WeekOfBlock) -> Working | None:
    """Metres at efforts that count as fast over the median of the last four weeks, less one."""
    return week_change(of, _planned(lambda week: week.balance.fast_m), "m")


def load_change(of: WeekOfBlock) -> Working | None:
    """Load of the week over the median of the last four weeks, less one. Not told of a week lighter
    than the policy's ``week_load_least``.
    """
    own = whole_load(of.week)
    return None if own is None or own < of.least_load else week_change(of, whole_load, "")


def _planned(number: Callable[[WeekPlan], float]) -> Number:
    return lambda week: number(week) if week.is_planned else None


def whole_load(week: WeekPlan) -> float | None:
    """The load of a week of which every day is known, in rating × minutes; None of another."""
    return week.load.total if week.load and week.load.is_whole else None
