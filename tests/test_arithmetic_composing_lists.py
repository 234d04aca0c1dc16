"""Pieces, their sizes, and which of them are tried in each role: by hand."""

from __future__ import annotations

from typing import Any

import pytest
from composing_world import asked, piece, size, sized, table

from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.best import compose
from almanac.arithmetic.composing.hearts import hearts
from almanac.arithmetic.composing.lists import lists, of_role, some
from almanac.arithmetic.composing.pieces import UNKNOWN, Offer, Sizes
from almanac.arithmetic.composing.shape import shape_cost
from almanac.arithmetic.composing.wishes import Kept

NONE = frozenset[int]()


def test_sizes_that_grow_evenly_are_each_so_much_above_the_one_before() -> None:
    each = {"distance": 50, "fast": 3, "resisted": 5, "plates": 7, "under": 11}
    first = size(
        (600, None, 900),
        2,
        goes_under=13,
        calm=17,
        doses=((4, 90, 100),),
        **{**each, "distance": 200},
    )
    more = size((70, 80, None), 1, goes_under=0, calm=0, doses=((4, 8, 9),), **each)
    assert Sizes(first, 2, more).all == (
        first,
        size(
            (670, None, None), 3, distance=250, fast=6, resisted=10, plates=14, under=22,
            goes_under=13, calm=17, doses=((4, 98, 109),),
        ),
        size(
            (740, None, None), 4, distance=300, fast=9, resisted=15, plates=21, under=33,
            goes_under=13, calm=17, doses=((4, 106, 118),),
        ),
    )  # fmt: skip
    assert Sizes(first).all == (first,)
    assert Offer(0, 1, (), (Sizes(first), Sizes(first, 1, more))).sizes[1].number == 2


def rounds(*numbers: int, written: int = 0, takes: int = 600) -> list[Sized]:
    return [sized(takes * n, size(takes * n, n), what="rounds", written=written) for n in numbers]


def test_of_many_sizes_four_are_tried_from_the_least_to_the_most_and_the_one_that_is_written() -> (
    None
):
    def numbers(*own: int, **more: int) -> list[int]:
        return [each.number for each in some(rounds(*own, **more))]

    assert numbers(*range(1, 11)) == [1, 4, 7, 10]
    assert numbers(*range(1, 12)) == [1, 4, 7, 11]
    assert numbers(*range(1, 12), written=6) == [1, 4, 6, 7, 11]
    assert numbers(1, 2, 3, 4) == [1, 2, 3, 4]
    assert numbers(5) == [5] and numbers() == []


def roles(own: Asked, role: str) -> list[tuple[int, list[int]]]:
    return [
        (sizes[0].place, [each.number for each in sizes]) for sizes in sorted_by_place(own, role)
    ]


def sorted_by_place(own: Asked, role: str) -> list[list[Sized]]:
    return sorted(of_role(own, role), key=lambda sizes: sizes[0].place)


def test_what_may_stand_in_a_role_has_its_letter_and_opens_eases_and_closes_bare() -> None:
    long = (size(3000),)
    pieces = [
        (piece(roles=letters, gear=gear), long)
        for letters, gear in (("wc", ()), ("wsmec", (1,)), ("m", ()), ("s", ()), ("ec", ()))
    ]
    own = asked(*pieces)
    places = {role: [place for place, _ in roles(own, role)] for role in "wsmnec"}
    assert places == {"w": [0], "s": [1, 3], "m": [1, 2], "n": [1, 2], "e": [4], "c": [0, 4]}
    assert roles(asked(*pieces, left_out=NONE | {1}), "m") == [(2, [1])]


def test_what_is_kept_in_a_role_stands_there_alone_and_nowhere_else() -> None:
    pieces = [(piece(roles="sm"), (size(1000, 1), size(4000, 2))) for _ in range(3)]
    one = asked(*pieces, kept=(Kept(1, "s"), Kept(2, "m", 2)))
    assert roles(one, "s") == [(1, [1, 2])] and roles(one, "m") == [(2, [2])]
    assert roles(one, "n") == [(0, [2])]  # one of a thousand tenths is too short for it
    short = asked(*pieces, kept=(Kept(2, "n", 1),))
    assert roles(short, "n") == [(2, [1])] and roles(short, "m") == [(0, [2]), (1, [2])]
    assert roles(asked(*pieces, kept=(Kept(2, "m", 3),)), "m") == []


