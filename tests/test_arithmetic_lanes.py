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
from almanac.arithmetic.lane_order import LaneOrder, gap_for, heads_in_lane, is_on_back
from almanac.arithmetic.lanes import Room, crowded, room_in_lane, too_tight
from almanac.arithmetic.working import Known
from almanac.checks.lanes import gap_over_sendoff, lane_crowded, sendoff_too_tight
from almanac.model.manner import Manner
from almanac.model.structure import structure_items
from almanac.report.working_text import formula

FORTY_FIVE = {
    "kick-50": 45 * 0.87,
    "crawl-100": 90 * 0.87,
}  # 45 s over 50 kick, 90 s over 100 crawl, at strong


def tight(of=None, **item):
    on = clock(of)
    return too_tight(on.run(rep(**item)), on)


def crowds(of, laid, course=SHORT, most_in_lane=None):
    on = replace(clock(of, course), most_in_lane=most_in_lane)
    return crowded(on.run(laid), of, course)


def full(of, course=SHORT, most_in_lane=None, **item):
    return crowds(of, rep(**item), course, most_in_lane)


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
    assert (found.order.heads, found.order.gap_s, found.takes_s, found.most_heads) == (
        40,
        10,
        390,
        5,
    )
    assert found.room is Room.BACK and found.limit_s == pytest.approx(45)
    # 5 leave by 40 s, the sixth would at 50; 40 swimmers in fives are 8 waves, in sevens 6
    assert found.waves == 8 and replace(found, most_heads=7).waves == 6
    assert not full(group(FORTY_FIVE, heads=40, lanes=1), most_in_lane=5, reps=3, sendoff=60)
    assert full(group(FORTY_FIVE, heads=40, lanes=1), most_in_lane=6, reps=3, sendoff=60)


ROOM = [  # worked by hand: 45 s over 50 at strong on one test; 10 s apart on the back
    # five on a 50: the fifth leaves at 40 s, the leader is back at 45 s
    ({"distance": 50, "sendoff": 60}, 5, None),
    ({"distance": 50, "sendoff": 60}, 6, (Room.BACK, 5)),
    # a 100 takes 45 × 2 ^ 1.08 = 95.13 s, two lengths of it 47.56 s: four gaps go into it
    ({"distance": 100, "sendoff": 120}, 4, None),
    ({"distance": 100, "sendoff": 120}, 5, (Room.TAIL, 4)),
    # so too a 75: 45 × 1.5 ^ 1.08 = 69.72 s, two lengths of it 46.48 s
    ({"distance": 75, "sendoff": 120}, 5, (Room.TAIL, 4)),
    # one length against the send-off alone
    ({"distance": 25, "sendoff": 50}, 5, None),
    ({"distance": 25, "sendoff": 49}, 5, (Room.AGAIN, 4)),
    # and so for every rep: 6 × 10 s = 60 s
    ({"distance": 100, "sendoff": 39}, 4, (Room.AGAIN, 3)),
    # of one rep after which nothing is known nobody leaves again
    ({"reps": 1, "distance": 25}, 40, None),
    ({"reps": 2, "distance": 25, "rest": 20}, 40, (Room.AGAIN, 4)),  # 21.29 + 20, up to 45 s
]


@pytest.mark.parametrize(("item", "heads", "expected"), ROOM)
def test_room_in_the_lane_by_hand(item, heads, expected):
    found = full(group(FORTY_FIVE, heads=heads, lanes=1), **{"reps": 4, **item})
    assert [(one.room, one.most_heads) for one in found] == ([expected] if expected else [])


def test_one_length_of_a_long_pool():
    assert full(group(FORTY_FIVE), SHORT, distance=50, effort="all-out", sendoff=60)
    assert not full(group(FORTY_FIVE), LONG, distance=50, effort="all-out", sendoff=60)


