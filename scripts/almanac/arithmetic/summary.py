"""The summary of a set: everything that its page, ``sum`` and the JSON show."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property

from almanac.arithmetic.brief import BriefHazard, brief
from almanac.arithmetic.course import Misfit, lay_in_course, misfits
from almanac.arithmetic.expand import Event, Piece, Rep, expand, reps
from almanac.arithmetic.facets import Shares, all_facets, distance_working, shares
from almanac.arithmetic.timed_reps import GroupClock
from almanac.arithmetic.timing import Clocks, Timing
from almanac.arithmetic.working import Working
from almanac.model.catalogue import Catalogue
from almanac.model.swim_set import SwimSet, reps_of
from almanac.units import Course


@dataclass(frozen=True)
class SetSummary:
    """A set added up, in one course.

    ``distance`` is in the course's unit, ``metres`` in metres; ``lengths`` is a whole number
    where every rep ends at a wall. ``clocks`` are by lane group.
    """

    swim_set: SwimSet
    events: tuple[Event, ...]
    timing: Clocks = field(repr=False)
    distance: Working
    gear: tuple[str, ...]
    brief: tuple[BriefHazard, ...]
    misfits: tuple[Misfit, ...]
    clocks: Mapping[str, GroupClock]

    @property
    def course(self) -> Course:
        """The course that it is laid in."""
        return self.swim_set.course

    @cached_property
    def reps(self) -> tuple[Rep, ...]:
        """Every rep, in order."""
        return tuple(reps(self.events))

    @cached_property
    def by(self) -> Mapping[str, Mapping[str, Fraction]]:
        """Its distance by the words of each facet, in the course's unit."""
        return all_facets(self.pieces, self.timing.scale)

    @cached_property
    def shares(self) -> Shares:
        """The shares that coaches ask for."""
        return shares(self.reps, self.timing.gear, self.timing.scale)

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """Every piece of every rep, in order."""
        return tuple(piece for rep in self.reps for piece in rep.pieces)

    @property
    def metres(self) -> float:
        """The distance in metres."""
        return self.distance.value * self.course.unit.metres

    @property
    def lengths(self) -> Fraction:
        """The distance in lengths of the pool."""
        return Fraction(int(self.distance.value), self.course.length)


class GroupClocks(Mapping[str, GroupClock]):
    """Events on the clock, by lane group; each is worked out when it is first asked for."""

    def __init__(
        self, timing: Clocks, course: Course, events: tuple[Event, ...], groups: Iterable[str]
    ) -> None:
        self._timing, self._course, self._events = timing, course, events
        self._clocks: dict[str, GroupClock | None] = dict.fromkeys(groups)

    def __getitem__(self, group: str) -> GroupClock:
        clock = self._clocks[group]
        if clock is None:
            timer = self._timing.clock(group, self._course)
            clock = self._clocks[group] = timer.run(self._events)
        return clock

    def __iter__(self) -> Iterator[str]:
        return iter(self._clocks)

    def __len__(self) -> int:
        return len(self._clocks)


def summarise(
    timing: Timing,
    swim_set: SwimSet,
    course: Course | None = None,
    groups: Iterable[str] | None = None,
) -> SetSummary:
    """Add a set up, in its own course or laid into another, for some lane groups or all of them."""
    in_course = swim_set if course in (None, swim_set.course) else lay_in_course(swim_set, course)
    catalogue = timing.catalogue
    events = expand(in_course.items, catalogue.drills, timing.scale)
    every_rep = tuple(reps(events))
    pieces = tuple(piece for rep in every_rep for piece in rep.pieces)
    chosen = tuple(catalogue.lane_groups if groups is None else groups)
    return SetSummary(
        swim_set=in_course,
        events=events,
        timing=timing.clocks,
        distance=distance_working(in_course.items),
        gear=tuple(dict.fromkeys(gear for piece in pieces for gear in piece.gear)),
        brief=brief(
            [(hazard, in_course.id) for hazard in in_course.hazards], every_rep, catalogue.gear
        ),
        misfits=tuple(misfits(in_course.items, in_course.course)),
        clocks=GroupClocks(timing.clocks, in_course.course, events, chosen),
    )


def groups_meant(catalogue: Catalogue, swim_set: SwimSet) -> tuple[str, ...]:
    """The lane groups that a set is written for: those that it gives send-offs, else those of its
    level.
    """
    named = {
        group for item in reps_of(swim_set.items) if item.sendoff for group in item.sendoff.by_group
    }
    if named:
        return tuple(group for group in catalogue.lane_groups if group in named)
    squads = catalogue.club.squads
    return tuple(
        id
        for id, group in catalogue.lane_groups.items()
        if squads[group.squad].level == swim_set.level
    )
