"""What a practice costs in points, worked out by hand; and the figures of the choice, which the
pages' scripts have again.
"""

from __future__ import annotations

import ast
import importlib
import json
import re
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from composing_world import asked, piece, size, sized

from almanac.arithmetic.composing import costs as points
from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.costs import (
    held_cost,
    idle_cost,
    own_cost,
    pair_cost,
    served,
    skill_cost,
)
from almanac.arithmetic.composing.shape import (
    again_and_again,
    are_legs_first,
    are_legs_tired,
    cool_down_cost,
    ends_cost,
    is_same_swim,
    outside,
    relief_cost,
    shape_cost,
    warm_up_cost,
)
from almanac.arithmetic.composing.table import ANY, Named

ROOT = Path(__file__).parents[1]
SCRIPTS = ROOT / "site_src" / "scripts" / "compose"
MODULES = (
    "composing.best", "composing.around", "composing.asked", "composing.costs", "composing.hearts",
    "composing.lists", "composing.order", "composing.request", "composing.shape",
    "composing.hinders", "composing.unmet", "composing.why", "composing.wishes",
)  # fmt: skip


def figures_of(module: str) -> dict[str, Any]:
    """The whole numbers at the head of a module, and tables of them, by name."""
    own = importlib.import_module(f"almanac.arithmetic.{module}")
    tree = ast.parse(Path(str(own.__file__)).read_text("utf-8"))
    targets = [
        target
        for node in tree.body
        if isinstance(node, (ast.Assign, ast.AnnAssign))
        for target in (node.targets if isinstance(node, ast.Assign) else [node.target])
    ]
    names = [
        one.id
        for target in targets
        for one in (target.elts if isinstance(target, ast.Tuple) else [target])
        if isinstance(one, ast.Name)
    ]
    found = {name.lstrip("_"): getattr(own, name) for name in names}
    return {
        name: value
        for name, value in found.items()
        if isinstance(value, (int, Mapping)) and not isinstance(value, bool)
    }


def figures_of_scripts() -> dict[str, Any]:
    """The same of the scripts: ``const A = 1, B = 2;`` and ``const C = { m: 9 };``"""
    text = "\n".join(path.read_text("utf-8") for path in sorted(SCRIPTS.glob("*.js")))
    found: dict[str, Any] = {}
    for line in re.findall(r"^(?:export )?const ([A-Z_]+ = [^;]+);", text, re.MULTILINE):
        for name, written in re.findall(r"([A-Z_]+) = (\{.*\}|[\d *]+)", line):
            if written.startswith("{"):
                found[name] = json.loads(re.sub(r"(\w+):", r'"\1":', written))
            else:
                factors = [int(factor) for factor in written.split("*")]
                found[name] = factors[0] * (factors[1] if len(factors) > 1 else 1)
    return found


def test_the_figures_of_the_choice_are_those_of_the_scripts_of_the_pages() -> None:
    own = {name: value for module in MODULES for name, value in figures_of(module).items()}
    scripts = figures_of_scripts()
    both = own.keys() & scripts.keys()
    assert {name: own[name] for name in both} == {name: scripts[name] for name in both}
    assert not {*figures_of("composing.costs"), *figures_of("composing.shape")} - both
    assert len(both) >= 60


@pytest.mark.parametrize(
    ("role", "days", "cost"),
    [
        # A main set fades out of mind in 28 days, 4 points for each that is left.
        ("m", 0, 112), ("m", 27, 4), ("m", 28, 0), ("m", 40, 0), ("n", 27, 4),
        # A whole set as a skill is stale for a week, another piece for two days.
        ("s", 0, 80), ("s", 6, 80), ("s", 7, 0), ("s", None, 0), ("w", 2, 25), ("w", 3, 0),
        ("c", 1, 25), ("m", None, 0), ("w", None, 0),
    ],
)  # fmt: skip
def test_what_was_done_lately_costs(role: str, days: int | None, cost: int) -> None:
    own = asked(days={} if days is None else {99: days})
    assert own_cost(own, sized(), role) == cost


