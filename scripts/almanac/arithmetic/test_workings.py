"""The workings behind what tests tell: critical speed of a lane group, added drag of gear."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import fmean

from almanac.arithmetic.gear_drag import Pull, TimedComparison
from almanac.arithmetic.group_tests import GroupTrials
from almanac.arithmetic.resistance import ACTIVE, PASSIVE, STANDARD_GRAVITY
from almanac.arithmetic.working import (
    Difference,
    Known,
    Labelled,
    Power,
    Product,
    Quotient,
    Slope,
    Working,
)
from almanac.model.gear import Gear


def critical_speed_of(tests: GroupTrials) -> Working:
    """Critical speed: the slope of distance on time over a lane group's tests, by least squares, in
    metres a second. Two tests give the two-point form (D2 − D1) / (T2 − T1). Wakayoshi et al. 1992,
    Int J Sports Med 13:367-71.

    Shorter tests raise the speed: compare only tests over the same distances. It is held for about
    14 to 39 minutes, not for ever (Scott, Burden and Dekerle 2023, J Hum Kinet).
    """
    return Slope(tests.trials)


def critical_pace(tests: GroupTrials) -> Working:
    """Critical speed as the seconds that 100 m take."""
    return Quotient(Known(100, "", "m"), _named_speed(tests))


def reserve(tests: GroupTrials) -> Working:
    """D′: the metres that the line through a lane group's tests has at time zero. It is not
    reliable (CV 13 to 45 %: Scott, Burden and Dekerle 2023, J Hum Kinet), and shorter tests lower
    it.
    """
    metres, seconds = (fmean(column) for column in zip(*tests.trials, strict=True))
    covered = Product((_named_speed(tests), Known(seconds, "mean time", "s")))
    return Difference(Known(metres, "mean distance", "m"), covered)


def _named_speed(tests: GroupTrials) -> Working:
    return Labelled(critical_speed_of(tests), "critical speed", "m/s")


def drag_at_equal_thrust(found: TimedComparison) -> Working:
    """Added drag as a share of the swimmer's own, had both been swum with one thrust: the ratio of
    the times squared, less one.
    """
    return Difference(Power(_ratio(found), 2), Known(1))


def drag_at_equal_power(found: TimedComparison) -> Working:
    """Added drag as a share of the swimmer's own, had both been swum with one power: the ratio of
    the times cubed, less one.
    """
    return Difference(Power(_ratio(found), 3), Known(1))


def _ratio(found: TimedComparison) -> Working:
    return Quotient(
        Known(found.resisted_s, found.resisted.title, "s"),
        Known(found.plain_s, found.plain.title, "s"),
    )


@dataclass(frozen=True)
class GearAtSpeed:
    """A resisting piece of gear and its pull, at a speed in m/s."""

    gear: Gear
    pull: Pull
    speed: float

    @property
    def at(self) -> Known:
        """The speed, as a term."""
        return Known(self.speed, "", "m/s")


def pull_at(of: GearAtSpeed) -> Working | None:
    """What the gear pulls with, in newtons: k times the square of the speed, or the weight that
    hangs on it times its ratio. None where its pull is not known.
    """
    drag = of.gear.drag
    if of.pull.k is not None:
        return Product((Known(of.pull.k, "k", "N s²/m²"), Power(of.at, 2)))
    if of.pull.constant_n is None or drag is None or drag.hanging_kg is None:
        return None
    gravity = Known(STANDARD_GRAVITY, "", "m/s²", digits=5)
    return Product((Known(drag.hanging_kg, "", "kg"), gravity, Known(drag.ratio or 0.0, "ratio")))


def least_own_drag(of: GearAtSpeed) -> Working:
    """The lower edge of the band of the swimmer's own drag, in newtons."""
    return min(_own_drags(of), key=lambda drag: drag.value)


def most_own_drag(of: GearAtSpeed) -> Working:
    """The upper edge of the band of the swimmer's own drag, in newtons."""
    return max(_own_drags(of), key=lambda drag: drag.value)


def _own_drags(of: GearAtSpeed) -> tuple[Working, Working]:
    towed, swum = (
        Product((Known(at_one, f"N at 1 m/s, {how}"), Power(of.at, exponent)))
        for (at_one, exponent), how in ((PASSIVE, "towed"), (ACTIVE, "swum"))
    )
    return towed, swum
