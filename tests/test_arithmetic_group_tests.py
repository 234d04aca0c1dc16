"""What lane groups' timed tests tell together: critical speed over two or three distances, and gear
against none.

Two points give (d2 - d1) / (t2 - t1), three numpy's line (check-values.md, section 3).
"""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date, timedelta

import numpy
import pytest
from arithmetic_world import BENCHMARKS, LONG, SHORT, YARDS, catalogue, group, swum

from almanac.arithmetic.gear_drag import (
    MEASURED_SPEEDS,
    SPEEDS,
    Pull,
    drag_rows,
    pull_of,
    timed_comparisons,
)
from almanac.arithmetic.group_tests import paired_trials
from almanac.arithmetic.guard import above_zero, not_below_zero
from almanac.arithmetic.kick import distance_per_leg_cycle, kick_rate, strouhal
from almanac.arithmetic.race import critical_speed
from almanac.arithmetic.resistance import added_drag, parachute_k, swimmer_drag
from almanac.arithmetic.test_workings import (
    GearAtSpeed,
    critical_pace,
    critical_speed_of,
    drag_at_equal_power,
    drag_at_equal_thrust,
    least_own_drag,
    most_own_drag,
    pull_at,
    reserve,
)
from almanac.model.drag import Drag, DragReading
from almanac.report.working_text import formula, steps

PAIRED = {
    **BENCHMARKS,
    "kick-200": replace(
        BENCHMARKS["kick-200"],
        gives=("critical-speed",),
        pair_with=("kick-50", "kick-25", "crawl-100"),
    ),
}


def club_of(*groups):
    """The small club with these lane groups, `lane-1` and on, each given by its tests."""
    club = catalogue().club
    return replace(
        club, lane_groups={f"lane-{n}": group(tests) for n, tests in enumerate(groups, 1)}
    )


def speeds(*groups, benchmarks=PAIRED):
    found = paired_trials(club_of(*groups), benchmarks, benchmarks["kick-200"])
    lines = {tests.group: critical_speed(tests.trials) for tests in found}
    return {id: (critical.speed, critical.reserve_m) for id, critical in lines.items()}


THREE = {"kick-25": 22, "kick-50": 47, "kick-200": 210}


def test_each_group_with_all_the_tests_has_its_line():
    slower = {
        "kick-25": 30,
        "kick-50": 63,
        "kick-200": 270,
        "crawl-100": 90,
    }  # crawl is another activity
    found = speeds(THREE, {"kick-200": 210}, slower)
    assert list(found) == ["lane-1", "lane-3"]
    for id, tests in (("lane-1", THREE), ("lane-3", slower)):
        times = [tests[f"kick-{metres}"] for metres in (25, 50, 200)]
        assert found[id] == pytest.approx(tuple(numpy.polyfit(times, [25, 50, 200], 1)))


@pytest.mark.parametrize(
    "tests",
    [
        {"kick-25": 22, "kick-50": 21, "kick-200": 210},
        {"kick-25": 22, "kick-50": 220, "kick-200": 210},
        {"kick-25": 22, "kick-50": 22, "kick-200": 210},
        {"kick-25": 22, "kick-50": 210, "kick-200": 210},
    ],
)
def test_a_group_whose_longer_swims_were_not_the_slower_is_left_out(tests):
    assert list(speeds(tests, THREE)) == ["lane-2"]


def test_tests_in_yards_are_shorter():
    in_yards = [swum(id, time, YARDS) for id, time in THREE.items()]
    metric, yards = speeds(THREE, in_yards).values()
    assert yards == pytest.approx((0.9144 * metric[0], 0.9144 * metric[1]))


def test_the_newest_test_counts():
    old = [swum(id, 2 * time, on="2026-01-01") for id, time in THREE.items()]
    new = [swum(id, time, on="2026-09-01") for id, time in THREE.items()]
    assert len(set(speeds(THREE, [*old, *new], [*new, *old]).values())) == 1


def test_no_critical_speed_of_a_benchmark_that_does_not_give_it_or_of_one_distance():
    assert not speeds(
        THREE, benchmarks={**PAIRED, "kick-200": replace(PAIRED["kick-200"], gives=())}
    )
    alone = replace(PAIRED["kick-200"], pair_with=("crawl-100",))
    assert not speeds({**THREE, "crawl-100": 90}, benchmarks={**PAIRED, "kick-200": alone})


