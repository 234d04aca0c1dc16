"""What no plan of a block costs less than, beside every plan that there is; and by hand."""

from __future__ import annotations

import itertools
import random
from dataclasses import replace
from functools import cache

import pytest
from planning_world import choice, grid, problem

from almanac.arithmetic.planning import weeks as planning_weeks
from almanac.arithmetic.planning.bound import least_cost
from almanac.arithmetic.planning.greedy import greedy, improved
from almanac.arithmetic.planning.model import PlanProblem, PlanRule

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
    """Of the cheapest plans' points two thirds: with so few practices much cannot be split."""
    every = [problem(random.Random(seed)) for seed in range(SEEDS)]
    whole = sum(map(cheapest, range(SEEDS)))
    at_first, found = (sum(least_cost(own, greedy(own), n) for own in every) for n in (0, 100))
    assert 1.1 * at_first < found and 0.67 * whole <= found <= whole


@pytest.mark.parametrize("seed", range(SEEDS))
def test_a_search_that_is_broken_off_proves_less_and_nothing_wrong(
    seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    own, found = problem(random.Random(seed)), list[int]()
    for tried in (0, 1, 4, 16, 64, 256):
        monkeypatch.setattr(planning_weeks, "TRIED", tried)
        found.append(least_cost(own, greedy(own), 100))
    assert found == sorted(found) and found[-1] <= cheapest(seed)


def test_a_week_that_no_choices_meet_costs_what_the_nearest_do() -> None:
    """Practices of 40 and 70 in two slots of a week: one of each comes to 110, for the 4 points of
    the second, and is 10 under 120.
    """
    for load, points in ((110, 4), (120, 4 + 20)):
        each, less = {1: 40, 2: 70}, {1: -40, 2: -70}
        rules = [
            PlanRule("over", "", {0: each, 1: each}, load, 3),
            PlanRule("under", "", {0: less, 1: less}, -load, 2),
        ]
        own = replace(two(rules[0]), may=((1, 2),) * 2, rules=tuple(rules))
        plans = list(itertools.product(*own.may))
        assert min(map(own.cost, plans)) == points
        assert all(least_cost(own, plan) == points for plan in plans)


def test_a_limit_of_a_week_is_held_to_in_it() -> None:
    """The second slot has the first practice, by a limit; the 3 points of twice the first are fewer
    than the 4 of the second.
    """
    rules = (
        PlanRule("both", "", {0: {1: 1, 2: 1}, 1: {1: 1, 2: 2}}, 2),
        PlanRule("first", "", {0: {1: 1}, 1: {1: 1}}, 1, 3),
        PlanRule("second", "", {0: {1: 1}, 1: {2: 1}}, 1),
    )
    own = replace(two(rules[0]), may=((1, 2),) * 2, rules=rules)
    best = min(own.cost(plan) for plan in itertools.product(*own.may) if own.is_sound(plan))
    assert least_cost(own, (1, 1)) == best == 3


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


def test_what_no_earlier_slot_can_teach_counts_for_nothing() -> None:
    """The first practice is free, and needs a drill that the second teaches, for 4 points; an empty
    slot costs 40.
    """
    every = [choice("a", needs=frozenset({"d"})), choice("b", teaches=frozenset({"d"}))]
    own = replace(two(PlanRule("none", "", {}, 0, 1)), choices=grid([0, 2], every).choices)
    assert least_cost(own, (2, 2)) == 4  # once it is taught
    assert least_cost(replace(own, may=((0, 1), (0, 1))), (0, 0)) == 80  # by nothing that may stand
    late = replace(own, may=((0, 1), (0, 1, 2)))
    assert least_cost(late, (0, 2)) == 44 == late.cost((0, 2))  # taught in the last slot
    stands = replace(own, may=((1,), (0, 1)))
    assert least_cost(stands, (1, 0)) == 40 == stands.cost((1, 0))  # and what stands fast


def in_weeks(weeks: int) -> PlanProblem:
    """Three slots a week and practices of 40 to 85: a week is to come to 203, and no practice again
    within four slots. Each is free or costs little, so that alone the choices come to nothing.
    """
    loads = {1: 40, 2: 55, 3: 70, 4: 85}
    own = grid(
        [7 * week + day for week in range(weeks) for day in (0, 2, 4)], list(map(choice, "abcd"))
    )
    slots, rules = range(3 * weeks), list[PlanRule]()
    for first in slots[::3]:
        for sign, points in ((1, 16), (-1, 6)):
            each = {place: sign * load for place, load in loads.items()}
            amounts = dict.fromkeys(slots[first : first + 3], each)
            rules.append(PlanRule("load", str(first), amounts, sign * 203, points))
    for first in slots[:-3]:
        for place in loads:
            again = {slot: {place: 1} for slot in slots[first : first + 4]}
            rules.append(PlanRule("again", f"{place} {first}", again, 1, 45))
    costs = {place: 5 * place - 5 for place in loads}
    may = (tuple(loads),) * len(slots)
    return PlanProblem(own.slots, own.choices, may, (costs,) * len(slots), tuple(rules))


def test_it_is_sought_on_from_far_below_what_the_choices_cost_alone() -> None:
    """What is paid at first proves little where weeks are off on both sides; it is sought from
    there all the same, and not from there again and again.
    """
    own = in_weeks(2)
    best = min(own.cost(plan) for plan in itertools.product(*own.may))
    assert least_cost(own, greedy(own), 0) < least_cost(own, greedy(own)) <= best
    assert 0.25 * best < least_cost(own, greedy(own))
    whole = in_weeks(8)
    plan = improved(whole, greedy(whole), 4000)
    assert 0.4 * whole.cost(plan) < least_cost(whole, plan) <= whole.cost(plan)
