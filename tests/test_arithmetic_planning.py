"""A block's plan: the greedy one and its exchanges beside every plan there is, limits counted by
hand.
"""

from __future__ import annotations

import itertools
import random
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from planning_world import FIRST, choice, grid, problem, slot

from almanac.arithmetic.planning.aim_rules import PARTS, aim_rules
from almanac.arithmetic.planning.aims import Aims
from almanac.arithmetic.planning.choices import (
    ALL_OUT,
    HARD,
    HEAVY,
    NOTHING,
    PLATES,
    STARTS,
    TEST,
    UNDER,
    UNDER_SETS,
    WORN,
    Choice,
)
from almanac.arithmetic.planning.greedy import Standing, chances, greedy, improved
from almanac.arithmetic.planning.model import Plan, PlanProblem, PlanRule, units_over
from almanac.arithmetic.planning.rules import limit_rules
from almanac.arithmetic.planning.variety import variety
from almanac.arithmetic.planning.wishes import (
    LOADING,
    RECOVERY,
    SHARES,
    TAPER,
    TESTING,
    BlockLimits,
    BlockWishes,
    TaperWish,
    WeekWish,
    usual_loads,
)
from almanac.source import schemas

LIMITS = BlockLimits(100, 200, 300, 60, 2, 2, 10, 10, 500, (410, 600))
ANY = BlockLimits(9999, 9999, 9999, 9999, 99, 99, 0, 99, 0)


def every_plan(own: PlanProblem) -> list[Plan]:
    return [plan for plan in itertools.product(*own.may) if own.is_sound(plan)]


@pytest.mark.parametrize("seed", range(6))
def test_exchanges_find_the_cheapest_of_every_plan(seed: int) -> None:
    own = problem(random.Random(seed))
    first = greedy(own)
    found = improved(own, first, steps=3000)
    assert own.is_sound(first) and own.is_sound(found)
    assert own.cost(found) == min(map(own.cost, every_plan(own))) <= own.cost(first)


def test_the_same_seed_gives_the_same_plan_and_another_one_may_not() -> None:
    own = problem(random.Random(3), slots=9)
    first = greedy(own)
    assert improved(own, first, 500, seed=5) == improved(own, first, 500, seed=5)
    assert improved(own, first, 0) == first


