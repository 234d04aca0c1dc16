"""Targets of a lane group at an effort, and where there is no number."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date

import numpy
import pytest
from arithmetic_world import (
    BENCHMARKS,
    DRILLS,
    EFFORTS,
    LONG,
    OSPREY,
    PIECES,
    SCALE,
    SHORT,
    YARDS,
    best,
    clock,
    events,
    group,
    paces,
    policy,
    rep,
    retimed,
    swum,
    target,
)  # fmt: skip
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.expand import expand
from almanac.arithmetic.pace import Pacer, Target
from almanac.arithmetic.pace_lines import Because, NoNumber, Paces
from almanac.arithmetic.working import BuildTime, Known, Labelled
from almanac.model.structure import structure_items
from almanac.report.working_text import formula, steps
from almanac.units import COURSES


@pytest.mark.parametrize(("word", "share"), [(word, row[2]) for word, row in EFFORTS.items()])
@pytest.mark.parametrize("distance", [25, 50, 100, 400])
def test_target_at_each_effort(word, share, distance):
    assert target(distance=distance, effort=word).seconds == pytest.approx(
        best(distance) / share, rel=1e-9
    )


def test_factors_of_drill_and_gear():
    assert target(drill="slow-kick").seconds == pytest.approx(1.2 * best(50) / 0.87)
    assert target(drill="socks-kick").seconds == pytest.approx(1.08 * best(50) / 0.87)
    assert target(drill="slow-kick", gear=["fins", "chute"]).seconds == pytest.approx(
        1.2 * 0.8 * 1.25 * best(50) / 0.87
    )
    in_chute = group({"kick-25-in-chute": 30})
    assert target(in_chute, drill="chute-kick", distance=25).seconds == pytest.approx(
        30 / 0.87
    )  # the test had it on
    assert target(
        in_chute, drill="chute-kick", distance=25, gear=["socks"]
    ).seconds == pytest.approx(1.08 * 30 / 0.87)


def test_parts_hold_the_pace_of_the_whole_rep():
    parts = [
        {"distance": 25, "do": "kick", "effort": "strong"},
        {"distance": 50, "do": "backstroke", "effort": "easy"},
    ]
    (laid,) = events({"reps": 1, "parts": parts})
    expected = best(75) / 3 / 0.87 + best(75, "back") * 2 / 3 / 0.72
    assert clock().rep(laid).target.seconds == pytest.approx(expected)


@given(st.integers(2, 12), st.permutations(list(EFFORTS)))
def test_descend_is_evenly_spaced_by_time(count, words):
    laid = rep(reps=count, effort={"descend": words[:2]})
    times = [clock().rep(one).target.seconds for one in laid]
    ends = [best(50) / EFFORTS[word][2] for word in words[:2]]
    assert times == pytest.approx(list(numpy.linspace(*ends, count)), rel=1e-9)


@given(st.floats(1, 3000), st.floats(1, 3000))
def test_build_is_the_integral_of_distance_over_rising_speed(slow, fast):
    start, rise = 1 / slow, 1 / fast - 1 / slow  # speeds over a piece of length 1
    from scipy.integrate import quad

    expected, _ = quad(lambda x: 1 / (start + rise * x), 0, 1, epsrel=1e-10, limit=200)
    assert BuildTime(Known(slow), Known(fast)).value == pytest.approx(expected, rel=1e-7)


@given(st.floats(1, 3000), st.floats(-14, -5))
def test_build_of_near_equal_speeds_meets_the_even_time(time, digits):
    near = time * (1 + 10**digits)
    assert BuildTime(Known(time), Known(near)).value == pytest.approx((time + near) / 2, rel=1e-9)
    assert BuildTime(Known(time), Known(time)).value == time


def test_build_within_a_rep():
    slow, fast = best(50) / 0.80, best(50) / 0.94
    expected = slow * fast * math.log(slow / fast) / (slow - fast)
    assert target(effort={"build": ["steady", "fast"]}).seconds == pytest.approx(expected)


def test_held_takes_the_time_that_it_is_held():
    (laid,) = events({"reps": 1, "time": "0:20", "do": "upright", "effort": "fast"})
    assert clock().rep(laid).target == Target(
        Known(20.0, "held", "s"), estimated=False, other_course=False
    )


# No number, and other courses.


@pytest.mark.parametrize(
    ("drill", "tests", "expected"),
    [
        ("board-kick", OSPREY, NoNumber(Because.NOT_TESTED, "board-kick", "board-100")),
        ("kick", {}, NoNumber(Because.NOT_TESTED, "kick", "kick-200")),
        ("chute-kick", OSPREY, NoNumber(Because.NOT_TESTED, "chute-kick", "kick-25-in-chute")),
        ("float", OSPREY, NoNumber(Because.NO_PACE_RULE, "float")),
        (
            "kick",
            {**OSPREY, "kick-50": 60, "kick-200": 50},
            NoNumber(Because.TESTS_DISAGREE, "kick", "kick-200"),
        ),
    ],
)
def test_no_number_says_why_and_which_benchmark_would_give_it(drill, tests, expected):
    assert target(group(tests), drill=drill) == expected
    parts = [
        {"distance": 25, "do": "backstroke", "effort": "easy"},
        {"distance": 25, "do": drill, "effort": "easy"},
    ]
    whole = clock(group(tests)).rep(events({"reps": 1, "parts": parts})[0]).target
    assert isinstance(whole, NoNumber) and (whole == expected or not tests)


@pytest.mark.parametrize("swum_in", COURSES.values(), ids=str)
@pytest.mark.parametrize("swims_in", COURSES.values(), ids=str)
def test_tests_in_another_course_are_scaled_by_length_alone_and_marked(swum_in, swims_in):
    found = target(group([swum("kick-50", 50, swum_in)]), swims_in, effort="all-out")
    assert found.other_course == (swum_in != swims_in)
    metres = {SHORT: 50, LONG: 50, YARDS: 45.72}  # 50 yd = 45.72 m exactly
    assert found.seconds == pytest.approx(50 * (metres[swims_in] / metres[swum_in]) ** 1.08)


def test_tests_in_another_course_mark_the_line_and_the_rep():
    of = group(
        [swum("kick-50", 50, YARDS), swum("kick-200", 220, YARDS), swum("back-100", 70, SHORT)]
    )
    assert target(of).other_course and not target(of, drill="backstroke").other_course
    parts = [{"distance": 25, "do": drill, "effort": "easy"} for drill in ("backstroke", "kick")]
    whole = clock(of).rep(events({"reps": 1, "parts": parts})[0]).target
    assert whole.other_course and whole.estimated  # one part is enough for either
    steady = [{"distance": 25, "do": "backstroke", "effort": "easy"}] * 2
    assert not clock(of).rep(events({"reps": 1, "parts": steady})[0]).target.other_course


@given(st.sampled_from([0.5, 1, 2.5]), st.sampled_from(list(EFFORTS)))
def test_factor_scales_the_target(factor, word):
    drills = {**DRILLS, "kick": retimed("kick", "kick-200", factor)}
    (laid,) = expand(
        structure_items([{"reps": 1, "distance": 50, "do": "kick", "effort": word}]), drills, SCALE
    )
    assert clock().rep(laid).target.seconds == pytest.approx(factor * best(50) / EFFORTS[word][2])
    assert set(PIECES) >= laid.gear


# Reference distances, levels, the slowest speed, and the group's own comparisons of gear.

REFERENCES = {"easy": 400, "steady": 200, "strong": 100, "fast": 50, "all-out": None}
REFERRED = EffortScale(
    {
        name: replace(word, reference_m=REFERENCES[name],
                      by_level={"building": word.share_of_best / 2 + 0.5})
        for name, word in SCALE.words.items()
    }
)  # fmt: skip


def referred(level="", course=SHORT, of=None, slowest=0.0, **item):
    lines = paces(of, slowest_afloat=slowest)
    pacer = Pacer(lines, PIECES, REFERRED, course, level)
    (laid,) = expand(
        structure_items([{"reps": 1, "distance": 50, "do": "kick", **item}]), DRILLS, REFERRED
    )
    return pacer.whole(laid, pacer.pieces(laid))


@pytest.mark.parametrize("distance", [25, 50, 100, 200, 400, 800])
@pytest.mark.parametrize("word", EFFORTS)
def test_an_effort_is_a_share_of_the_best_speed_over_its_reference(distance, word):
    over = max(distance, REFERENCES[word] or 0)
    expected = best(over) * distance / over / EFFORTS[word][2]
    assert referred(distance=distance, effort=word).seconds == pytest.approx(expected, rel=1e-9)


def test_an_easy_25_is_as_fast_as_an_easy_400_and_says_so():
    short, long = (referred(distance=d, effort="easy") for d in (25, 400))
    assert short.seconds * 16 == pytest.approx(long.seconds)
    told = [step.how for step in steps(short.working, "target", "s")]
    assert told[-1].endswith("best time over 400 m × 25 m ÷ 400 m ÷ 0.72 easy")


@given(st.sampled_from([25, 50, 75, 100, 200, 400, 1500]), st.sampled_from(list(COURSES.values())))
def test_a_harder_effort_is_faster_over_every_distance(distance, course):
    for level in ("", "building"):
        times = [referred(level, course, distance=distance, effort=w).seconds for w in EFFORTS]
        assert times == sorted(times, reverse=True) and len(set(times)) == len(times)


def test_a_level_has_its_own_share():
    plain, own = (referred(level, effort="easy").seconds for level in ("", "building"))
    assert own == pytest.approx(plain * 0.72 / 0.86)


def test_below_the_slowest_speed_there_is_no_target():
    of = group({"kick-50": 100})  # 0.5 m/s at best
    assert referred(of=of, slowest=0.5, effort="all-out").seconds == 100
    too_slow = NoNumber(Because.TOO_SLOW, "kick", "kick-200")
    assert referred(of=of, slowest=0.501, effort="all-out") == too_slow
    assert referred(of=of, slowest=0.5, effort="fast") == too_slow
    slow_drill = referred(of=of, slowest=0.5, effort="all-out", do="slow-kick")
    assert slow_drill.seconds == 120  # what a drill asks for is no lack of speed


def test_the_group_s_own_comparison_comes_before_the_factor():
    of = group({"kick-25": 20, "kick-25-in-chute": 27, "kick-50": 42})
    timed = target(of, gear=["chute"], effort="all-out")
    assert timed.seconds == pytest.approx(42 * 27 / 20)
    told = steps(timed.working, "target", "s")[-1].how
    assert told == "42 s best time × 27 s kick-25-in-chute ÷ 20 s kick-25"


@pytest.mark.parametrize(
    ("gear", "worn_s", "ratio"),  # 20 s without it
    [
        ("socks", 22, 1.1),
        ("socks", 20, 1.08),  # what resists and was no slower tells nothing: the house factor
        ("socks", 19, 1.08),
        ("fins", 18, 0.9),
        ("fins", 20, 0.8),  # nor does what assists and was no faster
        ("fins", 21, 0.8),
        ("board", 18, 0.9),  # what does neither may do both
        ("board", 22, 1.1),
    ],
)
def test_a_comparison_that_cannot_be_tells_nothing(gear, worn_s, ratio):
    worn = replace(BENCHMARKS["kick-25-in-chute"], id="worn", gear=(gear,))
    of = group([swum("kick-25", 20), swum("worn", worn_s)])
    pacer = Pacer(Paces(of, {**BENCHMARKS, "worn": worn}, policy()), PIECES, SCALE, SHORT)
    plain, own = (pacer.pieces(rep(effort="all-out", gear=on)[0])[0].seconds for on in ([], [gear]))
    assert own / plain == pytest.approx(ratio)


def test_a_rep_is_as_doubtful_as_any_piece_of_it():
    pacer = Pacer(paces(), PIECES, SCALE, SHORT)
    half = {"distance": 25, "do": "kick", "effort": "easy"}
    (laid,) = events({"reps": 1, "parts": [half, half]})
    plain, odd = Target(Known(20, "", "s"), False, False), Target(Known(20, "", "s"), *[True] * 4)
    for pieces, doubts in (((plain, plain), False), ((plain, odd), True), ((odd, odd), True)):
        whole = pacer.whole(laid, pieces)
        told = whole.estimated, whole.other_course, whole.stale, whole.assumed
        assert (whole.seconds, told) == (40, (doubts,) * 4)


def test_what_makes_no_odds_is_not_printed():
    timed = target(distance=50, effort="all-out")
    assert isinstance(timed.working, Labelled)  # the test itself, times nothing
    slow = target(replace(group(), slowest=1.1), distance=50, effort="all-out")
    assert formula(slow.working) == "47.2 s best time × 1.1 the slowest of the group"


def test_a_reference_in_a_pool_of_yards_is_metres():
    # 13 yd are 11.8872 m (1 yd = 0.9144 m) of the 400 m at which easy is swum
    easy = referred(course=YARDS, distance=13, effort="easy")
    assert easy.seconds == pytest.approx(best(400) * 11.8872 / 400 / 0.72, rel=1e-9)


@pytest.mark.parametrize(
    "tests",
    [
        [swum("kick-50", 42), swum("kick-25-in-chute", 27)],  # another distance
        [swum("kick-50", 42), swum("kick-25", 20), swum("kick-25-in-chute", 19)],  # no slower
        [swum("kick-50", 42), swum("kick-25", 20), swum("kick-25-in-chute", 27, LONG)],
        [swum("back-100", 70), swum("kick-50", 42)],
    ],
)
def test_without_a_comparison_the_house_factor_holds(tests):
    timed = target(group(tests), gear=["chute"], effort="all-out")
    assert timed.seconds == pytest.approx(42 * 1.25)


def test_gear_is_compared_with_the_same_swim_without_it():
    crawl = replace(BENCHMARKS["crawl-100"], id="crawl-25", distance=25, gear=("chute",))
    of = group([swum("kick-25", 20), swum("crawl-25", 18)])
    lines = Paces(of, {**BENCHMARKS, "crawl-25": crawl}, policy())
    assert lines.timed_with("kick-25", "chute", SHORT) == []


def test_an_old_comparison_does_not_count():
    tests = [swum("kick-25", 20, on="2026-09-20"), swum("kick-25-in-chute", 27, on="2026-06-01")]
    for day, pairs in ((date(2026, 6, 2), 0), (date(2026, 9, 21), 0), (None, 1)):
        assert len(paces(group(tests), day).timed_with("kick-25", "chute", SHORT)) == pairs


@pytest.mark.parametrize(
    ("course", "distance", "ratio"),
    [(SHORT, 25, 27 / 20), (SHORT, 50, 27 / 20), (SHORT, 150, 300 / 200), (SHORT, 400, 300 / 200),
     (LONG, 50, 27 / 20), (YARDS, 100, 27 / 20)],
)  # fmt: skip
def test_of_several_comparisons_the_nearest_in_length_counts(course, distance, ratio):
    benchmarks = {
        **BENCHMARKS,
        "kick-200-in-chute": replace(BENCHMARKS["kick-25-in-chute"], id="kick-200-in-chute",
                                     distance=200),
    }  # fmt: skip
    times = {"kick-25": 20, "kick-25-in-chute": 27, "kick-200": 200, "kick-200-in-chute": 300}
    of = group([swum(id, time, course) for id, time in times.items()])
    pacer = Pacer(Paces(of, benchmarks, policy()), PIECES, SCALE, course)
    plain, worn = (
        pacer.pieces(rep(distance=distance, effort="all-out", gear=gear)[0])[0].seconds
        for gear in ([], ["chute"])
    )
    assert worn / plain == pytest.approx(ratio)
