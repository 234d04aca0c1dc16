"""The club: pools, squads, lane groups with their timed tests, and the gear it owns. No person."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from typing import ClassVar

from almanac.model.entry import Entry, Reference, Seconds, references
from almanac.units import COURSES, LAND, Course


@dataclass(frozen=True)
class Depth:
    """Depth of a pool in metres, shallowest and deepest."""

    least: float
    most: float


@dataclass(frozen=True)
class LaneAtEnd:
    """What of a lane is otherwise than usual at one end; None for what is not."""

    depth_m: float | None = None
    platform_m: float | None = None
    edge_m: float | None = None
    ledge: bool | None = None
    starts: bool | None = None


@dataclass(frozen=True)
class PoolEnd:
    """One end of a pool: the least depth from its wall to 6 m out, and the heights above the water
    of platform and edge, in metres; None for what is not known. ``starts`` is False where the
    operator allows none. ``lanes`` are those that are otherwise, by number.
    """

    depth_m: float
    title: str = ""
    platform_m: float | None = None
    edge_m: float | None = None
    ledge: bool = False
    flags: bool | None = None
    starts: bool = True
    lanes: Mapping[str, LaneAtEnd] = field(default_factory=dict)

    def in_lane(self, lane: int) -> PoolEnd:
        """The end as it is in one lane."""
        own = self.lanes.get(str(lane))
        if own is None:
            return self
        otherwise = {name: value for name, value in vars(own).items() if value is not None}
        return replace(self, **otherwise)


START_END, TURN_END = ENDS = ("start", "turn")


@dataclass(frozen=True)
class Emergency:
    """What is said and fetched where somebody is in danger, as the club has written it down; "" for
    what it has not. ``call`` is the number to call, ``address`` what is said to who answers; the
    others are where it is.
    """

    call: str = ""
    address: str = ""
    telephone: str = ""
    defibrillator: str = ""
    first_aid: str = ""
    way_in: str = ""

    @property
    def unsaid(self) -> tuple[str, ...]:
        """What is not written down, in the order in which it is needed."""
        return tuple(name for name, words in vars(self).items() if not words)


@dataclass(frozen=True)
class Pool:
    """A pool that the club swims in; ``ends`` are those that are known. ``water_c`` in degrees
    Celsius. A hall, of the course ``land``, has no lanes and no depth.
    """

    title: str
    course: Course
    lanes: int = 0
    depth_m: Depth = Depth(0.0, 0.0)
    flags: bool = False
    water_c: float | None = None
    ends: Mapping[str, PoolEnd] = field(default_factory=dict)
    emergency: Emergency = field(default_factory=Emergency)

    @property
    def is_land(self) -> bool:
        """Whether there is no water."""
        return self.course == LAND

    def has_flags(self, end: str) -> bool:
        """Whether backstroke flags hang at an end."""
        own = self.ends[end].flags if end in self.ends else None
        return self.flags if own is None else own


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