@pytest.mark.parametrize(("days", "cost"), [(0, 25), (2, 25), (3, 0)])
def test_a_part_that_is_a_skill_is_stale_for_two_days(days: int, cost: int) -> None:
    assert own_cost(asked(days={99: days}), sized(of="part"), "s") == cost + 30


@pytest.mark.parametrize(
    ("of", "role", "cost"),
    [
        # Two rounds more than written: 25 each of a set, 8 of other work, 4 of what opens or
        # closes.
        ("set", "m", 50), ("set", "s", 50), ("set", "w", 50), ("part", "m", 120 + 16),
        ("part", "n", 40 + 16),
        ("part", "s", 30 + 16), ("part", "w", 8), ("part", "c", 8), ("drill", "s", 50 + 16),
        ("drill", "m", 150 + 16),
    ],
)  # fmt: skip
def test_rounds_more_or_fewer_cost_by_where_a_piece_comes_from(
    of: str, role: str, cost: int
) -> None:
    for number in (2, 6):
        own = sized(own=size(number=number), of=of, what="rounds", written=4)
        assert own_cost(asked(), own, role) == cost
    assert own_cost(asked(), sized(own=size(number=5), of="set", written=3), role) == 0


@pytest.mark.parametrize(
    ("of", "role", "number", "cost"),
    [
        # Of four less than two is a stump, in work alone; a drill is done in its own dose.
        # More than eight are more than twice as many.
        ("set", "m", 8, 100), ("set", "m", 9, 125 + 120), ("drill", "s", 9, 50 + 40 + 120),
        ("part", "c", 9, 20), ("set", "m", 2, 50),
        ("set", "m", 1, 75 + 120), ("set", "s", 1, 75 + 120),
        ("part", "n", 1, 40 + 24 + 120),
        ("set", "w", 1, 75), ("part", "c", 1, 12), ("drill", "s", 1, 50 + 24),
    ],
)  # fmt: skip
def test_less_than_half_of_what_is_written_or_more_than_twice_costs_more(
    of: str, role: str, number: int, cost: int
) -> None:
    own = sized(own=size(number=number), of=of, what="rounds", written=4)
    assert own_cost(asked(), own, role) == cost


WORK = [(piece(roles="m", goals=(goal,), hardest=2), (size(),)) for goal in range(3)]
"""Work for each goal, which is no relief."""


def test_the_less_of_a_piece_serves_a_goal_the_more_it_costs() -> None:
    own = asked(*WORK, goals=(2, 0))
    some = sized(goals=(0, 2), shares=(400, 0))
    assert served(own, some, "m") == (100 + 40, 60)
    assert served(own, sized(goals=(0, 2), shares=(1000, 999)), "s") == (120 + 40 + 40, 120)
    assert served(own, sized(goals=(2,), shares=(990,)), "m") == (1, 2000)


def test_each_gear_costs() -> None:
    assert own_cost(asked(), sized(gear=(0, 1)), "m") == 30


@pytest.mark.parametrize(
    ("role", "hardest", "cost"),
    [("m", 0, 180), ("m", 2, 0), ("m", 4, 320), ("n", 1, 90), ("s", 1, 0), ("e", 4, 0)],
)  # fmt: skip
def test_a_word_off_the_effort_costs_and_of_a_skill_only_above(
    role: str, hardest: int, cost: int
) -> None:
    assert own_cost(asked(effort=2), sized(effort=hardest, hardest=4), role) == cost
    assert own_cost(asked(), sized(effort=hardest), role) == 0  # no effort is wished for


@pytest.mark.parametrize(
    ("effort", "wished", "cost"),
    [
        # A word and two beyond gentle, 40 each; beyond what was wished 80 each besides.
        (1, -1, 0), (2, -1, 40), (4, -1, 120), (4, 2, 120 + 160), (2, 2, 40),
    ],
)  # fmt: skip
def test_the_harder_a_skill_is_the_more_it_costs(effort: int, wished: int, cost: int) -> None:
    assert own_cost(asked(effort=wished), sized(effort=effort), "s") == cost


