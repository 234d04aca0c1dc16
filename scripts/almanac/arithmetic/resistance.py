"""Added drag: what a parachute, a pulley or a cord pulls with, and what a timed comparison tells.

A swimmer's own drag is a band and never one number, because methods of measuring it disagree by
tens of percent.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from almanac.arithmetic.guard import above_zero, not_below_zero
from almanac.model.club import CordReading
from almanac.model.drag import DragReading

STANDARD_GRAVITY = 9.80665  # m/s², by definition (CGPM 1901)


class OutsideMeasured(ValueError):
    """A value outside what was measured: there is no number, for nothing is extrapolated
    silently.
    """

    def __init__(self, what: str, value: float, low: float, high: float) -> None:
        super().__init__(f"{what} {value:g} is outside what was measured, {low:g} to {high:g}")
        self.value, self.low, self.high = value, low, high


@dataclass(frozen=True)
class DragBand:
    """A swimmer's own drag in newtons: passive (towed) at the least, active at the most."""

    least: float
    most: float


@dataclass(frozen=True)
class AddedDrag:
    """Added drag as a share of the swimmer's own, k'/k, under the two assumptions that a time can
    be read by.
    """

    at_equal_power: float
    at_equal_thrust: float


def drag_force(k: float, speed: float) -> float:
    """Drag in newtons: F = k v², with k in N s²/m² and speed in m/s."""
    return k * speed**2


def parachute_k(table: Sequence[DragReading], area_cm2: float) -> float:
    """k of a parachute in N s²/m², linear between the rows of a measured table by area in cm².

    Table: Coloretti et al. 2025, J Strength Cond Res 39:e701-5. Raises OutsideMeasured beyond its
    ends.
    """
    return _between([(row.area_cm2, row.k) for row in table], area_cm2, "an area of")


def cord_force(readings: Sequence[CordReading], stretch_m: float) -> float:
    """Force of a cord in newtons at a stretch in metres, linear between the club's own readings.

    Makers' tables over-state: only a calibration of the club's own cord serves. Raises
    OutsideMeasured beyond the readings, above all beyond the greatest stretch: there a cord breaks.
    """
    return _between(
        [(reading.stretch_m, reading.force_n) for reading in readings], stretch_m, "a stretch of"
    )


def _between(points: list[tuple[float, float]], at: float, what: str) -> float:
    ordered = sorted(points)
    xs = [x for x, _ in ordered]
    if not xs or not xs[0] <= at <= xs[-1]:
        raise OutsideMeasured(what, at, xs[0] if xs else 0.0, xs[-1] if xs else 0.0)
    after = max(1, bisect_left(xs, at))
    if len(ordered) == 1:
        return ordered[0][1]
    (x0, y0), (x1, y1) = ordered[after - 1], ordered[after]
    return y0 if x0 == x1 else y0 + (y1 - y0) * (at - x0) / (x1 - x0)


def pulley_force(hanging_kg: float, ratio: float) -> float:
    """Pull of a hanging mass in newtons: m g × ratio. Friction and the start of the mass come on
    top, unmeasured.

    ``ratio`` is 1 for a straight rope and 0.5 where the rope is doubled at the mass's expense of
    travel.
    """
    return hanging_kg * STANDARD_GRAVITY * ratio


# The swimmer's own drag in newtons: the first number times the speed in m/s to the second.
PASSIVE = (23.5, 2.0)
ACTIVE = (32.2, 3.3)


def swimmer_drag(speed: float) -> DragBand:
    """A swimmer's own drag at a speed in m/s: 23.5 v^2.0 passive, 32.2 v^3.3 active.

    Narita et al. 2017, J Biomech 54:123-8, front crawl, measured at 0.9-1.5 m/s passive and 1.0-1.4
    m/s active; outside those speeds the band is an extension and is shown as such. The two curves
    cross below 0.8 m/s, so the band runs from the smaller to the greater. Raises ValueError for a
    speed below zero.
    """
    not_below_zero(speed=speed)
    passive, active = (at_one * speed**exponent for at_one, exponent in (PASSIVE, ACTIVE))
    return DragBand(min(passive, active), max(passive, active))


def added_drag(plain_s: float, resisted_s: float) -> AddedDrag:
    """What a plain and a resisted time over the same distance tell of the added drag.

    At equal power k'/k = (T'/T)³ - 1; at equal thrust (T'/T)² - 1 (algebra from F = k v²). Neither
    assumption is a measured truth: both are shown. Below zero where the resisted time is the
    shorter: the gear did not resist, or one of the times is wrong. Raises ValueError where a time
    is not above zero.
    """
    above_zero(plain_time=plain_s, resisted_time=resisted_s)
    ratio = resisted_s / plain_s
    return AddedDrag(ratio**3 - 1, ratio**2 - 1)
