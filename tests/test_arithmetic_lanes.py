"""Lanes: send-offs that are too tight or too short, lanes that are crowded, gaps longer than a
send-off.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from arithmetic_strategies import TIMED, items
from arithmetic_world import (
    DRILLS,
    LONG,
    SCALE,
    SHORT,
    YARDS,
    catalogue,
    clock,
    events,
    group,
    policy,
    rep,
    swim_set,
)
from hypothesis import given
from hypothesis import strategies as st

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.expand import expand
from almanac.arithmetic.lanes import crowded, gap_for, heads_in_lane, is_on_back, too_tight
from almanac.checks.lanes import gap_over_sendoff, lane_crowded, sendoff_too_tight
from almanac.model.structure import structure_items

FORTY_FIVE = {
    "kick-50": 45 * 0.87,
    "crawl-100": 90 * 0.87,
}  # 45 s over 50 kick, 90 s over 100 crawl, at strong


def tight(of=None, **item):
    on = clock(of)
    return too_tight(on.run(rep(**item)), on)


def full(of, course=SHORT, most_in_lane=None, **item):
    return crowded(clock(of, course).run(rep(**item)), of, policy(), course, most_in_lane)


# Send-offs.


@pytest.mark.parametrize(
    ("sendoff", "is_tight", "too_short"),  # 45 s and a least rest of 5 s
    [
        (60, False, None),
        (50, False, None),
        (49.9, True, False),
        (45, True, False),
        (44, True, True),
        (0.01, True, True),
    ],
)
def test_too_tight_and_too_short(sendoff, is_tight, too_short):
    found = tight(group(FORTY_FIVE), sendoff=sendoff)
    assert bool(found) == is_tight
    for one in found:
        assert one.too_short == too_short and one.least_rest_s == pytest.approx(5)
        assert one.suggested_s == 60  # 45 + the wanted 15
        assert one.timed.rest_s is None if too_short else one.timed.rest_s >= 0


def test_the_tightest_rep_of_an_item_speaks_for_it():
    # Osprey on 1:00. From easy to steady: 65.56 + 3, 62.28 + 3.5 (half way), 59.00 + 4. From steady
    # to fast, at 4, 4.8 ... 8 of effort, 4 s at 4, 5 s at 6, a quarter of the work at 8, between
    # them in proportion: 59.00 + 4, 57.24 + 4.4, 55.49 + 4.8, 53.73 + 0.8 × 5 + 0.2 × 13.43,
    # 51.97 + 0.4 × 5 + 0.6 × 12.99 = 61.77, 50.21 + 12.55 = 62.77: the first lacks most.
    (found,) = tight(reps=3, effort={"descend": ["easy", "steady"]}, sendoff=60)
    assert found.timed.rep.number == 1 and found.least_rest_s == 3
    (found,) = tight(reps=6, effort={"descend": ["steady", "fast"]}, sendoff=60)
    assert found.timed.rep.number == 1 and found.least_rest_s == pytest.approx(4)
    (found,) = tight(reps=6, effort={"descend": ["steady", "fast"]}, sendoff=62)
    assert found.timed.rep.number == 1 and found.fits_s == 65
    (found,) = tight(reps=2, effort={"descend": ["strong", "all-out"]}, sendoff=90)
    assert found.timed.rep.number == 2 and found.least_rest_s == pytest.approx(47.2, abs=1e-4)
    assert (found.fits_s, found.suggested_s) == (95, 145)


def test_plain_rest_suggestions_and_unknown_targets_are_never_too_tight():
    assert (
        not tight(rest=1)
        and not tight()
        and not tight(sendoff={"heron-1": 1})
        and not tight(drill="board-kick", sendoff=1)
    )


@given(items(TIMED))
def test_too_tight_is_every_item_with_a_rep_short_of_its_least_rest(written):
    on = clock()
    found = on.run(expand(structure_items(written), DRILLS, SCALE))
    short: dict = {}
    for timed in found.reps:
        if timed.sendoff and not timed.suggested:
            needed = timed.target_s + on.rest_for(timed.rep, timed.target, "least").value
            lack = needed - timed.sendoff_s
            if lack > 1e-9:
                short[timed.rep.path] = max(lack, short.get(timed.rep.path, 0))
    assert {
        one.timed.rep.path: one.timed.target_s + one.least_rest_s - one.timed.sendoff_s
        for one in too_tight(found, on)
    } == pytest.approx(short)


# Lanes.


HEADS = [
    (12, 3, 10, 4),  # a set lowers the heads in a lane, and never raises them
    (12, 3, 4, 4),
    (12, 3, 1, 1),
    (14, 3, None, 5),
    (15, 3, None, 5),
    (16, 3, 4, 4),
    (1, 1, None, 1),
    (2, 6, None, 1),
    (40, 1, None, 40),
]


@pytest.mark.parametrize(("heads", "lanes", "most", "expected"), HEADS)
def test_heads_in_the_fullest_lane(heads, lanes, most, expected):
    assert heads_in_lane(group(heads=heads, lanes=lanes), most) == expected


@pytest.mark.parametrize(
    ("drill", "own_gap", "gap"),
    [("kick", 5, 10), ("kick", 12, 12), ("backstroke", 5, 10), ("float", 5, 10), ("crawl", 5, 5)],
)
def test_gap_is_wider_on_the_back(drill, own_gap, gap):
    (laid,) = rep(drill=drill)
    assert gap_for(laid, group(gap=own_gap), policy()) == gap
    assert is_on_back(laid) == (drill != "crawl")


def test_one_swimmer_alone_is_never_crowded():
    for gap in (5, 100):
        assert not full(group(FORTY_FIVE, heads=1, lanes=1, gap=gap), sendoff=60)


def test_forty_in_a_lane():
    (found,) = full(group(FORTY_FIVE, heads=40, lanes=1), reps=3, sendoff=60)
    assert (found.heads, found.gap_s, found.last_leaves_s, found.most_heads) == (40, 10, 390, 5)
    assert found.back_s == pytest.approx(45)  # 5 leave by 40 s; the sixth would leave at 50
    assert not full(group(FORTY_FIVE, heads=40, lanes=1), most_in_lane=5, reps=3, sendoff=60)
    assert full(group(FORTY_FIVE, heads=40, lanes=1), most_in_lane=6, reps=3, sendoff=60)


@pytest.mark.parametrize(
    ("sendoff", "is_crowded"), [(50, False), (45, False), (40, True), (35, True)]
)
def test_one_length_is_held_against_its_sendoff(sendoff, is_crowded):
    # Five on the back 10 s apart: the last leaves at 40 s. A 25 ends at the other wall, so the
    # leader comes back from there
    # when the send-off is over, although he was there after 20 s.
    found = full(group(FORTY_FIVE), distance=25, sendoff=sendoff)
    assert bool(found) == is_crowded
    for one in found:
        assert one.back_s == sendoff and one.timed.target_s < 25
    assert full(
        group(FORTY_FIVE), distance=50, effort="all-out", sendoff=sendoff
    )  # there and back in 39 s
    (found,) = full(
        group(FORTY_FIVE), distance=25, sendoff=10
    )  # on a send-off that nobody makes he is there after his time
    assert found.back_s == found.timed.target_s > 20


def test_one_length_of_a_long_pool():
    assert full(group(FORTY_FIVE), SHORT, distance=50, effort="all-out", sendoff=60)
    assert not full(group(FORTY_FIVE), LONG, distance=50, effort="all-out", sendoff=60)


def test_without_a_target_nothing_is_said_of_the_lane():
    assert not full(group({}, heads=40, lanes=1), reps=2)
    assert not full(group({}, heads=40, lanes=1), drill="board-kick", sendoff=60)
    upright = clock(group({})).run(
        events({"reps": 3, "time": 30, "do": "upright", "effort": "fast"})
    )
    assert not crowded(upright, group({}, heads=40, lanes=1), policy(), SHORT)


@given(
    items(TIMED),
    st.integers(1, 200),
    st.integers(1, 10),
    st.integers(1, 400),
    st.sampled_from([SHORT, LONG, YARDS]),
)
def test_the_most_heads_fit_and_one_more_does_not(written, heads, lanes, gap, course):
    of = group(heads=heads, lanes=lanes, gap=gap)
    run = clock(of, course).run(expand(structure_items(written), DRILLS, SCALE))
    for found in crowded(run, of, policy(), course):
        assert found.heads > found.most_heads >= 1
        paths = {c.timed.rep.path for c in crowded(run, of, policy(), course, found.most_heads)}
        assert found.timed.rep.path not in paths
        assert found.timed.rep.path in {
            c.timed.rep.path for c in crowded(run, of, policy(), course, found.most_heads + 1)
        }


# The findings, from checks, on bad input of the club.


def problems(rule, of, **item):
    """What a check says of a catalogue that holds one set."""
    one = swim_set({"reps": 4, "distance": 50, "do": "kick", "effort": "strong", **item})
    whole = catalogue(of)
    analysis = Analysis(
        replace(whole, entries={**whole.entries, ("set", one.id): one}), date(2026, 10, 1)
    )
    return [problem.message for problem in rule.check(analysis)]


@pytest.mark.parametrize(
    ("rule", "of", "item", "said"),
    [
        (sendoff_too_tight, group(FORTY_FIVE), {"sendoff": 40}, "is below the target"),
        (sendoff_too_tight, group(FORTY_FIVE), {"sendoff": 47}, "leaves 2 s"),
        (sendoff_too_tight, group(FORTY_FIVE, heads=1), {"sendoff": 60}, None),
        (lane_crowded, group(FORTY_FIVE, heads=40, lanes=1), {"sendoff": 60}, "with 40 in a lane"),
        (lane_crowded, group(FORTY_FIVE, heads=1, lanes=1), {"sendoff": 60}, None),
        (
            gap_over_sendoff,
            group(FORTY_FIVE, gap=90),
            {"sendoff": 60},
            "a gap of 90 s is not below the send-off",
        ),
        (gap_over_sendoff, group(FORTY_FIVE, heads=1, lanes=1, gap=90), {"sendoff": 60}, None),
        (lane_crowded, group({}, heads=40, lanes=1, gap=90), {"sendoff": 60}, None),
        (sendoff_too_tight, group({}), {"sendoff": 1}, None),
    ],
)
def test_bad_input_is_a_finding(rule, of, item, said):
    found = problems(rule, of, **item)
    assert len(found) == (said is not None) and all(said in message for message in found)


PARTLY = [  # parts of a rep, and whether a swimmer is on the back in some of it
    (["crawl", "kick"], True),
    (["kick", "crawl"], True),
    (["crawl", "board-kick", "backstroke"], True),
    (["crawl", "board-kick"], False),
]


@pytest.mark.parametrize(("drills", "on_back"), PARTLY)
def test_a_rep_that_is_partly_on_the_back_wants_the_wider_gap(drills, on_back):
    parts = [{"distance": 25, "do": drill, "effort": "easy"} for drill in drills]
    (laid,) = events({"reps": 1, "parts": parts})
    assert is_on_back(laid) is on_back
    assert gap_for(laid, group(gap=5), policy()) == (10 if on_back else 5)


def test_backstroke_is_on_the_back_however_its_drill_is_laid():
    on_side = replace(DRILLS["backstroke"], position="side")
    (laid,) = expand(structure_items([{"reps": 1, "distance": 25, "do": "backstroke", "effort": "easy"}]),
                     {**DRILLS, "backstroke": on_side}, SCALE)  # fmt: skip
    assert is_on_back(laid)


@pytest.mark.parametrize(("words", "fastest"), [(["easy", "all-out"], 4), (["all-out", "easy"], 1)])
def test_the_fastest_rep_of_an_item_speaks_for_its_lane(words, fastest):
    found = full(
        group(FORTY_FIVE, heads=40, lanes=1), reps=4, effort={"descend": words}, sendoff=60
    )
    assert [one.timed.rep.number for one in found] == [fastest]


def test_every_item_is_looked_at_whatever_stands_before_it():
    held = {"reps": 1, "time": 30, "do": "upright", "effort": "fast"}
    easy = {"reps": 1, "distance": 400, "do": "kick", "effort": "easy", "rest": 10}
    short = {"reps": 2, "distance": 50, "do": "kick", "effort": "strong", "sendoff": 44}
    unknown = {"reps": 1, "distance": 50, "do": "board-kick", "effort": "strong", "sendoff": 20}
    of = group({"kick-50": 45 * 0.87})
    on = clock(of)
    run = on.run(
        events(held, easy, unknown, short, {**short, "sendoff": 60}, {**short, "sendoff": 43})
    )
    assert [one.timed.rep.path for one in too_tight(run, on)] == [("items", 3), ("items", 5)]
    assert [
        one.timed.rep.path for one in crowded(run, group(heads=6, lanes=1), policy(), SHORT)
    ] == [
        ("items", 3),
        ("items", 4),
        ("items", 5),
    ]


def test_the_last_leaves_as_the_leader_is_back():
    # 45 s there and back: with 10 s between them the fifth leaves at 40 s, the sixth at 50 s; with 45 s the
    # second leaves as the leader is back, and that is crowded
    assert not full(group(FORTY_FIVE, heads=5, lanes=1), sendoff=60)
    assert full(group(FORTY_FIVE, heads=6, lanes=1), sendoff=60)
    (on_it,) = full(group({"kick-50": 40}, heads=5, lanes=1), effort="all-out", sendoff=60)
    assert (on_it.last_leaves_s, on_it.back_s, on_it.most_heads) == (40, 40, 4)


def test_a_single_swimmer_fits_even_where_the_gap_is_longer_than_the_swim():
    (found,) = full(group(FORTY_FIVE, heads=2, lanes=1, gap=100), sendoff=60)
    assert (found.last_leaves_s, found.most_heads) == (100, 1)


def test_a_length_without_a_sendoff_of_a_group_that_nobody_tested():
    on_sendoff = full(group({}, heads=40, lanes=1), distance=25, sendoff=20)
    assert [one.back_s for one in on_sendoff] == [20]


def test_of_reps_alike_the_first_speaks():
    even = {"reps": 3, "distance": 50, "do": "kick", "effort": "all-out", "sendoff": 40}
    of = group({"kick-50": 40}, heads=6, lanes=1)
    on = clock(of)
    run = on.run(events(even))
    assert [timed.rest_s for timed in run.reps] == [0, 0, 0]
    (tight_one,), (crowded_one,) = too_tight(run, on), crowded(run, of, policy(), SHORT)
    assert tight_one.timed.rep.number == crowded_one.timed.rep.number == 1
    assert not tight_one.too_short  # no rest at all, but time to touch


def test_a_suggestion_is_never_too_tight_even_where_the_policy_wants_less_than_its_least():
    rules = policy().rest
    upside_down = {
        word: replace(rule, least=rule.wanted, wanted=rule.least) for word, rule in rules.items()
    }
    on = clock(group(FORTY_FIVE))
    on = replace(on, policy=replace(on.policy, rest=upside_down))
    assert not too_tight(on.run(rep(sendoff={"heron-1": 60})), on)
    assert too_tight(on.run(rep(sendoff=50)), on)


def test_a_length_on_half_a_second():
    (found,) = full(group({}, heads=40, lanes=1), distance=25, sendoff=0.5)
    assert found.back_s == 0.5