def test_what_may_stand_as_relief_is_no_main_set_where_work_is_wished_for() -> None:
    relief = sized(roles="me", hardest=1, effort=0)
    for role in "mn":
        assert own_cost(asked(*WORK), relief, role) == 200
        assert own_cost(asked(*WORK, effort=2), relief, role) == 200 + 180
        # A gentle evening is made of it, one of rest too; what is harder or teaches is none.
        assert own_cost(asked(*WORK, effort=0), relief, role) == 0
        rest = (piece(roles="me", goals=(0,)), (size(),))
        assert own_cost(asked(rest), replace(relief), role) == 90  # a word too easy, and no more
        for own in ({"hardest": 2}, {"roles": "sme"}, {"roles": "m"}):
            assert own_cost(asked(*WORK), sized(**({"roles": "me"} | own)), role) == 0
    assert own_cost(asked(*WORK), relief, "e") == 0


def test_beside_work_a_goal_that_gentle_swimming_alone_serves_is_left_to_what_eases() -> None:
    """Of three goals the second is served by relief alone, the third by nothing."""
    work = (piece(roles="m", goals=(0,), hardest=2), (size(),))
    rest = (piece("b", roles="me", goals=(1,)), (size(),))
    own = asked(work, rest, goals=(1, 0, 2))
    assert own.aside == {1, 2} and own.wanted == (0,) and not own.is_rest
    assert served(own, sized(goals=(0,)), "m") == (0,)
    assert idle_cost(own, sized(goals=(1,)), "m") == 640
    assert own_cost(own, sized(goals=(1, 2)), "c") == 0 and own_cost(own, sized(), "c") == 120
    alone = asked(work, rest, goals=(1, 2))
    assert alone.aside == {2} and alone.wanted == (1,) and alone.is_rest


def test_easy_swimming_may_serve_a_goal_that_no_work_serves() -> None:
    own = asked(goals=(0, 1, 2))  # of these a main set serves the first
    for role in "wec":
        assert own_cost(own, sized(), role) == 120
        assert own_cost(own, sized(goals=(1,)), role) == 60
        assert own_cost(own, sized(goals=(2, 1)), role) == 0
    assert own_cost(own, sized(), "m") == own_cost(own, sized(), "s") == 0


def test_goals_are_served_by_what_stands_in_a_role_or_missed() -> None:
    own, other = asked(*WORK, goals=(2, 0)), sized(goals=(0, 2))
    by = {"m": 0, "n": 60, "s": 120, "e": 260, "w": 260}
    for role, cost in by.items():
        chief = 40 if role == "s" else 0  # what is wished for most is what the main set is for
        assert served(own, other, role) == (cost + chief + 40, cost)
        assert served(own, sized(goals=(1,)), role) == (3000, 2000)
        assert served(own, sized(), role) == (3000, 2000)
    assert [idle_cost(own, sized(goals=(1,)), role) for role in "mns"] == [640, 260, 220]
    hard = sized(goals=(1,), effort=3)  # two words beyond gentle, 30 each
    assert [idle_cost(own, hard, role) for role in "mns"] == [700, 320, 280]
    assert idle_cost(own, other, "m") == 0


def test_a_skill_is_used_where_the_main_set_does_it_or_needs_it() -> None:
    skill, own = sized(drills=(0, 1)), asked()
    used = [sized(drills=(1,)), sized(asks=(0,))]
    assert [skill_cost(own, skill, [main]) for main in used] == [0, 0]
    unused = [sized(drills=(2,), asks=(2,)), sized()]
    assert [skill_cost(own, skill, [main]) for main in unused] == [40, 40]
    # A whole stroke is swum in most main sets, and is no skill.
    swum = Asked(replace(own.table, strokes_swum=frozenset({1})), own.wishes)
    assert [skill_cost(swum, skill, [main]) for main in used] == [40, 0]


@pytest.mark.parametrize(
    ("skill", "mains", "cost"),
    [(3, (3,), 100), (4, (0, 3), 100), (3, (2, 2), 0), (2, (4,), 0)],
)
def test_a_fast_skill_before_fast_work_costs(skill: int, mains: tuple[int, ...], cost: int) -> None:
    after = [sized(hardest=hardest) for hardest in mains]
    assert skill_cost(asked(), sized(hardest=skill), after) == 40 + cost


