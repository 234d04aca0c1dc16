"""What a lane group's tests over several distances tell together."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from almanac.arithmetic.known_tests import is_stale, latest_tests
from almanac.model.benchmark import Benchmark
from almanac.model.club import Club, TimedTest
from almanac.model.vocabularies import CRITICAL_SPEED


@dataclass(frozen=True)
class GroupTrials:
    """A lane group's times over several distances: (metres, seconds)."""

    group: str
    trials: tuple[tuple[float, float], ...]


def paired_trials(
    club: Club, benchmarks: Mapping[str, Benchmark], benchmark: Benchmark, day: date | None = None
) -> Iterator[GroupTrials]:
    """By lane group, the times that critical speed comes from: the latest that were known by a day
    in a benchmark and in those that it is paired with, of the same activity, all in one course.

    A group is left out where it lacks one of the tests, where one was due again before the newest
    of them was swum, or where the longer was not the slower.
    """
    paired = [
        benchmark,
        *(
            benchmarks[id]
            for id in benchmark.pair_with
            if benchmarks[id].activity == benchmark.activity
        ),
    ]
    if CRITICAL_SPEED not in benchmark.gives or len({item.metres for item in paired}) < 2:
        return
    for id, group in club.lane_groups.items():
        trials = _in_one_course(latest_tests(group.tests, day), paired)
        times = [seconds for _, seconds in sorted(trials)]
        if trials and all(earlier < later for earlier, later in itertools.pairwise(times)):
            yield GroupTrials(id, trials)


def _in_one_course(
    tests: Sequence[TimedTest], paired: Sequence[Benchmark]
) -> tuple[tuple[float, float], ...]:
    """The times in every one of some benchmarks, in the course of the newest such; none where no
    course has them all.
    """
    for course in dict.fromkeys(test.course for test in reversed(tests)):
        found = {test.benchmark: test for test in tests if test.course == course}
        if all(item.id in found for item in paired):
            newest = max(found[item.id].on for item in paired)
            if any(is_stale(found[item.id], item, newest) for item in paired):
                continue
            metres = course.unit.metres
            return tuple((item.distance * metres, float(found[item.id].time)) for item in paired)
    return ()
