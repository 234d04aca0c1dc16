"""A piece laid into a squad's pool, so often: None where it cannot be done there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from almanac.analysis.analysis import Analysis
from almanac.analysis.pool_starts import asks, demanding, rules_for
from almanac.arithmetic.composing.pieces import SET
from almanac.arithmetic.crews import Crew, crews_named
from almanac.arithmetic.events import Rep
from almanac.arithmetic.leaving_out import comes_home
from almanac.arithmetic.part_run import PartRun, run_part
from almanac.arithmetic.pool_fit import PoolPlace, misplaced
from almanac.arithmetic.scaling import ROUNDS, scaled_items
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.under_water import counts
from almanac.checks.doses_judged import is_too_far_at_once
from almanac.model.club import LaneGroup
from almanac.model.practice import LanesInUse, PracticePart
from almanac.model.vocabularies import WORKS
from almanac.report.compose.candidate import Candidate
from almanac.units import LAND, Course


@dataclass(frozen=True)
class Laid:
    """A candidate so many times, laid into a squad's pool."""

    number: int
    run: PartRun
    swums: tuple[Swum, ...]


@dataclass(frozen=True)
class Layer:
    """Lays candidates out for one squad in one pool."""

    analysis: Analysis
    squad: str
    pool: str
    _last: dict[tuple[int, int], Laid | None] = field(default_factory=dict, repr=False)

    @cached_property
    def groups(self) -> Mapping[str, LaneGroup]:
        """The squad's lane groups, in the club's order."""
        every = self.analysis.catalogue.lane_groups
        return {id: group for id, group in every.items() if group.squad == self.squad}

    @cached_property
    def level(self) -> str:
        """The squad's level."""
        return self.analysis.catalogue.club.squads[self.squad].level

    @property
    def course(self) -> Course:
        """The course of the pool."""
        return self.analysis.catalogue.club.pools[self.pool].course

    @cached_property
    def crews(self) -> tuple[Crew, ...]:
        """The lane groups in their usual lanes."""
        return crews_named(tuple(self.groups), "", self.groups, LanesInUse(), {})

    @cached_property
    def _demanding(self) -> frozenset[str]:
        return self.analysis.once(demanding, lambda: demanding(self.analysis.catalogue))

    def lay(self, own: Candidate, number: int) -> Laid | None:
        """As ``_lay``; those of one candidate are kept, for each is asked for twice."""
        key = id(own), number
        if key not in self._last:
            if (id(own), 0) not in self._last:
                self._last.clear()
                self._last[id(own), 0] = None
            self._last[key] = self._lay(own, number)
        return self._last[key]

    def _lay(self, own: Candidate, number: int) -> Laid | None:
        """The candidate so many times; None where the pool does not give what it asks for, where
        it ends between two walls or at the other end, or comes fast to where no wall is, where it
        goes on too long without a rest, or where what its group does is not known.
        """
        pool = self.analysis.catalogue.club.pools[self.pool]
        items = own.items
        doing = PracticePart(part=own.word or WORKS, set=own.id if own.of == SET else None)
        if own.of == SET and own.scale and number != own.scale.written:
            is_rounds = own.scale.what == ROUNDS
            rounds, reps = (number, None) if is_rounds else (None, number)
            doing = replace(doing, rounds=rounds, reps=reps)
        elif own.of != SET:
            items = scaled_items(items, own.scale, number) if own.scale else items
            doing = replace(doing, items=items)
        timing, summary_in = self.analysis.timing, self.analysis.summary_in
        run = run_part(timing, ("parts", 0), doing.part, doing, self.crews, pool, summary_in)
        swums = tuple({id(run.of(group)): run.of(group) for group in self.groups}.values())
        if run.misfits or self._is_unfit(swums):
            return None
        if any(self._ends_fast_in_open_water(rep) for swum in swums for rep in swum.reps):
            return None
        if any(is_too_far_at_once(self.analysis, swum, self.level) for swum in swums):
            return None
        if own.of != SET and not all(comes_home(swum.reps, pool.course) for swum in swums):
            return None
        if asks(items, self._demanding):
            rules = rules_for(self.analysis.catalogue, self.level)
            for crew in self.crews:
                if misplaced(
                    run.of(crew.group).reps, PoolPlace(pool, crew.lanes, "start", True), rules
                ):
                    return None
        return Laid(number, run, swums)

    def _ends_fast_in_open_water(self, rep: Rep) -> bool:
        """Whether a rep ends between two walls at a fast effort: the drills that one gets back from
        are short enough for it, but there a tired swimmer has nothing to hold, and a time no touch.
        """
        if rep.item.manner.ready_s or self.course == LAND or not rep.distance:
            return False
        scale = self.analysis.scale
        is_fast = not scale.split(rep.pieces[-1].effort).keys().isdisjoint(scale.fast)
        return is_fast and rep.distance % self.course.length != 0

    def _is_unfit(self, swums: tuple[Swum, ...]) -> bool:
        """Whether it holds a drill above the squad's level, or work under water where that is too
        warm, or nobody knows how warm.
        """
        catalogue = self.analysis.catalogue
        order, policy = list(catalogue.words("levels")), catalogue.policy
        drills = {piece.drill.id: piece.drill for swum in swums for piece in swum.pieces}.values()
        if any(order.index(drill.level) > order.index(self.level) for drill in drills):
            return True
        push_off = policy.limit("push_off_most")
        if not any(counts(drill, push_off) for drill in drills):
            return False
        warm = catalogue.club.pools[self.pool].water_c
        return warm is None or warm > policy.limit("under_water_c_most")
