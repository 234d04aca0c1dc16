"""Rules of a block in their order, what varies in it, and what a practice costs in a slot by
itself: by hand.
"""

from __future__ import annotations

from dataclasses import fields, replace
from typing import Any, cast

import pytest
from planning_world import FIRST, choice, grid, slot

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.planning.aims import Aims
from almanac.arithmetic.planning.choices import HARD, LOAD, METRES, NOTHING, TEST, Choice
from almanac.arithmetic.planning.model import PlanRule
from almanac.arithmetic.planning.rules import limit_rules
from almanac.arithmetic.planning.variety import variety
from almanac.arithmetic.planning.wishes import (
    LOADING,
    BlockLimits,
    BlockWishes,
    TaperWish,
    WeekWish,
)
from almanac.report.planning.problem import Planning

LIMITS = BlockLimits(100, 200, 300, 60, 2, 2, 10, 10, 500)


def test_in_a_slot_that_stays_empty_there_is_nothing() -> None:
    assert not any(getattr(NOTHING, field.name) for field in fields(Choice))


def test_hard_days_with_a_day_between_them_are_not_in_a_row() -> None:
    hard = choice("hard", most={HARD: 1})
    for days, is_over in (((0, 1, 3), 0), ((0, 1, 2), 1)):
        rules = list(limit_rules(grid(days, [hard]), LIMITS))
        over = [rule.over((1, 1, 1)) for rule in rules if rule.about == "hard days in a row"]
        assert sum(over) == is_over


def test_runs_of_days_are_in_the_order_of_time_whatever_order_a_set_has() -> None:
    own = grid([0, 5, 10, 15, 20, 25, 30, 35, 40], [])
    found = [(first - FIRST).days for first, _ in own.windows(7)]
    assert found == [0, 5, 10, 15, 20, 25, 30, 35]


def of(rules: list[PlanRule], about: str) -> list[str]:
    return [rule.which for rule in rules if rule.about == about]


def test_what_varies_is_asked_in_one_order_whatever_order_a_set_has() -> None:
    names = ["ladder", "pyramid", "broken", "descend", "sprint", "steady"]
    every = [choice(name, mains=(name,), opens=f"open {name}") for name in names]
    rules = list(variety(grid([0, 1, 2, 3], every), range(4)))
    assert of(rules, "again") == [f"{name} {FIRST}" for name in sorted(names)]
    assert of(rules, "same warm-up") == [f"open {name} 0" for name in sorted(names)]
    assert of(rules, "too often") == names


def test_a_practice_is_too_often_beyond_its_share_of_the_slots_that_are_free_and_one() -> None:
    def most(days: int, *own: Choice, may: tuple[int, ...] | None = None) -> set[int]:
        whole = grid(range(days), own)
        held = replace(whole, may=tuple(may or each for each in whole.may))
        return {rule.most for rule in variety(held, range(days)) if rule.about == "too often"}

    one, other = choice("one"), choice("other")
    assert most(3, one) == {4}  # three slots for one practice: three, and one
    assert most(3, one, other) == {3}  # one and a half, begun ones whole, and one
    assert most(3, one, may=(1,)) == set()  # all is held: nothing varies


def planned(
    minutes: int,
    goals: tuple[str, ...] = ("walls",),
    load: int = 100,
    taper: TaperWish | None = None,
    **more: Any,
) -> int:
    """What a practice of so many minutes costs by itself in a slot of sixty."""
    own = choice("own", {LOAD: 100, METRES: 1000}, goals=goals, **more)
    own = replace(own, minutes=minutes)
    wishes = BlockWishes(FIRST, {"walls": 1}, (WeekWish(LOADING, load),), taper=taper)
    slots = (replace(slot(0), only=("own",)),)
    planning = Planning(cast(Analysis, None), "heron", slots, (own,), wishes, LIMITS)
    return planning.problem.own[0][1]


@pytest.mark.parametrize(
    ("minutes", "loading", "tapered"),
    # Five minutes are well left; beyond them each five that are begun cost 12, in a taper 1.
    [(60, 0, 0), (55, 0, 0), (54, 12, 1), (50, 12, 1), (49, 24, 2), (40, 36, 3)],
)
def test_minutes_of_a_slot_that_are_left_cost(minutes: int, loading: int, tapered: int) -> None:
    """In a light week as in any other: it is so by easier work."""
    assert planned(minutes) == planned(minutes, load=80) == loading
    assert planned(minutes, taper=TaperWish(FIRST, FIRST)) == tapered


def test_what_serves_no_goal_or_is_composed_costs_and_a_test_serves() -> None:
    assert planned(60, ("turns",)) == 60
    assert planned(60, ("turns", "walls")) == 0
    assert planned(60, ("turns",), most={TEST: 1}) == 0
    assert planned(60, composed=True) == 40
    assert planned(54, (), composed=True) == 60 + 40 + 12


def test_an_empty_slot_costs_more_than_anything_that_may_stand_in_it() -> None:
    wishes = BlockWishes(FIRST, {"walls": 1}, (WeekWish(LOADING, 100),))
    planning = Planning(cast(Analysis, None), "heron", (slot(0),), (), wishes, LIMITS)
    assert planning.problem.own == ({0: 5000},)


def test_a_week_without_slots_is_asked_for_next_to_nothing() -> None:
    """Of two slots a week is usual; a load of nothing could not be written."""
    own = grid([0, 1, 14, 15], [choice("own", {LOAD: 100})])
    wishes = BlockWishes(FIRST, {"legs": 1}, (WeekWish(LOADING, 90),) * 3)
    assert Aims(own, wishes, LIMITS, 100, 1000).loads() == [90, 1, 90]
