"""Rules on benchmarks, and on what a lane group's tests of them say together."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.pace_lines import PaceLine
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.benchmark import Benchmark
from almanac.model.vocabularies import CRITICAL_SPEED
from almanac.units import COURSES, show_distance


@warns("tests-disagree")
def tests_disagree(analysis: Analysis) -> Iterator[Problem]:
    """A lane group's tests of one activity slow with distance as swimmers do.

    Where the exponent of time on distance from one test to the next is outside the policy's
    ``least_exponent`` to ``greatest_exponent``, one of the two times is a mistake of the stopwatch
    or the list, and no targets are worked out from them.
    """
    club = analysis.catalogue.club
    for id in club.lane_groups:
        for names in _disagreeing(analysis, id):
            message = f"the times for {' and '.join(names)} cannot all be right"
            path = ("lane_groups", id, "tests")
            yield Problem(club, path, message, "check the stopwatch, and test again", of_key=True)


def _disagreeing(analysis: Analysis, group: str) -> Iterator[tuple[str, ...]]:
    """Pairs of a lane group's tests that cannot both be right, by benchmark, each once."""
    told: set[tuple[str, ...]] = set()
    for course in COURSES.values():
        paces = analysis.timing.clock(group, course).pacer.paces
        for like in analysis.catalogue.benchmarks:
            line = paces.line(like, course)
            for segment in line.unsound if isinstance(line, PaceLine) else ():
                names = tuple(point.benchmark for point in segment.ends)
                if names not in told:
                    told.add(names)
                    yield names


@warns("pair-without-figure")
def pair_without_figure(analysis: Analysis) -> Iterator[Problem]:
    """Benchmarks that are paired tell something together: critical speed, for a benchmark that
    gives it and a pair of the same activity over another distance; or the drag of gear, for the
    same activity and distance with it and without.

    A word of ``test-uses`` that was renamed would else take the figure off the page unseen.
    """
    benchmarks = analysis.catalogue.benchmarks
    for benchmark in benchmarks.values():
        pairs = [benchmarks[id] for id in benchmark.pair_with]
        if pairs and not any(_tell_together(benchmark, other) for other in pairs):
            message = "nothing is worked out from this benchmark and those it is paired with"
            hint = f"let it give {CRITICAL_SPEED}, or pair it with the same swim in other gear"
            yield Problem(benchmark, ("pair_with",), message, hint, of_key=True)


def _tell_together(one: Benchmark, other: Benchmark) -> bool:
    if one.activity != other.activity:
        return False
    if one.metres == other.metres:
        return set(one.gear) != set(other.gear)
    return CRITICAL_SPEED in one.gives


@forbids("benchmark-mid-pool")
def benchmark_mid_pool(analysis: Analysis) -> Iterator[Problem]:
    """A benchmark's distance ends at a wall of the course that it is swum in."""
    for benchmark in analysis.catalogue.benchmarks.values():
        course = benchmark.protocol.course
        if benchmark.distance % course.length:
            message = (
                f"{show_distance(benchmark.distance, course.unit)} ends between the walls of "
                f"a {course} pool"
            )
            yield Problem(benchmark, ("distance",), message, f"write a multiple of {course.length}")
