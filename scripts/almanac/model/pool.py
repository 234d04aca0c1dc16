"""Pools: depths, ends, lanes, and what is at hand where somebody is in danger."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from almanac.units import LAND, Course


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
