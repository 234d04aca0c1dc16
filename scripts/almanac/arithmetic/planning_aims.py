"""What is wished of a block, as rules with points: loads, shares, goals, tests, a taper."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import ceil
from statistics import median_high

from almanac.arithmetic.planning_choices import (
    DOLPHIN,
    FAST,
    FLUTTER,
    KICK,
    LOAD,
    METRES,
    RESISTED,
    SUPINE,
    Choice,
)
from almanac.arithmetic.planning_costs import (
    CUT,
    CUT_MARGIN,
    GOAL_LONG_GONE,
    GOAL_NEVER,
    GOAL_SHORT,
    INSIDE,
    LOAD_OVER,
    LOAD_STEPS,
    LOAD_UNDER,
    NOT_LIGHTER,
    SHARE,
    STROKE,
    UNTESTED,
)
from almanac.arithmetic.planning_model import Amounts, PlanRule
from almanac.arithmetic.planning_rules import Counted, Grid
from almanac.arithmetic.planning_wishes import BlockLimits, BlockWishes, TaperWish

PARTS = {
    "kick_share": (KICK, METRES),
    "supine_share": (SUPINE, FLUTTER),
    "resisted_share": (RESISTED, METRES),
    "fast_share": (FAST, METRES),
    "dolphin_share": (DOLPHIN, METRES),
}
"""What each share is of what."""
_WEEKS_BEFORE = 2  # loading weeks that a taper is held against


@dataclass(frozen=True)
class Aims:
    """Wishes over a grid. ``load`` is that of a usual practice, ``metres`` how far it goes: both of
    what may stand in the slots.
    """

    grid: Grid
    wishes: BlockWishes
    limits: BlockLimits
    load: int
    metres: int

    @property
    def full(self) -> int:
        """The load of a full week: a usual practice in as many slots as are usual."""
        return self.load * self.slots_a_week

    def inside(self) -> tuple[int, ...]:
        """The slots of the block itself."""
        weeks = range(len(self.wishes.weeks))
        return tuple(n for n, slot in enumerate(self.grid.slots) if slot.week in weeks)

    def slots_of(self, weeks: Sequence[int]) -> tuple[int, ...]:
        """The slots of some weeks."""
        return tuple(n for n in self.inside() if self.grid.slots[n].week in weeks)

    def rules(self) -> Iterator[PlanRule]:
        """Every wish as rules."""
        yield from self._loads()
        yield from self._shares()
        yield from self._strokes()
        yield from self._goals()
        yield from self._tests()
        yield from self._taper()

    def target(self, week: int) -> int:
        """The load that is wished of a week: its share of a full one; of a week with fewer slots
        than is usual, no more than these can be of a full one. What races weigh comes on top.
        """
        usual = max(1, self.slots_a_week)
        whole = self.full * min(self.wishes.weeks[week].load * usual, 100 * self._filled(week))
        return whole // (100 * usual)

    def loads(self, named: Sequence[int] = ()) -> Sequence[int]:
        """The load that is wished of each week, in hundredths of a full one: as it was named, else
        what is usual, and of a week with fewer slots no more than these can be.
        """
        usual = max(1, self.slots_a_week)
        return named or [
            max(1, min(week.load, 100 * self._filled(number) // usual))
            for number, week in enumerate(self.wishes.weeks)
        ]

    @cached_property
    def slots_a_week(self) -> int:
        """How many slots a week usually has."""
        return int(median_high(map(self._filled, range(len(self.wishes.weeks)))))

    def _filled(self, week: int) -> int:
        return len(self.slots_of([week]))

    def _loads(self) -> Iterator[PlanRule]:
        unit = max(1, self.full // LOAD_STEPS)
        for week in range(len(self.wishes.weeks)):
            slots, which = self.slots_of([week]), str(week + 1)
            if not slots:
                continue
            loads = self.grid.amounts(slots, sum_of(LOAD))
            aim = self.target(week)
            yield PlanRule("load over", which, loads, aim, LOAD_OVER, unit)
            yield PlanRule("load under", which, _minus(loads), -aim, LOAD_UNDER, unit)
        first = self.limits.first_load
        if first is not None:
            loads = self.grid.amounts(self.slots_of([0]), sum_of(LOAD))
            yield PlanRule("first week", "1", loads, first, 4 * LOAD_OVER, unit)

    def _shares(self) -> Iterator[PlanRule]:
        slots = self.inside()
        wished = {"supine_share": (self.limits.supine, 1000), **self.wishes.shares}
        for name, (from_, to) in wished.items():
            part, whole = PARTS[name]
            least, most = from_ and from_ + INSIDE, to if to == 1000 else to - INSIDE
            mean = self._mean(whole) * len(slots)
            unit = max(1, mean)

            def over(own: Choice, part: str = part, whole: str = whole, most: int = most) -> int:
                return 1000 * own.sums.get(part, 0) - most * own.sums.get(whole, 0)

            def under(own: Choice, part: str = part, whole: str = whole, least: int = least) -> int:
                return least * own.sums.get(whole, 0) - 1000 * own.sums.get(part, 0)

            if most < 1000:
                yield PlanRule(f"{name} over", name, self.grid.amounts(slots, over), 0, SHARE, unit)
            if least:
                amounts = self.grid.amounts(slots, under)
                yield PlanRule(f"{name} under", name, amounts, 0, SHARE, unit)

    def _mean(self, name: str) -> int:
        own = [choice.sums.get(name, 0) for choice in self.grid.choices[1:]]
        return sum(own) // max(1, len(own))

    def _strokes(self) -> Iterator[PlanRule]:
        least = self.wishes.strokes
        for week in range(0, len(self.wishes.weeks) - 1, 2) if least else ():
            slots = self.slots_of([week, week + 1])
            for stroke in self.wishes.four:

                def under(own: Choice, stroke: str = stroke) -> int:
                    return least * own.sums.get(METRES, 0) - 1000 * own.strokes.get(stroke, 0)

                amounts = self.grid.amounts(slots, under)
                unit = max(1, self._mean(METRES) * len(slots))
                yield PlanRule("stroke under", f"{stroke} {week + 1}", amounts, 0, STROKE, unit)

    def wanted(self, goal: str) -> int:
        """How many sessions are to serve a goal: its share of the weights, of all slots."""
        weights = sum(self.wishes.goals.values())
        return ceil(len(self.inside()) * self.wishes.goals[goal] / weights)

    def _goals(self) -> Iterator[PlanRule]:
        for goal, weight in self.wishes.goals.items():
            serves = _serves(goal)
            amounts = _minus(self.grid.amounts(self.inside(), serves))
            wanted = self.wanted(goal)
            yield PlanRule("goal short", goal, amounts, -wanted, GOAL_SHORT * weight)
            yield PlanRule("goal never", goal, amounts, -1, GOAL_NEVER)
            for week in range(0, len(self.wishes.weeks) - 1, 2):
                slots = self.slots_of([week, week + 1])
                if slots:
                    own = _minus(self.grid.amounts(slots, serves))
                    cost = GOAL_LONG_GONE * weight
                    yield PlanRule("goal long gone", f"{goal} {week + 1}", own, -1, cost)

    def _tests(self) -> Iterator[PlanRule]:
        for week, wish in enumerate(self.wishes.weeks):
            for benchmark in wish.benchmarks:
                runs = self.grid.amounts(self.slots_of([week]), _tests(benchmark))
                which = f"{benchmark} {week + 1}"
                yield PlanRule("not tested", which, _minus(runs), -1, UNTESTED)

    def _taper(self) -> Iterator[PlanRule]:
        taper = self.wishes.taper
        before = [w for w in range(len(self.wishes.weeks)) if self.wishes.is_loading(w)]
        before = before[-_WEEKS_BEFORE:]
        if taper is None or not before:
            return
        inside = [n for n in self.inside() if taper.first <= self.grid.slots[n].on <= taper.last]
        earlier = self.slots_of(before)
        if self.limits.light_days:
            yield from self._lighter(inside, earlier)
        elif self.limits.cut:
            yield from self._cut(taper, inside, earlier, len(before))

    def _cut(
        self, taper: TaperWish, inside: Sequence[int], earlier: Sequence[int], weeks: int
    ) -> Iterator[PlanRule]:
        """Metres of a week of the taper over those of a loading week, in thousandths of a usual
        one: 7 · weeks · taper − (1 − cut) · days · before.
        """
        assert self.limits.cut
        least, most = self.limits.cut
        unit = max(1, taper.days * weeks * self.metres * self.slots_a_week)
        inner = least + CUT_MARGIN, most - CUT_MARGIN
        for name, cut, sign in (("cut too little", inner[0], 1), ("cut too much", inner[1], -1)):

            def during(own: Choice, sign: int = sign) -> int:
                return sign * 7000 * weeks * own.sums.get(METRES, 0)

            def before(own: Choice, cut: int = cut, sign: int = sign) -> int:
                return -sign * (1000 - cut) * taper.days * own.sums.get(METRES, 0)

            amounts = {**self.grid.amounts(inside, during), **self.grid.amounts(earlier, before)}
            yield PlanRule(name, str(taper.first), amounts, 0, CUT, unit)

    def _lighter(self, inside: Sequence[int], earlier: Sequence[int]) -> Iterator[PlanRule]:
        """Each practice of the taper is shorter than the mean of those before it."""
        count = len(earlier)

        def during(own: Choice) -> int:
            return count * own.sums.get(METRES, 0)

        before = _minus(self.grid.amounts(earlier, sum_of(METRES)))
        unit = max(1, count * self._mean(METRES) // 100)
        for slot in inside:
            amounts = {**self.grid.amounts([slot], during), **before}
            on = str(self.grid.slots[slot].on)
            yield PlanRule("not lighter", on, amounts, -1, NOT_LIGHTER, unit)


def sum_of(name: str) -> Counted:
    """What a choice has of a sum."""
    return lambda choice: choice.sums.get(name, 0)


def _serves(goal: str) -> Counted:
    return lambda choice: int(goal in choice.goals)


def _tests(benchmark: str) -> Counted:
    return lambda choice: int(benchmark in choice.tests)


def _minus(amounts: Mapping[int, Amounts]) -> dict[int, Amounts]:
    return {
        slot: {place: -amount for place, amount in own.items()} for slot, own in amounts.items()
    }