def test_a_main_set_lasts_five_minutes_and_three_where_it_serves_what_is_wished() -> None:
    sizes = tuple(size(takes, at) for at, takes in enumerate((1799, 1800, 2999, 3000), start=1))
    own = asked((piece(goals=(0, 1)), sizes), (piece(goals=(1,)), sizes), goals=(2, 0))
    for role in "mn":
        assert roles(own, role) == [(0, [2, 3, 4]), (1, [4])]
    assert roles(own, "s") == [(0, [1, 2, 3, 4]), (1, [1, 2, 3, 4])]
    assert roles(asked((piece(), sizes[:2])), "m") == []


def test_the_best_for_each_goal_and_the_best_of_all_are_tried_in_a_role() -> None:
    """Alike in everything else, what serves some goal is before the rest; each by its place."""
    goals = [(2,)] * 6 + [(1,)] * 12 + [(0,)] * 12
    pieces = [(piece(roles="sm", goals=own), (size(3000), size(3600, 2))) for own in goals]
    own = lists(asked(*pieces, goals=(0, 1)))
    assert [sizes[0].place for sizes in own.mains] == [*range(6, 15), *range(18, 27)]
    assert all([each.number for each in sizes] == [1, 2] for sizes in own.mains)
    assert list(dict.fromkeys(one.place for one in own.skills)) == [*range(6, 11), *range(18, 23)]
    assert list(dict.fromkeys(one.place for one in own.seconds)) == [*range(6, 10), *range(18, 22)]
    # Of a goal that few serve, these and the best beside.
    one = lists(asked(*pieces[:8], goals=(1,)))
    assert [sizes[0].place for sizes in one.mains] == [6, 7, 0, 1, 2]
    assert [sizes[0].place for sizes in lists(asked(*pieces[:8], goals=(0,))).mains] == [*range(5)]
    assert {each.place for each in one.skills} == {6, 7, 0}
    assert {each.place for each in one.seconds} == {6, 7, 0}


def test_a_piece_ranks_by_its_cheapest_size_and_by_place_where_two_cost_the_same() -> None:
    def of(*numbers: int) -> tuple[Any, Any]:
        sizes = tuple(size(3000 + n, n) for n in numbers)
        return piece(roles="m", what="rounds", written=3), sizes

    own = lists(asked(of(6), of(1, 2), of(7, 4), of(5, 6)))
    # A round off the three that are written costs 25: 75, 25, 25, 50.
    assert [sizes[0].place for sizes in own.mains] == [1, 2, 3, 0]


def test_relief_is_the_best_twelve_and_warm_ups_are_all_whose_needs_are_taught() -> None:
    easy = [
        (piece(roles="e", of="part", what="rounds", written=n), (size(600, 20),)) for n in range(14)
    ]
    # Rounds off the written cost 4 each, so that the last is the cheapest.
    assert [own.place for own in lists(asked(*easy)).easies] == [*range(13, 1, -1)]
    warm = [(piece(roles="w", asks=asks), (size(),)) for asks in ((0,), (1,), (0, 1), ())]
    own = lists(asked(*warm, taught=NONE | {0}))
    assert [one.place for one in own.warm_ups] == [0, 3]


def test_each_list_is_by_cost_then_by_place_then_by_number() -> None:
    grows = tuple(size(600 * n, n) for n in range(1, 11))
    pieces = [
        (piece(roles="wec", what="rounds", written=5), grows),
        (piece(roles="wec", what="rounds", written=5), grows),
    ]
    own = lists(asked(*pieces))
    for each in (own.warm_ups, own.easies):
        # 5, 4, 7, 1, 10: so many rounds off the five that are written cost 25 each.
        first = [(place, number) for number in (5, 4, 7, 1, 10) for place in (0, 1)]
        assert [(one.place, one.number) for one in each] == first
    # Of a cool-down every size is tried, so that it fills what is left.
    off = ((5,), (4, 6), (3, 7), (2, 8), (1, 9), (10,))
    every = [(place, number) for numbers in off for place in (0, 1) for number in numbers]
    assert [(one.place, one.number) for one in own.cool_downs] == every


def test_one_drill_in_its_own_dose_is_a_main_set_up_to_half_an_hour_or_where_it_is_kept() -> None:
    pieces = [(piece(roles="sm", of=of, goals=(0,)), (size(3000),)) for of in ("drill", "set")]
    assert [place for place, _ in roles(asked(*pieces, minutes=30), "m")] == [0, 1]
    assert [place for place, _ in roles(asked(*pieces, minutes=31), "m")] == [1]
    assert [place for place, _ in roles(asked(*pieces, minutes=31), "s")] == [0, 1]
    kept = asked(*pieces, minutes=31, kept=(Kept(0, "m"),))
    assert [place for place, _ in roles(kept, "m")] == [0]


