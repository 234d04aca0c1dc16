"""What reps ask of the pool that they are done in, worked by hand: depth, platform, flags, by end
and by lane.

The pool has six lanes, 1.2 m at the starting end (1.0 m in lane 6), 2.0 m at the other, and flags
at neither; a dive wants 1.5 m and a platform of 0.5 m at most, what is under water 1.1 m.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arithmetic_world import DRILLS, SHORT, policy, rep

from almanac.arithmetic.pool_fit import (
    Misplaced,
    PoolPlace,
    PoolRules,
    StartHere,
    misplaced,
    starts_here,
)
from almanac.arithmetic.start_limits import BACKWARDS, FEET_FIRST, IN_THE_WATER, Lack, Shortfall
from almanac.model.entry import DepthNeeded
from almanac.model.manner import Manner
from almanac.model.policy import LevelLimits, Limit, Word
from almanac.model.pool import Depth, LaneAtEnd, Pool, PoolEnd

ENDS = {
    "start": PoolEnd(1.2, platform_m=0.5, lanes={"6": LaneAtEnd(depth_m=1.0)}),
    "turn": PoolEnd(2.0, platform_m=0.7),
}
POOL = Pool("Pool", SHORT, 6, Depth(1.0, 2.0), False, ends=ENDS)
FLAGGED = replace(POOL, flags=True)


def metres(value: float) -> Limit:
    return Limit(value, "m", "", "")


POLICY = replace(
    policy(
        feet_first_depth_least=1.1,
        teaching_depth_least=1.8,
        under_water_depth_least=1.1,
        push_off_most=5,
        back_without_flags_most=5,
    ),
    levels={"level": LevelLimits({"start_depth_least": metres(1.5), "platform_most": metres(0.5)})},
)
STARTS = {
    "dive": Word("", ""),
    "jump": Word("", "", enters=FEET_FIRST, depth_m=DepthNeeded(most=1.8)),
    "back": Word("", "", enters=BACKWARDS),
    "push": Word("", "", enters=IN_THE_WATER),
}
PARTNERS = {"tow": Word("", "", depth_m=DepthNeeded(least=1.1)), "beside": Word("", "")}
RULES = PoolRules(POLICY, "level", STARTS, PARTNERS)


def found(
    reps: Any,
    lanes: tuple[int, ...] = (1, 6),
    end: str = "start",
    pool: Pool = FLAGGED,
    **more: Any,
) -> list[tuple[Any, ...]]:
    """What is amiss, each as (what, is a start, end, lanes, lack, both ends)."""
    told = misplaced(reps, PoolPlace(pool, lanes, end, **more), RULES)
    assert all(own.path == ("items", 0) for own in told)
    return [
        (own.what, own.is_start, own.end, own.lanes, own.shortfall, own.both_ends) for own in told
    ]


def item(reps: Any, **more: Any) -> Any:
    """Reps whose item is otherwise."""
    return tuple(replace(own, item=replace(own.item, **more)) for own in reps)


def drill(reps: Any, **more: Any) -> Any:
    """Reps whose drills are otherwise."""
    return tuple(
        replace(own, pieces=tuple(replace(p, drill=replace(p.drill, **more)) for p in own.pieces))
        for own in reps
    )


def shallow(has: float, asked: float) -> Shortfall:
    return Shortfall(Lack.SHALLOW, has, asked)


def deep(has: float, asked: float) -> Shortfall:
    return Shortfall(Lack.DEEP, has, asked)


FIFTY, LAP = rep("crawl", 50, "easy"), rep("crawl", 25, "easy", reps=2)
NO_FLAGS = Shortfall(Lack.NO_FLAGS)


def test_ordinary_work_asks_nothing() -> None:
    assert found(FIFTY) == found(LAP) == found(FIFTY, pool=POOL) == []


# Starts.


def test_starts_of_items_and_of_drills_with_the_ends_that_they_are_done_at() -> None:
    place = PoolPlace(POOL, (1,), "turn")
    own = item(LAP, start="dive"), drill(FIFTY, start="jump"), item(FIFTY, start="none")
    told = [list(starts_here(reps, place, STARTS)) for reps in own]
    path = ("items", 0)
    assert told == [
        [
            StartHere(path, "dive", False, frozenset({"turn"})),
            StartHere(path, "dive", False, frozenset({"start"})),
        ],
        [StartHere(path, "jump", True, frozenset({"turn"}))],
        [],
    ]


def test_a_dive_where_it_is_too_shallow_lane_by_lane() -> None:
    dive = item(FIFTY, start="dive")
    one = ("dive", True, "start", (1,), shallow(1.2, 1.5), False)
    assert found(dive) == [one, ("dive", True, "start", (6,), shallow(1.0, 1.5), False)]
    assert found(dive, (1, 2)) == [("dive", True, "start", (1, 2), shallow(1.2, 1.5), False)]
    assert found(dive + dive, (1,)) == [one]  # once each
    high = Shortfall(Lack.PLATFORM_HIGH, 0.7, 0.5)
    assert found(dive, (1,), "turn") == [("dive", True, "turn", (1,), high, False)]


def test_a_start_at_both_ends_says_so() -> None:
    relay = item(LAP[:1], start="dive", manner=Manner(swimmers=2))
    high = Shortfall(Lack.PLATFORM_HIGH, 0.7, 0.5)
    assert found(relay, (1,)) == [
        ("dive", True, "start", (1,), shallow(1.2, 1.5), True),
        ("dive", True, "turn", (1,), high, True),
    ]


def test_a_start_that_a_drill_teaches_is_held_to_the_depth_of_teaching() -> None:
    level = replace(FLAGGED, ends={"start": PoolEnd(1.7, platform_m=0.5)})
    assert found(item(FIFTY, start="dive"), pool=level) == []
    taught = drill(FIFTY, start="dive")
    assert found(taught, pool=level) == [("dive", True, "start", (1, 6), shallow(1.7, 1.8), False)]


def test_where_nobody_says_in_which_lanes_a_start_may_be_too_shallow() -> None:
    unsaid = Shortfall(Lack.LANES_UNSAID)
    jump, push = item(FIFTY, start="jump"), item(FIFTY, start="push")
    assert found(jump, (1,), lanes_said=False) == [("jump", True, "start", (1,), unsaid, False)]
    assert found(push, (1,), lanes_said=False) == found(jump, (1,)) == []
    # what is known to be amiss comes first
    assert found(jump, (6,), lanes_said=False)[0][4] == shallow(1.0, 1.1)


def test_where_nobody_says_in_which_lanes_a_drill_may_have_no_depth_that_it_needs() -> None:
    unsaid = [("crawl", False, "start", (1,), Shortfall(Lack.LANES_UNSAID), False)]
    for need in (DepthNeeded(least=1.0), DepthNeeded(most=1.3)):
        assert found(drill(FIFTY, depth_m=need), (1,), lanes_said=False) == unsaid
    assert found(drill(FIFTY, mode="underwater"), (1,), lanes_said=False) == unsaid
    assert found(FIFTY, (1,), lanes_said=False) == []


def test_water_that_is_too_deep_for_a_start() -> None:
    jump = item(FIFTY, start="jump")
    assert found(jump, (1,), "turn") == [("jump", False, "turn", (1,), deep(2.0, 1.8), False)]


def test_a_start_backwards_wants_flags_at_the_other_end() -> None:
    at_turn = replace(POOL, ends={**ENDS, "turn": replace(ENDS["turn"], flags=True)})
    back = item(FIFTY, start="back")
    bare = ("back", True, "start", (1, 2), NO_FLAGS, False)
    assert found(back, (1, 2), "turn", at_turn) == [bare]
    assert found(back, (1, 2), "turn", FLAGGED) == []
    assert found(back, (1,), "start", at_turn)[1:] == []  # the other end has them
    assert found(item(FIFTY, start="push"), (1, 2), "turn", at_turn) == []


# Depth of what is done.


def test_a_partner_is_asked_depth_at_the_end_where_they_begin() -> None:
    # who tows stands: whichever end has the depth will do
    assert found(item(FIFTY, partner="tow"), pool=replace(FLAGGED, depth_m=Depth(1.0, 1.0))) == []
    low = replace(FLAGGED, ends={}, depth_m=Depth(0.8, 1.0))
    assert found(item(FIFTY, partner="tow"), pool=low) == [
        ("tow", False, "start", (1, 6), shallow(1.0, 1.1), False)
    ]
    assert found(item(FIFTY, partner="beside"), pool=low) == []
    assert found(item(FIFTY, partner=""), pool=low) == []


def test_a_drill_that_travels_is_asked_depth_where_it_begins() -> None:
    own = drill(LAP, depth_m=DepthNeeded(least=1.1, most=1.9))
    assert found(own) == [
        ("crawl", False, "start", (6,), shallow(1.0, 1.1), False),
        ("crawl", False, "turn", (1, 6), deep(2.0, 1.9), False),
    ]
    exact = drill(LAP, depth_m=DepthNeeded(least=1.2, most=2.0))
    assert found(exact, (1,)) == []
    both = item(drill(LAP[:1], depth_m=DepthNeeded(least=1.5)), manner=Manner(swimmers=2))
    assert found(both, (1,)) == [("crawl", False, "start", (1,), shallow(1.2, 1.5), True)]


@pytest.mark.parametrize(
    ("needed", "lack"),
    [
        (DepthNeeded(least=1.1), shallow(1.0, 1.1)),
        (DepthNeeded(least=1.0), None),
        (DepthNeeded(most=1.9), deep(2.0, 1.9)),
        (DepthNeeded(most=2.0), None),
    ],
)
def test_of_an_end_that_is_not_known_the_whole_pool_counts(needed: Any, lack: Any) -> None:
    unknown = replace(FLAGGED, ends={"turn": PoolEnd(1.5)})
    told = [("crawl", False, "start", (1,), lack, False)] if lack else []
    assert found(drill(FIFTY, depth_m=needed), (1,), pool=unknown) == told


@pytest.mark.parametrize(
    ("needed", "ends", "lack"),
    [
        # both ends are known: the deeper, and the shallower, will do
        (DepthNeeded(least=2.0), ENDS, None),
        (DepthNeeded(least=2.1), ENDS, shallow(2.0, 2.1)),
        (DepthNeeded(most=1.2), ENDS, None),
        (DepthNeeded(most=1.1), ENDS, deep(1.2, 1.1)),
        # one is not: somewhere there is as much, and as little, as in the pool
        (DepthNeeded(least=2.0), {"turn": PoolEnd(1.5)}, None),
        (DepthNeeded(least=2.1), {"turn": PoolEnd(1.5)}, shallow(2.0, 2.1)),
        (DepthNeeded(most=1.0), {"turn": PoolEnd(1.5)}, None),
        (DepthNeeded(most=0.9), {"turn": PoolEnd(1.5)}, deep(1.0, 0.9)),
    ],
)
def test_what_stays_in_place_is_done_where_there_is_the_depth(
    needed: Any, ends: Any, lack: Any
) -> None:
    held = rep("crawl", 25, "easy")
    own = drill(held, dose=DRILLS["upright"].dose, depth_m=needed)
    assert not own[0].pieces[0].drill.travels
    told = [("crawl", False, "start", (1,), lack, False)] if lack else []
    assert found(own, (1,), pool=replace(FLAGGED, ends=ends)) == told


def test_what_stays_in_place_is_told_at_the_end_that_they_leave_from() -> None:
    held = drill(rep("crawl", 25, "easy"), dose=DRILLS["upright"].dose)
    deep_ = drill(held, depth_m=DepthNeeded(least=3))
    # a length before it, and it begins at the other end
    told = [("crawl", False, "start", (1,), shallow(2.0, 3), False)]
    assert found((*LAP[:1], *deep_), (1,)) == told


def test_what_is_under_water_is_asked_the_policys_depth_and_its_own_where_that_is_more() -> None:
    own = drill(FIFTY, mode="underwater")
    assert found(own) == [("crawl", False, "start", (6,), shallow(1.0, 1.1), False)]
    assert found(drill(FIFTY, mode="kick", under_water=7)) == found(own)  # long walls are too
    assert found(drill(FIFTY, mode="kick", under_water=5)) == []
    more = drill(own, depth_m=DepthNeeded(least=1.15))
    assert found(more) == [("crawl", False, "start", (6,), shallow(1.0, 1.15), False)]
    less = drill(own, depth_m=DepthNeeded(least=0.5))
    assert found(less) == found(own)
    lets = replace(POLICY, limits={**POLICY.limits, "under_water_depth_least": metres(0.5)})
    low = PoolPlace(replace(FLAGGED, ends={"start": PoolEnd(0.8)}), (1,), "start")
    assert misplaced(own, low, replace(RULES, policy=lets)) == ()


def test_what_is_on_land_asks_nothing_of_the_water() -> None:
    own = drill(FIFTY, position="on-land", depth_m=DepthNeeded(least=3))
    assert found(own, pool=POOL) == []


# Flags: all out is 9.5, easy 1.5; the policy lets 5 be done on the back without them.


def test_fast_work_on_the_back_wants_flags_at_each_wall_that_it_comes_to() -> None:
    lap, fifty = rep("kick", 25, "all-out"), rep("kick", 50, "all-out")
    assert found(lap, pool=POOL) == [("kick", False, "turn", (1, 6), NO_FLAGS, False)]
    assert found(fifty, pool=POOL) == [
        ("kick", False, "start", (1, 6), NO_FLAGS, False),
        ("kick", False, "turn", (1, 6), NO_FLAGS, False),
    ]
    at_turn = replace(POOL, ends={**ENDS, "turn": replace(ENDS["turn"], flags=True)})
    assert found(lap, pool=at_turn) == found(fifty, pool=FLAGGED) == []
    assert found(rep("crawl", 50, "all-out"), pool=POOL) == []
    assert found(rep("kick", 50, "easy"), pool=POOL) == []


def test_the_hardest_of_a_piece_counts_and_as_much_as_the_policy_lets_is_let() -> None:
    for words in (["easy", "all-out"], ["all-out", "easy"]):
        assert len(found(rep("kick", 50, {"build": words}), pool=POOL)) == 2
    lets = replace(POLICY, limits={**POLICY.limits, "back_without_flags_most": metres(9.5)})
    place = PoolPlace(POOL, (1,), "start")
    rules = replace(RULES, policy=lets)
    assert misplaced(rep("kick", 50, "all-out"), place, rules) == ()


def test_backstroke_counts_unless_it_is_on_the_front() -> None:
    stroke = rep("backstroke", 50, "all-out")
    # whatever is on the back counts, of whichever stroke
    assert len(found(drill(rep("kick", 50, "all-out"), stroke="any"), pool=POOL)) == 2
    assert len(found(stroke, pool=POOL)) == 2
    assert len(found(drill(stroke, position="upright"), pool=POOL)) == 2
    assert found(drill(stroke, stroke="freestyle", position="upright"), pool=POOL) == []
    assert found(drill(stroke, position="prone"), pool=POOL) == []


def test_what_is_found_is_a_value() -> None:
    (own,) = misplaced(rep("kick", 25, "all-out"), PoolPlace(POOL, (1,), "start"), RULES)
    assert own == Misplaced(("items", 0), "kick", False, "turn", (1,), NO_FLAGS)