def test_the_lane_is_as_crowded_as_its_quickest_and_the_target_its_slowest():
    # 45 s; the quickest in 40.5 s is back as the fifth has left; in 39.6 s before
    plain = group(FORTY_FIVE, heads=5, lanes=1)
    assert not full(replace(plain, quickest=0.9), sendoff=60)
    assert full(replace(plain, quickest=0.88), sendoff=60)
    (timed,) = clock(replace(plain, slowest=1.1)).run(rep(sendoff=60)).reps
    assert timed.target_s == pytest.approx(49.5)
    assert not full(replace(plain, slowest=1.1, quickest=0.9), sendoff=60)
    assert full(replace(plain, slowest=1.1, quickest=0.88), sendoff=60)


def test_without_a_target_only_the_send_off_tells_of_the_lane():
    assert not full(group({}, heads=40, lanes=1), reps=2)
    (found,) = full(group({}, heads=40, lanes=1), drill="board-kick", sendoff=60)
    assert found.room is Room.AGAIN
    # two waves of three on 0:50: three leave within 30 s, and the next wave after 25
    own = {"drill": "board-kick", "waves": {"number": 2}, "sendoff": 50}
    (found,) = full(group({}, heads=6, lanes=1, gap=10), **own)
    assert (found.room, found.takes_s, found.limit_s, found.most_heads) == (Room.AGAIN, 30, 25, 2)
    upright = events({"reps": 3, "time": 30, "do": "upright", "effort": "fast"})
    assert not crowds(group({}, heads=40, lanes=1), upright)


@pytest.mark.parametrize(
    ("items", "most"),  # ten seconds apart on the back, 45 s a fifty: see ROOM
    [
        ([{"distance": 50, "sendoff": 60}], 5),
        ([{"distance": 100, "sendoff": 120}], 4),
        ([{"distance": 50, "sendoff": 60}, {"distance": 100, "sendoff": 120}], 4),  # of all reps
        ([{"distance": 100, "sendoff": 39}], 3),
        # two waves have 55 s each, 10 s after 45 s of swimming: two leave in each
        ([{"distance": 50, "sendoff": 110, "waves": {"number": 2}}], 4),
        ([{"distance": 25, "sendoff": 50}], 5),  # to the second
        # two waves have 30 s each, and none is home by then: one alone in each
        ([{"distance": 50, "sendoff": 60, "waves": {"number": 2}}], 2),
        ([{"reps": 1, "distance": 25}], None),  # nobody leaves again
        ([{"time": 30, "do": "upright", "sendoff": 60}], None),  # in place
        ([{"time": 30, "do": "upright"}, {"distance": 50, "sendoff": 60}], 5),
    ],
)
def test_how_many_a_lane_has_room_for_by_hand(items, most):
    of = group(FORTY_FIVE, heads=4, lanes=1)
    laid = events(*({"reps": 4, "do": "kick", "effort": "strong", **item} for item in items))
    assert room_in_lane(clock(of).run(laid), of, SHORT) == most


def test_a_pair_whose_turns_fit_the_send_off_has_its_rest():
    # 45 s each, one after the other: on 1:30 each rests the 45 s that the other swims
    of = clock(group(FORTY_FIVE, heads=2, lanes=1))
    told = {}
    for sendoff in (85, 90, 100):
        laid = rep(reps=2, sendoff=sendoff)
        pairs = tuple(replace(own, item=replace(own.item, manner=Manner(turns=2))) for own in laid)
        told[sendoff] = [
            (one.too_short, one.least_rest_s, one.fits_s) for one in too_tight(of.run(pairs), of)
        ]
    assert told == {85: [(True, pytest.approx(45), 90)], 90: [], 100: []}


def test_of_pairs_who_take_turns_both_are_counted():
    """Five leave ten seconds apart on the back while the first takes 45 s; five rest meanwhile."""
    of = group(FORTY_FIVE, heads=4, lanes=1)
    laid = events({"reps": 4, "distance": 50, "do": "kick", "effort": "strong", "sendoff": 120})
    pairs = tuple(replace(own, item=replace(own.item, manner=Manner(turns=2))) for own in laid)
    assert room_in_lane(clock(of).run(pairs), of, SHORT) == 2 * 5


