"""A practice laid on the clock: who is where when, who waits, what is carried, how hard it is."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property

from almanac.arithmetic.brief import BriefHazard, brief
from almanac.arithmetic.course import Misfit, misfits
from almanac.arithmetic.expand import Event, Piece, Rep, expand, reps
from almanac.arithmetic.facets import Shares, all_facets, distance_working, shares
from almanac.arithmetic.gear_needs import GearNeed, gear_needs
from almanac.arithmetic.summary import GroupClocks, SetSummary
from almanac.arithmetic.timed_reps import GroupClock
from almanac.arithmetic.timing import Clocks, Timing
from almanac.arithmetic.working import Working, gathered, total
from almanac.model.catalogue import Catalogue
from almanac.model.club import LaneGroup, Pool
from almanac.model.plans import Practice, PracticePart
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


@dataclass(frozen=True)
class SheetCell:
    """A lane group in one part: when it ends (seconds from the start), and how long it then waits
    for the others.

    Both are None where its clock is not known.
    """

    group: str
    ends_s: float | None
    waits_s: float | None


@dataclass(frozen=True)
class SheetRow:
    """One part on the run sheet: everybody starts together, after the talk. Seconds from the start
    of the slot.

    ``gear_s`` is what changing gear from the part before costs beyond the talk. ``ends_s`` is when
    the last group is done, None where a clock is not known.
    """

    run: PartRun
    talk_s: float
    gear_s: float
    starts_s: float
    ends_s: float | None
    cells: tuple[SheetCell, ...]


@dataclass(frozen=True)
class PracticeSummary:
    """A practice added up and laid on the clock, for the lane groups of its squad, in its pool."""

    practice: Practice
    timing: Clocks = field(repr=False)
    pool: Pool
    groups: Mapping[str, LaneGroup]
    runs: tuple[PartRun, ...]
    sheet: tuple[SheetRow, ...]
    gear: tuple[GearNeed, ...]
    brief: tuple[BriefHazard, ...]

    @property
    def course(self) -> Course:
        """The course of its pool."""
        return self.pool.course

    @property
    def distance(self) -> Working:
        """Its distance, in the pool's unit."""
        return total(run.distance for run in self.runs)

    @property
    def metres(self) -> float:
        """Its distance in metres."""
        return self.distance.value * self.pool.course.unit.metres

    @cached_property
    def reps(self) -> tuple[Rep, ...]:
        """Every rep, in order."""
        return tuple(rep for run in self.runs for rep in run.reps)

    @cached_property
    def by(self) -> Mapping[str, Mapping[str, Fraction]]:
        """Its distance by the words of each facet, in the pool's unit."""
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
    def ends_s(self) -> float | None:
        """When the last group is done, in seconds from the start; None where a clock is not
        known.
        """
        return self.sheet[-1].ends_s

    @property
    def slack_s(self) -> float | None:
        """What the slot leaves, in seconds; below zero where the practice overruns."""
        return None if self.ends_s is None else 60 * self.practice.slot.minutes - self.ends_s

    def load(self, group: str) -> Working | None:
        """Planned load of a lane group: its parts' loads added up; None where one is not known."""
        loads = [run.clocks[group].load for run in self.runs if run.reps]
        known = [load for load in loads if load is not None]
        return gathered(known) if len(known) == len(loads) else None


def summarise_practice(
    timing: Timing, practice: Practice, set_in_pool: SetInPool
) -> PracticeSummary:
    """Lay a practice on the clock. Sets written for another course are laid into the practice's
    pool, as ``set_in_pool`` gives it.
    """
    catalogue = timing.catalogue
    pool = catalogue.club.pools[practice.pool]
    groups = {
        id: group for id, group in catalogue.lane_groups.items() if group.squad == practice.squad
    }
    runs = tuple(_part_run(timing, part, pool, groups, set_in_pool) for part in practice.parts)
    every_rep = tuple(rep for run in runs for rep in run.reps)
    hazards = [(hazard, practice.id) for hazard in practice.hazards]
    hazards += [
        (hazard, run.swim_set.id) for run in runs if run.swim_set for hazard in run.swim_set.hazards
    ]
    return PracticeSummary(
        practice=practice,
        timing=timing.clocks,
        pool=pool,
        groups=groups,
        runs=runs,
        sheet=tuple(run_sheet(runs, tuple(groups), catalogue)),
        gear=tuple(
            gear_needs(
                [(run.reps, run.most_in_lane) for run in runs], groups, catalogue.club.gear_owned
            )
        ),
        brief=brief(hazards, every_rep, catalogue.gear),
    )


def _part_run(
    timing: Timing,
    part: PracticePart,
    pool: Pool,
    groups: Mapping[str, LaneGroup],
    set_in_pool: SetInPool,
) -> PartRun:
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


def run_sheet(
    runs: tuple[PartRun, ...], groups: tuple[str, ...], catalogue: Catalogue
) -> Iterator[SheetRow]:
    """The run sheet: each part starts for everybody when the slowest lane group has done the one
    before it.

    Then comes the talk; changing gear between parts costs what the talk does not cover. Where a
    clock is not known, the parts after it are laid from the groups that are known, and the end is
    None.
    """
    now, worn, known = 0.0, frozenset[str](), True
    for run in runs:
        talk = float(run.part.talk or 0)
        first, last = (run.reps[0].gear, run.reps[-1].gear) if run.reps else (worn, worn)
        changed = (first ^ worn) if now else frozenset[str]()
        gear_s = max(0.0, max((catalogue.gear[id].change_s for id in changed), default=0) - talk)
        starts = now + talk + gear_s
        clocks = {
            group: clock.value if (clock := run.clocks[group].clock) else None for group in groups
        }
        finished = [starts + clock for clock in clocks.values() if clock is not None]
        known = known and len(finished) == len(groups)
        now = max(finished, default=starts)
        cells = (
            SheetCell(group, starts + c, now - starts - c)
            if c is not None
            else SheetCell(group, None, None)
            for group, c in clocks.items()
        )
        yield SheetRow(run, talk, gear_s, starts, now if known else None, tuple(cells))
        worn = last
