"""What a lane group's tests over several distances tell together."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from almanac.arithmetic.pace_lines import latest_tests
from almanac.model.club import Club
from almanac.model.knowledge import Benchmark
from almanac.model.vocabularies import CRITICAL_SPEED


@dataclass(frozen=True)
class GroupTrials:
    """A lane group's times over several distances: (metres, seconds)."""

    group: str
    trials: tuple[tuple[float, float], ...]


def paired_trials(
    club: Club, benchmarks: Mapping[str, Benchmark], benchmark: Benchmark
) -> Iterator[GroupTrials]:
    """By lane group, the times that critical speed comes from: the latest in a benchmark and in
    those that it is paired with, of the same activity.

    A group is left out where it lacks one of the tests, or where the longer was not the slower.
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
        tests = {test.benchmark: test for test in latest_tests(group.tests)}
        if not all(item.id in tests for item in paired):
            continue
        trials = tuple(
            (item.distance * tests[item.id].course.unit.metres, float(tests[item.id].time))
            for item in paired
        )
        times = [seconds for _, seconds in sorted(trials)]
        if all(earlier < later for earlier, later in itertools.pairwise(times)):
            yield GroupTrials(id, trials)