def plain_most(timed, course, gap) -> int:
    """The most that fit, by putting one swimmer more into the lane until two meet."""
    lengths, interval = timed.rep.distance / course.length, timed.sendoff_s
    if interval is None and timed.rep.item.reps > 1:
        interval = timed.clock.value
    heads = 1
    while heads < 250:
        starts = [gap * number for number in range(heads + 1)]
        leader_round = timed.target_s * 2 / max(2, lengths)
        if lengths > 2 and leader_round - starts[-1] < gap - 1e-6:
            break
        if 1 < lengths <= 2 and starts[-1] > leader_round + 1e-6:
            break
        if interval is not None and interval - starts[-1] < gap - 1e-6:
            break
        heads += 1
    return heads


@given(items(TIMED), st.integers(1, 200), st.integers(1, 10), st.integers(1, 400),
       st.sampled_from([SHORT, LONG, YARDS]))  # fmt: skip
def test_the_most_heads_are_those_of_a_lane_that_is_filled_one_by_one(
    written, heads, lanes, gap, course
):
    of = group(heads=heads, lanes=lanes, gap=gap)
    laid = expand(structure_items(written), DRILLS, SCALE)
    run = clock(of, course).run(laid)
    fit: dict = {}
    for timed in run.reps:
        if timed.rep.distance:
            most = plain_most(timed, course, gap_for(timed.rep, of, policy()))
            fit[timed.rep.path] = min(most, fit.get(timed.rep.path, 999))
    in_lane = heads_in_lane(of)
    expected = {path: most for path, most in fit.items() if in_lane > most and in_lane > 1}
    assert {one.timed.rep.path: one.most_heads for one in crowded(run, of, course)} == expected


# Waves, and the last touch.


def waved(waves, heads=4, **item):
    of = group(FORTY_FIVE, heads=heads, lanes=1)
    on = clock(of)
    return on.run(rep(**{"reps": 4, "waves": waves, **item})), of


@pytest.mark.parametrize(
    ("waves", "heads", "number", "at_once"),
    [
        ({"swimmers": 2}, 4, 2, 2),  # two in, two out
        ({"swimmers": 2}, 5, 3, 2),
        ({"swimmers": 1}, 3, 3, 1),
        ({"swimmers": 9}, 4, 1, 4),
        ({"number": 2}, 5, 2, 3),
        ({"number": 4}, 3, 3, 1),
    ],
)
def test_waves_of_a_lane(waves, heads, number, at_once):
    run, _ = waved(waves, heads, sendoff=240)
    assert {(timed.order.waves, timed.order.at_once) for timed in run.reps} == {(number, at_once)}


def test_two_in_two_out_by_hand():
    # 45 s each, 10 s apart: a wave is home after 55 s, both after 110 s
    two = {"swimmers": 2}
    run, of = waved(two)  # straight on: the rest is the others' swim
    assert [timed.clock.value for timed in run.reps] == [110] * 4
    assert run.reps[0].rest_s == pytest.approx(65)
    run, of = waved(two, rest=30)  # 45 + 30 s is less than the turn of the others
    assert run.clock.value == 440
    run, of = waved(two, rest=70)
    assert run.clock.value == 4 * 115
    run, of = waved(two, sendoff={"heron-1": 90})  # suggested
    assert run.reps[0].sendoff_s == 110 and not crowded(run, of, SHORT)
    run, of = waved(two, sendoff=110)
    assert not crowded(run, of, SHORT)
    run, of = waved(two, sendoff=108)  # 54 s a wave
    (found,) = crowded(run, of, SHORT)
    assert (found.room, found.takes_s, found.limit_s) == (Room.WAVE, 55, 54)
    assert found.most_heads == 1


def test_the_last_touch_is_the_last_of_the_lane():
    # 4 × 50 on 1:00: the leader goes last at 3:00, the fifth 40 s later and swims 45 s
    of = group(FORTY_FIVE, heads=5, lanes=1)
    run = clock(of).run(rep(reps=4, sendoff=60))
    assert run.clock.value == 240 and run.last_touch.value == pytest.approx(180 + 40 + 45)
    # a pause after the last rep does not move it; gear before it does (30 s)
    fifty = {"distance": 50, "do": "kick", "effort": "strong", "sendoff": 60}
    laid = events({"reps": 1, **fifty}, {"reps": 1, "gear": ["socks"], **fifty}, {"pause": 30})
    socks = clock(of).run(laid)
    assert socks.last_touch.value == pytest.approx(60 + 30 + 40 + 45 * 1.08)
    # two waves of two on 2:00: the second leaves a minute after the first, its second 10 s later
    run, _ = waved({"swimmers": 2}, sendoff=120)
    assert run.last_touch.value == pytest.approx(360 + 60 + 10 + 45)
    assert clock(of).run(()).last_touch is None
    assert clock(of).run(rep(sendoff=40)).last_touch is None


