"""What times the sets of one catalogue: its effort scale, and each lane group's clock in each
course, made once.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property

from almanac.arithmetic.clock import Clock
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.pace import Pacer
from almanac.arithmetic.pace_lines import Paces
from almanac.model.catalogue import Catalogue
from almanac.units import Course


@dataclass(frozen=True, eq=False)
class Timing:
    """The clocks of one catalogue. It lives as long as the analysis that holds it: nothing here
    outlives its catalogue.
    """

    catalogue: Catalogue = field(repr=False)
    _clocks: dict[tuple[str, Course], Clock] = field(default_factory=dict, repr=False)

    @cached_property
    def scale(self) -> EffortScale:
        """The club's effort scale."""
        return EffortScale(self.catalogue.efforts)

    def clock(self, group: str, course: Course) -> Clock:
        """The clock of one lane group in one course. Raises KeyError for an unknown group."""
        if (group, course) not in self._clocks:
            catalogue = self.catalogue
            paces = Paces(catalogue.lane_groups[group], catalogue.benchmarks, catalogue.policy)
            pacer = Pacer(paces, catalogue.gear, self.scale, course)
            self._clocks[group, course] = Clock(group, pacer, catalogue.policy, catalogue.gear)
        return self._clocks[group, course]
