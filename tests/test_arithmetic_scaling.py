"""A set asked for fewer or more rounds or reps: every figure is that of the set written so."""

from __future__ import annotations

import copy
from typing import Any

import pytest
from arithmetic_world import SHORT, catalogue, swim_set
from hypothesis import given, settings
from hypothesis import strategies as st
from shared import examples

from almanac.arithmetic.expand import count_reps
from almanac.arithmetic.scaling import (
    REPS,
    ROUNDS,
    OutOfBounds,
    Scalable,
    item_at,
    scalable,
    scaled,
    with_counts,
)
from almanac.arithmetic.summary import summarise
from almanac.arithmetic.timing import Timing

CLUB = Timing(catalogue())


def kick(reps: int = 4, **more: Any) -> dict[str, Any]:
    return {
        "reps": reps,
        "distance": 50,
        "do": "kick",
        "effort": "strong",
        "sendoff": "1:00",
        **more,
    }


def rounds(number: int, *items: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {"rounds": number, "items": list(items), **more}


def scale(what: str, *items: dict[str, Any], most_reps: float = 400) -> Scalable:
    found = scalable(swim_set(*items), what, most_reps)
    assert found is not None
    return found


def asked(what: str, number: int, *items: dict[str, Any]) -> tuple[float, float, int]:
    """Distance, clock and reps of osprey-1."""
    own = scaled(swim_set(*items), scale(what, *items), number)
    found = summarise(CLUB, own)
    clock = found.clocks["osprey-1"].clock
    assert clock is not None
    return found.distance.value, clock.value, len(found.reps)


def test_a_round_fewer_and_one_more():
    # a round is 4 × 50 on 1:00 = 200 m in 4:00, with 1:00 between; then 2 × 50 on 1:00
    items = rounds(3, kick(), pause_between="1:00"), kick(2)
    assert asked(ROUNDS, 2, *items) == (500, 2 * 240 + 60 + 120, 10)
    assert asked(ROUNDS, 4, *items) == (900, 4 * 240 + 3 * 60 + 120, 18)


def test_the_rounds_of_the_greatest_distance_are_meant():
    small, large = rounds(4, kick(1)), rounds(2, kick(8))
    assert scale(ROUNDS, small, large).path == ("items", 1)
    assert scale(ROUNDS, large, small).path == ("items", 0)
    assert scalable(swim_set(kick()), ROUNDS, 400) is None


def test_the_reps_of_the_greatest_distance_are_meant_wherever_they_stand():
    # 2 × 4 × 50 = 400 in rounds against 6 × 50 = 300 outside
    assert scale(REPS, kick(6), rounds(2, kick(4))).path == ("items", 1, "items", 0)
    assert asked(REPS, 3, kick(6), rounds(2, kick(4))) == (600, 12 * 60, 12)


def test_what_is_repeated_is_meant_before_a_longer_single_rep():
    assert scale(REPS, kick(3), {**kick(1), "distance": 400}).path == ("items", 0)
    assert scale(REPS, kick(1)).path == ("items", 0)


def test_bounds_are_those_of_the_entry():
    found = scale(ROUNDS, rounds(3, kick(), rounds_between=[2, 5]))
    assert (found.least, found.most, found.stated) == (2, 5, True)
    assert list(found.offered()) == [2, 3, 4, 5]
    for number in (1, 6):
        with pytest.raises(OutOfBounds, match="takes 2 to 5 rounds"):
            scaled(swim_set(rounds(3, kick(), rounds_between=[2, 5])), found, number)


def test_without_bounds_a_page_offers_a_little_less_and_a_descend_keeps_two():
    """Never more: nobody has held it against the limits of safety."""
    assert list(scale(ROUNDS, rounds(3, kick())).offered()) == [2, 3]
    for reps, offered in ((2, [2]), (3, [2, 3])):
        falling = kick(reps, effort={"descend": ["steady", "fast"]})
        assert list(scale(REPS, falling).offered()) == offered


@pytest.mark.parametrize(
    ("bounds", "ways"),
    [
        ({}, "fewer"),
        ({"rounds_between": [2, 5]}, "fewer or more"),
        ({"rounds_between": [2, 4]}, "fewer or more"),
        ({"rounds_between": [3, 5]}, "more"),
    ],
)
def test_which_ways_a_page_offers_it(bounds, ways):
    assert scale(ROUNDS, rounds(3, kick(), **bounds)).ways == ways


def test_no_more_than_the_policy_lets_a_set_hold():
    # 3 rounds of 4 are 12 reps: room for two more rounds of 4 below 20
    assert scale(ROUNDS, rounds(3, kick()), most_reps=20).most == 5
    # what an entry states has been held against the limits as it stands
    stated = rounds(3, kick(), rounds_between=[2, 5])
    assert scale(ROUNDS, stated, most_reps=12).most == 5


@pytest.mark.parametrize(
    ("what", "items", "most_reps", "most"),
    [
        (ROUNDS, [rounds(3, kick())], 23, 5),  # 4 a round: 5 × 4 = 20
        (ROUNDS, [rounds(3, kick())], 24, 6),
        (ROUNDS, [rounds(3, kick())], 5, 3),  # what is written stands, however much it is
        (ROUNDS, [rounds(3, {"pause": 30})], 20, 50),  # nothing is swum
        (REPS, [kick(1)], 10, 10),
        (REPS, [kick(1)], 1000, 100),
        (REPS, [rounds(2, kick(4), kick(1))], 20, 9),  # twice: 2 × (9 + 1) = 20
        # a lane group goes round 4 times for 3: 2 × 7 × 4 / 3 are 18.7, and 2 × 8 × 4 / 3 are 21.3
        (ROUNDS, [rounds(3, kick(2), by_group={"osprey-1": {"rounds": 4}})], 20, 7),
    ],
)
def test_how_many_fit_into_what_the_policy_lets_a_set_hold(what, items, most_reps, most):
    own = swim_set(*items)
    found = scale(what, *items, most_reps=most_reps)
    assert found.most == most
    if most > found.written:
        assert count_reps(scaled(own, found, most).items) <= most_reps


def test_the_outermost_rounds_are_meant():
    found = scale(ROUNDS, rounds(1, rounds(3, kick(1))))
    assert (found.path, found.written, found.alone) == (("items", 0), 1, True)


def test_bounds_of_reps_are_those_of_the_entry():
    found = scale(REPS, kick(4, reps_between=[2, 6]))
    assert (found.least, found.most, found.stated) == (2, 6, True)
    assert asked(REPS, 6, kick(4, reps_between=[2, 6])) == (300, 360, 6)
    assert asked(REPS, 2, kick(4, reps_between=[2, 6])) == (100, 120, 2)
    one = kick(1, effort={"descend": ["steady", "fast"]})  # refused, and no fault here
    assert scale(REPS, one).least == 1


def test_the_last_round_is_the_one_that_is_then_last():
    items = rounds(3, kick(), by_round={"2": {"gear": ["fins"]}, "last": {"effort": "fast"}})
    own = scaled(swim_set(items), scale(ROUNDS, items), 2)
    # what is said of the last goes before what is said of it by number
    assert summarise(CLUB, own).by["effort"] == {"strong": 200, "fast": 200}
    own = scaled(swim_set(items), scale(ROUNDS, items), 1)
    assert summarise(CLUB, own).by["effort"] == {"fast": 200}


def test_send_offs_for_each_rep_go_on_as_the_last():
    items = kick(3, sendoff=["1:10", "1:05", "1:00"])
    assert asked(REPS, 5, items)[1] == 70 + 65 + 60 + 60 + 60
    assert asked(REPS, 2, items)[1] == 70 + 65


def test_a_group_that_goes_less_often_is_scaled_alike():
    # six to nine is half as many more: four to six
    items = kick(6, by_group={"osprey-1": {"reps": 4}})
    assert asked(REPS, 9, items)[2] == 6
    assert asked(REPS, 1, items)[2] == 1


@given(
    st.lists(st.integers(1, 4), min_size=1, max_size=3),
    st.integers(1, 4),
    st.integers(1, 6),
    st.booleans(),
)
@settings(max_examples=examples(100, 1000), deadline=None)
def test_a_scaled_set_is_the_set_written_so(
    reps: list[int], written: int, number: int, paused: bool
) -> None:
    own = rounds(written, *(kick(count) for count in reps))
    if paused:
        own["pause_between"] = "0:45"
    items = [own, kick(1)]
    plain = copy.deepcopy(items)
    plain[0]["rounds"] = number
    found = scaled(swim_set(*items), scale(ROUNDS, *items), number)
    assert found == swim_set(*plain)
    clock = summarise(CLUB, found).clocks["osprey-1"].clock
    assert clock is not None and found.course == SHORT
    pauses = 45 * (number - 1) if paused else 0
    assert clock.value == 60 * (number * sum(reps) + 1) + pauses


def test_a_set_is_asked_for_rounds_and_reps_at_once():
    own = swim_set({"rounds": 3, "items": [kick(4)]})
    assert with_counts(own, None, None, 500) is own
    both = with_counts(own, 2, 5, 500).items[0]
    assert (both.rounds, both.items[0].reps) == (2, 5)
    with pytest.raises(OutOfBounds, match="has no rounds"):
        with_counts(swim_set(kick(4)), 2, None, 500)
    with pytest.raises(OutOfBounds, match="takes 1 to 50 rounds"):
        with_counts(own, 51, None, 5000)
    with pytest.raises(OutOfBounds, match="takes 1 to 100 reps"):
        with_counts(own, None, 101, 5000)
    with pytest.raises(OutOfBounds, match="has no reps"):
        with_counts(swim_set({"pause": 30}), None, 2, 500)


@pytest.mark.parametrize(
    ("asked_for", "own"),
    [(1, 1), (2, 2), (4, 3), (5, 4), (8, 6)],  # 3 of 4: 0.75, 1.5, 3, 3.75 and 6
)
def test_a_lane_group_that_goes_round_less_often_is_scaled_alike(asked_for, own):
    item = rounds(4, kick(1), by_group={"osprey-1": {"rounds": 3}})
    found = scaled(swim_set(item), scale(ROUNDS, item), asked_for)
    assert len(summarise(CLUB, found).of("osprey-1").reps) == own
    variant = rounds(4, kick(1), by_variant={"A": {"rounds": 3}})
    other = scaled(swim_set(variant), scale(ROUNDS, variant), asked_for)
    assert other.items[0].by_variant["A"].rounds == own  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("asked_for", "own"), [(2, [1, 1, 0, None]), (6, [1, 4, 0, None]), (12, [2, 8, 0, None])]
)
def test_whatever_names_its_own_reps_is_scaled_alike(asked_for: int, own: list[int | None]) -> None:
    # of 6: one, four, none, and as many as are written
    changes = dict(zip("abcd", ({"reps": n} for n in (1, 4, 0)), strict=False))
    changes["d"] = {"effort": "fast"}
    rounds_ = {"1": changes["a"], "2": changes["b"], "3": changes["c"], "last": changes["d"]}
    item = kick(6, by_group=changes, by_variant=changes, by_round=rounds_)
    found = scaled(swim_set(item), scale(REPS, item), asked_for).items[0]
    for told in (found.by_group, found.by_variant, found.by_round):  # type: ignore[union-attr]
        assert [change.reps for change in told.values()] == own


