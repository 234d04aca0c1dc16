"""A practice laid on the clock: who is where when, who waits, what is carried, how hard it is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from almanac.arithmetic.at_once import Hands, hands
from almanac.arithmetic.brief import BriefHazard, brief
from almanac.arithmetic.crews import FIRST, SECOND
from almanac.arithmetic.gear_needs import GearNeed, gear_needs
from almanac.arithmetic.moment import Moment, latest
from almanac.arithmetic.part_run import PartRun, SetInPool
from almanac.arithmetic.run_sheet import SheetRow, run_sheet
from almanac.arithmetic.stages import SharedStart, Staging
from almanac.arithmetic.swum import Swum, together
from almanac.arithmetic.swum_by_group import ByGroup
from almanac.arithmetic.timing import Clocks, Timing
from almanac.model.club import LaneGroup
from almanac.model.pool import Pool
from almanac.model.practice import Practice
from almanac.source.reader import DataPath
from almanac.units import Course


@dataclass(frozen=True, kw_only=True)
class PracticeSummary(ByGroup):
    """A practice added up and laid on the clock, for the lane groups of its squad, in its pool.

    Where halves of a lane group do different things apart, the group's figures are those of its
    first half. ``hands`` is None where nothing is done.
    """

    practice: Practice
    timing: Clocks = field(repr=False)
    pool: Pool
    groups: Mapping[str, LaneGroup]
    stages: tuple[SharedStart, ...]
    sheet: tuple[SheetRow, ...]
    gear: tuple[GearNeed, ...]
    hands: Hands | None
    brief: tuple[BriefHazard, ...]

    @cached_property
    def runs(self) -> tuple[PartRun, ...]:
        """Everything that is done, in the order of the sheet; a station once a turn."""
        return tuple(row.run for row in self.sheet)

    def runs_of(self, group: str) -> tuple[PartRun, ...]:
        """What a lane group does, in the order in which it does it."""
        return tuple(row.run for row in self.rows_of(group))

    def rows_of(self, group: str) -> tuple[SheetRow, ...]:
        """The sheet of a lane group; of its halves, where they are apart, the first."""
        return _rows_of(self.sheet, group)

    @cached_property
    def halved(self) -> tuple[str, ...]:
        """The lane groups whose halves do different things: their figures are the first half's."""
        return tuple(
            group
            for group in self.groups
            if _paths(self.sheet, group, FIRST) != _paths(self.sheet, group, SECOND)
        )

    @cached_property
    def every_way(self) -> tuple[Swum, ...]:
        """Every way of swimming the whole, once; those of second halves too that do other things
        than the first: what limits are held against.
        """
        seconds = (
            together(
                (row.run.of(group) for row in _rows_of(self.sheet, group, but=FIRST)),
                self.course,
                self.timing,
            )
            for group in self.halved
        )
        return (*self.each, *seconds)

    @property
    def ends(self) -> Moment:
        """When the last part is over for the last lane group; the earliest that it can be where a
        clock is not known.
        """
        return latest([Moment(0.0), *(row.ends for row in self.sheet)])

    @property
    def ends_s(self) -> float | None:
        """When it is over, in seconds from the start; None where a clock is not known."""
        return self.ends.known_s

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
    stages = tuple(Staging(timing, practice, pool, groups, set_in_pool).stages())
    owned = catalogue.club.gear_owned
    sheet = tuple(run_sheet(stages, catalogue.gear, timing.scale, owned))
    runs = _each_once(sheet)
    hazards = [(hazard, practice.key) for hazard in practice.hazards]
    sets = [run.swim_set for run in runs if run.swim_set]
    hazards += [(hazard, own.key) for own in sets for hazard in own.hazards]
    whole = _whole(timing.clocks, sheet, pool.course, tuple(groups))
    return PracticeSummary(
        first=whole.first,
        swum=whole.swum,
        practice=practice,
        timing=timing.clocks,
        pool=pool,
        groups=groups,
        stages=stages,
        sheet=sheet,
        gear=tuple(gear_needs(sheet, owned)),
        hands=hands(sheet, catalogue.gear, owned),
        brief=brief(
            practice.key,
            hazards,
            tuple(rep for run in runs for rep in run.every_rep),
            catalogue.gear,
            catalogue.vocabularies,
        ),
    )


def _each_once(sheet: tuple[SheetRow, ...]) -> tuple[PartRun, ...]:
    """What is done, each piece of the file once."""
    return tuple({row.run.path: row.run for row in sheet}.values())


def _paths(sheet: tuple[SheetRow, ...], group: str, half: str) -> frozenset[DataPath]:
    """What a half of a lane group does, in whatever order."""
    return frozenset(
        row.run.path
        for row in sheet
        if any(cell.group == group and cell.crew.half in ("", half) for cell in row.cells)
    )


def _rows_of(sheet: tuple[SheetRow, ...], group: str, but: str = SECOND) -> tuple[SheetRow, ...]:
    """What a lane group does, in order; where its halves are apart, without what one of them does
    alone.
    """
    return tuple(
        row
        for row in sheet
        if any(cell.group == group and cell.crew.half != but for cell in row.cells)
    )


def _whole(
    timing: Clocks, sheet: tuple[SheetRow, ...], course: Course, groups: tuple[str, ...]
) -> ByGroup:
    """All parts as one, as each lane group swims them; groups that do the same share one, be it in
    another order.
    """
    known: list[tuple[tuple[Own, ...], Swum]] = []
    found: dict[str, Swum] = {}
    for group in groups:
        own = tuple((row.run.path, row.run.of(group)) for row in _rows_of(sheet, group))
        same = next((swum for others, swum in known if _is_same(own, others)), None)
        if same is None:
            same = together((swum for _, swum in own), course, timing)
            known.append((own, same))
        found[group] = same
    first = next(iter(found.values()), None)
    nobody = (row.run.first for row in sheet)
    return ByGroup(first=first or together(nobody, course, timing), swum=found)


Own = tuple[DataPath, Swum]  # what a lane group does of a piece of the file


def _is_same(own: tuple[Own, ...], others: tuple[Own, ...]) -> bool:
    """Whether two lane groups do the same, be it in another order."""
    by_path = dict(others)
    return len(own) == len(others) and all(
        (other := by_path.get(path)) is not None and (swum is other or swum.events == other.events)
        for path, swum in own
    )
