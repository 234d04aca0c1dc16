"""What is wished of a block, in numbers: a usual week, the load of each, sessions for a goal."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from math import ceil
from statistics import median_high

from almanac.arithmetic.planning.rules import Grid
from almanac.arithmetic.planning.wishes import BlockLimits, BlockWishes


@dataclass(frozen=True)
class Aims:
    """Wishes over a grid, in whole numbers. ``load`` is that of a usual practice, ``metres`` how
    far it goes: both of what may stand in the slots.
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

    def target(self, week: int) -> int:
        """The load that is wished of a week's practices: its share of a full one, less what other
        work weighs; of a week with fewer slots than is usual, no more than these can be of a full
        one. What races weigh comes on top.
        """
        usual, wish = max(1, self.slots_a_week), self.wishes.weeks[week]
        whole = self.full * min(wish.load * usual, 100 * self._filled(week))
        return max(0, whole // (100 * usual) - wish.beside)

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

    def wanted(self, goal: str) -> int:
        """How many sessions are to serve a goal: its share of the weights, of all slots."""
        weights = sum(self.wishes.goals.values())
        return ceil(len(self.inside()) * self.wishes.goals[goal] / weights)

    def mean(self, name: str) -> int:
        """What a practice has of a sum in the mean."""
        own = [choice.sums.get(name, 0) for choice in self.grid.choices[1:]]
        return sum(own) // max(1, len(own))