def test_an_item_is_found_by_its_path():
    own = swim_set(kick(1), rounds(2, kick(3), kick(4)))
    round_ = own.items[1]
    assert item_at(own.items, ("items", 1)) is round_
    assert item_at(own.items, ("items", 1, "items", 1)) is round_.items[1]  # type: ignore[union-attr]
    assert item_at(own.items, ("items", 0, "parts", 0)) is own.items[0]


def test_who_does_no_round_does_none_of_fewer_or_more():
    item = rounds(4, kick(1), by_group={"osprey-1": {"rounds": 0}})
    found = scaled(swim_set(item), scale(ROUNDS, item), 8)
    assert summarise(CLUB, found).of("osprey-1").reps == ()


def test_it_is_told_whether_there_is_another_of_its_sort():
    assert scale(REPS, kick(4)).alone and scale(ROUNDS, rounds(2, kick(4))).alone
    assert not scale(REPS, kick(4), kick(2)).alone


def test_reps_go_down_to_one_and_to_two_where_any_part_of_them_descends():
    parts = [
        {"distance": 25, "do": "kick", "effort": "easy"},
        {"distance": 25, "do": "kick", "effort": {"descend": ["easy", "strong"]}},
    ]
    assert scale(REPS, kick(4)).least == 1
    assert scale(REPS, {"reps": 4, "parts": parts, "sendoff": "1:30"}).least == 2