# Gear against none.

CHUTED = {
    **BENCHMARKS,
    "kick-50-in-chute": replace(BENCHMARKS["kick-25-in-chute"], id="kick-50-in-chute", distance=50),
    "back-25": replace(BENCHMARKS["back-100"], id="back-25", distance=25),
    "kick-25-in-fins": replace(
        BENCHMARKS["kick-25-in-chute"], id="kick-25-in-fins", gear=("fins",)
    ),
    "kick-25-in-both": replace(
        BENCHMARKS["kick-25-in-chute"], id="kick-25-in-both", gear=("chute", "socks")
    ),
}


def test_every_group_and_distance_that_was_swum_with_and_without():
    both = [
        swum("kick-25", 20),
        swum("kick-25-in-chute", 25),
        swum("kick-50", 42),
        swum("kick-50-in-chute", 63),
    ]
    others = [
        swum("back-25", 15), swum("kick-25-in-chute", 25), swum("kick-25-in-both", 30),
        swum("kick-25-in-fins", 16),
    ]  # fmt: skip
    found = list(timed_comparisons(club_of(both, others, both[:2]), CHUTED, "chute"))
    assert [(one.group, one.plain.id, one.resisted.id) for one in found] == [
        ("lane-1", "kick-25", "kick-25-in-chute"),
        ("lane-1", "kick-50", "kick-50-in-chute"),
        ("lane-3", "kick-25", "kick-25-in-chute"),
    ]
    assert [(one.plain_s, one.resisted_s) for one in found] == [(20, 25), (42, 63), (20, 25)]
    assert [one.added.at_equal_thrust for one in found] == pytest.approx([0.5625, 1.25, 0.5625])
    assert [one.added.at_equal_power for one in found] == pytest.approx([0.953125, 2.375, 0.953125])
    assert not list(timed_comparisons(club_of(both), CHUTED, "socks"))


@pytest.mark.parametrize("seconds", [19, 20])
def test_a_group_that_was_no_slower_with_gear_that_resists_tells_of_no_drag(seconds):
    club = club_of([swum("kick-25", 20), swum("kick-25-in-chute", seconds)])
    assert not list(timed_comparisons(club, CHUTED, "chute"))


@pytest.mark.parametrize(("course", "compared"), [(SHORT, True), (YARDS, False), (LONG, False)])
def test_only_times_in_one_course_compare(course, compared):
    tests = [swum("kick-25", 20), swum("kick-25-in-chute", 25, course)]
    assert bool(list(timed_comparisons(club_of(tests), CHUTED, "chute"))) is compared


TABLE = (DragReading(400, 15.4), DragReading(900, 37.2))  # Coloretti et al. 2025


@pytest.mark.parametrize(
    ("drag", "pull"),
    [
        (Drag(k=20.0), Pull(k=20.0)),
        (Drag(k=20.0, hanging_kg=8, ratio=0.5), Pull(k=20.0)),
        (Drag(table=TABLE, area_cm2=400, k=20.0), Pull(k=15.4)),  # what was measured comes first
        (Drag(table=TABLE, k=20.0), Pull(k=20.0)),
        (Drag(area_cm2=400, k=20.0), Pull(k=20.0)),
        (Drag(area_cm2=400), Pull()),
        (Drag(hanging_kg=1, ratio=1), Pull(constant_n=9.80665)),  # standard gravity
        (Drag(table=TABLE, area_cm2=399, k=20.0),
         Pull(outside="an area of 399 is outside what was measured, 400 to 900")),
        (None, Pull()),
    ],
)  # fmt: skip
def test_what_a_piece_of_gear_pulls_with(drag, pull):
    assert pull_of(replace(catalogue().gear["chute"], drag=drag)) == pull


