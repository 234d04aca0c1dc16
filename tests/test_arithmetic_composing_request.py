"""A request by ids made into wishes, and what of it cannot be: by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from composing_world import named, piece, size, table, wishes

from almanac.arithmetic.composing.pieces import Offer, Sizes
from almanac.arithmetic.composing.request import BadWish, Request, wishes_of
from almanac.arithmetic.composing.table import ComposeTable, Done, PoolHere
from almanac.arithmetic.composing.wishes import Kept

NONE = frozenset[int]()


def here(**more: Any) -> ComposeTable:
    """Two main sets, of which the second needs socks and serves goal 1; a warm-up; two pools; a
    practice that is both sets.
    """
    pieces = (
        (piece("first", "ms", goals=(0,)), (size(),)),
        (piece("second", "m", goals=(1,), gear=(1,)), (size(),)),
        (piece("open", "w"), (size(),)),
    )
    own = table(*pieces, taught=NONE | {0, 1})
    pools = (PoolHere("away", "Away", "50m", 8), *own.pools)
    return replace(own, pools=pools, practices=(Done("evening", "Evening", (0, 1)),), **more)


def told(**more: Any) -> Request:
    return Request(**({"pool": "home", "minutes": 100, "goals": ["goal-0"]} | more))


def test_what_is_not_said_is_as_usual() -> None:
    usual = wishes(taught=NONE | {0, 1})
    assert wishes_of(here(), told()) == usual
    assert usual.heads == (8, 9) and usual.gear == (10, 20)


def test_what_is_said_is_by_place_in_the_table() -> None:
    found = wishes_of(
        here(),
        told(
            groups=["slow", "quick", "slow"], goals=["goal-1", "goal-0", "goal-1"],
            lanes={"slow": 3}, heads={"quick": 7},
            gear={"socks": 20, "fins": 0}, effort="effort-2", adults=5, taught={"ladder": 1},
            done=[("set/first", 5), ("evening", 3), ("set/second", 9), ("set/first", 4)],
            keep=[("set/first", "m", 1), ("set/second", "n", -1)], leave_out=["set/open"],
        ),
    )  # fmt: skip
    assert found == wishes(
        groups=(0, 1), goals=(1, 0), lanes=(2, 3), heads=(7, 9), gear=(0, 20), effort=2, adults=5,
        taught=NONE | {0},
        days={0: 3, 1: 3}, kept=(Kept(0, "m", 1), Kept(1, "n")), left_out=NONE | {2},
    )  # fmt: skip
    assert wishes_of(here(), told(groups=["slow"])).groups == (1,)


def test_of_a_progression_those_stages_are_taught_that_are_told() -> None:
    for stages, drills in ((0, NONE), (1, NONE | {0}), (2, NONE | {0, 1, 2})):
        assert wishes_of(here(), told(taught={"ladder": stages})).taught == drills


def sentence(own: ComposeTable | None = None, **more: Any) -> str:
    with pytest.raises(BadWish) as problem:
        wishes_of(own or here(), told(**more))
    return str(problem.value)


OUT = "who does not swim is left out of the lane groups"


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ({"minutes": 19}, "19 min: from 20 to 120 minutes can be composed"),
        ({"minutes": 121}, "121 min: from 20 to 120 minutes can be composed"),
        ({"lanes": {"quick": 7}}, "7 lanes for Quick: from 1 to 6 can be"),
        ({"heads": {"quick": 201}}, "201 swimmers for Quick: from 1 to 200 can be"),
        ({"heads": {"slow": 0}}, f"0 swimmers for Slow: from 1 to 200 can be, and {OUT}"),
        ({"lanes": {"slow": 5}}, "7 lanes: Home has 6"),
        ({"goals": ["goal-2"]},
         "nothing that A may do in this pool serves goal 2; there is something for goal-0, goal-1"),
        ({"goals": [f"goal-{at}" for at in range(4)]},
         "there is no goal 'goal-3'; there are goal-0, goal-1, goal-2"),
        ({"gear": {"socks": 21}}, "21 of socks: the club owns 20"),
        ({"gear": {"fins": -1}}, "-1 of fins: the club owns 10"),
        ({"gear": {"flute": 1}}, "there is no gear 'flute'; there are fins, socks"),
        ({"effort": "mad"},
         "there is no effort 'mad'; there are effort-0, effort-1, effort-2, effort-3, effort-4"),
        ({"done": [("evening", -1)]}, "evening was done -1 days ago: 0 is today"),
        ({"done": [("morning", 1)]},
         ("there is no practice of the squad, or piece, 'morning'; there are set/first, "
         "set/second, set/open")),
        ({"taught": {"stairs": 1}}, "there is no progression 'stairs'; there are ladder"),
        ({"taught": {"ladder": 3}}, "ladder has 2 stages, and 3 were told"),
        ({"taught": {"ladder": -1}}, "ladder has 2 stages, and -1 were told"),
        ({"keep": [("set/open", "m", -1)]}, "set/open cannot stand as main set, but as warm-up"),
        ({"keep": [("set/first", "x", -1)]}, "set/first cannot stand there"),
        ({"keep": [("set/first", "m", -1), ("set/second", "m", -1)]},
         "set/second: another piece is kept there already"),
        ({"keep": [("set/third", "m", -1)]},
         "there is no piece 'set/third'; there are set/first, set/second, set/open"),
        ({"keep": [("set/second", "m", -1)], "gear": {"socks": 16}},
         "Second cannot be kept: 17 use drag socks at once, 16 are here"),
        ({"keep": [("set/first", "m", -1)], "leave_out": ["set/first"]},
         "First cannot be kept: it is left out"),
        ({"leave_out": ["set/third"]},
         "there is no piece 'set/third'; there are set/first, set/second, set/open"),
        ({"adults": 1}, "1 adult: for 17 in Home it takes 2"),
        ({"adults": 0}, "0 adults: for 17 in Home it takes 2"),
        ({"groups": ["sharks"]}, "there is no lane group 'sharks'; there are quick, slow"),
        ({"lanes": {"sharks": 1}}, "there is no lane group 'sharks'; there are quick, slow"),
        ({"heads": {"sharks": 1}}, "there is no lane group 'sharks'; there are quick, slow"),
        ({"pool": "sea"}, "there is no pool 'sea'; there are away, home"),
        ({"goals": []}, "no goal is named: one to 3 can be asked for"),
        ({"pool": "away"},
         "nothing that A may do in this pool serves goal 0; there is something for "),
    ],
)  # fmt: skip
def test_a_wish_that_cannot_be_is_told(more: dict[str, Any], says: str) -> None:
    assert sentence(**more) == says


def test_bounds_of_what_can_be_are_inside() -> None:
    for more in (
        {"minutes": 20}, {"minutes": 120}, {"lanes": {"slow": 4}}, {"gear": {"socks": 0}},
        {"adults": 2},
        {"groups": ["quick"], "lanes": {"slow": 6}},
        {"groups": ["quick"], "heads": {"slow": 200}},
        {"done": [("evening", 0)]}, {"keep": [("set/second", "m", -1)], "gear": {"socks": 17}},
        {"keep": [("set/first", "m", 1), ("set/second", "n", 1)]},
    ):  # fmt: skip
        wishes_of(here(), told(**more))  # type: ignore[arg-type]


def test_a_squad_has_no_more_minutes_than_its_sessions() -> None:
    own = here()
    short = replace(own, squad=replace(own.squad, minutes=99))
    assert sentence(short) == "100 minutes: A has 99 at most"
    assert wishes_of(short, told(minutes=99)).minutes == 99


def test_more_than_three_goals_are_too_many() -> None:
    of = [(piece(f"of-{at}", "m", goals=(at,)), (size(),)) for at in range(4)]
    own = replace(table(*of), goals=named("goal", 4))
    goals = [goal.id for goal in own.goals]
    assert sentence(own, goals=goals) == "4 goals: one to 3 can be asked for"
    assert wishes_of(own, told(goals=goals[:3])).goals == (0, 1, 2)


def test_of_more_than_twenty_five_names_none_is_told() -> None:
    for number, says in (
        (25, "there is no goal 'x'; there are goal-0, "),
        (26, "there is no goal 'x'"),
    ):
        own = replace(here(), goals=named("goal", number))
        found = sentence(own, goals=["x"])
        assert found.startswith(says) and ("goal-24" in found) == (number == 25)


def test_gear_that_the_club_has_none_of_is_told() -> None:
    own = here()
    none = replace(own, gear=(replace(own.gear[0], owned=0), own.gear[1]))
    assert sentence(none, gear={"fins": 1}) == "1 of fins: the club owns none"


def test_of_two_gears_the_one_is_named_of_which_there_are_too_few() -> None:
    own = here()
    both = replace(own, pieces=(own.pieces[0], replace(own.pieces[1], gear=(0, 1)), own.pieces[2]))
    wished = {"groups": ["slow"], "keep": [("set/second", "m", -1)]}
    few = sentence(both, **wished, gear={"fins": 9, "socks": 8})
    assert few == "Second cannot be kept: 9 use drag socks at once, 8 are here"
    assert wishes_of(both, told(**wished, gear={"fins": 9, "socks": 9})).kept == (Kept(1, "m"),)


def test_what_is_kept_is_offered_in_the_pool_to_these_groups_with_these_adults() -> None:
    own = here()
    offers = own.squad.offers["home"]
    first, rest = offers[0], offers[1:]

    def of(*offers: Offer) -> ComposeTable:
        return replace(own, squad=replace(own.squad, offers={"home": offers}))

    keep = [("set/first", "m", -1)]
    wished = {"goals": ["goal-1"], "keep": keep}
    assert sentence(of(*rest), **wished).startswith(
        "First cannot be kept: it is not for all of these"
    )
    lone = replace(first, runs=(Sizes(size((600, None))),))
    assert sentence(of(lone, *rest), **wished).startswith("First cannot be kept: it is not for all")
    assert wishes_of(of(lone, *rest), told(**wished, groups=["quick"])).kept == (Kept(0, "m"),)
    many = replace(first, adults=3)
    assert (
        sentence(of(many, *rest), **wished, adults=2)
        == "First cannot be kept: it needs more adults"
    )
    full = replace(first, room=(3, 0))
    assert sentence(of(full, *rest), **wished).endswith("the lanes are too full for it")
    assert wishes_of(own, told(**wished, done=[("set/first", 0)])).days == {0: 0}