def test_a_skill_that_the_main_set_only_does_again_costs() -> None:
    """Drill 2 and stroke 2 are a whole stroke, and whatever one likes."""
    own = asked()
    strokes = (*own.table.strokes[:2], Named(ANY, "Any"))
    known = replace(own.table, strokes_swum=frozenset({2}), strokes=strokes)
    own = Asked(known, own.wishes)
    skill = sized(drills=(0, 1))
    same = [sized(drills=(1, 0)), sized(drills=(0, 1, 2), strokes=(2,))]
    assert [skill_cost(own, skill, [main]) for main in same] == [900, 900]
    more = [sized(drills=(0, 1, 2), strokes=(0,)), sized(drills=(1,))]
    assert [skill_cost(own, skill, [main]) for main in more] == [0, 0]
    assert skill_cost(own, skill, [more[0], same[0]]) == 900
    # Two swims of one stroke are told apart by their pace.
    swum = sized(drills=(2,), strokes=(0,))
    assert skill_cost(own, swum, [swum]) == 40
    assert pair_cost(own, skill, same[1]) == 30 + 900 and pair_cost(own, skill, more[0]) == 30


@pytest.mark.parametrize(
    ("one", "other", "cost"),
    [
        ({"own": size(under=1)}, {"own": size(under=1), "goals": (0,)}, 150),
        ({"own": size(under=1)}, {"goals": (0,)}, 0),
        ({"hardest": 3}, {"hardest": 3, "goals": (0,)}, 150),
        ({"hardest": 2}, {"hardest": 4, "goals": (0,)}, 0),
        ({"hardest": 4}, {"hardest": 2, "goals": (0,)}, 0),
        ({"goals": (0, 1)}, {"goals": (0, 2)}, 30),
        ({"goals": (0, 1)}, {"goals": (1, 0)}, 0), ({"goals": (0, 1)}, {"goals": (0,)}, 30),
    ],
)  # fmt: skip
def test_two_main_sets_are_better_not_both_fast_nor_under_water_nor_for_one_goal(
    one: dict[str, Any], other: dict[str, Any], cost: int
) -> None:
    assert pair_cost(asked(), sized(**one), sized(**other)) == cost


@pytest.mark.parametrize(
    ("metres", "mains", "cost"),
    [(100, (3,), 150), (99, (3,), 0), (200, (4, 3), 300), (200, (2,), 0), (200, (), 0)],
)
def test_main_sets_beside_a_fast_part_that_is_held_are_not_fast(
    metres: int, mains: tuple[int, ...], cost: int
) -> None:
    order = [("2", sized(own=size(fast=metres))), ("s", sized(hardest=4))]
    order += [(role, sized(hardest=own)) for role, own in zip("mn", mains, strict=False)]
    assert held_cost(asked(), order) == cost
    assert held_cost(asked(), order[1:]) == 0


def test_each_permille_outside_costs_two_points() -> None:
    assert [outside(share, 10, 20) for share in (7, 10, 15, 20, 23)] == [6, 0, 0, 0, 6]


SOUND = 60 * 200
"""Tenths of a warm-up that is neither short nor long: a fifth of the slot."""


@pytest.mark.parametrize(
    ("takes", "warm_up", "cost"),
    [
        (SOUND, {"strokes": (0, 1), "hardest": 2}, 0),
        (SOUND, {"strokes": (1, 2), "hardest": 2}, 40),
        (SOUND, {"hardest": 2}, 80), (SOUND, {"strokes": (0, 1), "hardest": 1}, 30),
        (SOUND, {"strokes": (0, 1), "hardest": 0}, 60),
        (SOUND, {"strokes": (0, 1), "hardest": 3}, 0),
        (SOUND, {"strokes": (0, 1), "hardest": 4}, 60),
        (60 * 140, {"strokes": (0, 1), "hardest": 2}, 0),
        (60 * 139, {"strokes": (0, 1), "hardest": 2}, 2),
        (60 * 200, {"strokes": (0, 1), "hardest": 2}, 0),
        (60 * 201, {"strokes": (0, 1), "hardest": 2}, 4),
    ],
)  # fmt: skip
def test_a_warm_up_costs_by_what_comes_after_it(
    takes: int, warm_up: dict[str, Any], cost: int
) -> None:
    heart = [sized(strokes=(0,), hardest=1), sized(strokes=(1,), hardest=3)]
    assert warm_up_cost(asked(), sized(takes, **warm_up), heart) == cost


