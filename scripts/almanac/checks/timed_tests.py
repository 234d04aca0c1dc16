"""Rules on what is written down of lane groups' timed tests."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import chain
from typing import TypeVar

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.catalogue import Catalogue
from almanac.model.closed import CLUB
from almanac.model.club import AssumedTest, TimedTest
from almanac.source.reader import DataPath
from almanac.source.said.bare_times import dotted_time
from almanac.units import parse_time, show_number

_Time = TypeVar("_Time", TimedTest, AssumedTest)
_FASTEST_M_S = 4.0
"""House figure: above anybody's speed, in fins too (some 3.5 m/s over 50 m, from memory), and far
below what a time in minutes gives that is read as seconds."""
_SLOWEST_M_S = 0.25
"""House figure: 50 m in 3:20, below a beginner's first kick."""


@forbids("test-too-fast")
def test_too_fast(analysis: Analysis) -> Iterator[Problem]:
    """No time of a benchmark, timed or assumed, is faster than 4 m/s: nobody swims that, in fins
    neither, and 800 m in 10.10, without a colon, are done in ten seconds.
    """
    catalogue = analysis.catalogue
    document = catalogue.documents[CLUB]
    for id, group in catalogue.club.lane_groups.items():
        timed = _placed(catalogue, id, "tests", group.tests)
        assumed = _placed(catalogue, id, "assume", group.assume)
        both: Iterator[tuple[DataPath, TimedTest | AssumedTest]] = chain(timed, assumed)
        for path, one in both:
            benchmark = catalogue.benchmarks[one.benchmark]
            if benchmark.metres > one.time * _FASTEST_M_S:
                seconds = show_number(one.time, 2)
                message = f"'{benchmark.title}' in {seconds} seconds: nobody is so fast"
                hint = _meant(benchmark.metres, str(document.node((*path, "time")).value))
                yield Problem(catalogue.club, (*path, "time"), message, hint)


def _meant(metres: float, written: str) -> str:
    """What to write: minutes with a colon, where the time with one is somebody's."""
    meant = dotted_time(written)
    if meant and metres >= parse_time(meant) * _SLOWEST_M_S:
        return f"write minutes with a colon: {meant}"
    return "look at the time and the benchmark again; a time is minutes:seconds, or seconds alone"


@warns("test-ahead")
def test_ahead(analysis: Analysis) -> Iterator[Problem]:
    """A timed test was swum by today: one of a later day tells nothing until then, and no target is
    worked out from it.
    """
    catalogue = analysis.catalogue
    for id, group in catalogue.club.lane_groups.items():
        for path, test in _placed(catalogue, id, "tests", group.tests):
            if test.on > analysis.today:
                message = f"{test.on} is still to come, and the test counts from that day on"
                hint = "write the day on which it was swum"
                yield Problem(catalogue.club, (*path, "on"), message, hint)


def _placed(
    catalogue: Catalogue, group: str, field: str, times: Iterable[_Time]
) -> Iterator[tuple[DataPath, _Time]]:
    """Times of a lane group, each with its place: the file may hold more, of benchmarks that are
    broken or retired.
    """
    written = catalogue.documents[CLUB].data["lane_groups"][group].get(field, ())
    kept = [n for n, own in enumerate(written) if _is_here(catalogue, own["benchmark"])]
    for number, time in zip(kept, times, strict=True):
        yield ("lane_groups", group, field, number), time


def _is_here(catalogue: Catalogue, benchmark: str) -> bool:
    """Whether times of a benchmark count, by its present id or one that it had."""
    key = "benchmark", benchmark
    stub = catalogue.documents.get(key)
    is_retired = stub is not None and "retired" in stub.data
    return not is_retired and catalogue.moved.get(key, benchmark) in catalogue.benchmarks
