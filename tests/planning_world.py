"""Small problems of planning a block, by hand and by chance."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

from almanac.arithmetic.planning.choices import NOTHING, Choice, DaySlot
from almanac.arithmetic.planning.model import PlanProblem, PlanRule
from almanac.arithmetic.planning.rules import Grid

FIRST = date(2027, 1, 4)  # a Monday


def slot(day: int) -> DaySlot:
    return DaySlot(FIRST + timedelta(day), day // 7, "home", "18:00", 60)


def choice(
    id: str,
    sums: Mapping[str, int] | None = None,
    most: Mapping[str, int] | None = None,
    **more: Any,
) -> Choice:
    return Choice(id, id, "home", 60, "18:00", frozenset({1}), 1, sums or {}, most or {}, **more)


def grid(days: Sequence[int], choices: Sequence[Choice]) -> Grid:
    """Every choice may stand in every slot, and so may nothing."""
    places = tuple(range(len(choices) + 1))
    return Grid(tuple(map(slot, days)), (NOTHING, *choices), (places,) * len(days))


def problem(chance: random.Random, slots: int = 5, choices: int = 4) -> PlanProblem:
    """Rules, an order of teaching and what may stand where, by chance."""
    names = [f"drill-{number}" for number in range(3)]
    every = [
        choice(
            f"c{number}",
            teaches=frozenset(name for name in names if chance.random() < 0.5),
            needs=frozenset(name for name in names if chance.random() < 0.15),
        )
        for number in range(choices)
    ]
    whole = grid(sorted(chance.sample(range(14), slots)), every)
    places = range(1, choices + 1)
    may = tuple(
        (0, *sorted(chance.sample(places, chance.randint(2, choices)))) for _ in range(slots)
    )
    own = replace(whole, may=may)
    rules = []
    for number in range(12):
        amounts = {
            at: {
                place: chance.randint(-2, 5)
                for place in own.may[at]
                if place and chance.random() < 0.7
            }
            for at in range(slots)
            if chance.random() < 0.8
        }
        is_limit = number < 3
        if is_limit:  # as every limit is, one that nothing at all keeps to
            amounts = {
                at: {place: abs(n) for place, n in each.items()} for at, each in amounts.items()
            }
        points = 0 if is_limit else chance.randint(1, 9)
        rules.append(
            PlanRule(
                f"r{number}", "", amounts, chance.randint(2, 9), points, chance.choice([1, 1, 3])
            )
        )
    costs = tuple(
        {place: (40 if not place else chance.randint(0, 20)) for place in may} for may in own.may
    )
    return PlanProblem(own.slots, own.choices, own.may, costs, tuple(rules))
