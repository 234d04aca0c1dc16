"""What a lane group holds: times over any distance from its timed tests, and targets at an
effort.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import Enum
from functools import cached_property
from statistics import linear_regression

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.expand import Piece, Rep
from almanac.arithmetic.working import (
    Between,
    BuildTime,
    Known,
    Named,
    PowerLaw,
    Product,
    Quotient,
    Sum,
    Working,
)
from almanac.model.club import LaneGroup, TimedTest
from almanac.model.knowledge import Activity, Benchmark, Gear
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


@dataclass(frozen=True)
class Target:
    """A target time with its working; ``estimated`` from one test, ``other_course`` from tests in
    another pool.
    """

    working: Working
    estimated: bool
    other_course: bool

    @property
    def seconds(self) -> float:
        """The target in seconds."""
        return self.working.value


@dataclass(frozen=True)
class Pacer:
    """Targets of one lane group in one course."""

    paces: Paces
    gear: Mapping[str, Gear]
    scale: EffortScale
    course: Course

    def pieces(self, rep: Rep) -> tuple[Target | NoNumber, ...]:
        """The target of each piece of a rep, paced by the length of the whole rep."""
        return tuple(self.piece(piece, rep.distance) for piece in rep.pieces)

    def whole(self, rep: Rep, pieces: tuple[Target | NoNumber, ...]) -> Target | NoNumber:
        """The target of a whole rep: its pieces added up, each paced by the length of the whole
        rep.

        Where a piece has no number, the rep has none, for the same reason.
        """
        targets: list[Target] = []
        for target in pieces:
            if isinstance(target, NoNumber):
                return target
            targets.append(target)
        working = targets[0].working
        if len(targets) > 1:
            named = (
                Named(target.working, piece.drill.id, "s")
                for target, piece in zip(targets, rep.pieces, strict=True)
            )
            working = Sum(tuple(named))
        return Target(
            working, any(t.estimated for t in targets), any(t.other_course for t in targets)
        )

    def piece(self, piece: Piece, rep_distance: int) -> Target | NoNumber:
        """The target of one piece of a rep of ``rep_distance``, in the course's unit.

        T(D) / share of best speed at the effort, times the drill's factor and each gear's, where D
        is the whole rep: a swimmer who goes on without a stop holds the pace of the whole. What is
        held takes the time that it is held.
        """
        if piece.hold_s is not None:
            return Target(Known(piece.hold_s, "held", "s"), estimated=False, other_course=False)
        rule = piece.drill.pace
        if rule is None:
            return NoNumber(Because.NO_PACE_RULE, piece.drill.id)
        line = self.paces.lines[rule.like]
        if isinstance(line, Because):
            return NoNumber(line, piece.drill.id, rule.like)
        best = self._best(line, piece, rep_distance)
        factors = self._factors(piece, self.paces.benchmarks[rule.like])
        first, last = (self._at(best, word, factors) for word in piece.effort.words)
        along = piece.effort.along
        working: Working
        if along is None:
            working = BuildTime(first, last)
        elif first == last or along == 0:
            working = first
        else:
            working = Between(first, last, float(along))
        other = any(point.course != self.course for point in line.points)
        return Target(working, line.estimated, other)

    def _best(self, line: PaceLine, piece: Piece, rep_distance: int) -> Working:
        unit = self.course.unit.metres
        reference = Known(line.reference_s, "line through the tests", "s")
        best: Working = PowerLaw(
            reference, line.reference_m, rep_distance * unit, line.exponent, line.tests
        )
        best = Named(best, "best time", "s")
        if piece.distance == rep_distance:
            return best
        return Product((best, Quotient(Known(piece.distance), Known(rep_distance))))

    def _factors(self, piece: Piece, benchmark: Benchmark) -> tuple[Known, ...]:
        assert piece.drill.pace is not None
        own = [Known(piece.drill.pace.factor, piece.drill.id)]
        worn = [
            Known(self.gear[id].pace_factor, id) for id in piece.gear if id not in benchmark.gear
        ]
        return tuple(factor for factor in own + worn if factor.value != 1)

    def _at(self, best: Working, word: str, factors: tuple[Known, ...]) -> Working:
        at_effort: Working = best
        if self.scale.share(word) != 1:
            at_effort = Quotient(best, Known(self.scale.share(word), word))
        return Product((at_effort, *factors)) if factors else at_effort