@pytest.mark.parametrize(
    ("minutes", "takes", "cost"),
    [
        # Of 100 minutes 14 to 20, of 60 14 to 25 hundredths; of 20 never less than 4:30, and of 120
        # never more than 20:00.
        # What is too long costs twice as much.
        (60, 9000, 0), (60, 9036, 4), (60, 5040, 0), (60, 5004, 2), (20, 2700, 0), (20, 2676, 4),
        (20, 3000, 0), (20, 3012, 4),
        (120, 12000, 0), (120, 12024, 4), (120, 10080, 0), (120, 10008, 2),
    ],
)  # fmt: skip
def test_nobody_is_warm_sooner_or_needs_longer_however_long_the_slot(
    minutes: int, takes: int, cost: int
) -> None:
    assert warm_up_cost(asked(minutes=minutes), sized(takes), [sized()]) == cost


@pytest.mark.parametrize(
    ("warm_up", "work", "cost"),
    [
        # An evening that is gentle throughout warms up gently, and for no stroke.
        ({"hardest": 1}, {"hardest": 1}, 0), ({"hardest": 2}, {"hardest": 1}, 60 + 150),
        ({"hardest": 2}, {"hardest": 2}, 0), ({}, {"hardest": 1, "strokes": (0, 1)}, 0),
        ({"hardest": 1}, {"hardest": 2, "strokes": (0, 1)}, 80),
    ],
)  # fmt: skip
def test_a_gentle_evening_begins_gently(
    warm_up: dict[str, Any], work: dict[str, Any], cost: int
) -> None:
    assert warm_up_cost(asked(), sized(SOUND, **warm_up), [sized(**work)]) == cost


def test_a_drill_in_all_that_is_done_costs() -> None:
    """Drills 0 and 1 are in two pieces of the work, 2 in one; 1 is a whole stroke."""
    own = asked()
    own = Asked(replace(own.table, strokes_swum=frozenset({1})), own.wishes)
    work = [sized(drills=(0, 1)), sized(drills=(1, 2)), sized(drills=(0,))]
    assert again_and_again(own, work) == {0} and again_and_again(own, work[:2]) == set()
    costs = [warm_up_cost(own, sized(SOUND, drills=drills), work) for drills in ((0,), (1, 2))]
    assert costs == [60, 0]


def test_beginning_and_end_are_not_the_same_swimming() -> None:
    own, one = asked(), sized(drills=(0, 1))
    same = [sized(drills=(1, 0)), sized(drills=(0, 1), kick=9)]
    other = [sized(drills=(0,)), sized(drills=(0, 1), hardest=1), sized(drills=(0, 1, 2))]
    for each in same:
        assert is_same_swim(one, each)
        assert ends_cost(own, one, None, each) == ends_cost(own, None, one, each) == 120
    for each in other:
        assert not is_same_swim(one, each) and ends_cost(own, one, None, each) == 0
    assert ends_cost(own, one, *same) == 360 and ends_cost(own, one, None, None) == 0


@pytest.mark.parametrize(
    ("minutes", "relief", "cool_down", "cost"),
    [
        # Together 16 hundredths of 60 minutes, 16 of 120, and five of 20.
        (60, 3000, 2760, 0), (60, 3000, 2796, 4), (120, 4800, 4800, 0), (120, 4800, 4872, 4),
        (20, 1800, 1200, 0), (20, 1800, 1212, 4),
    ],
)  # fmt: skip
def test_it_is_not_long_until_all_are_out_after_the_work(
    minutes: int, relief: int, cool_down: int, cost: int
) -> None:
    ends = sized(relief, drills=(0,)), sized(cool_down, drills=(1,))
    assert ends_cost(asked(minutes=minutes), None, *ends) == cost
    assert ends_cost(asked(minutes=minutes), None, None, sized(9999)) == 0