def test_rows_of_drag_over_the_speeds_of_swimming():
    rows = drag_rows(Pull(k=20.0))
    assert [row.gear_n for row in rows] == pytest.approx([20 * speed**2 for speed in SPEEDS])
    assert [row.gear_n for row in drag_rows(Pull(constant_n=40.0))] == [40.0] * len(SPEEDS)
    assert SPEEDS == (0.6, 0.8, 1.0, 1.2, 1.4, 1.6, 1.8)
    assert MEASURED_SPEEDS == (
        0.9,
        1.4,
    )  # the two curves of Narita et al. 2017, where both were measured
    assert [row.speed for row in rows] == list(SPEEDS)
    assert [row.own for row in rows] == [swimmer_drag(speed) for speed in SPEEDS]
    assert [row.gear_n for row in drag_rows(Pull())] == [None] * len(SPEEDS)
    assert [row.measured for row in rows] == [False, False, True, True, True, False, False]


# The workings behind what tests tell.


def test_critical_speed_pace_and_reserve_as_explain_prints_them():
    (tests,) = paired_trials(club_of(THREE), PAIRED, PAIRED["kick-200"])
    slope, intercept = numpy.polyfit([22, 47, 210], [25, 50, 200], 1)
    assert critical_speed_of(tests).value == pytest.approx(slope)
    assert critical_pace(tests).value == pytest.approx(100 / slope)
    assert reserve(tests).value == pytest.approx(intercept)
    line = "slope of distance on time over 200 m in 3:30.0, 50 m in 0:47.0, 25 m in 0:22.0"
    speed = ("critical speed", line, "0.927 m/s")
    told = [
        [(step.what, step.how, step.value) for step in steps(of(tests), "it")]
        for of in (critical_pace, reserve)
    ]
    assert told == [
        [speed, ("it", "100 m ÷ 0.927 m/s critical speed", "107.871")],
        [
            speed,
            ("it", "91.667 m mean distance − 0.927 m/s critical speed × 1:33 mean time", "5.452"),
        ],
    ]


def test_added_drag_of_a_timed_comparison_as_explain_prints_it():
    tests = [swum("kick-25", 20), swum("kick-25-in-chute", 25)]
    (found,) = timed_comparisons(club_of(tests), CHUTED, "chute")
    for of, power, value in ((drag_at_equal_thrust, 2, 0.5625), (drag_at_equal_power, 3, 0.953125)):
        assert of(found).value == pytest.approx(value)
        assert formula(of(found)) == f"(25 s kick-25-in-chute ÷ 20 s kick-25) ^ {power} − 1"


@pytest.mark.parametrize(
    ("drag", "speed", "pull", "least", "most"),
    [  # Narita et al. 2017: 23.5 v² towed, 32.2 v^3.3 swum; the curves cross below 0.8 m/s
        (Drag(k=20.0), 1.2, "20 N s²/m² k × 1.2 m/s ^ 2", "23.5 N at 1 m/s, towed × 1.2 m/s ^ 2",
         "32.2 N at 1 m/s, swum × 1.2 m/s ^ 3.3"),
        (Drag(hanging_kg=8, ratio=0.5), 0.6, "8 kg × 9.80665 m/s² × 0.5 ratio",
         "32.2 N at 1 m/s, swum × 0.6 m/s ^ 3.3", "23.5 N at 1 m/s, towed × 0.6 m/s ^ 2"),
        (None, 1.2, None, "23.5 N at 1 m/s, towed × 1.2 m/s ^ 2",
         "32.2 N at 1 m/s, swum × 1.2 m/s ^ 3.3"),
    ],
)  # fmt: skip
def test_pull_and_own_drag_as_explain_prints_them(drag, speed, pull, least, most):
    gear = replace(catalogue().gear["chute"], drag=drag)
    at = GearAtSpeed(gear, pull_of(gear), speed)
    pulled = pull_at(at)
    assert (pulled and formula(pulled)) == pull
    assert (pulled and pulled.value) == (pull and pytest.approx(pull_of(gear).at(speed)))
    assert [formula(least_own_drag(at)), formula(most_own_drag(at))] == [least, most]
    band = swimmer_drag(speed)
    assert [least_own_drag(at).value, most_own_drag(at).value] == pytest.approx(
        [band.least, band.most]
    )


# What no measurement can be.


