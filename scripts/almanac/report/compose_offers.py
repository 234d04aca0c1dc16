"""What a piece comes to for a squad in a pool: its clocks, gear, adults, and what counts against
the limits of a practice; all rounded up to whole numbers.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from almanac.analysis.analysis import Analysis
from almanac.analysis.pool_starts import asks, demanding, rules_for
from almanac.arithmetic.at_once import hands
from almanac.arithmetic.composing_pieces import SET, TENTHS, UNKNOWN, Size
from almanac.arithmetic.crews import Crew, crews_named
from almanac.arithmetic.lanes import room_in_lane
from almanac.arithmetic.leaving_out import comes_home
from almanac.arithmetic.out_of_breath import NEVER
from almanac.arithmetic.part_run import PartRun, run_part
from almanac.arithmetic.pool_fit import PoolPlace, misplaced
from almanac.arithmetic.run_sheet import run_sheet
from almanac.arithmetic.scaling import ROUNDS, scaled_items
from almanac.arithmetic.stages import SharedStart
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.under_water import counts, is_under
from almanac.checks.after_fast import breath_of
from almanac.checks.dose_sums import DoseSum
from almanac.checks.doses_judged import is_too_far_at_once
from almanac.checks.run_room import Tally, tally
from almanac.model.club import LaneGroup
from almanac.model.practice import LanesInUse, PracticePart
from almanac.model.vocabularies import WORKS
from almanac.report.compose_pieces import Candidate
from almanac.units import Course

_CALM_S = 900
"""Fast work that was over so long ago is out of everyone's breath: policies ask for less."""
_A_LITTLE = 1e-6  # of the machine


def up(value: float) -> int:
    """The next whole number, but for what the machine adds to one."""
    return math.ceil(value - _A_LITTLE)


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
        it ends between two walls or at the other end, where it goes on too long without a rest, or
        where what its group does is not known.
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

    def adults(self, laid: Laid) -> int:
        """The adults that it needs, with the one who coaches."""
        catalogue = self.analysis.catalogue
        pieces = [piece for rep in laid.run.every_rep for piece in rep.pieces]
        gear = {id for piece in pieces for id in piece.gear}
        helped = any(piece.drill.helpers for piece in pieces)
        if not helped and not any(catalogue.gear[id].helpers for id in gear):
            return 1
        stage = SharedStart(1, None, 0.0, 0.0, ((laid.run,),))
        owned = catalogue.club.gear_owned
        rows = tuple(run_sheet((stage,), catalogue.gear, self.analysis.scale, owned))
        need = hands(rows, catalogue.gear, owned)
        return need.adults if need else 1

    def room(self, laid: Laid) -> tuple[int, ...]:
        """By lane group the most that a lane has room for; 0 where nothing says so."""
        return tuple(
            room_in_lane(laid.run.clocks[id], group, laid.run.course) or 0
            for id, group in self.groups.items()
        )

    def size(self, own: Candidate, number: int, drills: Mapping[str, int]) -> Size | None:
        """What so many of a candidate come to; None where it cannot be done so often."""
        laid = self.lay(own, number)
        if laid is None:
            return None
        sums = [tally(self.analysis, swum) for swum in laid.swums]
        far = [swum.distance.value for swum in laid.swums]
        fast = [swum.metres * float(swum.shares.fast or 0) for swum in laid.swums]
        goes_under, calm = self._breath(laid)
        return Size(
            number=laid.number,
            distance=up(max(far, default=0)),
            times=tuple(self._time(laid, group) for group in self.groups),
            fast=up(max(fast, default=0)),
            resisted=up(max((own.resisted for own in sums), default=0)),
            plates=up(max((own.plates for own in sums), default=0)),
            under=up(max((own.under_metres for own in sums), default=0)),
            goes_under=goes_under,
            calm=calm,
            doses=tuple(sorted(self._doses(sums, drills))),
        )

    def _time(self, laid: Laid, group: str) -> int | None:
        clock = laid.run.clocks[group]
        if clock.clock is None or clock.last_touch is None or clock.unfit or not clock.reps:
            return None
        takes = laid.run.takes(group)
        return up(TENTHS * takes.value) if takes else None

    def _breath(self, laid: Laid) -> tuple[int, int]:
        """Until somebody first goes under water, and since the last fast work, in tenths."""
        push_off = self.analysis.catalogue.policy.limit("push_off_most")
        under, calm = NEVER, NEVER
        for group in self.groups:
            swum, clock = laid.run.of(group), laid.run.clocks[group]
            if any(is_under(rep, push_off) for rep in swum.reps):
                before = breath_of(self.analysis)
                before.since_s = 0.0
                before.swim(swum.events, swum.course, clock)
                under = min([under, *(own.since_s for own in before.found if own.carried)])
            if swum.shares.fast or any(rep.item.aim for rep in swum.reps):
                after = breath_of(self.analysis)
                after.swim(swum.events, swum.course, clock)
                calm = min(calm, after.since_s)
        return (
            UNKNOWN if under == NEVER else int(TENTHS * under),
            UNKNOWN if calm > _CALM_S else int(TENTHS * calm),
        )

    def _doses(self, sums: list[Tally], drills: Mapping[str, int]) -> list[tuple[int, int, int]]:
        found: dict[str, tuple[int, int]] = {}
        for own in (dose for one in sums for dose in one.doses.values()):
            plain, strict = found.get(own.drill.id, (0, 0))
            share = _permille(own, own.most(self.analysis, self.level))
            least = _permille(own, own.drill.dose.most)
            plain = UNKNOWN if plain == UNKNOWN or not own.is_plain else max(plain, share)
            found[own.drill.id] = plain, max(strict, least)
        return [(drills[id], *both) for id, both in found.items()]


def _permille(own: DoseSum, most: float) -> int:
    """How much of the most that may be done of a drill, in permille."""
    drill, dose = own.drill, own.drill.dose
    shares = [0.0]
    if dose.distance and not drill.is_wall_work:
        shares.append(own.distance / (most * dose.distance))
    if dose.time:
        shares.append(own.held_s / (most * dose.time))
    if not own.is_plain and (drill.is_under_water or drill.is_on_land or drill.is_wall_work):
        shares.append(own.goes / dose.most)
    return up(1000 * max(shares))