def test_chances_are_the_sequence_that_knuth_names() -> None:
    # x' = 6364136223846793005 x + 1442695040888963407 mod 2^64, worked with plain powers
    x = (6364136223846793005 * 1 + 1442695040888963407) % 2**64
    y = (6364136223846793005 * x + 1442695040888963407) % 2**64
    drawn = chances(1)
    assert [next(drawn), next(drawn)] == [x // 2**32, y // 2**32]


@pytest.mark.parametrize("seed", range(4))
def test_a_standing_plan_keeps_its_sums_and_its_cost(seed: int) -> None:
    own, chance = problem(random.Random(seed)), random.Random(seed)
    standing = Standing(own, list(greedy(own)))
    for _ in range(200):
        slot_ = chance.randrange(len(own.slots))
        place = chance.choice(own.may[slot_])
        before = own.cost(tuple(standing.plan))
        dearer = standing.dearer((slot_,), (place,))
        if dearer is not None:
            standing.set((slot_,), (place,), dearer)
            plan = tuple(standing.plan)
            assert standing.cost == own.cost(plan) == before + dearer
            assert standing.sums == [rule.sum_of(plan) for rule in own.rules]


@pytest.mark.parametrize(
    ("amount", "most", "unit", "over"),
    [(10, 10, 1, 0), (11, 10, 1, 1), (11, 10, 5, 1), (15, 10, 5, 1), (16, 10, 5, 2), (-3, -5, 1, 2),
     (-9, -5, 1, 0), (0, 0, 7, 0)],
)  # fmt: skip
def test_units_over_are_begun_ones_whole(amount: int, most: int, unit: int, over: int) -> None:
    assert units_over(amount, most, unit) == over


def broken(choices: list[Choice], plan: Plan, days: list[int], limits: BlockLimits) -> set[str]:
    """The limits that a plan passes, and the wishes about hard days that it misses."""
    own = grid(days, choices)
    return {rule.about for rule in limit_rules(own, limits) if rule.over(plan)}


@pytest.mark.parametrize(
    ("name", "amount", "days", "limits", "told"),
    [
        (WORN, 101, [0, 6], replace(ANY, worn_seven=201), "worn in seven days"),
        (WORN, 101, [0, 7], replace(ANY, worn_seven=201), ""),
        (WORN, 100, [0, 6], replace(ANY, worn_seven=200), ""),
        (WORN, 51, [3, 3], replace(ANY, worn_day=101), "worn a day"),
        (WORN, 51, [3, 4], replace(ANY, worn_day=101), ""),
        (PLATES, 10, [3, 3], replace(ANY, plates_day=19), "plates a day"),
        (UNDER, 10, [3, 3], replace(ANY, under_day=19), "under a day"),
        (UNDER_SETS, 1, [0, 2, 6], replace(ANY, under_sets_seven=2), "under sets in seven days"),
        (UNDER_SETS, 1, [0, 2, 7], replace(ANY, under_sets_seven=2), ""),
        (STARTS, 1, [0, 2, 6], ANY, "starts in seven days"),
        (ALL_OUT, 1, [0, 1], ANY, "all-out"),
        (ALL_OUT, 1, [0, 2], ANY, ""),
        (HARD, 1, [0, 1, 2], replace(ANY, hard_in_a_row=2), "hard days in a row"),
        (HARD, 1, [0, 1, 3], replace(ANY, hard_in_a_row=2), "hard days that touch"),
        (HEAVY, 1, [0, 1, 2], ANY, "never light"),
        (HEAVY, 1, [0, 1, 3], ANY, ""),
        (TEST, 1, [0, 1], ANY, "tests that touch"),
    ],
)  # fmt: skip
def test_each_limit_is_told_where_it_is_passed(
    name: str, amount: int, days: list[int], limits: BlockLimits, told: str
) -> None:
    found = broken([choice("one", most={name: amount})], (1,) * len(days), days, limits)
    assert told in found if told else not found


def test_the_day_before_a_test_is_light_and_two_tests_may_touch() -> None:
    heavy, test = (
        choice("heavy", most={HEAVY: 1}),
        choice("test", most={TEST: 1, ALL_OUT: 1, HEAVY: 1}),
    )
    assert "light before tests" in broken([heavy, test], (1, 2), [0, 1], ANY)
    assert "light before tests" not in broken([heavy, test], (2, 1), [0, 1], ANY)
    assert "light before tests" not in broken([heavy, test], (1, 2), [0, 2], ANY)
    assert broken([heavy, test], (2, 2), [0, 1], ANY) == {"tests that touch"}
    hardest = choice("hardest", most={ALL_OUT: 1})
    assert broken([hardest, test], (2, 1), [0, 1], ANY) == {"all-out"}


def test_what_a_practice_needs_is_taught_in_an_earlier_slot() -> None:
    teaches = choice("teaches", teaches=frozenset({"line"}))
    needs = choice("needs", needs=frozenset({"line"}))
    own = grid([0, 1], [teaches, needs])
    both = PlanProblem(own.slots, own.choices, own.may, ({}, {}), ())
    assert both.is_sound((1, 2)) and both.untaught((1, 2)) == -1
    assert not both.is_sound((2, 1)) and both.untaught((2, 1)) == 0
    assert both.untaught((0, 2)) == 1
    assert greedy(both)[0] != 2


def aims(
    days: list[int], choices: list[Choice], wishes: BlockWishes, limits: BlockLimits = LIMITS
) -> Aims:
    return Aims(grid(days, choices), wishes, limits, load=100, metres=1000)


def over(own: Aims, plan: Plan) -> dict[str, int]:
    """What of the wishes is missed, by name, in units."""
    found: dict[str, int] = {}
    for rule in aim_rules(own):
        if rule.over(plan):
            found[rule.about] = found.get(rule.about, 0) + rule.over(plan)
    return found


WEEK = (WeekWish("loading", 100),)
PLAIN = choice(
    "plain", sums={"load": 100, "metres": 1000, "flutter": 100, "supine": 80}, goals=("legs",)
)


def test_a_week_weighs_its_share_of_a_full_one() -> None:
    wishes = BlockWishes(FIRST, {"legs": 1}, (WeekWish("loading", 50),))
    own = aims([0, 2, 4, 5], [PLAIN], wishes)
    assert own.full == 400 and own.target(0) == 200
    assert over(own, (1, 1, 0, 0)) == {"goal short": 2}
    assert over(own, (1, 1, 1, 0)) == {"goal short": 1, "load over": 50}  # 100 over, 2 to a unit
    assert over(own, (1, 0, 0, 0)) == {"goal short": 3, "load under": 50}
    # Other work of its days takes its part of that.
    for beside, left in ((60, 140), (250, 0)):
        weeks = (WeekWish("loading", 50, beside=beside),)
        assert aims([0, 2, 4, 5], [PLAIN], replace(wishes, weeks=weeks)).target(0) == left


def test_a_week_with_fewer_slots_is_not_asked_for_more_than_they_hold() -> None:
    wishes = BlockWishes(FIRST, {"legs": 1}, (WeekWish("loading", 90),) * 3)
    own = aims([0, 1, 2, 3, 7, 14, 15, 16, 17], [PLAIN], wishes)
    assert [own.target(week) for week in range(3)] == [360, 100, 360]
    assert own.loads() == [90, 25, 90] and own.loads((80, 70, 60)) == (80, 70, 60)


def test_a_share_is_missed_by_thousandths_of_what_is_usual() -> None:
    kick = choice("kick", sums={"load": 100, "metres": 1000, "kick": 500}, goals=("legs",))
    wishes = BlockWishes(
        FIRST, {"legs": 1}, WEEK, {"kick_share": (200, 300), "supine_share": (0, 1000)}
    )
    own = aims([0, 2], [kick], wishes)
    assert over(own, (1, 1)) == {"kick_share over": 203}  # aimed at: 3 inside
    assert over(own, (0, 0))["goal short"] == 2
    none = choice("none", sums={"load": 100, "metres": 1000}, goals=("legs",))
    assert over(aims([0, 2], [none], wishes), (1, 1)) == {"kick_share under": 203}


def test_a_goal_is_wanted_by_its_weight_and_in_every_two_weeks() -> None:
    other = replace(PLAIN, id="other", goals=("arms",))
    wishes = BlockWishes(FIRST, {"legs": 3, "arms": 1}, (WeekWish("loading", 100),) * 2)
    own = aims([0, 2, 7, 9], [PLAIN, other], wishes)
    assert own.wanted("legs") == 3 and own.wanted("arms") == 1
    assert over(own, (1, 1, 1, 2)) == {}
    assert over(own, (1, 1, 1, 1)) == {"goal short": 1, "goal long gone": 1, "goal never": 1}


def test_a_benchmark_is_run_in_the_week_that_is_named() -> None:
    test = replace(PLAIN, id="test", tests=("kick-50",))
    wishes = BlockWishes(FIRST, {"legs": 1}, (WeekWish("test", 100, ("kick-50",)), *WEEK))
    own = aims([0, 7], [PLAIN, test], wishes)
    assert over(own, (2, 1)) == {}
    assert over(own, (1, 2)) == {"not tested": 1}


def test_a_benchmark_is_run_again_on_the_same_day_of_the_week_and_at_the_same_hour() -> None:
    test = replace(PLAIN, id="test", tests=("kick-50",))
    weeks = tuple(WeekWish("test", 100, ("kick-50",)) for _ in range(3))
    wishes = BlockWishes(FIRST, {"legs": 1}, weeks)
    own = aims([0, 2, 7, 9, 14, 16], [PLAIN, test], wishes)
    assert over(own, (2, 1, 2, 1, 2, 1)) == {}
    assert over(own, (2, 1, 1, 2, 1, 2)) == {"tested at another time": 1}
    assert over(own, (2, 1, 1, 2, 2, 1)) == {"tested at another time": 2}
    slots = tuple(
        replace(slot, begins="06:00") if n == 2 else slot for n, slot in enumerate(own.grid.slots)
    )
    early = replace(own, grid=replace(own.grid, slots=slots))
    assert over(early, (2, 1, 2, 1, 2, 1)) == {"tested at another time": 2}


def test_a_taper_cuts_the_metres_of_the_weeks_before_it() -> None:
    # two weeks of 2 x 1000 m, then a week of 2 x m: cut = 1 - 2m / 2000
    wishes = BlockWishes(
        FIRST, {"legs": 1}, (*WEEK, *WEEK, WeekWish("taper", 50)),
        taper=TaperWish(FIRST + timedelta(14), FIRST + timedelta(20)),
    )  # fmt: skip
    for metres, told in ((500, ""), (580, "cut too little"), (400, "cut too much"), (570, "")):
        short = replace(PLAIN, id="short", sums={**PLAIN.sums, "metres": metres})
        missed = over(aims([0, 2, 7, 9, 14, 16], [PLAIN, short], wishes), (1, 1, 1, 1, 2, 2))
        assert (told in missed) if told else not any("cut" in name for name in missed)


def test_light_days_are_shorter_than_the_mean_before_them() -> None:
    wishes = BlockWishes(
        FIRST, {"legs": 1}, (*WEEK, WeekWish("recovery", 50)),
        taper=TaperWish(FIRST + timedelta(7), FIRST + timedelta(11)),
    )  # fmt: skip
    limits = replace(LIMITS, cut=None, light_days=(3, 5))
    short = replace(PLAIN, id="short", sums={**PLAIN.sums, "metres": 999})
    own = aims([0, 2, 7, 9], [PLAIN, short], wishes, limits)
    assert "not lighter" in over(own, (1, 1, 1, 2))
    assert "not lighter" not in over(own, (1, 1, 2, 2))


def test_each_stroke_has_its_share_of_two_weeks() -> None:
    fly = replace(PLAIN, id="fly", strokes={"fly": 400, "back": 600})
    back = replace(PLAIN, id="back", strokes={"back": 1000})
    wishes = BlockWishes(
        FIRST, {"legs": 1}, (WeekWish("loading", 100),) * 2, strokes=150, four=("fly", "back")
    )
    own = aims([0, 7], [fly, back], wishes)
    assert "stroke under" not in over(own, (1, 2))
    assert "stroke under" in over(own, (2, 2))


def test_variety_counts_main_sets_of_seven_days_and_warm_ups_of_four() -> None:
    same = [
        choice("a", mains=("ladder",), opens="one"),
        choice("b", mains=("ladder",), opens="two"),
    ]
    own = grid([0, 6, 13, 20], same)

    def told(plan: Plan) -> dict[str, int]:
        found: dict[str, int] = {}
        for rule in variety(own, (0, 1, 2, 3)):
            if rule.over(plan):
                found[rule.about] = found.get(rule.about, 0) + rule.over(plan)
        return found

    assert told((1, 2, 0, 2)) == {"again": 1}
    assert told((1, 0, 2, 0)) == {}
    assert told((1, 1, 0, 1)) == {"again": 1, "same again": 1, "same warm-up": 1}


@pytest.mark.parametrize(
    ("weeks", "tapered", "loads"),
    [(1, 0, (85,)), (8, 0, (85, 95, 100, 80, 85, 95, 100, 80)),
     (8, 2, (85, 95, 100, 80, 100, 100, 65, 45)),
     (3, 1, (85, 100, 55)), (5, 1, (85, 95, 100, 100, 55)), (4, 1, (85, 95, 100, 55)),
     (2, 2, (65, 45)),
     (8, 3, (85, 95, 100, 100, 100, 80, 60, 45)), (8, 5, (85, 95, 100, 100, 100, 80, 60, 45))],
)  # fmt: skip
def test_usual_loads_rise_ease_and_taper(weeks: int, tapered: int, loads: tuple[int, ...]) -> None:
    assert tuple(usual_loads(weeks, tapered)) == loads


def test_a_slot_in_which_nothing_may_stand_stays_empty() -> None:
    own = PlanProblem((slot(0),), (NOTHING,), ((0,),), ({0: 5000},), ())
    assert greedy(own) == (0,) == improved(own, (0,))
    assert own.cost((0,)) == 5000 and list(own.missed((0,))) == []


def test_a_missed_wish_is_told_and_a_limit_never_is() -> None:
    wish, limit = (
        PlanRule(name, "1", {0: {1: 3}}, 1, points) for name, points in (("wish", 5), ("limit", 0))
    )
    own = PlanProblem((slot(0),), (NOTHING, choice("a")), ((0, 1),), ({},), (wish,))
    assert list(own.missed((1,))) == [(wish, 2)] and own.cost((1,)) == 10
    assert list(own.missed((0,))) == []
    limited = replace(own, rules=(limit, wish))
    assert not limited.is_sound((1,)) and list(limited.missed((1,))) == [(wish, 2)]
    assert PlanRule("limit", "", {}, 0).is_limit and not wish.is_limit


def test_a_plan_of_which_one_slot_may_not_hold_what_it_has_is_not_sound() -> None:
    own = grid([0, 2], [choice("a")])
    asked = PlanProblem(own.slots, own.choices, ((0, 1), (0,)), ({}, {}), ())
    assert asked.is_sound((1, 0)) and not asked.is_sound((1, 1))
    assert date(2027, 1, 4) == FIRST


def test_the_rules_of_variety_are_these_and_no_others() -> None:
    two = [choice("a", mains=("ladder",), opens="one"), choice("b", mains=("ladder",), opens="two")]
    own = grid([0, 6, 13, 20, 21], two)
    both, a, b = {1: 1, 2: 1}, {1: 1}, {2: 1}

    def of(slots: tuple[int, ...], amounts: dict[int, int]) -> dict[int, dict[int, int]]:
        return dict.fromkeys(slots, amounts)

    first, last, every = "2027-01-04", "2027-01-24", (0, 1, 2, 3, 4)
    assert list(variety(own, every)) == [
        PlanRule("again", f"ladder {first}", of((0, 1), both), 1, 90),
        PlanRule("again", f"ladder {last}", of((3, 4), both), 1, 90),
        *(
            PlanRule("same again", f"{which} {on}", of(slots, amounts), 1, 60)
            # A main set may come on the same day of the next week, a whole practice may not.
            for on, slots in (
                (first, (0, 1)),
                ("2027-01-10", (1, 2)),
                ("2027-01-17", (2, 3)),
                (last, (3, 4)),
            )
            for which, amounts in (("a", a), ("b", b))
        ),
        PlanRule("too often", "a", of(every, a), 4, 40),  # five slots for two: three, and one
        PlanRule("too often", "b", of(every, b), 4, 40),
        PlanRule("same warm-up", "one 0", of((0, 1, 2, 3), a), 2, 15),
        PlanRule("same warm-up", "two 0", of((0, 1, 2, 3), b), 2, 15),
        PlanRule("same warm-up", "one 1", of((1, 2, 3, 4), a), 2, 15),
        PlanRule("same warm-up", "two 1", of((1, 2, 3, 4), b), 2, 15),
    ]
    alike = grid([0, 6, 13, 20, 21], [replace(own_, opens="one") for own_ in two])
    assert not any(rule.about == "same warm-up" for rule in variety(alike, every))
    held = replace(own, may=((1,), *own.may[1:]))  # what stands already is counted, and not chosen
    rules = {(rule.about, rule.which): rule for rule in variety(held, every)}
    assert (
        rules["too often", "a"].amounts == of((1, 2, 3, 4), a) and rules["too often", "a"].most == 3
    )
    assert rules["again", f"ladder {first}"].amounts == {0: a, 1: both}
    assert rules["same warm-up", "one 0"].amounts == of((1, 2, 3, 4), a)
    assert rules["same again", f"b {first}"].amounts == of((1,), b)
    some = replace(own, may=((0, 1), *own.may[1:]))
    rules = {(rule.about, rule.which): rule for rule in variety(some, every)}
    assert rules["too often", "b"].amounts == of((1, 2, 3, 4), b)
    assert rules["same again", f"b {first}"].amounts == of((1,), b)
    without = grid([0, 6, 13, 20], [replace(two[0], opens=""), two[1]])
    assert not any(rule.about == "same warm-up" for rule in variety(without, (0, 1, 2, 3)))


def told_of(own: Aims) -> list[tuple[str, str, int, int, int]]:
    return [(rule.about, rule.which, rule.most, rule.points, rule.unit) for rule in aim_rules(own)]


def test_the_rules_of_wishes_are_these_and_no_others() -> None:
    wishes = BlockWishes(
        FIRST, {"legs": 2, "arms": 1},
        (WeekWish("test", 50, ("kick-50",)), WeekWish("loading", 100)),
        shares={"kick_share": (200, 300)}, strokes=150, four=("fly",),
    )  # fmt: skip
    sums = {"load": 100, "metres": 1000, "kick": 250, "flutter": 100, "supine": 80}
    one = choice("one", sums=sums, strokes={"fly": 100}, goals=("legs",), tests=("kick-50",))
    own = aims([0, 2, 7, 9], [one], wishes, replace(LIMITS, first_load=150))
    assert told_of(own) == [
        ("load over", "1", 100, 16, 1),
        ("load under", "1", -100, 6, 1),
        ("load over", "2", 200, 16, 1),
        ("load under", "2", -200, 6, 1),
        ("first week", "1", 150, 64, 1),
        ("supine_share under", "supine_share", 0, 8, 400),
        ("kick_share over", "kick_share", 0, 8, 4000),
        ("kick_share under", "kick_share", 0, 8, 4000),
        ("stroke under", "fly 1", 0, 6, 4000),
        ("goal short", "legs", -3, 140, 1),
        ("goal never", "legs", -1, 400, 1),
        ("goal long gone", "legs 1", -1, 70, 1),
        ("goal short", "arms", -2, 70, 1),
        ("goal never", "arms", -1, 400, 1),
        ("goal long gone", "arms 1", -1, 35, 1),
        ("not tested", "kick-50 1", -1, 3000, 1),
    ]
    amounts = {
        (rule.about, rule.which): rule.amounts[0].get(1)
        for rule in aim_rules(own)
        if 0 in rule.amounts
    }
    assert amounts["kick_share over", "kick_share"] == 1000 * 250 - 297 * 1000
    assert amounts["kick_share under", "kick_share"] == 203 * 1000 - 1000 * 250
    assert amounts["supine_share under", "supine_share"] == 503 * 100 - 1000 * 80
    assert amounts["stroke under", "fly 1"] == 150 * 1000 - 1000 * 100
    assert amounts["load over", "1"] == 100 and amounts["load under", "1"] == -100
    assert amounts["goal short", "legs"] == -1 and amounts["goal short", "arms"] is None
    assert amounts["not tested", "kick-50 1"] == -1


def test_a_taper_is_held_against_the_two_loading_weeks_before_it() -> None:
    weeks = (*WEEK, WeekWish("recovery", 80), *WEEK, *WEEK, WeekWish("taper", 50))
    wishes = BlockWishes(
        FIRST, {"legs": 1}, weeks, taper=TaperWish(FIRST + timedelta(28), FIRST + timedelta(34))
    )
    days = [0, 2, 7, 14, 21, 28, 30]
    own = aims(days, [PLAIN], wishes)
    rules = {rule.about: rule for rule in aim_rules(own) if "cut" in rule.about}
    little, much = rules["cut too little"], rules["cut too much"]
    # 7 days, 2 weeks before (the third and the fourth), 1000 m a usual practice, 1 slot a usual
    # week
    assert (little.which, little.most, little.points, little.unit) == (
        "2027-02-01",
        0,
        8,
        7 * 2 * 1000,
    )
    assert little.amounts == {
        5: {1: 7000 * 2 * 1000}, 6: {1: 7000 * 2 * 1000}, 3: {1: -(1000 - 425) * 7 * 1000},
        4: {1: -(1000 - 425) * 7 * 1000},
    }  # fmt: skip
    assert much.amounts == {
        5: {1: -7000 * 2 * 1000}, 6: {1: -7000 * 2 * 1000}, 3: {1: (1000 - 585) * 7 * 1000},
        4: {1: (1000 - 585) * 7 * 1000},
    }  # fmt: skip
    light = aims(days, [PLAIN], wishes, replace(LIMITS, cut=None, light_days=(3, 5)))
    each = [rule for rule in aim_rules(light) if rule.about == "not lighter"]
    assert [(rule.which, rule.most, rule.points, rule.unit) for rule in each] == [
        ("2027-02-01", -1, 3, 20), ("2027-02-03", -1, 3, 20),
    ]  # fmt: skip
    assert each[0].amounts == {5: {1: 2000}, 3: {1: -1000}, 4: {1: -1000}}


def plainly_improved(own: PlanProblem, plan: Plan, steps: int, seed: int) -> Plan:
    """Threshold accepting as it is described, every plan worked out anew."""
    drawn, free = chances(seed), [slot_ for slot_, may in enumerate(own.may) if len(may) > 1]
    best = plan
    for step in range(steps):
        changed, at = list(plan), free[next(drawn) % len(free)]
        swaps = False
        if next(drawn) % 4 == 0:
            other = free[next(drawn) % len(free)]
            swaps = plan[other] in own.may[at] and plan[at] in own.may[other]
            if swaps:
                changed[at], changed[other] = plan[other], plan[at]
        if not swaps:
            changed[at] = own.may[at][next(drawn) % len(own.may[at])]
        after = tuple(changed)
        threshold = 240 * (steps - step) ** 2 // steps**2
        if own.is_sound(after) and own.cost(after) - own.cost(plan) <= threshold:
            plan = after
            best = min(best, plan, key=own.cost)
    return best


@pytest.mark.parametrize("seed", range(8))
def test_exchanges_are_those_of_a_plain_threshold_accepting(seed: int) -> None:
    chance = random.Random(seed)
    own = problem(chance, slots=9, choices=5)
    first = greedy(own)
    assert improved(own, first, 300, seed) == plainly_improved(own, first, 300, seed)


@pytest.mark.parametrize("seed", range(8))
def test_the_greedy_plan_takes_in_each_slot_what_costs_least(seed: int) -> None:
    own = problem(random.Random(seed), slots=8, choices=6)
    plan = [may[0] for may in own.may]
    for at, may in enumerate(own.may):
        sound = [(*plan[:at], place, *plan[at + 1 :]) for place in may]
        # what is taught later does not count yet
        sound = [one for one in sound if own.is_sound((*one[: at + 1], *[0] * (len(one) - at - 1)))]
        if sound:
            plan = list(min(sound, key=own.cost))
    assert greedy(own) == tuple(plan)


def test_the_limits_are_these_and_no_others() -> None:
    every = {WORN: 5, PLATES: 6, UNDER: 7, UNDER_SETS: 2, STARTS: 1, ALL_OUT: 1, HARD: 1, HEAVY: 1}
    one, test = (
        choice("one", most=every),
        choice("test", most={TEST: 1, ALL_OUT: 1, STARTS: 1, HEAVY: 1}),
    )
    own = grid([0, 0, 1, 2], [one, test])
    limits = BlockLimits(10, 20, 30, 40, 3, 2, 10, 10, 500)

    def of(slots: tuple[int, ...], amount: int, of_test: int = 0) -> dict[int, dict[int, int]]:
        amounts = {place: number for place, number in ((1, amount), (2, of_test)) if number}
        return dict.fromkeys(slots, amounts)

    days, all_of_it = ("2027-01-04", "2027-01-05"), (0, 1, 2, 3)
    three, pair = (0, 1, 2), (2, 3)
    expected = [
        PlanRule("worn a day", days[0], of((0, 1), 5), 10),
        PlanRule("plates a day", days[0], of((0, 1), 6), 30),
        PlanRule("under a day", days[0], of((0, 1), 7), 40),
        PlanRule("worn in seven days", days[0], of(all_of_it, 5), 20),
        PlanRule("under sets in seven days", days[0], of(all_of_it, 2), 3),
        PlanRule("starts in seven days", days[0], of(all_of_it, 1), 2),
        PlanRule("hard days in a row", days[0], of(all_of_it, 1), 2),
        PlanRule("never light", days[0], of(all_of_it, 1, 1), 2, 30),
        PlanRule("all-out", days[0], of(three, 2, 1), 2),
        PlanRule("all-out", days[1], of(pair, 2, 1), 2),
        PlanRule("hard days that touch", days[0], of(three, 1), 1, 30),
        PlanRule("tests that touch", days[0], of(three, 0, 1), 1, 25),
        PlanRule("light before tests", days[0], {0: {1: 1}, 2: {2: 1}}, 1),
        PlanRule("light before tests", days[0], {1: {1: 1}, 2: {2: 1}}, 1),
        PlanRule("hard days that touch", days[1], of(pair, 1), 1, 30),
        PlanRule("tests that touch", days[1], of(pair, 0, 1), 1, 25),
        PlanRule("light before tests", days[1], {2: {1: 1}, 3: {2: 1}}, 1),
    ]
    assert list(limit_rules(own, limits)) == expected


def test_a_week_is_loading_before_the_taper_and_light_in_it() -> None:
    weeks = (
        WeekWish("loading", 81),
        WeekWish("recovery", 80),
        WeekWish("loading", 100),
        WeekWish("loading", 90),
    )
    wishes = BlockWishes(
        FIRST, {"legs": 1}, weeks, taper=TaperWish(FIRST + timedelta(20), FIRST + timedelta(24))
    )
    assert wishes.taper is not None and wishes.taper.days == 5
    assert [wishes.is_loading(week) for week in range(4)] == [True, False, False, False]
    day_before = replace(wishes, taper=TaperWish(FIRST + timedelta(21), FIRST + timedelta(24)))
    assert [day_before.is_loading(week) for week in range(4)] == [True, False, True, False]
    assert [replace(wishes, taper=None).is_loading(week) for week in range(4)] == [
        True,
        False,
        True,
        True,
    ]
    light = [day for day in range(-7, 35) if wishes.is_light(FIRST + timedelta(day))]
    assert light == [7, 8, 9, 10, 11, 12, 13, 20, 21, 22, 23, 24]
    assert [wishes.week_of(FIRST + timedelta(day)) for day in (-1, 0, 6, 7)] == [-1, 0, 0, 1]


def test_a_level_without_light_days_is_held_to_a_cut_and_one_without_either_to_nothing() -> None:
    wishes = BlockWishes(
        FIRST,
        {"legs": 1},
        (*WEEK, WeekWish("taper", 50)),
        taper=TaperWish(FIRST + timedelta(7), FIRST + timedelta(13)),
    )
    for limits, told in (
        (LIMITS, {"cut too much", "cut too little"}),
        (replace(LIMITS, cut=None), set()),
    ):
        rules = {rule.about for rule in aim_rules(aims([0, 7], [PLAIN], wishes, limits))}
        assert {about for about in rules if "cut" in about or "lighter" in about} == told
    alone = replace(wishes, weeks=(WeekWish("test", 100), WeekWish("taper", 50)))
    assert not any("cut" in rule.about for rule in aim_rules(aims([0, 7], [PLAIN], alone)))


def test_two_sessions_of_a_day_are_one_day_in_a_row() -> None:
    one = choice("one", most={HARD: 1, HEAVY: 1})
    assert broken([one], (1, 1, 1), [0, 0, 1], replace(ANY, hard_in_a_row=2)) == {
        "hard days that touch"
    }
    in_a_row = broken([one], (1, 1, 1), [0, 1, 2], replace(ANY, hard_in_a_row=2))
    assert in_a_row == {"hard days that touch", "hard days in a row", "never light"}


def test_the_rules_of_five_weeks_of_which_one_has_no_slots() -> None:
    """By hand: two slots a usual week, so a full one weighs 200; the last slot is after the
    block.
    """
    weeks = (*WEEK, *WEEK, *WEEK, WeekWish("loading", 80), WeekWish("taper", 50))
    wishes = BlockWishes(
        FIRST, {"legs": 1}, weeks, strokes=150, four=("fly",),
        taper=TaperWish(FIRST + timedelta(28), FIRST + timedelta(34)),
    )  # fmt: skip
    own = aims([0, 2, 7, 9, 21, 22, 28, 30, 35], [PLAIN], wishes)
    assert (own.slots_a_week, own.full) == (2, 200)
    assert [own.target(week) for week in range(5)] == [200, 200, 0, 160, 100]
    told = [
        (*row, sorted(rule.amounts)) for row, rule in zip(told_of(own), aim_rules(own), strict=True)
    ]
    every, taper = [0, 1, 2, 3, 4, 5, 6, 7], "2027-02-01"
    assert told == [
        ("load over", "1", 200, 16, 1, [0, 1]), ("load under", "1", -200, 6, 1, [0, 1]),
        ("load over", "2", 200, 16, 1, [2, 3]), ("load under", "2", -200, 6, 1, [2, 3]),
        ("load over", "4", 160, 16, 1, [4, 5]), ("load under", "4", -160, 6, 1, [4, 5]),
        ("load over", "5", 100, 16, 1, [6, 7]), ("load under", "5", -100, 6, 1, [6, 7]),
        ("supine_share under", "supine_share", 0, 8, 8 * 100, every),
        ("stroke under", "fly 1", 0, 6, 4 * 1000, [0, 1, 2, 3]),
        ("stroke under", "fly 3", 0, 6, 2 * 1000, [4, 5]),
        ("goal short", "legs", -8, 70, 1, every), ("goal never", "legs", -1, 400, 1, every),
        ("goal long gone", "legs 1", -1, 35, 1, [0, 1, 2, 3]),
        ("goal long gone", "legs 3", -1, 35, 1, [4, 5]),
        # seven days, two weeks before, two slots of 1000 m; of these weeks the third has no slots
        ("cut too little", taper, 0, 8, 7 * 2 * 2 * 1000, [4, 5, 6, 7]),
        ("cut too much", taper, 0, 8, 7 * 2 * 2 * 1000, [4, 5, 6, 7]),
    ]  # fmt: skip


def test_two_weeks_without_slots_are_not_asked_for_a_goal() -> None:
    wishes = BlockWishes(FIRST, {"legs": 1}, WEEK * 4)
    gone = [rule.which for rule in aim_rules(aims([0, 2], [PLAIN], wishes)) if "gone" in rule.about]
    assert gone == ["legs 1"]


def test_a_block_without_slots_or_practices_asks_for_nothing_that_could_be() -> None:
    own = aims([], [], BlockWishes(FIRST, {"legs": 1}, WEEK), LIMITS)
    assert (own.slots_a_week, own.full, own.target(0), own.wanted("legs")) == (0, 0, 0, 0)
    assert told_of(own) == [
        ("supine_share under", "supine_share", 0, 8, 1),
        ("goal short", "legs", 0, 70, 1),
        ("goal never", "legs", -1, 400, 1),
    ]


@pytest.mark.parametrize(
    ("name", "part", "whole"),
    [("kick_share", "kick", "metres"), ("supine_share", "supine", "flutter"),
     ("resisted_share", "resisted", "metres"), ("fast_share", "fast", "metres"),
     ("dolphin_share", "dolphin", "metres")],
)  # fmt: skip
def test_each_share_is_of_its_own_whole_and_missed_on_either_side(
    name: str, part: str, whole: str
) -> None:
    """By hand: of 1000 and of 202 in the whole, 300 and 50 of the part, wished 250 to 280 in
    thousandths.
    """
    two = [
        choice("one", sums={whole: 1000, part: 300}),
        choice("two", sums={whole: 202, part: 50}),
        *(choice(f"none-{number}") for number in range(3)),
    ]
    wishes = BlockWishes(FIRST, {}, WEEK, {name: (250, 280)})
    limits = replace(LIMITS, supine=0)
    rules = {rule.about: rule for rule in aim_rules(aims([0], two, wishes, limits))}
    over_, under = rules[f"{name} over"], rules[f"{name} under"]
    assert over_.unit == under.unit == 240  # 1202 of five
    assert over_.amounts == {0: {1: 300_000 - 277 * 1000, 2: 50_000 - 277 * 202}}
    assert under.amounts == {0: {1: 253 * 1000 - 300_000, 2: 253 * 202 - 50_000}}


@pytest.mark.parametrize(
    ("wished", "told"),
    [((0, 1000), set()), ((0, 999), {"over"}), ((1, 1000), {"under"}),
     ((500, 600), {"over", "under"})],
)  # fmt: skip
def test_a_share_that_may_be_any_is_no_rule(wished: tuple[int, int], told: set[str]) -> None:
    wishes = BlockWishes(FIRST, {}, WEEK, {"kick_share": wished})
    own = aims([0], [PLAIN], wishes, replace(LIMITS, supine=0))
    assert {
        rule.about.split()[1] for rule in aim_rules(own) if rule.about.startswith("kick_share")
    } == told


def test_the_days_of_a_taper_are_those_from_its_first_to_its_last() -> None:
    wishes = BlockWishes(
        FIRST, {}, (*WEEK, WeekWish("taper", 50)),
        taper=TaperWish(FIRST + timedelta(8), FIRST + timedelta(10))
    )  # fmt: skip
    limits = replace(LIMITS, cut=None, light_days=(3, 5))
    lighter = [
        rule.which
        for rule in aim_rules(aims([0, 7, 8, 10, 11], [PLAIN], wishes, limits))
        if rule.about == "not lighter"
    ]
    assert lighter == ["2027-01-12", "2027-01-14"]


def test_steps_are_whole_where_a_usual_practice_is_no_round_number() -> None:
    """By hand: two slots at 101 weigh 202, of which 33 in a hundred are 66.7; a step is 1.01 of
    it.
    """
    wishes = BlockWishes(
        FIRST, {}, (WeekWish("loading", 33), WeekWish("taper", 50)),
        taper=TaperWish(FIRST + timedelta(7), FIRST + timedelta(7))
    )  # fmt: skip
    limits = replace(LIMITS, supine=0, cut=None, light_days=(3, 5))
    one = choice("one", sums={"metres": 1990})
    own = Aims(grid([0, 1, 7, 8], [one]), wishes, limits, load=101, metres=1990)
    assert told_of(own) == [
        ("load over", "1", 66, 16, 1), ("load under", "1", -66, 6, 1),
        ("load over", "2", 101, 16, 1), ("load under", "2", -101, 6, 1),
        ("not lighter", "2027-01-11", -1, 3, 39),  # a hundredth of two of 1990 m, 39.8
    ]  # fmt: skip


def test_what_the_first_week_may_weigh_is_asked_of_its_own_slots() -> None:
    wishes = BlockWishes(FIRST, {}, WEEK * 3)
    own = aims([0, 2, 7, 14], [PLAIN], wishes, replace(LIMITS, first_load=150))
    (first,) = (rule for rule in aim_rules(own) if rule.about == "first week")
    assert first.amounts == {0: {1: 100}, 1: {1: 100}} and first.most == 150


def test_where_no_practice_is_known_a_step_is_one() -> None:
    taper = TaperWish(FIRST + timedelta(7), FIRST + timedelta(8))
    wishes = BlockWishes(FIRST, {}, WEEK * 2, {"kick_share": (200, 1000)}, 150, ("fly",), taper)
    for limits, told in ((LIMITS, ("cut too little", "cut too much")), (
        replace(LIMITS, cut=None, light_days=(3, 5)), ("not lighter",)
    )):  # fmt: skip
        own = Aims(grid([0, 7], []), wishes, limits, load=0, metres=0)
        rules = {rule.about: rule.unit for rule in aim_rules(own)}
        names = (
            "load over",
            "load under",
            "supine_share under",
            "kick_share under",
            "stroke under",
            *told,
        )
        assert rules == dict.fromkeys(names, 1)


def test_a_stroke_is_asked_for_where_one_is_wished_and_of_what_is_swum() -> None:
    fly, still = replace(PLAIN, strokes={"fly": 100}), choice("still")
    wishes = BlockWishes(FIRST, {}, WEEK * 2, strokes=150, four=("fly",))
    own = aims([0], [fly, PLAIN, still], wishes)
    (under,) = (rule for rule in aim_rules(own) if rule.about == "stroke under")
    assert under.amounts == {0: {1: 150 * 1000 - 100 * 1000, 2: 150 * 1000}}
    assert under.unit == 2000 // 3
    none = aims([0], [fly], replace(wishes, strokes=0))
    assert not any(rule.about == "stroke under" for rule in aim_rules(none))


def test_days_outside_a_block_are_never_light_and_its_first_week_may_be() -> None:
    weeks = (WeekWish("recovery", 75), WeekWish("loading", 100), WeekWish("recovery", 50))
    wishes = BlockWishes(FIRST, {"legs": 1}, weeks)
    light = [day for day in range(-8, 30) if wishes.is_light(FIRST + timedelta(day))]
    assert light == [*range(7), *range(14, 21)]


def test_nothing_is_wished_of_strokes_that_nobody_has_named() -> None:
    wishes = BlockWishes(FIRST, {}, WEEK * 2, four=("fly",))
    assert wishes.strokes == 0 and wishes.taper is None
    assert not any(rule.about == "stroke under" for rule in aim_rules(aims([0], [PLAIN], wishes)))
    assert WeekWish("loading", 100).benchmarks == ()


def test_weeks_and_shares_have_the_names_that_a_block_file_has() -> None:
    (kinds,) = (
        piece["kind"]["enum"]
        for piece in properties_of(schemas.raw("block"))
        if "enum" in piece.get("kind", {}) and "focus" in piece
    )
    assert {LOADING, RECOVERY, TESTING, TAPER} == {*kinds}
    assert (LOADING, TESTING) == ("loading", "test")  # the order in which they are told apart
    assert {*SHARES} == {*PARTS}


def properties_of(piece: object) -> Iterator[dict[str, Any]]:
    """The properties of every object in a schema."""
    for inner in (
        piece.values() if isinstance(piece, dict) else piece if isinstance(piece, list) else ()
    ):
        yield from properties_of(inner)
    if isinstance(piece, dict) and isinstance(piece.get("properties"), dict):
        yield piece["properties"]


def test_chances_go_on_as_the_sequence_does() -> None:
    state, drawn = 1, chances(1)
    for _ in range(50):
        state = (6364136223846793005 * state + 1442695040888963407) % 2**64
        assert next(drawn) == state // 2**32 < 2**32


@pytest.mark.parametrize("seed", range(24))
def test_exchanges_are_plain_ones_where_slots_are_held_and_much_costs_the_same(seed: int) -> None:
    chance = random.Random(seed)
    own = problem(chance, slots=8, choices=5)
    first = greedy(own)
    may = tuple(
        (first[at], *(place for place in each if place != first[at]))[: 1 + at % 3]
        for at, each in enumerate(own.may)
    )
    held = replace(own, may=may, own=({},) * 8, rules=own.rules[:5])
    for steps in (20, 60):
        found = improved(held, first, steps, seed)
        assert found == plainly_improved(held, first, steps, seed)
        assert all(place in each for place, each in zip(found, may, strict=True))


def test_the_seed_is_one_where_none_is_said() -> None:
    own = problem(random.Random(4), slots=9, choices=5)
    first = (0,) * 9  # far from the best, so that each exchange shows
    found = [[improved(own, first, steps, seed) for steps in range(1, 40)] for seed in (0, 1, 2)]
    assert found[1] == [improved(own, first, steps) for steps in range(1, 40)]
    assert found[0] != found[1] != found[2]


def test_a_limit_that_is_passed_already_may_be_passed_by_less_or_by_as_much() -> None:
    limit = PlanRule("limit", "", {0: {1: 5, 2: 3, 3: 5, 4: 6}}, 1)
    own = PlanProblem(
        (slot(0),), (NOTHING, *map(choice, "abcd")), ((0, 1, 2, 3, 4),), ({},), (limit,)
    )
    standing = Standing(own, [1])
    assert [standing.dearer((0,), (place,)) for place in range(5)] == [0, 0, 0, 0, None]


def test_what_a_choice_costs_by_itself_is_nothing_where_nothing_is_said() -> None:
    own = PlanProblem((slot(0),), (NOTHING, choice("a"), choice("b")), ((0, 1, 2),), ({1: 7},), ())
    for stands, dearer in ((0, [0, 7, 0]), (1, [-7, 0, -7])):
        standing = Standing(own, [stands])
        assert [standing.dearer((0,), (place,)) for place in range(3)] == dearer


def test_a_slot_that_must_hold_what_is_not_taught_yet_holds_it() -> None:
    own = PlanProblem(
        (slot(0),), (NOTHING, choice("a", needs=frozenset({"line"}))), ((1,),), ({},), ()
    )  # fmt: skip
    assert greedy(own) == (1,)
