"""What a lane group holds over any distance: lines through its timed tests."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import Enum
from functools import cached_property
from statistics import linear_regression

from almanac.model.club import LaneGroup, TimedTest
from almanac.model.knowledge import Benchmark
from almanac.model.moving import Activity
from almanac.model.policy import Policy
from almanac.units import Course

# of the machine, in an exponent: even pace over twice the distance is 1, and not just below it
_ROUNDING = 1e-9


class Because(Enum):
    """Why there is no number."""

    NO_PACE_RULE = "the drill names no benchmark that it is timed by"
    NOT_TESTED = "the group has no test of it"
    TESTS_DISAGREE = "the group's tests of it cannot all be right"


@dataclass(frozen=True)
class NoNumber:
    """No number, and why: for which drill, and the benchmark that would give it."""

    because: Because
    drill: str
    benchmark: str = ""


@dataclass(frozen=True)
class TestPoint:
    """A timed test as a point: ``metres`` long, ``seconds`` taken."""

    metres: float
    seconds: float
    benchmark: str
    course: Course


@dataclass(frozen=True)
class PaceLine:
    """T(D) = reference_s · (D / reference_m) ^ exponent, for one activity of one lane group.

    ``estimated``: one test only, so the exponent is the policy's.
    """

    reference_m: float
    reference_s: float
    exponent: float
    points: tuple[TestPoint, ...]
    estimated: bool

    @property
    def tests(self) -> tuple[tuple[float, float], ...]:
        """The tests that it is drawn through, as (metres, seconds)."""
        return tuple((point.metres, point.seconds) for point in self.points)

    def seconds(self, metres: float) -> float:
        """Best time over ``metres`` metres, in seconds."""
        return float(self.reference_s * (metres / self.reference_m) ** self.exponent)


def fit_power_law(
    points: Iterable[tuple[float, float]], reference_m: float = 1.0
) -> tuple[float, float]:
    """Least squares line through (metres, seconds) in log-log: (seconds over ``reference_m``
    metres, exponent).

    T(D) = T_ref · (D / D_ref) ^ b. Raises ValueError for fewer than two different distances, or a
    distance or a time that is not above zero; OverflowError where a line from absurd times is asked
    far from its distances. Checked against the line that Kennelly drew through running records
    (Popular Science Monthly 73, 1908, p. 386: T grows with the 9/8 power of distance).
    """
    logs = [(math.log(metres / reference_m), math.log(seconds)) for metres, seconds in points]
    if len({x for x, _ in logs}) < 2:
        raise ValueError("a line needs two different distances")
    slope, intercept = linear_regression(*zip(*logs, strict=True))
    return math.exp(intercept), slope


def latest_tests(tests: Iterable[TimedTest]) -> tuple[TimedTest, ...]:
    """The newest test of each benchmark, oldest first; of two on one day, the later in the list."""
    newest: dict[str, TimedTest] = {}
    for test in sorted(tests, key=lambda test: test.on):
        newest.pop(test.benchmark, None)  # so that the newest of all stands last
        newest[test.benchmark] = test
    return tuple(newest.values())


@dataclass(frozen=True)
class Paces:
    """The pace lines of one lane group, by activity and the gear that the tests were done with."""

    group: LaneGroup
    benchmarks: Mapping[str, Benchmark]
    policy: Policy

    def points(self, activity: Activity, gear: frozenset[str]) -> tuple[TestPoint, ...]:
        """The group's newest tests of an activity, shortest first."""
        points = []
        for test in latest_tests(self.group.tests):
            benchmark = self.benchmarks[test.benchmark]
            if benchmark.activity == activity and frozenset(benchmark.gear) == gear:
                metres = benchmark.distance * test.course.unit.metres
                points.append(TestPoint(metres, test.time, benchmark.id, test.course))
        return tuple(sorted(points, key=lambda point: point.metres))

    @cached_property
    def lines(self) -> dict[str, PaceLine | Because]:
        """By benchmark id, the pace line of its activity, or why there is none."""
        return {like: self._line(like) for like in self.benchmarks}

    def _line(self, like: str) -> PaceLine | Because:
        benchmark = self.benchmarks[like]
        points = self.points(benchmark.activity, frozenset(benchmark.gear))
        if not points:
            return Because.NOT_TESTED
        if len({point.metres for point in points}) == 1:
            exponent = self.policy.limit("single_test_exponent")
            return PaceLine(
                points[-1].metres, points[-1].seconds, exponent, points[-1:], estimated=True
            )
        reference = points[0].metres
        best, exponent = fit_power_law(
            ((point.metres, point.seconds) for point in points), reference
        )
        least, greatest = (
            self.policy.limit("least_exponent"),
            self.policy.limit("greatest_exponent"),
        )
        if not least - _ROUNDING <= exponent <= greatest + _ROUNDING:
            return Because.TESTS_DISAGREE
        return PaceLine(reference, best, exponent, points, estimated=False)