@pytest.mark.parametrize(
    ("minutes", "takes", "cost"),
    [(20, 1200, 0), (20, 1188, 2), (20, 1320, 0), (20, 1332, 4), (120, 5976, 0), (120, 6048, 4)],
)
def test_a_cool_down_is_two_minutes_at_least_and_ten_at_most(
    minutes: int, takes: int, cost: int
) -> None:
    assert cool_down_cost(asked(minutes=minutes), sized(takes)) == cost


def test_legs_are_first_where_more_than_half_of_what_kicks_first_is_kick_and_hard() -> None:
    own = asked()
    hard = sized(kick=501, hardest=2)  # a word below fast
    assert are_legs_first(own, [hard]) and are_legs_first(own, [sized(hardest=4), hard])
    assert not are_legs_first(own, [sized(kick=500, hardest=2)])
    assert not are_legs_first(own, [sized(kick=501, hardest=1)])
    assert not are_legs_first(own, [sized(kick=1), hard]) and not are_legs_first(own, [])


def of_kick(*parts: tuple[int, int]) -> list[Sized]:
    """Work by its metres and the permille of them that are kick."""
    return [sized(own=size(distance=metres), kick=kick) for metres, kick in parts]


def test_legs_are_tired_by_more_than_half_of_the_metres() -> None:
    assert not are_legs_tired(of_kick((100, 500)))
    assert are_legs_tired(of_kick((100, 501)))
    # 100 × 1000 + 300 × 400 = 220 000 of 400 × 500 = 200 000; with 300 × 300 only 190 000.
    assert are_legs_tired(of_kick((100, 1000), (300, 400)))
    assert not are_legs_tired(of_kick((100, 1000), (300, 300)))
    assert not are_legs_tired([])


TIRED = of_kick((100, 800))
FRESH = [sized(strokes=(0, 1))]


@pytest.mark.parametrize(
    ("takes", "relief", "tired", "fresh"),
    [
        # Where legs are tired none costs 150, and so does kicking on; where they are not it is only
        # time, 30.
        (None, {}, 150, 0), (3000, {"strokes": (0,)}, 0, 30),
        (3000, {"strokes": (0,), "kick": 300}, 0, 30),
        (3000, {"strokes": (0,), "kick": 301}, 150, 30), (1800, {"strokes": (1, 2)}, 0, 30),
        (1799, {"strokes": (1, 2)}, 90, 120), (3000, {"strokes": (0,), "roles": "ec"}, 200, 230),
        (3000, {"strokes": (2,)}, 0, 70), (3000, {}, 0, 70), (60 * 120, {"strokes": (0,)}, 0, 30),
        (60 * 121, {"strokes": (0,)}, 4, 34), (60 * 121 - 1, {"strokes": (0,)}, 0, 30),
        (60 * 121 + 59, {"strokes": (0,)}, 4, 34), (30, {"strokes": (0,)}, 90, 120),
    ],
)  # fmt: skip
def test_relief_costs_by_what_came_before_it(
    takes: int | None, relief: dict[str, Any], tired: int, fresh: int
) -> None:
    own = None if takes is None else sized(takes, **({"roles": "e"} | relief))
    assert relief_cost(asked(), own, TIRED) == tired  # kick alone, of no stroke
    assert relief_cost(asked(), own, FRESH) == fresh


def test_relief_is_no_harder_than_the_work_and_twelve_minutes_at_most() -> None:
    easy = [sized(strokes=(0,), hardest=1)]
    for hardest, cost in ((0, 30), (1, 30), (2, 90), (3, 150)):
        own = sized(3000, roles="e", strokes=(0,), hardest=hardest)
        assert relief_cost(asked(), own, easy) == cost
    for takes, cost in ((7200, 30), (7272, 34)):  # of 120 minutes a tenth, and a permille more
        own = sized(takes, roles="e", strokes=(0,))
        assert relief_cost(asked(minutes=120), own, easy) == cost


