"""One part of a practice, laid into the practice's pool and on the clock of each lane group."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from almanac.arithmetic.course import Misfit, misfits
from almanac.arithmetic.expand import Event, Rep, expand, reps
from almanac.arithmetic.facets import distance_working
from almanac.arithmetic.summary import GroupClocks, SetSummary
from almanac.arithmetic.timed_reps import GroupClock
from almanac.arithmetic.timing import Timing
from almanac.arithmetic.working import Working
from almanac.model.club import LaneGroup, Pool
from almanac.model.plans import PracticePart
from almanac.model.swim_set import SwimSet
from almanac.units import Course

SetInPool = Callable[[str, Course], SetSummary]  # the figures of a set, by id, laid into a course


@dataclass(frozen=True)
class PartRun:
    """One part of a practice in the practice's pool, on the clock for each lane group of the
    squad.
    """

    part: PracticePart
    swim_set: SwimSet | None
    events: tuple[Event, ...]
    distance: Working
    misfits: tuple[Misfit, ...]
    clocks: Mapping[str, GroupClock]

    @property
    def reps(self) -> tuple[Rep, ...]:
        """Its reps, in order."""
        return tuple(reps(self.events))

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
        return PartRun(
            part,
            timing.catalogue.sets[part.set],
            summary.events,
            summary.distance,
            summary.misfits,
            summary.clocks,
        )
    events = expand(part.items, timing.catalogue.drills, timing.scale)
    clocks = GroupClocks(timing.clocks, pool.course, events, groups)
    return PartRun(
        part,
        None,
        events,
        distance_working(part.items),
        tuple(misfits(part.items, pool.course)),
        clocks,
    )
