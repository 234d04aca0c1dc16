"""What a piece of resisting gear pulls with over the speeds of swimming, and what the club's own
tests tell of it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from almanac.arithmetic.known_tests import latest_tests
from almanac.arithmetic.resistance import (
    AddedDrag,
    DragBand,
    OutsideMeasured,
    added_drag,
    drag_force,
    parachute_k,
    pulley_force,
    swimmer_drag,
)
from almanac.model.benchmark import Benchmark
from almanac.model.club import Club
from almanac.model.gear import Gear
from almanac.units import COURSES

SPEEDS = (0.6, 0.8, 1.0, 1.2, 1.4, 1.6, 1.8)  # m/s: from slow kicking to fast swimming
MEASURED_SPEEDS = (0.9, 1.4)  # m/s: where both curves of the swimmer's own drag were measured


@dataclass(frozen=True)
class DragAtSpeed:
    """Pull of the gear in newtons (None where it is not known) and the swimmer's own band, at a
    speed in m/s.
    """

    speed: float
    gear_n: float | None
    own: DragBand
    measured: bool


@dataclass(frozen=True)
class Pull:
    """How a piece of gear pulls: with ``k`` times speed squared, or with a ``constant_n`` force; or
    not known.
    """

    k: float | None = None
    constant_n: float | None = None
    outside: str = ""

    def at(self, speed: float) -> float | None:
        """Newtons at a speed in m/s, None where it is not known."""
        return drag_force(self.k, speed) if self.k is not None else self.constant_n


def pull_of(gear: Gear) -> Pull:
    """The pull of a piece of gear from its entry: its table at the club's area, its k, or its
    hanging mass.
    """
    drag = gear.drag
    if drag is None:
        return Pull()
    if drag.table and drag.area_cm2 is not None:
        try:
            return Pull(k=parachute_k(drag.table, drag.area_cm2))
        except OutsideMeasured as problem:
            return Pull(outside=str(problem))
    if drag.k is not None:
        return Pull(k=drag.k)
    if drag.hanging_kg is not None and drag.ratio is not None:
        return Pull(constant_n=pulley_force(drag.hanging_kg, drag.ratio))
    return Pull()


def drag_rows(pull: Pull) -> tuple[DragAtSpeed, ...]:
    """The pull and the swimmer's own drag at each of ``SPEEDS``."""
    low, high = MEASURED_SPEEDS
    return tuple(
        DragAtSpeed(speed, pull.at(speed), swimmer_drag(speed), low <= speed <= high)
        for speed in SPEEDS
    )


@dataclass(frozen=True)
class TimedComparison:
    """A lane group's plain and resisted time over one distance, in seconds, and the added drag that
    they tell.
    """

    group: str
    plain: Benchmark
    resisted: Benchmark
    plain_s: float
    resisted_s: float
    added: AddedDrag


def timed_comparisons(
    club: Club, benchmarks: Mapping[str, Benchmark], gear: str, day: date | None = None
) -> Iterator[TimedComparison]:
    """Every lane group's comparison for a piece of gear: the same activity, distance and course,
    with it and without, by the latest tests that were known by a day.

    A group that was no slower with it is left out: one of its times is wrong, and tells of no drag.
    """
    # Of any number of benchmarks a club swims a few: only those are set beside each other.
    swum = {test.benchmark for group in club.lane_groups.values() for test in group.tests}
    known = [benchmark for id, benchmark in benchmarks.items() if id in swum]
    pairs = [
        (plain, resisted)
        for resisted in known
        if resisted.gear == (gear,)
        for plain in known
        if not plain.gear
        and plain.activity == resisted.activity
        and plain.metres == resisted.metres
    ]
    for id, group in club.lane_groups.items():
        tests = {(test.benchmark, test.course): test for test in latest_tests(group.tests, day)}
        for plain, resisted in pairs:
            for course in COURSES.values():
                one, other = tests.get((plain.id, course)), tests.get((resisted.id, course))
                if one and other and other.time > one.time:
                    yield TimedComparison(
                        id, plain, resisted, one.time, other.time, added_drag(one.time, other.time)
                    )
