"""Splits, fade and points, against published races and the rule on points."""

from __future__ import annotations

import math
from fractions import Fraction

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.race import fade, laps, points

# Peirsol, 200 m backstroke, Rome 2009 (news report read for check-values.md, section 8; 28.40 and
# 28.62 are printed there).
PEIRSOL = [26.52, 54.90, 83.30, 111.92]


def test_peirsol_s_laps_and_fade():
    swum_laps = laps(PEIRSOL)
    assert swum_laps == pytest.approx([26.52, 28.38, 28.40, 28.62])
    found = fade(swum_laps)
    assert found.second_half == pytest.approx(0.038616, abs=1e-6)  # 2.12 s on 54.90
    assert found.last_lap == pytest.approx(
        28.62 / 28.39 - 1
    )  # against the mean of laps 2 and 3; lap 1 holds the start
    assert swum_laps[3] / swum_laps[1] - 1 == pytest.approx(0.00846, abs=1e-5)
    assert swum_laps[3] / swum_laps[0] - 1 == pytest.approx(0.079186, abs=1e-6)
    assert 200 / PEIRSOL[-1] == pytest.approx(1.786991, abs=1e-6)


@pytest.mark.parametrize(
    ("splits", "last"),  # the same report; Lochte's last lap of 29.27 is printed
    [([26.85, 55.67, 85.05, 114.32], 29.27), ([26.82, 55.18, 84.06, 113.08], 29.02)],
)
def test_last_laps(splits, last):
    assert laps(splits)[-1] == pytest.approx(last)


@pytest.mark.parametrize(
    ("halves", "drop"),  # 100 m backstroke, a swimming news site: 52.38, 52.26 and 51.94
    [((25.28, 27.10), 0.07199), ((25.32, 26.94), 0.06398), ((25.35, 26.59), 0.04892)],
)
def test_second_half_of_a_hundred(halves, drop):
    quarters = [halves[0] / 2] * 2 + [halves[1] / 2] * 2
    assert fade(quarters).second_half == pytest.approx(drop, abs=1e-5)


@given(st.lists(st.floats(10, 100), min_size=3, max_size=40))
def test_laps_undo_splits_and_fade_has_no_unit(times):
    assert laps(list(numpy.cumsum(times))) == pytest.approx(times)
    found, twice = fade(times), fade([2 * time for time in times])
    assert twice.last_lap == pytest.approx(found.last_lap)
    assert (found.second_half is None) == (len(times) % 2 == 1)
    assert found.last_lap == pytest.approx(times[-1] / numpy.mean(times[1:-1]) - 1)


@pytest.mark.parametrize(
    "times", [[], [30], [30, 31], [30, 0, 31], [30, -1, 31], [30, math.nan, 31], [math.inf, 30, 31]]
)
def test_no_fade(times):
    with pytest.raises(ValueError, match="three laps or more" if len(times) < 3 else "lap must be"):
        fade(times)


def test_a_lap_may_be_shorter_than_a_second():
    assert laps([0.5, 1.25]) == [0.5, 0.75]


@pytest.mark.parametrize("splits", [[30, 29], [30, 30], [0, 30], [-1, 30], [30, math.nan, 60]])
def test_splits_rise(splits):
    with pytest.raises(ValueError, match="splits must rise"):
        laps(splits)


# Points: cut and not rounded (2010 tables on).


@pytest.mark.parametrize(
    ("base", "time", "scored"),
    [
        ("46.91", "46.91", 1000), ("46.91", "52.81", 700), ("46.91", "52.80", 701),
        ("46.91", "52.83", 700),
        ("46.91", "52.84", 699), (46.91, 52.81, 700), ("40.00", "50.00", 512),
        ("46.92", "93.84", 125),
        ("60.00", "57.00", 1166), (50, "49.99", 1000),
    ],
)  # fmt: skip
def test_points(
    base, time, scored
):  # the rule on fina.org; 52.81 for 700 points: USMS forum thread 27251, quoting the PDF
    assert points(base, time) == scored


@given(st.integers(100, 100_000))
def test_whole_points_are_never_missed_by_a_rounding(hundredths):
    base = hundredths * 4 / 100
    for times, scored in ((1, 1000), (1.25, 512), (2, 125)):
        assert points(base, base * times if times == 2 else round(base * times, 2)) == scored


@given(st.integers(1000, 100_000), st.integers(1000, 100_000))
def test_points_are_the_exact_floor(base, time):
    scored = points(f"{base / 100:.2f}", f"{time / 100:.2f}")
    assert scored <= 1000 * Fraction(base, time) ** 3 < scored + 1


NO_POINTS = [
    (0, 50),
    (50, 0),
    (-1, 50),
    ("abc", 50),
    ("1:50.2", 50),
    ("nan", 50),
    (50, math.inf),
    ("", 5),
]


@pytest.mark.parametrize(("base", "time"), NO_POINTS)
def test_no_points(base, time):
    with pytest.raises(ValueError):
        points(base, time)
