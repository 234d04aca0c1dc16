"""Pieces in their order, and the limits that they keep together: values worked out by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from composing_world import asked, piece, size, sized, table

from almanac.arithmetic.composing.asked import Sized, in_a_lane
from almanac.arithmetic.composing.costs import NO_SKILL
from almanac.arithmetic.composing.order import (
    Stood,
    broken,
    change,
    laid,
    too_much,
    unsafe,
    whole,
)
from almanac.arithmetic.composing.pieces import UNKNOWN, Offer, Sizes
from almanac.arithmetic.composing.shape import shape_cost, wants_skill
from almanac.arithmetic.composing.wishes import Kept

NONE = frozenset[int]()


def test_a_change_of_gear_takes_as_long_as_the_longest_of_what_goes_on_or_off() -> None:
    own = asked()
    assert change(own, NONE, sized(begins=(0, 1))) == 300
    assert change(own, NONE | {0}, sized(begins=(0, 1))) == 100
    assert change(own, NONE | {0, 1}, sized()) == 300
    assert change(own, NONE | {0}, sized(begins=(0,))) == change(own, NONE, sized()) == 0


def test_before_a_piece_goes_its_talk_or_a_longer_change_and_before_the_first_its_talk() -> None:
    first = sized(1000, begins=(0,), ends=(0,), talk=60)
    stood = laid(
        asked(),
        [("w", first), ("m", sized(2000, begins=(1,), talk=299)), ("c", sized(3000, talk=40))],
    )
    assert [(one.role, one.lead) for one in stood] == [("w", 60), ("m", 300), ("c", 40)]
    assert whole(stood) == 6400
    assert [one.lead for one in laid(asked(), [("w", sized(begins=(0,))), ("m", sized())])] == [
        0,
        0,
    ]


@pytest.mark.parametrize(
    ("takes", "reason"), [(60001, "minutes"), (60000, ""), (58800, ""), (58799, "minutes")]
)
def test_a_practice_fills_its_slot_but_for_two_minutes(takes: int, reason: str) -> None:
    assert broken(asked(), [Stood("m", sized(takes - 100), 100)]) == reason


@pytest.mark.parametrize(
    ("what", "most"), [("fast", 400), ("resisted", 300), ("plates", 200), ("under", 100)]
)
def test_each_limit_of_a_practice_is_of_all_its_pieces(what: str, most: int) -> None:
    def of(metres: int) -> Sized:
        return sized(own=size(**{what: metres}))

    assert too_much(asked(), [of(most - 60), of(60)]) == ""
    assert too_much(asked(), [of(most - 60), of(61)]) == "limit"


def doses(*each: tuple[tuple[int, int, int], ...]) -> str:
    return too_much(asked(), [sized(own=size(doses=own)) for own in each])


def test_a_dose_is_reckoned_plain_where_all_of_it_is() -> None:
    assert doses(((0, 400, 700),), ((0, 600, 700), (1, 900, 0))) == ""
    assert doses(((0, 400, 0),), ((0, 601, 0),)) == doses(((0, 1001, 10),)) == "dose"
    assert doses(((1, 0, 0), (0, 1001, 0))) == doses(((0, 1001, 0), (1, 0, 0))) == "dose"
    # One of them is not plain: 600 + 400 as what is not.
    for first, second in (((UNKNOWN, 600), (900, 400)), ((900, 400), (UNKNOWN, 600))):
        assert doses(((0, *first),), ((0, *second),)) == ""
        assert doses(((0, *first),), ((0, *second),), ((0, 0, 1),)) == "dose"
    assert doses(((0, UNKNOWN, 1000),)) == ""
    assert doses(((0, UNKNOWN, 1001),)) == "dose"


def breath(*order: tuple[int, dict[str, Any]], **wished: Any) -> str:
    """Of pieces with what goes before each, what is unsafe."""
    stood = [Stood("m", sized(own=size(**{"takes": (600, 500)} | of)), lead) for lead, of in order]
    return unsafe(asked(**wished), stood)


def test_nobody_goes_under_sooner_than_a_hundred_seconds_after_fast_work() -> None:
    fast = (0, {"calm": 200})  # over 200 before its end
    assert breath(fast, (300, {"goes_under": 500})) == ""
    assert breath(fast, (300, {"goes_under": 499})) == "breath"
    assert breath(fast, (799, {"goes_under": 0})) == "breath"
    # What lies between lasts 100 and, for the lane group that is done first, 500 more.
    assert breath(fast, (100, {}), (0, {"goes_under": 200})) == ""
    assert breath(fast, (100, {}), (0, {"goes_under": 199})) == "breath"
    assert breath(fast, (100, {}), (0, {"goes_under": 100}), groups=(0,)) == ""
    assert breath(fast, (100, {}), (0, {"goes_under": 99}), groups=(0,)) == "breath"


def test_without_fast_work_before_it_anybody_may_go_under() -> None:
    assert breath((0, {"goes_under": 0})) == breath((0, {}), (300, {"goes_under": 0})) == ""
    assert breath((0, {"calm": 0}), (0, {}), (0, {})) == ""
    assert breath((0, {"goes_under": 0, "calm": 0}), (1000, {"goes_under": 0})) == ""
    assert breath((0, {"calm": 900}), (0, {"calm": 0}), (900, {"goes_under": 99})) == "breath"


def test_a_drill_comes_after_what_it_needs() -> None:
    def told(*pieces: Sized, taught: frozenset[int] = NONE) -> str:
        return unsafe(asked(taught=taught), [Stood("m", own, 0) for own in pieces])

    needs, does = sized(asks=(0, 1)), sized(drills=(0,))
    assert told(needs) == told(does, needs) == "taught"
    assert told(needs, does, taught=NONE | {1}) == "taught"
    assert told(does, needs, taught=NONE | {1}) == told(needs, taught=NONE | {0, 1}) == ""


def test_what_is_too_much_is_told_before_breath_and_breath_before_teaching() -> None:
    first = sized(own=size(calm=0))
    needs = sized(own=size(goes_under=0), asks=(0,))
    much = sized(own=size(fast=401))
    assert unsafe(asked(), [Stood("m", own, 0) for own in (first, needs)]) == "breath"
    assert unsafe(asked(), [Stood("m", own, 0) for own in (first, needs, much)]) == "limit"


def test_a_piece_takes_what_the_slowest_group_takes_and_a_gap_more_for_each_more_in_a_lane() -> (
    None
):
    def takes(**wished: Any) -> list[int]:
        own = asked((piece(), (size((600, 500)), size((None, 700)))), **wished)
        return [each.takes for each in own.sized(own.offers[0])]

    assert takes() == [600]
    assert takes(groups=(1,)) == [500, 700]
    # 11 in 2 lanes are 6 in the fullest, one more than usual: 100 tenths; 4 in 2 are fewer, and as
    # usual.
    assert takes(groups=(1,), heads=(8, 11)) == [600, 800]
    assert takes(groups=(1,), heads=(8, 4)) == [500, 700]
    # 8 in one lane are 4 more: 4 × 50.
    assert takes(groups=(0,), lanes=(1, 2)) == [800]


SOCKS = piece(roles="ms", gear=(1,))
FOR_SLOW = Offer(0, 3, (0, 6), (Sizes(size((None, 600))),))
"""It takes three adults, and a lane of slow has room for six in it."""


@pytest.mark.parametrize(
    ("wished", "reason"),
    [
        ({}, ""), ({"groups": (0, 1)}, "groups"), ({"gear": (0, 9)}, ""),
        ({"gear": (0, 8)}, "gear"),
        ({"heads": (8, 12)}, ""), ({"heads": (8, 13)}, "lanes"), ({"adults": 3}, ""),
        ({"adults": 2}, "adults"),
        ({"left_out": NONE | {0}}, "leave_out"), ({"days": {0: 0}}, "done"),
        ({"days": {0: 6}}, "done"),
        ({"days": {0: 7}}, ""), ({"days": {1: 0}}, ""),
        ({"days": {0: 0}, "kept": (Kept(0, "m"),)}, ""),
        ({"days": {0: 0}, "kept": (Kept(1, "m"),)}, "done"),
    ],
)  # fmt: skip
def test_a_piece_is_left_out_for_a_reason(wished: dict[str, Any], reason: str) -> None:
    own = asked((SOCKS, ()), **({"groups": (1,)} | wished))
    assert own.why_not(FOR_SLOW, "m") == own.why_not(FOR_SLOW, "n") == reason
    assert own.why_not(FOR_SLOW, "s") == ("" if reason == "done" else reason)


def test_of_two_reasons_the_first_is_told() -> None:
    """Gear, lanes, adults, what is left out, what was done."""
    wished: dict[str, Any] = {"groups": (1,), "days": {0: 0}}
    for key, value, reason in (
        ("days", {0: 0}, "done"), ("left_out", NONE | {0}, "leave_out"), ("adults", 2, "adults"),
        ("heads", (8, 13), "lanes"), ("gear", (0, 12), "gear"), ("groups", (0,), "groups"),
    ):  # fmt: skip
        wished[key] = value
        assert asked((SOCKS, ()), **wished).why_not(FOR_SLOW, "m") == reason


def test_of_a_piece_that_few_of_a_lane_do_at_once_gear_suffices_for_these() -> None:
    def used(most: int, **wished: Any) -> int:
        return asked(**wished).used_at_once(piece(most_in_lane=most))

    assert used(0) == 17 and used(0, groups=(1,)) == 9
    assert used(3) == 12  # three of each of four lanes
    assert used(3, heads=(5, 9)) == 11  # five of six, and six
    # With more in a lane than usual it takes longer, and is left out.
    few = piece(roles="m", most_in_lane=3)
    offer = Offer(0, 0, (0, 0), (Sizes(size()),))
    assert asked((few, ())).why_not(offer, "m") == ""
    assert asked((few, ()), heads=(9, 9)).why_not(offer, "m") == "lanes"
    assert asked((piece(), ()), heads=(9, 9)).why_not(offer, "m") == ""
    lone = replace(offer, room=(1, 0))
    assert asked((piece(), ()), heads=(2, 9)).why_not(lone, "m") == ""
    assert asked((piece(), ()), heads=(3, 9)).why_not(lone, "m") == "lanes"
    assert [in_a_lane(heads, 2) for heads in (8, 9, 1, 0)] == [4, 5, 1, 0]


@pytest.mark.parametrize(
    ("heads", "watch", "least"),
    [((8, 9), (1, 12), 2), ((8, 4), (1, 12), 1), ((8, 5), (1, 12), 2), ((8, 9), (3, 12), 3),
     ((8, 9), (1, 0), 1), ((8, 9), (0, 0), 0)],
)  # fmt: skip
def test_so_many_heads_need_so_many_adults(
    heads: tuple[int, int], watch: tuple[int, int], least: int
) -> None:
    own = asked(of=table(watch={"home": watch, "away": (9, 1)}), heads=heads)
    assert own.adults_least == least
    alone = asked(of=table(watch={"home": (1, 8)}), heads=(8, 9), groups=(0,))
    assert alone.adults_least == 1


def test_a_wished_goal_that_no_work_serves_is_met_aside_at_a_gentle_effort() -> None:
    pieces = [
        (piece(id, roles, goals=goals), (size(),))
        for id, roles, goals in (("a", "m", (0,)), ("b", "s", (1,)), ("c", "wec", (2,)))
    ]
    assert asked(*pieces, goals=(0, 1, 2)).aside == {2}
    assert asked(*pieces, goals=(2,)).effort == 1  # gentle
    assert asked(*pieces, goals=(2,), effort=4).effort == 4
    assert asked(*pieces, goals=(2, 0)).effort == UNKNOWN
    assert asked(*pieces, goals=(2,), pool="away").offers == ()


def test_rest_is_gentle_and_wants_no_skill() -> None:
    """What is easy alone and may stand as relief is rest; one skill, hard set or set that is no
    relief for the same goal, and it is training.
    """
    rest = piece("a", "me", goals=(0,), hardest=1), (size(),)
    other = piece("b", "ms", goals=(1,), hardest=3), (size(),)
    own = asked(rest, other, goals=(0,))
    assert own.is_rest and own.effort == 1
    assert not wants_skill(own) and shape_cost(own, None, [sized(20000)]) == 0
    assert asked(rest, other, goals=(0,), effort=3).effort == 3
    for roles, hardest in (("me", 2), ("m", 1), ("sme", 1)):
        more = piece("c", roles, goals=(0,), hardest=hardest), (size(),)
        training = asked(rest, other, more, goals=(0,))
        assert not training.is_rest and training.effort == UNKNOWN
        assert shape_cost(training, None, [sized(20000)]) == NO_SKILL
    for goals in ((1,), (0, 1), (2,)):
        own = asked(rest, other, goals=goals)
        assert not own.is_rest and wants_skill(own)