@pytest.mark.parametrize("lacks", ["", "w", "m", "c"])
def test_a_practice_needs_something_to_begin_to_do_and_to_end_with(lacks: str) -> None:
    pieces = [(piece(roles=role), (size(20000),)) for role in "wmc" if role != lacks]
    own = asked(*pieces)
    assert lists(own).is_enough is not bool(lacks)
    assert bool(compose(own.table, own.wishes)) is not bool(lacks)


def test_hearts_take_between_the_least_and_the_most() -> None:
    """A main set of 3000 after a talk of 100, or a change of gear of 300; a skill of 1000 before
    it.
    """
    pieces = [
        (piece(roles="m", goals=(0,), talk=100), (size(3000),)),
        (piece(roles="s", ends=(0,)), (size(1000),)),
        (piece(roles="m", begins=(0,), gear=(0,), goals=(0,)), (size(4000),)),
    ]  # fmt: skip
    own = asked(*pieces, minutes=40, gear=(17, 20))

    def found(least: int, most: int) -> set[tuple[str, int]]:
        every = hearts(own, lists(own), least, most)
        assert [one.cost for one in every] == sorted(one.cost for one in every)
        return {
            ("".join(role + str(each.place) for role, each in one.order), one.takes)
            for one in every
        }

    # Fins are put on, or taken off after the skill, in 300; what wears them before keeps them on.
    whole = {("m0", 3100), ("m2", 4300), ("s1m0", 4300), ("s1m2", 5000)}
    assert found(0, 9999) == whole
    assert found(3100, 4300) == {one for one in whole if one[1] < 5000}
    assert found(3101, 4299) == set() and found(4300, 4300) == {("m2", 4300), ("s1m0", 4300)}
    assert found(5000, 5000) == {("s1m2", 5000)}


def test_a_second_main_set_stands_from_fifty_minutes_on() -> None:
    pieces = [(piece(roles="m", goals=(0,)), (size(3000),)) for _ in range(2)]
    for minutes, most in ((49, 1), (50, 2)):
        own = asked(*pieces, minutes=minutes)
        assert max(len(one.order) for one in hearts(own, lists(own), 0, 99999)) == most
    kept = asked(*pieces, minutes=30, kept=(Kept(1, "n"),))
    assert [len(one.order) for one in hearts(kept, lists(kept), 0, 99999)] == [2]


def test_main_sets_stand_fast_first_then_by_kick() -> None:
    def first(one: dict[str, int], other: dict[str, int]) -> int:
        pieces = [(piece(roles="m", goals=(0,), **of), (size(3000),)) for of in (one, other)]
        own = asked(*pieces, kept=(Kept(0, "m"), Kept(1, "n")))
        (heart,) = hearts(own, lists(own), 0, 99999)
        assert heart.mains == {0, 1} and len(heart.pieces) == 2
        return heart.pieces[0].place

    assert first({}, {}) == 0
    assert first({"hardest": 2, "kick": 900}, {"hardest": 3}) == 1
    assert first({"hardest": 3}, {"hardest": 4}) == 0
    assert first({"kick": 100}, {"kick": 101}) == 1


def test_a_heart_costs_its_pieces_its_goals_as_they_are_served_best_and_its_shape() -> None:
    pieces = [
        (piece(roles="m", goals=(0,), hardest=3), (size(3000),)),
        (piece(roles="m", goals=(1,), hardest=3), (size(3000),)),
        (piece(roles="s", of="drill", goals=(2,), drills=(0,)), (size(1000),)),
    ]  # fmt: skip
    own = asked(*pieces, goals=(0, 1, 2), kept=(Kept(0, "m"), Kept(1, "n"), Kept(2, "s")))
    (heart,) = hearts(own, lists(own), 0, 99999)
    mains = [one for role, one in heart.order if role != "s"]
    shape = shape_cost(own, heart.pieces[0], mains)
    # Of a drill 50; goals as main set 0, as second one 60, by the skill 120; a skill that is not
    # used 40; both fast 150.
    assert heart.cost == 50 + (0 + 60 + 120) + 40 + 150 + shape
    assert heart.mains == {0, 1}


def test_what_is_in_no_table_is_offered_nowhere() -> None:
    assert Asked(table(), asked(of=table(), pool="away").wishes).offers == ()
    assert UNKNOWN not in {own.place for own in lists(asked()).seconds}
