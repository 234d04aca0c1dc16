"""What a block is planned from: slots, the practices that may stand in each, rules."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import SessionPlan
from almanac.arithmetic.composing.sentences import words_in_a_row
from almanac.arithmetic.gear_needs import GearNeed
from almanac.arithmetic.planning.aim_rules import aim_rules
from almanac.arithmetic.planning.aims import Aims
from almanac.arithmetic.planning.choices import HEAVY, LOAD, METRES, NOTHING, WORN, Choice, DaySlot
from almanac.arithmetic.planning.costs import (
    COMPOSED,
    EMPTY,
    SERVES_NOTHING,
    SPARE,
    SPARE_FROM,
    SPARE_IN_TAPER,
    SPARE_STEP,
)
from almanac.arithmetic.planning.model import PlanProblem
from almanac.arithmetic.planning.rules import Grid, limit_rules
from almanac.arithmetic.planning.variety import variety
from almanac.arithmetic.planning.wishes import BlockLimits, BlockWishes
from almanac.checks.lane_bookings import lanes_of
from almanac.model.block import Session
from almanac.report.planning.slots import follows_a_break
from almanac.rounding import seconds_of_day

POOL = "in another pool"
WHY = {
    "pool": POOL,
    "minutes": "too long",
    "lanes": "in other lanes",
    "adults": "with more adults than there are",
    "gear": "with gear, lanes or adults that are not free",
    "test": "tests that are not asked for",
    "race": "resisted too near the race",
    "eve": "too hard for the eve of a race",
    "break": "too hard, or a test, after a break",
}
"""Why a practice does not stand in a slot, in the words in which it is told."""


@dataclass(frozen=True)
class Planning:
    """A squad's slots and choices, with what is wished."""

    analysis: Analysis
    squad: str
    slots: tuple[DaySlot, ...]
    choices: tuple[Choice, ...]
    wishes: BlockWishes
    limits: BlockLimits

    @cached_property
    def problem(self) -> PlanProblem:
        """All of it as one problem."""
        grid = self.grid
        aims = self.aims
        rules = (
            *limit_rules(grid, self.limits),
            *aim_rules(aims),
            *variety(grid, aims.inside()),
        )
        own = tuple(
            {place: self._own(slot, place) for place in may}
            for slot, may in zip(self.slots, grid.may, strict=True)
        )
        return PlanProblem(self.slots, grid.choices, grid.may, own, rules)

    @cached_property
    def grid(self) -> Grid:
        """Slots with the choices that may stand in each, the first of which is nothing."""
        every = (NOTHING, *self.choices)
        place_of = {choice.id: place for place, choice in enumerate(every)}
        may = list[tuple[int, ...]]()
        for number, slot in enumerate(self.slots):
            if slot.only:
                may.append((place_of[slot.only[0]],))
                continue
            free = [n for n, one in enumerate(every) if n and not self.why_not(number, one)]
            may.append((0, *free))
        return Grid(self.slots, every, tuple(may))

    @cached_property
    def aims(self) -> Aims:
        """The wishes over the grid. A usual practice is the mean of what may stand in the slots, is
        no test and was not composed for them.
        """
        inside = [n for n, slot in enumerate(self.slots) if 0 <= slot.week < self._weeks]
        may = [self.grid.choices[place] for n in inside for place in self.grid.may[n] if place]
        plain = [choice for choice in may if not choice.is_test]
        own = [choice for choice in plain if not choice.composed] or plain

        def usual(name: str) -> int:
            return sum(one.sums[name] for one in own) // max(1, len(own))

        return Aims(self.grid, self.wishes, self.limits, usual(LOAD), usual(METRES))

    @property
    def _weeks(self) -> int:
        return len(self.wishes.weeks)

    def _own(self, slot: DaySlot, place: int) -> int:
        choice = self.grid.choices[place]
        if not place:
            return EMPTY
        serves = choice.is_test or any(goal in choice.goals for goal in self.wishes.goals)
        spare = max(0, slot.minutes - choice.minutes - SPARE_FROM)
        cost = 0 if serves else SERVES_NOTHING
        each = SPARE_IN_TAPER if self.wishes.is_tapered(slot.on) else SPARE
        return cost + COMPOSED * choice.composed + each * -(-spare // SPARE_STEP)

    def why_not(self, number: int, choice: Choice) -> str:
        """Why a practice may not stand in a slot, a word of ``WHY``; "" where it may."""
        slot, limits, race = self.slots[number], self.limits, self.wishes.race
        left = (race - slot.on).days if race else -1
        week = self.wishes.weeks[slot.week] if 0 <= slot.week < self._weeks else None
        wanted = week.benchmarks if week else ()
        heavy = choice.most.get(HEAVY, 0)
        reasons = {
            "pool": choice.elsewhere or choice.pool != slot.pool,
            "minutes": choice.minutes > slot.minutes,
            "lanes": slot.lanes is not None and not choice.lanes <= slot.lanes,
            "adults": slot.adults is not None and choice.adults > slot.adults,
            "test": choice.is_test
            and (not wanted or (bool(choice.tests) and not set(choice.tests) & set(wanted))),
            "race": 0 <= left <= limits.resisted_before_race and bool(choice.most.get(WORN)),
            "eve": left == 1 and bool(heavy),
            "break": bool(heavy or choice.is_test) and self._after_break(number),
            "gear": not self._is_free(slot, choice),
        }
        return next((word for word in WHY if reasons[word]), "")

    def why_empty(self, number: int) -> str:
        """Why a slot stays empty: what the squad's practices are that may not stand in it."""
        words = [(own, self.why_not(number, own)) for own in self.choices]
        told = Counter(WHY.get(word, "") for _, word in words)
        whose = {
            self.analysis.catalogue.club.squads[squad].title
            for own, word in words
            if word == "gear"
            for squad, _ in self._beside(self.slots[number], own)
        }
        beside = {WHY["gear"]: f" beside {words_in_a_row(sorted(whose))}"} if whose else {}
        shut = [f"{count} {why}{beside.get(why, '')}" for why, count in told.most_common() if why]
        if told[""]:
            shut.append(f"{told['']} that a limit or the order of teaching keeps out")
        return ", ".join(shut) or "the squad has none"

    def _after_break(self, number: int) -> bool:
        on, days = self.slots[number].on, self.limits.return_days
        if number == 0:
            return follows_a_break(self.analysis.catalogue, self.squad, on, days)
        return (on - self.slots[number - 1].on).days > days

    def _is_free(self, slot: DaySlot, choice: Choice) -> bool:
        """Whether the gear, the adults and the lanes are there that others do not have then."""
        club = self.analysis.catalogue.club
        beside = [own for _, own in self._beside(slot, choice)]
        for gear, needed in choice.gear.items():
            used = sum(n.needed for own in beside for n in _gear(own) if n.gear == gear)
            if needed + used > club.gear_owned.get(gear, 0):
                return False
        tables = self.analysis.catalogue.timetables.values()
        table = next((own for own in tables if own.holds(slot.on)), None)
        taken = sum(own.practice.practice.adults or 0 for own in beside if own.practice)
        if beside and table and table.adults is not None and choice.adults + taken > table.adults:
            return False
        lanes = [
            lanes_of(own.practice, Session()).keys()
            for own in beside
            if own.practice and own.practice.practice.pool == slot.pool
        ]
        return not any(choice.lanes & own for own in lanes)

    def _beside(self, slot: DaySlot, choice: Choice) -> Iterator[tuple[str, SessionPlan]]:
        """What other squads do while a practice would last, each with its squad."""
        begins = seconds_of_day(slot.begins)
        ends = begins + 60 * choice.minutes
        for booked, squad, own in self._others.get(slot.on, ()):
            if booked[0] < ends and begins < booked[1]:
                yield squad, own

    @cached_property
    def _others(self) -> Mapping[date, Sequence[tuple[tuple[int, int], str, SessionPlan]]]:
        """The practices of other squads by day, with when they are and whose."""
        found: dict[date, list[tuple[tuple[int, int], str, SessionPlan]]] = {}
        for id, groups in self.analysis.blocks.items():
            squad = self.analysis.catalogue.blocks[id].squad
            if squad == self.squad or not groups:
                continue
            for day in next(iter(groups.values())).days:
                for own in day.sessions:
                    if own.practice and own.booked_s:
                        found.setdefault(day.on, []).append((own.booked_s, squad, own))
        return found


def _gear(own: SessionPlan) -> tuple[GearNeed, ...]:
    return own.practice.gear if own.practice else ()
