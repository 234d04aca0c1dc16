"""Session load, and how a week of it varies (Foster 1998, Med Sci Sports Exerc 30:1164-8)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import Enum
from statistics import fmean, pstdev, stdev

DAYS_A_WEEK = 7
TRAINING_DAYS = 4  # with fewer, monotony counts days and tells nothing of them


class Deviation(Enum):
    """Which standard deviation: Foster does not say, so it is named wherever the number is
    shown.
    """

    SAMPLE = "sample"
    POPULATION = "population"


@dataclass(frozen=True)
class WeekLoad:
    """A week's load: total and daily mean; SD, monotony (mean / SD) and strain (total × monotony).

    The last three are None where they are undefined or withheld. ``known`` is on how many of the
    ``days`` the others stand.
    """

    total: float
    mean: float
    deviation: float | None
    monotony: float | None
    strain: float | None
    convention: Deviation
    known: int
    days: int

    @property
    def is_whole(self) -> bool:
        """Whether every day is known."""
        return self.known == self.days


def session_load(rating: float, minutes: float) -> float:
    """Load of a session: the rating of the whole session from 0 to 10, times its minutes from first
    start to last finish, rests included. In arbitrary units (AU); for swims, land and meets alike.

    Source: Foster et al. 2001, J Strength Cond Res 15:109-15: 60 min at 7 are 420.
    """
    return rating * minutes


def variation(days: Sequence[float | None], convention: Deviation = Deviation.SAMPLE) -> WeekLoad:
    """Total, mean, SD, monotony = mean / SD and strain = total × monotony of daily loads. A rest
    day is 0; None is a missing day and is left out.

    Raises ValueError where no day is known.
    """
    known = [load for load in days if load is not None]
    if not known:
        raise ValueError("no day of the week is known")
    total, mean = sum(known), fmean(known)
    only = WeekLoad(total, mean, None, None, None, convention, len(known), len(days))
    if len(known) < 2:
        return only
    deviation = (stdev if convention is Deviation.SAMPLE else pstdev)(known)
    # Days alike differ by what floats lose: that is no deviation to divide by.
    monotony = mean / deviation if deviation > 1e-9 * max(1.0, abs(mean)) else None
    strain = None if monotony is None else total * monotony
    return replace(only, deviation=deviation, monotony=monotony, strain=strain)


def week_load(days: Sequence[float | None], convention: Deviation = Deviation.SAMPLE) -> WeekLoad:
    """A week's load: total of the days that are known, and how many they are; monotony, the daily
    mean over the standard deviation; strain, the total times the monotony.

    A rest day is 0, and only where it is named as rest; a day that is not named is missing, never
    0. Monotony and strain are withheld unless all seven days are known and at least four of them
    hold training: with fewer, monotony counts days. Source: Foster 1998, Med Sci Sports Exerc
    30:1164-8; he does not say which standard deviation, so the one that is taken is named. The
    diary in Foster et al. 2001, table 5 (3,400 AU, monotony 1.26) comes out over its nine sessions
    with the deviation of the population; here it is over days, as the words of 1998 say. No number
    of either is known to be too high.

    Raises ValueError where no day is known.
    """
    found = variation(days, convention)
    trained = sum(load is not None and load > 0 for load in days)
    if found.known == DAYS_A_WEEK and trained >= TRAINING_DAYS:
        return found
    return replace(found, deviation=None, monotony=None, strain=None)
