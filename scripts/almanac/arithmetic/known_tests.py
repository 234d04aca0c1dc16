"""Which of a lane group's timed tests count: those known by a day, of one course, none too old to
stand beside another.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from almanac.model.benchmark import Benchmark
from almanac.model.club import AssumedTest, TimedTest
from almanac.units import Course


@dataclass(frozen=True)
class TestPoint:
    """A timed test as a point: ``metres`` long, ``seconds`` taken. ``stale`` where it is past its
    benchmark's ``repeat_every``, ``assumed`` where it was never swum.
    """

    metres: float
    seconds: float
    benchmark: str
    course: Course
    stale: bool = False
    assumed: bool = False


def latest_tests(tests: Iterable[TimedTest], day: date | None = None) -> tuple[TimedTest, ...]:
    """The newest test of each benchmark in each course that was known by a day, oldest first; of
    two on one day, the later in the list.
    """
    newest: dict[tuple[str, Course], TimedTest] = {}
    for test in sorted(tests, key=lambda test: test.on):
        if day is None or test.on <= day:
            key = test.benchmark, test.course
            newest.pop(key, None)  # so that the newest of all stands last
            newest[key] = test
    return tuple(newest.values())


def repeat_weeks(benchmark: Benchmark) -> int:
    """How often a benchmark is to be repeated, in weeks."""
    return int(benchmark.repeat_every.split()[0])


def is_stale(test: TimedTest, benchmark: Benchmark, day: date | None) -> bool:
    """Whether a test is past its benchmark's ``repeat_every`` on a day."""
    return day is not None and day - test.on > timedelta(weeks=repeat_weeks(benchmark))


def known_points(
    tests: Iterable[TimedTest],
    like: Collection[str],
    benchmarks: Mapping[str, Benchmark],
    course: Course,
    day: date | None = None,
) -> tuple[TestPoint, ...]:
    """The tests of one activity that a pace line is drawn through, shortest first.

    Those of the course itself, where it has any; else those of the course that was tested last,
    scaled by length alone and marked, since times are not converted between courses. Of these, the
    tests within their benchmark's ``repeat_every``; where all are older, the newest alone, marked
    as an old test. So tests of two courses are never joined, nor an old test with any other. Of two
    tests over one distance the newer counts.
    """
    own = [test for test in latest_tests(tests, day) if test.benchmark in like]
    if not own:
        return ()
    chosen = course if any(test.course == course for test in own) else own[-1].course
    swum = [test for test in own if test.course == chosen]
    fresh = [test for test in swum if not is_stale(test, benchmarks[test.benchmark], day)]
    points: dict[float, TestPoint] = {}
    for test in fresh or swum[-1:]:
        metres = benchmarks[test.benchmark].distance * test.course.unit.metres
        points[metres] = TestPoint(metres, test.time, test.benchmark, test.course, not fresh)
    return tuple(points[metres] for metres in sorted(points))


def assumed_points(
    assume: Iterable[AssumedTest], like: Collection[str], benchmarks: Mapping[str, Benchmark]
) -> tuple[TestPoint, ...]:
    """The tests of one activity that the club assumes of a group, shortest first, each in its
    benchmark's own course.
    """
    points = {}
    for own in assume:
        if own.benchmark in like:
            tested = benchmarks[own.benchmark]
            course = tested.protocol.course
            points[tested.metres] = TestPoint(
                tested.metres, own.time, own.benchmark, course, assumed=True
            )
    return tuple(points[metres] for metres in sorted(points))
