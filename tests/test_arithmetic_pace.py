"""Targets of a lane group at an effort, and where there is no number."""

from __future__ import annotations

import math

import numpy
import pytest
from arithmetic_world import (
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
    rep,
    retimed,
    swum,
    target,
)  # fmt: skip
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from almanac.arithmetic.expand import expand
from almanac.arithmetic.pace import Target
from almanac.arithmetic.pace_lines import Because, NoNumber
from almanac.arithmetic.working import BuildTime, Known
from almanac.model.structure import structure_items
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
