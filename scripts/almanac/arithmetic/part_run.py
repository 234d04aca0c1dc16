"""One part of a practice, laid into the practice's pool and on the clock of each lane group."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from almanac.arithmetic.summary import SetSummary
from almanac.arithmetic.swum import ByGroup, GroupClocks, swum_by
from almanac.arithmetic.timed_reps import GroupClock
from almanac.arithmetic.timing import Timing
from almanac.model.club import LaneGroup, Pool
from almanac.model.plans import PracticePart
from almanac.model.swim_set import SwimSet
from almanac.units import Course

SetInPool = Callable[[str, Course], SetSummary]  # the figures of a set, by id, laid into a course


@dataclass(frozen=True, kw_only=True)
class PartRun(ByGroup):
    """One part of a practice in the practice's pool, as each lane group of the squad swims it, and
    on its clock.
    """

    part: PracticePart
    swim_set: SwimSet | None
    clocks: Mapping[str, GroupClock]

    @property
    def most_in_lane(self) -> int | None:
        """The most swimmers a lane may hold, where its set says so."""
        return self.swim_set.most_in_lane if self.swim_set else None


def run_part(
    timing: Timing,
    part: PracticePart,
    pool: Pool,
    groups: Mapping[str, LaneGroup],
    set_in_pool: SetInPool,
) -> PartRun:
    """A part laid into the pool and on the clock of each lane group."""
    if part.set:
        summary = set_in_pool(part.set, pool.course)
        own = {group: summary.of(group) for group in groups}
        first, clocks = next(iter(own.values()), summary.first), summary.clocks
        known = timing.catalogue.sets[part.set]
        return PartRun(first=first, swum=own, part=part, swim_set=known, clocks=clocks)
    found = swum_by(timing, part.items, pool.course, groups)
    clocks = GroupClocks(found.swum)
    return PartRun(first=found.first, swum=found.swum, part=part, swim_set=None, clocks=clocks)
