"""A plan of practices for slots, what holds it, and what it costs.

Everything that is asked of a plan but the order of teaching is a ``PlanRule``: amounts that
practices have in some slots, added up, and the most that the sum may be. One without points is a
limit and is never passed; of others each unit over costs points. Whole numbers throughout, so that
every machine finds the same plan.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from almanac.arithmetic.planning.choices import Choice, DaySlot

Plan = tuple[int, ...]  # by slot the place of a choice

Amounts = Mapping[int, int]
"""By the place of a choice how much of something it has; those that have none are left out."""


@dataclass(frozen=True)
class PlanRule:
    """A sum over slots that may be ``most``. ``about`` and ``which`` say what it is of."""

    about: str
    which: str
    amounts: Mapping[int, Amounts]
    most: int
    points: int = 0
    unit: int = 1

    @property
    def is_limit(self) -> bool:
        """Whether it is never passed."""
        return not self.points

    def sum_of(self, plan: Plan) -> int:
        """What a plan has of it."""
        return sum(own.get(plan[slot], 0) for slot, own in self.amounts.items())

    def over(self, plan: Plan) -> int:
        """Units over the most, begun ones whole."""
        return self.over_by(self.sum_of(plan))

    def over_by(self, amount: int) -> int:
        """The same of an amount."""
        return units_over(amount, self.most, self.unit)


def units_over(amount: int, most: int, unit: int) -> int:
    """Units by which an amount is more than the most, a begun one whole; 0 where it is not."""
    return max(0, -((most - amount) // unit))


@dataclass(frozen=True)
class PlanProblem:
    """What is planned: choices for slots in order of time, the first choice being to leave a slot
    empty. ``may`` are the choices of each slot, ``own`` what each of them costs there by itself.
    """

    slots: tuple[DaySlot, ...]
    choices: tuple[Choice, ...]
    may: tuple[tuple[int, ...], ...]
    own: tuple[Mapping[int, int], ...]
    rules: tuple[PlanRule, ...]

    @cached_property
    def rules_at(self) -> tuple[Mapping[int, tuple[tuple[int, int], ...]], ...]:
        """By slot and choice the places of the rules that count it, each with the amount."""
        found: list[dict[int, list[tuple[int, int]]]] = [{} for _ in self.slots]
        for number, rule in enumerate(self.rules):
            for slot, amounts in rule.amounts.items():
                for choice, amount in amounts.items():
                    found[slot].setdefault(choice, []).append((number, amount))
        return tuple({key: tuple(own) for key, own in each.items()} for each in found)

    @cached_property
    def needed(self) -> tuple[frozenset[str], ...]:
        """By choice the drills that an earlier slot has to teach."""
        return tuple(choice.needs for choice in self.choices)

    def untaught(self, plan: Plan | Sequence[int]) -> int:
        """The first slot with a drill in it that comes before what it needs; -1 where none is."""
        taught = set[str]()
        for slot, place in enumerate(plan):
            if not self.needed[place] <= taught:
                return slot
            taught |= self.choices[place].teaches
        return -1

    def is_sound(self, plan: Plan) -> bool:
        """Whether a plan keeps to every limit, and to the order of teaching."""
        may_be = all(place in may for place, may in zip(plan, self.may, strict=True))
        kept = all(not rule.over(plan) for rule in self.rules if rule.is_limit)
        return may_be and kept and self.untaught(plan) < 0

    def cost(self, plan: Plan) -> int:
        """What a plan costs, in points."""
        alone = sum(self.own[slot].get(place, 0) for slot, place in enumerate(plan))
        return alone + sum(rule.points * rule.over(plan) for rule in self.rules)

    def missed(self, plan: Plan) -> Iterator[tuple[PlanRule, int]]:
        """The wishes that a plan does not meet, each with the units that it is over."""
        for rule in self.rules:
            over = 0 if rule.is_limit else rule.over(plan)
            if over:
                yield rule, over
