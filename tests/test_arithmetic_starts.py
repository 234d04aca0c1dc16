"""What a start asks of a pool's end, and which end each rep begins at: worked by hand, limit by
limit.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from arithmetic_world import LONG, SHORT, YARDS, events, policy, rep

from almanac.arithmetic.lap_ends import BOTH, across, laps, placed_pieces
from almanac.arithmetic.start_limits import (
    DIVE,
    EDGE_DIVE,
    OF_DEPTH,
    OF_PLATFORM,
    Lack,
    Shortfall,
    StartLimits,
    belies,
    enters,
    height_of,
    start_limits,
    start_shortfall,
)
from almanac.model.entry import DepthNeeded
from almanac.model.manner import Manner
from almanac.model.policy import LevelLimits, Limit, Word
from almanac.model.pool import Depth, LaneAtEnd, Pool, PoolEnd
from almanac.units import Course

START, TURN = frozenset({"start"}), frozenset({"turn"})
# As entries write them.
HEAD_FIRST, BACKWARDS, FEET_FIRST = "head-first", "backwards", "feet-first"
IN_THE_WATER, EDGE, LEDGE, PLATFORM = "in-the-water", "edge", "ledge", "platform"


def word(how: str = "", **more: Any) -> Word:
    return Word("", "", enters=how, **more)


def least(metres: float) -> DepthNeeded:
    return DepthNeeded(least=metres)


# Limits: 1.5 m and a platform of 0.5 m for the level, 1.8 m where it is taught, 1.0 m feet first.


def metres(value: float) -> Limit:
    return Limit(value, "m", "", "")


POLICY = replace(
    policy(feet_first_depth_least=1.0, teaching_depth_least=1.8),
    levels={
        "level": LevelLimits({"start_depth_least": metres(1.5), "platform_most": metres(0.5)}),
        "deep": LevelLimits({"start_depth_least": metres(2.0), "platform_most": metres(0.75)}),
    },
)


@pytest.mark.parametrize(
    ("own", "taught", "depth"),
    [
        (word(), False, 1.5),  # who does not say how goes head first
        (word(HEAD_FIRST), False, 1.5),
        (word(BACKWARDS), False, 1.5),
        (word(FEET_FIRST), False, 1.0),
        (word(IN_THE_WATER), False, 0.0),
        (word(HEAD_FIRST), True, 1.8),
        (word(BACKWARDS), True, 1.8),
        (word(FEET_FIRST), True, 1.0),
        (word(IN_THE_WATER), True, 0.0),
        (word(IN_THE_WATER, depth_m=least(0.9)), False, 0.9),  # a word may ask for more
        (word(HEAD_FIRST, depth_m=least(1.7)), False, 1.7),
        (word(HEAD_FIRST, depth_m=least(1.2)), False, 1.5),  # and not for less
    ],
)
def test_depth_that_a_start_is_asked(own: Word, taught: bool, depth: float) -> None:
    assert start_limits(POLICY, "level", own, taught) == StartLimits(depth, 0.5)


def test_a_level_whose_own_depth_is_more_than_that_of_teaching_keeps_it() -> None:
    assert start_limits(POLICY, "deep", DIVE, True) == StartLimits(2.0, 0.75)
    assert enters(DIVE) == enters(word()) == HEAD_FIRST
    assert Word("", "", enters=HEAD_FIRST) == DIVE


OWN_WORDS = "its own words tell of a dive, or of a start from above"


@pytest.mark.parametrize(
    ("title", "means", "how", "off", "why"),
    [
        # who pushes off or leaves backwards stands on nothing above the water but a ledge
        ("Start", "", IN_THE_WATER, EDGE, "it goes off the edge"),
        ("Start", "", IN_THE_WATER, PLATFORM, "it goes off the platform"),
        ("Start", "", BACKWARDS, EDGE, "it goes off the edge"),
        ("Start", "", BACKWARDS, PLATFORM, "it goes off the platform"),
        ("Start", "", BACKWARDS, LEDGE, ""),
        ("Start", "", FEET_FIRST, EDGE, ""),
        ("Start", "", HEAD_FIRST, PLATFORM, ""),
        # the words of a title count as those below it do
        ("Track start", "Flat and long.", IN_THE_WATER, "", OWN_WORDS),
        ("Start", "Off the block, flat and long.", IN_THE_WATER, "", OWN_WORDS),
        ("Start", "Dive in and come up.", FEET_FIRST, "", OWN_WORDS),
        ("Start", "Dive in, flat and long.", HEAD_FIRST, "", ""),
        # a jump is a start from above, feet first as it says
        ("Start", "Jump in off the side.", IN_THE_WATER, "", OWN_WORDS),
        ("Start", "Jump in off the side.", FEET_FIRST, "", ""),
        ("Push", "Feet on the wall, hands ahead.", IN_THE_WATER, "", ""),
    ],
)
def test_a_start_that_begins_above_the_water_whatever_it_says(
    title: str, means: str, how: str, off: str, why: str
) -> None:
    own = Word(title, means, enters=how, off=off)
    assert belies(own) == why
    assert enters(own) == (HEAD_FIRST if why else how)


# A pool of 1.2 to 2 m; its starting end is known.

LIMITS = StartLimits(1.5, 0.5)
END = PoolEnd(1.6, platform_m=0.5, edge_m=0.3)


def pool(least_m: float = 1.2, most_m: float = 2.0, **ends: PoolEnd) -> Pool:
    return Pool("Pool", SHORT, 6, Depth(least_m, most_m), True, ends=ends)


def short(
    own: Word, end: PoolEnd | None = END, limits: StartLimits = LIMITS, **more: float
) -> Shortfall | None:
    return start_shortfall(pool(**more, **({"start": end} if end else {})), "start", 4, own, limits)


def test_a_place_that_has_all_lacks_nothing() -> None:
    assert short(DIVE) is None
    assert short(DIVE, replace(END, depth_m=1.5)) is None  # as deep as is asked
    assert short(word(BACKWARDS)) is None
    assert short(word(FEET_FIRST)) is None


def test_water_that_is_too_shallow_or_whose_depth_is_not_known() -> None:
    assert short(DIVE, replace(END, depth_m=1.4)) == Shortfall(Lack.SHALLOW, 1.4, 1.5)
    # of an end that nobody described, the shallowest of the pool counts
    assert short(DIVE, None) == Shortfall(Lack.END_UNKNOWN, 1.2, 1.5)
    assert short(DIVE, None, most_m=1.5) == Shortfall(Lack.END_UNKNOWN, 1.2, 1.5)
    assert short(DIVE, None, most_m=1.4) == Shortfall(Lack.SHALLOW, 1.2, 1.5)
    assert short(word(FEET_FIRST), None, least_m=1.5) is None


def test_where_no_starts_are_allowed_only_what_begins_in_the_water_is_done() -> None:
    none = replace(END, starts=False)
    for own in (DIVE, word(BACKWARDS), word(FEET_FIRST)):
        assert short(own, none) == Shortfall(Lack.NO_STARTS)
    assert short(word(IN_THE_WATER), none, StartLimits(0.9, 0.5)) is None
    shallow = short(word(IN_THE_WATER), replace(none, depth_m=0.8), StartLimits(0.9, 0.5))
    assert shallow == Shortfall(Lack.SHALLOW, 0.8, 0.9)
    # who begins in the water, and is asked no depth, needs no depth at all; who jumps is looked at
    assert short(word(IN_THE_WATER), replace(none, depth_m=-1), StartLimits(0, 0)) is None
    assert short(word(FEET_FIRST), none, StartLimits(0, 0)) == Shortfall(Lack.NO_STARTS)


def test_platforms() -> None:
    assert short(DIVE, replace(END, platform_m=0.6)) == Shortfall(Lack.PLATFORM_HIGH, 0.6, 0.5)
    unknown = Shortfall(Lack.PLATFORM_UNKNOWN, asked=0.5)
    assert short(DIVE, replace(END, platform_m=None)) == unknown
    assert short(DIVE, None, least_m=1.5) == unknown
    # feet first, and backwards, whatever the platform is
    for how in (FEET_FIRST, BACKWARDS):
        assert short(word(how), replace(END, platform_m=9)) is None
    # unless it is the platform that one steps off
    step = word(FEET_FIRST, off=PLATFORM)
    assert short(step) is None
    assert short(step, replace(END, platform_m=0.6)) == Shortfall(Lack.PLATFORM_HIGH, 0.6, 0.5)


def test_off_the_edge_its_own_height_counts_where_it_is_known() -> None:
    high = replace(END, platform_m=0.8)
    assert short(word(off=EDGE), high) is None
    assert short(word(off=EDGE), replace(high, edge_m=None)) == Shortfall(
        Lack.PLATFORM_HIGH, 0.8, 0.5
    )
    assert [height_of(END, own) for own in (DIVE, word(off=EDGE))] == [0.5, 0.3]
    assert word(HEAD_FIRST, off=EDGE) == EDGE_DIVE


def test_a_ledge() -> None:
    ledge = word(BACKWARDS, off=LEDGE)
    assert short(ledge) == short(ledge, None, least_m=1.5) == Shortfall(Lack.NO_LEDGE)
    assert short(ledge, replace(END, ledge=True)) is None
    assert short(word(HEAD_FIRST, off=LEDGE)) is short(word(FEET_FIRST, off=LEDGE)) is None


def test_a_lane_that_is_otherwise() -> None:
    end = replace(END, lanes={"4": LaneAtEnd(depth_m=1.1)})
    assert short(DIVE, end) == Shortfall(Lack.SHALLOW, 1.1, 1.5)
    assert start_shortfall(pool(start=end), "start", 3, DIVE, LIMITS) is None


def test_what_lacks_are_about() -> None:
    assert frozenset() == OF_DEPTH & OF_PLATFORM
    assert {Lack.SHALLOW, Lack.END_UNKNOWN} < OF_DEPTH
    assert set(Lack) - OF_DEPTH - OF_PLATFORM == {Lack.NO_STARTS, Lack.NO_FLAGS}


# Which end a rep begins at.


@pytest.mark.parametrize(
    ("lengths", "of_start", "of_both"),
    [
        (Fraction(0), START, BOTH),
        (Fraction(1), TURN, BOTH),
        (Fraction(2), START, BOTH),
        (Fraction(5), TURN, BOTH),
        (Fraction(1, 2), BOTH, BOTH),
        (Fraction(4, 3), BOTH, BOTH),
    ],
)
def test_across(lengths: Fraction, of_start: frozenset[str], of_both: frozenset[str]) -> None:
    assert (across(START, lengths), across(BOTH, lengths)) == (of_start, of_both)
    if lengths.denominator == 1:
        assert across(across(START, lengths), lengths) == START


def begins(
    reps: Any, course: Course = SHORT, end: str = "start", **starts: Word
) -> list[frozenset[str]]:
    return [at for _, at in laps(reps, course, end, starts)]


def held(reps: Any, **item: Any) -> Any:
    """Reps whose item is otherwise."""
    return tuple(replace(own, item=replace(own.item, **item)) for own in reps)


def test_each_rep_begins_where_the_one_before_it_ended() -> None:
    assert begins(rep(distance=25, reps=3)) == [START, TURN, START]
    assert begins(rep(distance=50, reps=2), end="turn") == [TURN, TURN]
    assert begins(rep(distance=50, reps=3), LONG) == [START, TURN, START]
    assert begins(rep(distance=40, reps=2) + rep(distance=25)) == [START, BOTH, BOTH]


def test_those_of_a_team_begin_one_after_the_other() -> None:
    four = Manner(swimmers=4)
    assert begins(held(rep(distance=25, reps=2), manner=four)) == [BOTH, BOTH]
    # 50 each: all begin and end at one end
    assert begins(held(rep(distance=50), manner=four) + rep(distance=50)) == [START, START]
    two = held(rep(distance=25), manner=Manner(swimmers=2))
    assert begins(two + rep(distance=25)) == [BOTH, START]
    three = held(rep(distance=25), manner=Manner(swimmers=3))
    assert begins(three + rep(distance=25)) == [BOTH, TURN]


def test_after_a_start_for_which_one_gets_back_the_next_begins_there_too() -> None:
    dive = {"dive": word(ready_s=30)}
    own = held(rep(distance=25), start="dive")
    assert begins(own + rep(distance=25), **dive) == [START, START]
    assert begins(own + rep(distance=25), dive=word()) == [START, TURN]
    assert begins(own + rep(distance=25)) == [START, TURN]
    taught = tuple(
        replace(one, pieces=tuple(replace(p,
                                          drill=replace(p.drill,
                                              start="dive")) for p in one.pieces))
        for one in rep(distance=25)
    )  # fmt: skip
    assert begins(taught + rep(distance=25), **dive) == [START, START]


def test_after_a_rep_of_less_than_a_length_one_gets_back_to_where_it_began() -> None:
    assert begins(rep(distance=5) + rep(distance=25) + rep(distance=5) + rep(distance=25)) == [
        START, START, TURN, TURN,
    ]  # fmt: skip
    shared = held(rep(distance=15), manner=Manner(swimmers=2))
    assert begins(shared + rep(distance=25)) == [BOTH, BOTH]


PARTS = [
    {"distance": 25, "do": "kick", "effort": "easy"},
    {"distance": 50, "do": "crawl", "effort": "easy"},
    {"distance": 10, "do": "kick", "effort": "easy"},
    {"distance": 15, "do": "crawl", "effort": "easy"},
]


def by_time(reps: Any, hold_s: float | None = 20.0) -> Any:
    return tuple(
        replace(one, pieces=tuple(replace(own, hold_s=hold_s) for own in one.pieces))
        for one in reps
    )


def test_after_an_estimated_distance_one_may_be_at_either_end() -> None:
    assert begins(by_time(rep(distance=25)) + rep(distance=25)) == [START, BOTH]
    (one,) = events({"reps": 1, "parts": PARTS[:2]})
    partly: Any = replace(one, pieces=(*by_time((one,))[0].pieces[:1], *one.pieces[1:]))
    assert begins((partly, *rep(distance=25))) == [START, BOTH]


def placed(one: Any, at: frozenset[str] = START, course: Course = SHORT) -> list[Any]:
    return [(own.begins, own.reaches) for own in placed_pieces(one, at, course)]


def test_where_each_piece_begins_and_the_walls_that_it_comes_to() -> None:
    (one,) = events({"reps": 1, "parts": PARTS})
    assert placed(one) == [(START, TURN), (TURN, BOTH), (TURN, frozenset()), (BOTH, START)]
    assert placed(one, TURN) == [(TURN, START), (START, BOTH), (START, frozenset()), (BOTH, TURN)]
    (long,) = rep(distance=50)
    assert placed(long, START, LONG) == [(START, TURN)]
    assert placed(long, START, YARDS) == [(START, BOTH)]
    (timed,) = by_time((one,))
    assert placed(timed) == [(BOTH, BOTH)] * 4
    first = replace(one, pieces=(timed.pieces[0], *one.pieces[1:]))
    assert placed(first) == [(BOTH, BOTH)] * 4  # nobody knows where it ended
    last = replace(one, pieces=(*one.pieces[:1], *timed.pieces[:1]))
    assert placed(last) == [(START, TURN), (BOTH, BOTH)]
