"""What every check looks at: the catalogue, the day, and each set's figures worked out once."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property, partial
from typing import Any, TypeVar

from almanac.analysis.added_up_blocks import added_up_blocks
from almanac.analysis.askings import AskingText, Readings
from almanac.analysis.joined_blocks import JoinedBlocks, joined_blocks
from almanac.analysis.pool_fits import PartMisplaced, PoolMisplaced, practice_fit, set_fit
from almanac.analysis.pool_starts import asks, demanding
from almanac.analysis.sameness import Sameness
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.coverage import Cell, coverage
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.effort_faults import scale_gaps
from almanac.arithmetic.expand import count_reps
from almanac.arithmetic.graph import teaching_order
from almanac.arithmetic.practice import PracticeSummary, summarise_practice
from almanac.arithmetic.summary import SetSummary, groups_meant, summarise
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.timing import Clocks, Timing
from almanac.model.catalogue import Catalogue
from almanac.model.practice import Doing, Practice
from almanac.model.swim_set import SwimSet
from almanac.units import LAND, Course

T = TypeVar("T")


@dataclass(frozen=True, eq=False)
class Analysis:
    """A catalogue as it is on a given day; figures are worked out when first asked for, and
    kept.
    """

    catalogue: Catalogue
    today: date
    # What is known already, of an analysis before this one where that cannot have changed.
    _clocks: Clocks | None = field(default=None, repr=False)
    _summaries: dict[tuple[str, Course], SetSummary] = field(default_factory=dict, repr=False)
    _practices: Mapping[str, PracticeSummary] = field(default_factory=dict, repr=False)
    _past: dict[tuple[str, date], PracticeSummary] = field(default_factory=dict, repr=False)
    _known: dict[object, Any] = field(default_factory=dict, repr=False)

    @cached_property
    def computable(self) -> Mapping[str, SwimSet]:
        """The sets that can be worked out: sound efforts, each with its rest, and no runaway
        rounds.
        """
        if not self.has_sound_efforts:
            return {}
        return {
            id: entry for id, entry in self.catalogue.sets.items() if not self.is_runaway(entry)
        }

    @cached_property
    def has_sound_efforts(self) -> bool:
        """Whether the effort words share out the whole scale, and the policy gives each of them its
        rest.
        """
        efforts = self.catalogue.efforts
        return not scale_gaps(efforts) and efforts.keys() <= self.catalogue.policy.rest.keys()

    def is_runaway(self, swim_set: SwimSet) -> bool:
        """Whether a set has more reps than the policy lets anyone lay out."""
        return count_reps(swim_set.items) > self.catalogue.policy.limit("most_reps")

    def summary(self, id: str) -> SetSummary:
        """The figures of a computable set, in its own course, for every lane group."""
        return self.summary_in(id, self.computable[id].course)

    def summary_in(self, id: str, course: Course) -> SetSummary:
        """The figures of a computable set laid into a course, for every lane group; those of a
        circuit on land are the same in each.
        """
        if self.computable[id].is_on_land:
            course = LAND
        if (id, course) not in self._summaries:
            self._summaries[id, course] = summarise(self.timing, self.computable[id], course)
        return self._summaries[id, course]

    @cached_property
    def readings(self) -> Readings:
        """The texts of the entries, each to be read once."""
        return Readings(self.catalogue)

    @property
    def asked_for(self) -> tuple[AskingText, ...]:
        """Each danger that a text of an entry asks for."""
        return self.readings.askings

    @cached_property
    def teaching_order(self) -> list[str]:
        """Drill ids so that each comes after what it needs first and what is easier; lower levels
        first.
        """
        drills = self.catalogue.drills
        levels = list(self.catalogue.words("levels"))
        needs = {id: (*drill.needs_first, *drill.easier) for id, drill in drills.items()}
        return teaching_order(needs, lambda id: (levels.index(drills[id].level), id))

    @cached_property
    def coverage(self) -> list[list[Cell]]:
        """Drills and sets by goal and level."""
        catalogue = self.catalogue
        levels = list(catalogue.words("levels"))
        return coverage(
            catalogue.words("goals"), levels, catalogue.drills.values(), catalogue.sets.values()
        )

    @cached_property
    def timing(self) -> Timing:
        """The clocks of the lane groups."""
        return Timing(self.catalogue, self._clocks, self.today)

    @property
    def scale(self) -> EffortScale:
        """The club's effort scale."""
        return self.timing.scale

    def continued(self, catalogue: Catalogue, today: date) -> Analysis:
        """The analysis of a later state of the catalogue. Figures of sets and practices that stand
        on what is the same to the letter are taken over; none on another day, which knows other
        tests.
        """
        same = Sameness(self.catalogue, catalogue)
        if today != self.today or not same.foundations:
            return Analysis(catalogue, today)
        summaries = {key: own for key, own in self._summaries.items() if same.holds("set", key[0])}
        known = self.__dict__.get("practices", self._practices)  # where they have been asked for
        practices = {id: own for id, own in known.items() if same.holds("practice", id)}
        past = {key: own for key, own in self._past.items() if same.holds("practice", key[0])}
        return Analysis(catalogue, today, self.timing.clocks, summaries, practices, past)

    def once(self, key: object, work: Callable[[], T]) -> T:
        """What ``work`` gives when ``key`` is first asked for: rules that look for the same share
        it, and pages show what the check before them has found.
        """
        if key not in self._known:
            self._known[key] = work()
        known: T = self._known[key]
        return known

    @cached_property
    def computable_practices(self) -> Mapping[str, Practice]:
        """The practices that can be worked out: sound efforts, their sets computable, no runaway
        rounds.
        """
        if not self.has_sound_efforts:
            return {}
        return {
            id: practice
            for id, practice in self.catalogue.practices.items()
            if all(self._is_sound(doing) for _, doing in practice.doings)
        }

    def _is_sound(self, doing: Doing) -> bool:
        if doing.set:
            return doing.set in self.computable
        return count_reps(doing.items) <= self.catalogue.policy.limit("most_reps")

    @cached_property
    def practices(self) -> Mapping[str, PracticeSummary]:
        """The figures of every computable practice."""
        return {
            id: self._practices.get(id)
            or summarise_practice(self.timing, practice, self.summary_in)
            for id, practice in self.computable_practices.items()
        }

    @cached_property
    def practice_fits(self) -> Mapping[str, tuple[PartMisplaced, ...]]:
        """What each computable practice asks of its pool and does not get there."""
        drills = demanding(self.catalogue)
        return {id: practice_fit(self.catalogue, own, drills) for id, own in self.practices.items()}

    @cached_property
    def set_fits(self) -> Mapping[str, tuple[PoolMisplaced, ...]]:
        """What each computable set that is swum asks of pools and does not get there."""
        drills = demanding(self.catalogue)
        return {
            id: set_fit(self.catalogue, own, partial(self._ways_in, id))
            for id, own in self.computable.items()
            if not own.is_on_land and asks(own.items, drills)
        }

    def _ways_in(self, id: str, course: Course) -> tuple[Swum, ...]:
        return self.summary_in(id, course).each

    @cached_property
    def blocks(self) -> Mapping[str, Mapping[str, BlockSummary]]:
        """The figures of every computable block, by lane group: its practices are its own squad's,
        and computable.
        """
        return dict(
            added_up_blocks(
                self.catalogue, self.practices, self.computable, self.practice_on, self.summary
            )
        )

    @cached_property
    def joined_blocks(self) -> tuple[JoinedBlocks, ...]:
        """Computable blocks of a lane group that meet or overlap."""
        return tuple(joined_blocks(self.blocks))

    def practice_on(self, id: str, on: date) -> PracticeSummary:
        """The figures of a computable practice with the tests that were known by a day; for a day
        that is still to come, with those of today.
        """
        if on >= self.today:
            return self.practices[id]
        if (id, on) not in self._past:
            timing = Timing(self.catalogue, day=on)
            self._past[id, on] = summarise_practice(
                timing,
                self.computable_practices[id],
                lambda name, course: summarise(timing, self.computable[name], course),
            )
        return self._past[id, on]

    def meant(self, swim_set: SwimSet) -> tuple[str, ...]:
        """The lane groups that a set is written for."""
        return groups_meant(self.catalogue, swim_set)