@pytest.mark.parametrize(
    ("permille", "kick", "cost"),
    [(60, 500, 0), (60, 501, 60), (59, 0, 2), (100, 0, 0), (101, 0, 4), (101, 501, 64)],
)
def test_a_cool_down_costs_by_its_length_and_its_kick(permille: int, kick: int, cost: int) -> None:
    assert cool_down_cost(asked(), sized(60 * permille, kick=kick)) == cost


@pytest.mark.parametrize(
    ("skill", "mains", "minutes", "cost"),
    [
        (120, (280,), 100, 0), (121, (280,), 100, 4), (0, (279,), 100, 2),
        (120, (140, 140), 100, 0),
        (0, (1001,), 100, 2), (None, (280,), 100, 200), (None, (280,), 40, 200),
        (None, (280,), 39, 0),
        # Of 60 minutes a fifth, of 20 eight minutes, of 120 no more than twelve.
        (200, (300,), 60, 0), (201, (300,), 60, 4), (400, (400,), 20, 0), (401, (401,), 20, 4),
        (100, (300,), 120, 0), (101, (300,), 120, 4),
        # Longer than the work that it is for costs as much again; there is too little of that too.
        (300, (299,), 60, 2 + 4 * 100), (300, (200, 99), 60, 2 + 4 * 100),
        # Under a fifth of the slot is no main set: that is worth a goal.
        (0, (200,), 100, 160), (0, (100, 100), 100, 160), (0, (199,), 100, 162 + 2000),
        (200, (199,), 60, 2 + 2 * 81 + 2000), (200, (100, 99), 60, 2 + 2 * 81 + 2000),
    ],
)  # fmt: skip
def test_the_shape_of_an_evening_costs(
    skill: int | None, mains: tuple[int, ...], minutes: int, cost: int
) -> None:
    own = asked(*WORK, minutes=minutes, goals=(0, 1))
    main = [sized(600 * minutes * each // 1000) for each in mains]
    alone = None if skill is None else sized(600 * minutes * skill // 1000, goals=(1,))
    assert shape_cost(own, alone, main) == cost


@pytest.mark.parametrize(
    ("goals", "permille", "minutes", "cost"),
    [
        # Of 60 minutes a quarter, of 100 a quarter of an hour.
        ((0,), 250, 60, 0), ((1, 0), 251, 60, 4), ((0,), 150, 100, 0), ((0,), 151, 100, 4),
        # What is wished for beside it is not what is wished for most.
        ((1,), 200, 60, 0), ((1,), 201, 60, 4),
        # What serves nothing is six minutes at most, a fifth of what is shorter than half an hour.
        ((2,), 100, 60, 0), ((), 101, 60, 4), ((), 200, 20, 0), ((), 201, 20, 4),
    ],
)  # fmt: skip
def test_a_skill_that_is_wished_for_most_may_be_longer(
    goals: tuple[int, ...], permille: int, minutes: int, cost: int
) -> None:
    own = asked(*WORK, minutes=minutes, goals=(0, 1))
    skill = sized(600 * minutes * permille // 1000, goals=goals)
    assert shape_cost(own, skill, [sized(300 * minutes)]) == cost


@pytest.mark.parametrize(("takes", "cost"), [(7259, 0), (7260, 4), (7319, 4), (7320, 8)])
def test_a_permille_counts_where_it_is_whole(takes: int, cost: int) -> None:
    own = asked(*WORK, goals=(0, 1))
    assert shape_cost(own, sized(takes, goals=(1,)), [sized(30000)]) == cost


def test_a_part_of_a_practice_and_a_drill_are_not_a_set() -> None:
    assert {piece(of=of).key for of in ("set", "part", "drill")} == {"set/a", "part/a/0", "drill/a"}
    assert points.FROM.keys() == {"set", "part", "drill"}
