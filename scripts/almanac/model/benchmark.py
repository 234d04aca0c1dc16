"""Benchmarks: timed tests, how they are run, and what a change in a result means."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar

from almanac.model.entry import (
    Ids,
    Reference,
    Seconds,
    leans_on,
    references,
)
from almanac.model.moving import Moving
from almanac.units import Course


@dataclass(frozen=True)
class Protocol:
    """How a test is run; ``rest`` before it, in seconds."""

    steps: tuple[str, ...]
    rest: Seconds
    course: Course
    start: str
    timed_by: str


@dataclass(frozen=True)
class Reading:
    """What a change in the result means, and the change in seconds below which it means nothing."""

    means: str
    least_change_s: float


@dataclass(frozen=True, kw_only=True)
class Benchmark(Moving):
    """A timed test. ``distance`` is in the unit of the protocol's course."""

    kind: ClassVar[str] = "benchmark"
    distance: int
    protocol: Protocol
    gives: Ids
    repeat_every: str
    reading: Reading
    gear: Ids = ()
    pair_with: Ids = ()

    @property
    def metres(self) -> float:
        """The timed distance in metres."""
        return self.distance * self.protocol.course.unit.metres

    def references(self) -> Iterator[Reference]:
        yield from references("gear", self.gear, "needs")
        yield from references("benchmark", self.pair_with, "pair_with")
        yield from leans_on(self.evidence)