@pytest.mark.parametrize(
    ("refused", "why"),
    [
        (lambda: above_zero(own_k=0), "^own k must be above zero, not 0$"),
        (lambda: above_zero(time=1, lap=-2), "^lap must be above zero, not -2$"),
        (lambda: above_zero(lap=math.inf), "^lap must be above zero, not inf$"),
        (lambda: above_zero(lap=math.nan), "^lap must be above zero, not nan$"),
        (lambda: not_below_zero(added_k=-0.5), "^added k must not be below zero, not -0.5$"),
        (lambda: not_below_zero(speed=math.inf), "^speed must not be below zero, not inf$"),
        (lambda: not_below_zero(speed=math.nan), "^speed must not be below zero, not nan$"),
        (lambda: kick_rate(-1), "^arm cycles per minute must not"),
        (lambda: kick_rate(50, -2), "^beats per cycle must not"),
        (lambda: distance_per_leg_cycle(1, 0), "^leg cycles per second must be above"),
        (lambda: distance_per_leg_cycle(-1, 1), "^speed must not"),
        (lambda: strouhal(2, 0.4, 0), "^speed must be above"),
        (lambda: strouhal(-2, 0.4, 1), "^frequency hz must not"),
        (lambda: strouhal(2, -0.4, 1), "^peak to peak m must not"),
        (lambda: added_drag(0, 20), "^plain time must be above"),
        (lambda: added_drag(20, 0), "^resisted time must be above"),
        (lambda: swimmer_drag(-1), "^speed must not"),
        (lambda: parachute_k([], 400), "^an area of 400 is outside what was measured, 0 to 0$"),
    ],
)
def test_what_cannot_be_is_refused_by_name(refused, why):
    with pytest.raises(ValueError, match=why):
        refused()


@pytest.mark.parametrize("value", [1e-9, 0.5, 1, 1e9])
def test_what_can_be_passes(value):
    above_zero(value=value)
    not_below_zero(value=value)
    not_below_zero(value=0)


def test_standing_still_has_no_drag_and_no_stride():
    assert distance_per_leg_cycle(0, 1.6) == 0 and strouhal(0, 0.4, 1) == strouhal(2, 0, 1) == 0
    assert swimmer_drag(0).least == swimmer_drag(0).most == 0


def test_critical_speed_and_drag_are_of_the_tests_that_were_known_by_a_day():
    before = [swum("kick-25", 22), swum("kick-50", 47), swum("kick-200", 210)]
    after = [swum("kick-25", 20, on="2026-09-20"), swum("kick-25-in-chute", 25, on="2026-09-20")]
    club = club_of([*before, *after])
    day = date(2026, 9, 19)
    (early,) = paired_trials(club, PAIRED, PAIRED["kick-200"], day)
    (late,) = paired_trials(club, PAIRED, PAIRED["kick-200"], day + timedelta(days=1))
    assert (25, 22) in early.trials and (25, 20) in late.trials
    assert not list(timed_comparisons(club, CHUTED, "chute", day))
    assert len(list(timed_comparisons(club, CHUTED, "chute", day + timedelta(days=1)))) == 1


def test_where_the_newest_course_lacks_a_test_that_still_counts_an_older_course_has_the_line():
    # long course: 200 was swum in December, the others in September, and were due again before it
    short = [swum(id, time, on="2026-08-20") for id, time in THREE.items()]
    late = [swum("kick-25", 20, LONG), swum("kick-50", 44, LONG)]
    late += [swum("kick-200", 200, LONG, on="2026-12-20")]
    (found,) = paired_trials(club_of([*late, *short]), PAIRED, PAIRED["kick-200"])
    assert set(found.trials) == {(25, 22), (50, 47), (200, 210)}
    # of two courses that have them all, the one that was swum last counts
    sooner = [swum(id, time + 1, LONG, on="2026-08-19") for id, time in THREE.items()]
    for tests in ([*short, *sooner], [*sooner, *short]):
        (found,) = paired_trials(club_of(tests), PAIRED, PAIRED["kick-200"])
        assert (200, 210) in found.trials


@pytest.mark.parametrize(("days", "has_line"), [(28, True), (29, False)])
def test_a_test_that_was_due_again_makes_no_line_with_a_new_one(days, has_line):
    newer = (date(2026, 9, 1) + timedelta(days=days)).isoformat()  # all are repeated every 4 weeks
    tests = [swum("kick-25", 22), swum("kick-50", 47), swum("kick-200", 210, on=newer)]
    assert bool(list(paired_trials(club_of(tests), PAIRED, PAIRED["kick-200"]))) is has_line
