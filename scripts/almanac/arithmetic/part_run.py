"""What some lane groups of a practice do, laid into the practice's pool and on their clocks."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from operator import attrgetter

from almanac.arithmetic.course import lay_in_course
from almanac.arithmetic.crews import Crew
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.scaling import OutOfBounds, with_counts
from almanac.arithmetic.summary import SetSummary
from almanac.arithmetic.swum_by_group import ByGroup, GroupClocks, swum_by
from almanac.arithmetic.timing import Timing
from almanac.arithmetic.working import Working
from almanac.model.pool import Pool
from almanac.model.practice import Doing
from almanac.model.swim_set import SwimSet
from almanac.model.variants import given, given_items
from almanac.source.reader import DataPath
from almanac.units import Course

SetInPool = Callable[[str, Course], SetSummary]  # the figures of a set, by id, laid into a course


@dataclass(frozen=True, kw_only=True)
class PartRun(ByGroup):
    """One thing that is done in a practice, as each lane group that takes part swims it, and on its
    clock. ``path`` leads to it in the file; ``word`` is which part of a practice it is.
    """

    path: DataPath
    word: str
    doing: Doing
    crews: tuple[Crew, ...]
    swim_set: SwimSet | None
    clocks: Mapping[str, GroupClock]

    def takes(self, group: str) -> Working | None:
        """What it takes a lane group, in seconds: its clock, in which the last rep's full send-off
        counts, or until the last swimmer of the fullest lane is home (last touch), whichever is
        later. None where its clock is not known.

        House convention: nothing new begins while somebody is still under way, nor inside a
        send-off that was promised.
        """
        own = self.clocks[group]
        if own.clock is None or own.last_touch is None or not self.is_in_water:
            return own.clock
        return max(own.clock, own.last_touch, key=attrgetter("value"))

    @property
    def number(self) -> int:
        """Which part of the practice it belongs to, from 0."""
        return int(self.path[1])

    @property
    def most_in_lane(self) -> int | None:
        """The most swimmers a lane may hold, where its set says so."""
        return self.swim_set.most_in_lane if self.swim_set else None

    @cached_property
    def is_in_water(self) -> bool:
        """Whether somebody is in the water in it; a pause is taken there."""
        reps = self.every_rep
        return not reps or any(not piece.drill.is_on_land for rep in reps for piece in rep.pieces)


def run_part(
    timing: Timing,
    path: DataPath,
    word: str,
    doing: Doing,
    crews: tuple[Crew, ...],
    pool: Pool,
    set_in_pool: SetInPool,
) -> PartRun:
    """A set or items laid into the pool and on the clock of each lane group that takes part."""
    groups = tuple(dict.fromkeys(crew.group for crew in crews))
    others = {crew.group: crew.lane_group for crew in crews if not crew.is_usual}
    if doing.set:
        written = timing.catalogue.sets[doing.set]
        own_size = _as_asked(timing, written, doing)
        known = given(own_size, doing.variants)
        summary: ByGroup
        if own_size is written and not doing.variants:
            summary = set_in_pool(doing.set, pool.course)
            clocks = summary.clocks
        else:
            laid = known if known.course == pool.course else lay_in_course(known, pool.course)
            summary = swum_by(timing, laid.items, laid.course, groups, laid.most_in_lane)
            clocks = GroupClocks(summary.swum)
        own = {group: summary.of(group) for group in groups}
        return PartRun(
            first=next(iter(own.values()), summary.first),
            swum=own,
            path=path,
            word=word,
            doing=doing,
            crews=crews,
            swim_set=known,
            clocks=GroupClocks(summary.swum, others) if others else clocks,
        )
    items = given_items(doing.items, doing.variants)
    found = swum_by(timing, items, pool.course, groups)
    return PartRun(
        first=found.first,
        swum=found.swum,
        path=path,
        word=word,
        doing=doing,
        crews=crews,
        swim_set=None,
        clocks=GroupClocks(found.swum, others),
    )


def _as_asked(timing: Timing, written: SwimSet, doing: Doing) -> SwimSet:
    """The set with the rounds or reps that are asked for here. What it cannot be asked for is as it
    is written: a check refuses it.
    """
    try:
        return with_counts(
            written, doing.rounds, doing.reps, timing.catalogue.policy.limit("most_reps")
        )
    except OutOfBounds:
        return written
