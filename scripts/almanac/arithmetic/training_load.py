"""Session load, and how a week of it varies (Foster 1998, Med Sci Sports Exerc 30:1164-8)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from statistics import fmean, pstdev, stdev


class Deviation(Enum):
    """Which standard deviation: Foster does not say, so it is named wherever the number is
    shown.
    """

    SAMPLE = "sample"
    POPULATION = "population"


@dataclass(frozen=True)
class WeekLoad:
    """A week's load: total and daily mean; SD, monotony (mean / SD) and strain (total × monotony).

    The last three are None where they are undefined: fewer than two days known, or no variation at
    all.
    """

    total: float
    mean: float
    deviation: float | None
    monotony: float | None
    strain: float | None
    convention: Deviation


def session_load(rating: float, minutes: float) -> float:
    """Load of a session: rating from 0 to 10, times minutes."""
    return rating * minutes


def week_load(days: Sequence[float | None], convention: Deviation = Deviation.SAMPLE) -> WeekLoad:
    """Total, mean, SD, monotony and strain of daily loads. A rest day is 0; None is a missing day
    and is left out.

    Raises ValueError where no day is known.
    """
    known = [load for load in days if load is not None]
    if not known:
        raise ValueError("no day of the week is known")
    total, mean = sum(known), fmean(known)
    if len(known) < 2:
        return WeekLoad(total, mean, None, None, None, convention)
    deviation = (stdev if convention is Deviation.SAMPLE else pstdev)(known)
    monotony = mean / deviation if deviation > 1e-9 * max(1.0, abs(mean)) else None
    return WeekLoad(
        total, mean, deviation, monotony, None if monotony is None else total * monotony, convention
    )
