"""What no plan of a block costs less than, beside every plan that there is; and by hand."""

from __future__ import annotations

import itertools
import random
from dataclasses import replace
from functools import cache

import pytest
from planning_world import choice, grid, problem

from almanac.arithmetic.planning_bound import least_cost
from almanac.arithmetic.planning_greedy import greedy
from almanac.arithmetic.planning_model import PlanProblem, PlanRule

SEEDS = 24


@cache
def cheapest(seed: int) -> int:
    own = problem(random.Random(seed))
    return min(own.cost(plan) for plan in itertools.product(*own.may) if own.is_sound(plan))


@pytest.mark.parametrize("seed", range(SEEDS))
def test_no_sound_plan_is_below_it_whatever_plan_it_is_sought_from(seed: int) -> None:
    own = problem(random.Random(seed))
    for plan in (greedy(own), tuple(may[0] for may in own.may)):
        found = least_cost(own, plan, 100)
        assert found <= cheapest(seed)
        # Points of rules are none to gain, so that each slot's own cheapest choice is a bound too.
        assert found >= sum(min(costs.values()) for costs in own.own)
        assert least_cost(own, plan, 100) == found


def test_more_is_proven_than_by_what_is_paid_at_first() -> None:
    """Of the cheapest plans' points together half: with so few practices much cannot be split."""
    every = [problem(random.Random(seed)) for seed in range(SEEDS)]
    whole = sum(map(cheapest, range(SEEDS)))
    at_first, found = (sum(least_cost(own, greedy(own), n) for own in every) for n in (0, 100))
    assert 1.1 * at_first < found and 0.5 * whole <= found <= whole


def two(rule: PlanRule) -> PlanProblem:
    """Two slots and two practices, the first free, the second 4 points; an empty slot costs 40."""
    own = grid([0, 2], [choice("a"), choice("b")])
    return PlanProblem(own.slots, own.choices, own.may, ({0: 40, 1: 0, 2: 4},) * 2, (rule,))


def test_a_wish_is_paid_for_up_to_its_points() -> None:
    """The first practice once at most: a slot pays 4 for the other one, or 3 for the wish."""
    often = PlanRule("often", "", {0: {1: 1}, 1: {1: 1}}, 1, 3)
    for points, cost in ((3, 3), (9, 4)):
        own = two(replace(often, points=points))
        assert least_cost(own, (1, 1)) == cost
        assert least_cost(own, (2, 1)) == cost


def test_a_limit_is_paid_for_but_not_where_what_stands_is_beyond_it() -> None:
    never = PlanRule("never", "", {0: {1: 1}, 1: {1: 1}}, 1)
    assert least_cost(two(never), (2, 1)) == 4
    stands = replace(two(never), may=((1,), (1,)))
    assert least_cost(stands, (1, 1)) == 0 == stands.cost((1, 1))


def test_amounts_of_what_may_not_stand_there_count_for_nothing() -> None:
    own = two(PlanRule("often", "", {0: {1: 5, 2: 1}, 1: {2: 1}}, 1, 3))
    assert least_cost(replace(own, may=((2,), (2,))), (2, 2)) == 8 + 3
