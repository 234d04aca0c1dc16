"""What times the sets of one catalogue: its effort scale, and each lane group's clock in each
course, made once.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cached_property

from almanac.arithmetic.clock import Clock
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.pace import Pacer
from almanac.arithmetic.pace_lines import Paces
from almanac.model.benchmark import Benchmark
from almanac.model.catalogue import Catalogue
from almanac.model.club import LaneGroup, Squad
from almanac.model.gear import Gear
from almanac.model.policy import Policy, Word
from almanac.units import Course


@dataclass(frozen=True, eq=False)
class Clocks:
    """The clocks of the lane groups, and all that they stand on. On a ``day`` the tests known by
    then count; without one, all.
    """

    efforts: Mapping[str, Word]
    lane_groups: Mapping[str, LaneGroup]
    benchmarks: Mapping[str, Benchmark]
    gear: Mapping[str, Gear]
    policy: Policy
    day: date | None = None
    squads: Mapping[str, Squad] = field(default_factory=dict)
    _made: dict[tuple[str, Course], Clock] = field(default_factory=dict, init=False, repr=False)

    @cached_property
    def scale(self) -> EffortScale:
        """The club's effort scale."""
        return EffortScale(self.efforts)

    def clock(self, group: str, course: Course, own: LaneGroup | None = None) -> Clock:
        """The clock of one lane group in one course; where it is in other lanes than usual, or a
        part of it, ``own`` is what it is there. Raises KeyError for an unknown group.
        """
        if own is not None:
            usual = self.clock(group, course)
            paces = replace(usual.pacer.paces, group=own)
            return replace(usual, pacer=replace(usual.pacer, paces=paces))
        if (group, course) not in self._made:
            paces = Paces(self.lane_groups[group], self.benchmarks, self.policy, self.day)
            squad = self.squads.get(self.lane_groups[group].squad)
            level = squad.level if squad else ""
            pacer = Pacer(paces, self.gear, self.scale, course, level)
            self._made[group, course] = Clock(group, pacer, self.policy, self.gear)
        return self._made[group, course]


@dataclass(frozen=True, eq=False)
class Timing:
    """A catalogue with its clocks; ``known`` are clocks that stand on the same. What is summed up
    holds the clocks alone, and so keeps no catalogue alive.
    """

    catalogue: Catalogue = field(repr=False)
    known: Clocks | None = field(default=None, repr=False)
    day: date | None = None

    @cached_property
    def clocks(self) -> Clocks:
        """The clocks of the lane groups."""
        club = self.catalogue
        return self.known or Clocks(
            club.efforts,
            club.lane_groups,
            club.benchmarks,
            club.gear,
            club.policy,
            self.day,
            club.club.squads,
        )

    @property
    def scale(self) -> EffortScale:
        """The club's effort scale."""
        return self.clocks.scale

    def clock(self, group: str, course: Course) -> Clock:
        """The clock of one lane group in one course. Raises KeyError for an unknown group."""
        return self.clocks.clock(group, course)
