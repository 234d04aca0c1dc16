"""A practice laid on the clock: who is where when, who waits, what is carried, how hard it is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from almanac.arithmetic.brief import BriefHazard, brief
from almanac.arithmetic.gear_needs import GearNeed, gear_needs
from almanac.arithmetic.part_run import PartRun, SetInPool, run_part
from almanac.arithmetic.run_sheet import SheetRow, run_sheet
from almanac.arithmetic.swum import ByGroup, Swum, together
from almanac.arithmetic.timing import Clocks, Timing
from almanac.model.club import LaneGroup, Pool
from almanac.model.plans import Practice
from almanac.units import Course


@dataclass(frozen=True, kw_only=True)
class PracticeSummary(ByGroup):
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
    def ends_s(self) -> float | None:
        """When the last group is done, in seconds from the start; None where a clock is not
        known.
        """
        return self.sheet[-1].ends_s

    @property
    def slack_s(self) -> float | None:
        """What the slot leaves, in seconds; below zero where the practice overruns."""
        return None if self.ends_s is None else 60 * self.practice.slot.minutes - self.ends_s


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
    runs = tuple(run_part(timing, part, pool, groups, set_in_pool) for part in practice.parts)
    every_rep = tuple(rep for run in runs for rep in run.every_rep)
    hazards = [(hazard, practice.id) for hazard in practice.hazards]
    hazards += [
        (hazard, run.swim_set.id) for run in runs if run.swim_set for hazard in run.swim_set.hazards
    ]
    whole = _whole(timing.clocks, runs, pool.course, tuple(groups))
    return PracticeSummary(
        first=whole.first,
        swum=whole.swum,
        practice=practice,
        timing=timing.clocks,
        pool=pool,
        groups=groups,
        runs=runs,
        sheet=tuple(run_sheet(runs, tuple(groups), catalogue)),
        gear=tuple(
            gear_needs(
                [(run.swum, run.most_in_lane) for run in runs], groups, catalogue.club.gear_owned
            )
        ),
        brief=brief(hazards, every_rep, catalogue.gear),
    )


def _whole(
    timing: Clocks, runs: tuple[PartRun, ...], course: Course, groups: tuple[str, ...]
) -> ByGroup:
    """All parts as one, as each lane group swims them; groups that do the same share one."""
    known: dict[tuple[int, ...], Swum] = {}
    found: dict[str, Swum] = {}
    for group in groups:
        own = [run.of(group) for run in runs]
        parts = tuple(map(id, own))
        if parts not in known:
            known[parts] = together(own, course, timing)
        found[group] = known[parts]
    first = next(iter(found.values()), None)
    return ByGroup(first=first or together((run.first for run in runs), course, timing), swum=found)
