"""Critical speed, fade, points: what timed swims over several distances, laps and bases tell."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from fractions import Fraction
from statistics import fmean, linear_regression

from almanac.arithmetic.guard import above_zero


@dataclass(frozen=True)
class CriticalSpeed:
    """The line D = D' + CS · t: ``speed`` in m/s, ``reserve_m`` (D') in metres, ``r_squared``.

    D' is not reliable (CV 13 to 45 %: Scott, Burden and Dekerle 2023, J Hum Kinet), and shorter
    tests raise the speed and lower D': compare only tests over the same distances. The speed is
    held for about 14 to 39 minutes, not for ever.
    """

    speed: float
    reserve_m: float
    r_squared: float


def critical_speed(trials: Sequence[tuple[float, float]]) -> CriticalSpeed:
    """Critical speed from (metres, seconds) trials by least squares of distance on time.

    Wakayoshi et al. 1992, Int J Sports Med 13:367-71. Two trials give the two-point form. Raises
    ValueError for fewer than two different times, for a time or a distance that is not above zero,
    and where the longer swims were not the slower, so that there is no speed.
    """
    times = [seconds for _, seconds in trials]
    metres = [distance for distance, _ in trials]
    for distance, time in trials:
        above_zero(distance=distance, time=time)
    if len(set(times)) < 2:
        raise ValueError("critical speed needs two different times")
    slope, intercept = linear_regression(times, metres)
    if slope <= 0:
        raise ValueError("the longer swims were not the slower")
    mean = fmean(metres)
    whole = sum((distance - mean) ** 2 for distance in metres)
    left = sum(
        (distance - intercept - slope * time) ** 2
        for distance, time in zip(metres, times, strict=True)
    )
    return CriticalSpeed(slope, intercept, 1 - left / whole)


@dataclass(frozen=True)
class Fade:
    """How the later laps slow, as shares: 0.01 is one percent slower.

    ``last_lap``: the last against the mean of laps 2 to the one before it. ``second_half``: against
    the first half, start included; None where the laps cannot be halved.
    """

    last_lap: float
    second_half: float | None


def fade(laps_s: Sequence[float]) -> Fade:
    """Fade from lap times in seconds. The first lap holds the start, so the last is never compared
    with it.

    Raises ValueError for fewer than three laps or a lap that is not above zero.
    """
    if len(laps_s) < 3:
        raise ValueError("fade needs three laps or more")
    for lap in laps_s:
        above_zero(lap=lap)
    middle = laps_s[1:-1]
    half = len(laps_s) // 2
    halves = sum(laps_s[half:]) / sum(laps_s[:half]) - 1 if len(laps_s) % 2 == 0 else None
    return Fade(laps_s[-1] / fmean(middle) - 1, halves)


def laps(splits_s: Sequence[float]) -> list[float]:
    """Lap times from running splits, both in seconds. Raises ValueError where a split is not above
    the one before.
    """
    times = [after - before for before, after in zip([0.0, *splits_s], splits_s, strict=False)]
    if not all(lap > 0 for lap in times):
        raise ValueError("splits must rise")
    return times


def points(base_s: str | float, time_s: str | float) -> int:
    """⌊1000 (B / T)³⌋, cut and not rounded, for a base time B and a time T in seconds to the
    hundredth.

    The base is the user's to give. Worked in exact fractions, so that a whole number is never
    missed by a rounding of the machine. Raises ValueError for what is no number of seconds above
    zero.
    """
    return int(1000 * (_exact(base_s) / _exact(time_s)) ** 3)


def _exact(seconds: str | float) -> Fraction:
    try:
        exact = Fraction(Decimal(str(seconds)))
    except (InvalidOperation, OverflowError, ValueError):
        raise ValueError(f"{seconds!r} is no number of seconds") from None
    above_zero(time=exact)
    return exact