def test_a_suggested_sendoff_has_room_for_the_lane():
    # 25 on the back at strong takes 21.29 s and wants 7.5 s; five leave in 50 s
    of = group(FORTY_FIVE, heads=5, lanes=1)
    run = clock(of).run(rep(reps=4, distance=25, sendoff={"heron-1": 90}))
    assert run.reps[0].sendoff_s == 50 and not crowded(run, of, SHORT)


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
        (
            lane_crowded,
            group({}, heads=40, lanes=1, gap=90),
            {"sendoff": 60},
            "the leader leaves again",
        ),
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
    (laid,) = expand(structure_items([{"reps": 1, "distance": 25, "do": "backstroke",
                                       "effort": "easy"}]),
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
    of = group({"kick-50": 45 * 0.87}, heads=6, lanes=1)
    on = clock(of)
    laid = events(held, easy, unknown, short, {**short, "sendoff": 60}, {**short, "sendoff": 43})
    run = on.run(laid)
    assert [one.timed.rep.path[1] for one in too_tight(run, on)] == [3, 5]
    assert [one.timed.rep.path[1] for one in crowded(run, of, SHORT)] == [2, 3, 4, 5]


def test_a_rep_without_a_time_hides_no_tight_one_of_its_item():
    turns = {"rotate": ["float", "kick"]}
    (tight_one,) = tight(group(FORTY_FIVE), drill=turns, reps=2, sendoff=47)
    assert (tight_one.timed.rep.number, tight_one.least_rest_s) == (2, 5)


def test_how_a_lane_goes_as_it_is_printed():
    done = Known(45, "swum", "s")
    row, waves = LaneOrder(4, 10, 1, 4), LaneOrder(4, 10, 2, 2)
    assert formula(row.least_interval(done)) == "4 in a lane × 10 s gap"
    told = "2 waves × (45 s swum + 1 behind the leader × 10 s gap)"
    assert formula(waves.least_interval(done)) == told
    (held,) = events({"reps": 1, "time": 30, "do": "upright", "effort": "fast"})
    assert gap_for(held, group(), policy()) == 0  # in place, nobody leaves


def test_of_reps_alike_the_first_speaks():
    even = {"reps": 3, "distance": 50, "do": "kick", "effort": "all-out", "sendoff": 40}
    of = group({"kick-50": 40}, heads=6, lanes=1)
    on = clock(of)
    run = on.run(events(even))
    assert [timed.rest_s for timed in run.reps] == [0, 0, 0]
    (tight_one,), (crowded_one,) = too_tight(run, on), crowded(run, of, SHORT)
    assert tight_one.timed.rep.number == crowded_one.timed.rep.number == 1
    assert not tight_one.too_short  # no rest at all, but time to touch


def test_a_suggestion_is_never_too_tight_even_where_the_policy_wants_less_than_its_least():
    rules = policy().rest
    upside_down = {
        word: replace(rule, least=rule.wanted, wanted=rule.least) for word, rule in rules.items()
    }
    on = clock(group(FORTY_FIVE, heads=1))
    on = replace(on, policy=replace(on.policy, rest=upside_down))
    run = on.run(rep(sendoff={"heron-1": 60}))
    assert not too_tight(run, on) and run.reps[0].sendoff_s == 60  # 45 + the least, 15
    # what a suggestion leaves out as it is rounded, a thousandth of a step, is no lack of rest
    of = group({"kick-50": 45.002 * 0.87}, heads=1, lanes=1)
    rounded = replace(clock(of), policy=on.policy).run(rep(sendoff={"heron-1": 60}))
    assert not too_tight(rounded, on) and rounded.reps[0].sendoff_s == 60
    assert too_tight(on.run(rep(sendoff=50)), on)
