"""The figures of a benchmark."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from almanac.analysis.figures.figure import Figure, Section, Shown
from almanac.arithmetic.group_tests import GroupTrials, paired_trials
from almanac.arithmetic.test_workings import critical_pace, critical_speed_of, reserve
from almanac.model.benchmark import Benchmark
from almanac.model.catalogue import Catalogue


@dataclass(frozen=True)
class BenchmarkForGroup:
    """A benchmark, and the lane group whose tests are asked for, None where no group's are."""

    catalogue: Catalogue
    benchmark: Benchmark
    group: str | None
    day: date | None = None


def trials_of(
    catalogue: Catalogue, benchmark: Benchmark, day: date | None
) -> Iterator[GroupTrials]:
    """The tests that critical speeds are worked out from, by lane group, as known by a day."""
    return paired_trials(catalogue.club, catalogue.benchmarks, benchmark, day)


def _trials(whole: BenchmarkForGroup) -> Iterator[tuple[str, GroupTrials]]:
    for found in trials_of(whole.catalogue, whole.benchmark, whole.day):
        if found.group == whole.group:
            yield "{}", found


TOTALS: tuple[Figure[BenchmarkForGroup], ...] = ()

CRITICAL_SPEED: tuple[Figure[GroupTrials], ...] = (
    Figure("critical speed", "Critical speed", critical_speed_of, Shown.SPEED, "m/s"),
    Figure("pace", "Pace", critical_pace, Shown.PACE, "s a 100 m"),
    Figure("reserve", "D′", reserve, Shown.METRES, "m"),
)  # fmt: skip

BENCHMARK = (
    Section("benchmark", lambda whole: iter([("{}", whole)]), {"totals": TOTALS},
            "Races and tests"),
    Section("critical speed", _trials, {"groups": CRITICAL_SPEED}, "Races and tests"),
)  # fmt: skip
