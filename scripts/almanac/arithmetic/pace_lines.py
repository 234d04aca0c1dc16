"""What a lane group holds over any distance: straight pieces, in logarithms, through its timed
tests.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import Enum
from functools import cached_property

from almanac.arithmetic.known_tests import TestPoint, assumed_points, known_points
from almanac.model.benchmark import Benchmark
from almanac.model.club import LaneGroup
from almanac.model.policy import Policy
from almanac.units import Course

# of the machine, in an exponent: even pace over twice the distance is 1, and not just below it
_ROUNDING = 1e-9


class Because(Enum):
    """Why there is no number."""

    NO_PACE_RULE = "the drill names no benchmark that it is timed by"
    NOT_TESTED = "the group has no test of it"
    TOO_SLOW = "at this effort the group would be too slow to stay up"
    NO_GROUP = "no lane group is named whose pace would tell how far it is"
    TESTS_DISAGREE = "the group's tests of it cannot all be right"


@dataclass(frozen=True)
class NoNumber:
    """No number, and why: for which drill, and the benchmark that would give it."""

    because: Because
    drill: str
    benchmark: str = ""


@dataclass(frozen=True)
class Segment:
    """T(D) = test.seconds · (D / test.metres) ^ exponent: one straight piece of a pace line.

    ``ends`` are the tests that it is drawn through, one or two. ``sound`` where its exponent can
    be that of a swimmer.
    """

    exponent: float
    ends: tuple[TestPoint, ...]
    sound: bool

    def nearest(self, metres: float) -> TestPoint:
        """The test of it that is nearest to a distance, by ratio; the shorter of two as near."""
        if metres <= 0:  # of a rep whose parts miss its distance, which is a finding
            return self.ends[0]
        return min(self.ends, key=lambda point: abs(math.log(metres / point.metres)))

    def seconds(self, metres: float) -> float:
        """Best time over ``metres`` metres, in seconds."""
        test = self.nearest(metres)
        return float(test.seconds * (metres / test.metres) ** self.exponent)


@dataclass(frozen=True)
class PaceLine:
    """One activity of one lane group: its tests, shortest first, and the straight pieces through
    them. ``estimated``: one test only, so the exponent is the policy's.
    """

    points: tuple[TestPoint, ...]
    segments: tuple[Segment, ...]
    estimated: bool

    @property
    def stale(self) -> bool:
        """Whether it stands on a test that is past its ``repeat_every``."""
        return any(point.stale for point in self.points)

    @property
    def assumed(self) -> bool:
        """Whether it stands on times that nobody has swum."""
        return any(point.assumed for point in self.points)

    @property
    def unsound(self) -> tuple[Segment, ...]:
        """The pieces whose two tests cannot both be right."""
        return tuple(segment for segment in self.segments if not segment.sound)

    def segment(self, metres: float) -> Segment:
        """The piece that a distance lies on: between its two neighbours among the tests, and
        beyond them the nearest piece carried on.
        """
        for segment in self.segments:
            if metres <= segment.ends[-1].metres:
                return segment
        return self.segments[-1]

    def seconds(self, metres: float) -> float:
        """Best time over ``metres`` metres, in seconds."""
        return self.segment(metres).seconds(metres)


def line_through(points: tuple[TestPoint, ...], policy: Policy) -> PaceLine:
    """Straight pieces, in log-log, through the tests of one activity, shortest first.

    T(D) = T_i · (D / D_i) ^ b between tests i and i + 1, with b = ln(T_i+1 / T_i) / ln(D_i+1 /
    D_i), so that a tested distance has its own test as its best time. Beyond the tests the nearest
    piece goes on. With one test b is the policy's ``single_test_exponent`` and the line is marked
    as estimated. A piece whose b is outside the policy's ``least_exponent`` to
    ``greatest_exponent`` gives no number where it would be used: one of its two times is a mistake.

    That time grows as a power of distance is Kennelly's, of running records (Popular Science
    Monthly 73, 1908, p. 386: b = 9/8); the power of a swimmer is his own.
    """
    if len(points) == 1:
        exponent = policy.limit("single_test_exponent")
        return PaceLine(points, (Segment(exponent, points, sound=True),), estimated=True)
    least, greatest = policy.limit("least_exponent"), policy.limit("greatest_exponent")
    segments = []
    for ends in itertools.pairwise(points):
        exponent = _exponent(*ends)
        sound = least - _ROUNDING <= exponent <= greatest + _ROUNDING
        segments.append(Segment(exponent, ends, sound))
    return PaceLine(points, tuple(segments), estimated=False)


def _exponent(shorter: TestPoint, longer: TestPoint) -> float:
    return math.log(longer.seconds / shorter.seconds) / math.log(longer.metres / shorter.metres)


@dataclass(frozen=True)
class Paces:
    """The pace lines of one lane group as they are known on a ``day``, by activity and the gear
    that the tests were done with. Without a day every test is known, and none is old.
    """

    group: LaneGroup
    benchmarks: Mapping[str, Benchmark]
    policy: Policy
    day: date | None = None
    _lines: dict[tuple[str, Course], PaceLine | Because] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    _worn: dict[tuple[str, str, Course], list[tuple[TestPoint, TestPoint]]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    def line(self, like: str, course: Course) -> PaceLine | Because:
        """The pace line of a benchmark's activity for reps in a course, or why there is none."""
        if (like, course) not in self._lines:
            points = self._points(self._like[like], course) or assumed_points(
                self.group.assume, self._like[like], self.benchmarks
            )
            self._lines[like, course] = (
                line_through(points, self.policy) if points else Because.NOT_TESTED
            )
        return self._lines[like, course]

    def timed_with(self, like: str, gear: str, course: Course) -> list[tuple[TestPoint, TestPoint]]:
        """The group's own comparisons for a piece of gear: without it and with it, the same
        activity, distance and course, both within their ``repeat_every``; shortest first.
        """
        if (like, gear, course) not in self._worn:
            self._worn[like, gear, course] = self._timed_with(like, gear, course)
        return self._worn[like, gear, course]

    def _timed_with(
        self, like: str, gear: str, course: Course
    ) -> list[tuple[TestPoint, TestPoint]]:
        own = self.benchmarks[like]
        worn = frozenset((*own.gear, gear))
        with_it = {id for id, other in self.benchmarks.items()
                   if other.activity == own.activity and frozenset(other.gear) == worn}  # fmt: skip
        sides = [
            {point.metres: point for point in self._points(ids, course) if not point.stale}
            for ids in (self._like[like], with_it)
        ]
        return [
            (plain, sides[1][metres])
            for metres, plain in sides[0].items()
            if metres in sides[1] and sides[1][metres].course == plain.course
        ]

    def _points(self, like: Collection[str], course: Course) -> tuple[TestPoint, ...]:
        return known_points(self.group.tests, like, self.benchmarks, course, self.day)

    @cached_property
    def _like(self) -> dict[str, frozenset[str]]:
        """By benchmark, all that time the same activity with the same gear."""
        kinds: dict[object, set[str]] = {}
        for id, own in self.benchmarks.items():
            kinds.setdefault((own.activity, frozenset(own.gear)), set()).add(id)
        return {
            id: frozenset(kinds[own.activity, frozenset(own.gear)])
            for id, own in self.benchmarks.items()
        }
