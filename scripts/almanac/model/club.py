"""The club: pools, squads, lane groups with their timed tests, and the gear it owns. No person."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import ClassVar

from almanac.model.entry import Entry, Reference, Seconds, references
from almanac.model.pool import Pool
from almanac.units import COURSES, Course


@dataclass(frozen=True)
class Squad:
    """A squad: its level and how often it swims a week."""

    title: str
    level: str
    sessions_a_week: int


@dataclass(frozen=True)
class TimedTest:
    """A lane group's time for a benchmark, the course it was swum in, and the day."""

    benchmark: str
    time: Seconds
    course: Course
    on: date


@dataclass(frozen=True)
class AssumedTest:
    """The time that a lane group is assumed to swim in a benchmark."""

    benchmark: str
    time: Seconds


_USUAL_GAP = Seconds(10)  # where nobody swims, and none is said


@dataclass(frozen=True)
class LaneGroup:
    """Swimmers who train at one pace: never a person. ``gap`` seconds between swimmers.

    ``quickest`` and ``slowest`` are the times of the quickest and the slowest swimmer as shares of
    the group's own: targets and send-offs are the slowest's, room in the lane the quickest's.
    """

    title: str
    squad: str
    lanes: int = 1
    heads: int = 1
    gap: Seconds = _USUAL_GAP
    tests: tuple[TimedTest, ...] = ()
    assume: tuple[AssumedTest, ...] = ()
    quickest: float = 1.0
    slowest: float = 1.0


@dataclass(frozen=True)
class CordReading:
    """A cord's force in newtons at a stretch in metres beyond its slack length."""

    stretch_m: float
    force_n: float


@dataclass(frozen=True)
class SiteColours:
    """The colour of what is pressed, on white and on dark, as ``#rrggbb``; "" for the program's."""

    light: str = ""
    dark: str = ""


@dataclass(frozen=True)
class Site:
    """How the club's site is called, where it and its repository are, and what its first page says;
    "" for what is not said.
    """

    name: str = ""
    about: str = ""
    address: str = ""
    repository: str = ""
    welcome: str = ""
    colours: SiteColours = field(default_factory=SiteColours)


@dataclass(frozen=True, kw_only=True)
class Club(Entry):
    """The club's pools, squads, lane groups and gear. ``form``: see ``source.forms``."""

    kind: ClassVar[str] = "club"
    form: int = 1
    site: Site = field(default_factory=Site)
    pools: Mapping[str, Pool]
    squads: Mapping[str, Squad]
    lane_groups: Mapping[str, LaneGroup]
    gear_owned: Mapping[str, int]
    calibrations: Mapping[str, tuple[CordReading, ...]] = field(default_factory=dict)

    @property
    def waters(self) -> Mapping[str, Pool]:
        """Its pools that hold water; none where it trains on land alone."""
        return {id: pool for id, pool in self.pools.items() if not pool.is_land}

    @property
    def home_course(self) -> Course:
        """The course of its first pool; any, where it has none."""
        return next((pool.course for pool in self.waters.values()), next(iter(COURSES.values())))

    def references(self) -> Iterator[Reference]:
        yield from references("gear", self.gear_owned, "owns")
        yield from references("gear", self.calibrations, "calibrates")
        for group in self.lane_groups.values():
            yield Reference("squad", group.squad, "in")
            yield from references("benchmark", (test.benchmark for test in group.tests), "tested")
            yield from references("benchmark", (own.benchmark for own in group.assume), "assumed")
