"""What resists: parachutes, pulleys, cords, a swimmer's own drag, and what a timed comparison
tells.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy
import pytest
from arithmetic_world import BENCHMARKS, PIECES, YARDS, catalogue, group, swum
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.gear_drag import SPEEDS, drag_rows, pull_of, timed_comparisons
from almanac.arithmetic.resistance import (
    STANDARD_GRAVITY,
    OutsideMeasured,
    added_drag,
    cord_force,
    parachute_k,
    pulley_force,
    swimmer_drag,
)  # fmt: skip
from almanac.model.club import CordReading
from almanac.model.drag import Drag, DragReading

# Coloretti et al. 2025, J Strength Cond Res 39:e701-5 (abstract): area in cm², k = F / v² in N
# s²/m²; and the coefficient
# that follows at 27 °C (computed for check-values.md, section 10).
CHUTES = [(400, 15.4, 0.7727), (529, 19.7, 0.7474), (900, 37.2, 0.8296), (1600, 73.9, 0.9270)]
TABLE = [DragReading(area, k) for area, k, _ in CHUTES]
# The stretch cord of the example club: its own readings.
CORD = [CordReading(*reading) for reading in [(0, 0), (2, 18), (4, 31), (6, 42), (8, 54)]]


@pytest.mark.parametrize(("area", "k", "coefficient"), CHUTES)
def test_parachutes_as_measured(area, k, coefficient):
    assert parachute_k(TABLE, area) == k
    water = 996.5158  # kg/m³ at 27 °C, IAPWS-95: k = ½ ρ Cd A
    assert 0.5 * water * coefficient * area / 1e4 == pytest.approx(k, rel=1e-4)


@pytest.mark.parametrize(
    ("area", "k"), [(464.5, 17.55), (714.5, 28.45), (1250, 55.55)]
)  # half-way between two rows
def test_parachutes_between_rows(area, k):
    assert parachute_k(TABLE, area) == pytest.approx(k)
    assert parachute_k(TABLE[::-1], area) == pytest.approx(k)


@given(st.floats(400, 1600))
def test_interpolation_is_numpy_s(area):
    areas, factors, _ = zip(*CHUTES, strict=True)
    assert parachute_k(TABLE, area) == pytest.approx(numpy.interp(area, areas, factors))


@pytest.mark.parametrize("area", [399.9, 1600.1, 0, -400, 1e9, math.nan, math.inf])
def test_no_parachute_outside_the_table(area):
    with pytest.raises(OutsideMeasured) as refused:
        parachute_k(TABLE, area)
    assert (refused.value.low, refused.value.high) == (400, 1600)
    assert str(refused.value) == (f"an area of {area:g} is outside what was measured, 400 to 1600")


@pytest.mark.parametrize("rows", [[], [DragReading(400, 15.4)]])
def test_short_tables(rows):
    for area in (300, 500):
        with pytest.raises(OutsideMeasured):
            parachute_k(rows, area)
    assert not rows or parachute_k(rows, 400) == 15.4


@pytest.mark.parametrize(("stretch", "force"), [(0, 0), (1, 9), (2, 18), (3, 24.5), (8, 54)])
def test_cord_between_its_readings(stretch, force):
    assert cord_force(CORD, stretch) == pytest.approx(force)


@pytest.mark.parametrize("stretch", [8.01, 20, -0.1, math.nan])
def test_no_force_beyond_the_calibrated_stretch(stretch):
    with pytest.raises(
        OutsideMeasured, match=r"^a stretch of .* is outside what was measured, 0 to 8$"
    ):
        cord_force(CORD, stretch)


def test_two_readings_at_one_stretch_are_no_crash():
    twice = [CordReading(2, 18), CordReading(2, 20), CordReading(4, 31)]
    assert cord_force(twice, 2) in (18, 20) and math.isfinite(cord_force(twice, 3))
    assert cord_force([CordReading(2, 18), CordReading(2, 18)], 2) == 18


# Narita et al. 2017, J Biomech 54:123-8: 23.5 v^2.0 passive, 32.2 v^3.3 active
def test_a_swimmer_s_own_drag():
    band = swimmer_drag(1.2)
    assert (band.least, band.most) == pytest.approx((33.84, 58.77), abs=0.005)


@given(st.floats(0, 3))
def test_the_band_runs_from_its_least_to_its_most(speed):
    band = swimmer_drag(speed)
    assert 0 <= band.least <= band.most
    assert {band.least, band.most} == {23.5 * speed**2.0, 32.2 * speed**3.3}


COMPARED = [(20, 20, 0, 0), (20, 25, 0.953125, 0.5625), (20, 40, 7, 3), (20, 10, -0.875, -0.75)]


@pytest.mark.parametrize(("plain", "resisted", "power", "thrust"), COMPARED)
def test_added_drag_from_two_times(plain, resisted, power, thrust):  # (T'/T)³ - 1 and (T'/T)² - 1
    found = added_drag(plain, resisted)
    assert (found.at_equal_power, found.at_equal_thrust) == pytest.approx((power, thrust))


@pytest.mark.parametrize(
    ("mass", "ratio", "force"), [(10, 1, 98.0665), (10, 0.5, 49.03325), (0, 1, 0)]
)  # m g, g = 9.80665
def test_pulley(mass, ratio, force):
    assert pulley_force(mass, ratio) == pytest.approx(force, rel=1e-12)
    assert pulley_force(mass, ratio) == mass * STANDARD_GRAVITY * ratio


@pytest.mark.parametrize(
    "broken",
    [
        lambda: swimmer_drag(-1), lambda: swimmer_drag(math.nan), lambda: added_drag(0, 20),
        lambda: added_drag(20, 0),
        lambda: added_drag(-1, 20), lambda: added_drag(20, math.inf),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused(broken):
    with pytest.raises(ValueError):
        broken()


# From the entries of gear and of the club.


@pytest.mark.parametrize(
    ("drag", "at_one"),
    [
        (None, None), (Drag(calibrate=True), None), (Drag(k=20.0), 20),
        (Drag(table=tuple(TABLE), area_cm2=400), 15.4),
        (Drag(table=tuple(TABLE), area_cm2=2000), None), (Drag(table=tuple(TABLE)), None),
        (Drag(hanging_kg=8, ratio=0.5), 39.2266), (Drag(hanging_kg=8), None),
        (Drag(ratio=0.5), None),
    ],
)  # fmt: skip
def test_pull_of_a_piece_of_gear(drag, at_one):
    pull = pull_of(replace(PIECES["chute"], drag=drag))
    assert pull.at(1.0) == (None if at_one is None else pytest.approx(at_one))
    assert bool(pull.outside) == (drag is not None and drag.area_cm2 == 2000)
    rows = drag_rows(pull)
    assert [row.speed for row in rows] == list(SPEEDS)
    assert [row.measured for row in rows] == [0.9 <= speed <= 1.4 for speed in SPEEDS]
    assert all(
        (row.gear_n is None) == (at_one is None) and row.own.least <= row.own.most for row in rows
    )


@pytest.mark.parametrize(
    ("plain", "resisted", "compared"),
    [
        (swum("kick-25", 20), swum("kick-25-in-chute", 25), True),
        (swum("kick-25", 20), None, False),
        (swum("kick-25", 20), swum("kick-25-in-chute", 25, YARDS), False),
        (
            swum("kick-25", 20),
            swum("kick-25-in-chute", 20),
            False,
        ),  # no slower in the parachute: one of the times is wrong
        (swum("kick-25", 20), swum("kick-25-in-chute", 18), False),
        (swum("kick-50", 40), swum("kick-25-in-chute", 25), False),
    ],
)
def test_timed_comparisons_of_the_club(plain, resisted, compared):
    club = catalogue(group([test for test in (plain, resisted) if test])).club
    found = list(timed_comparisons(club, BENCHMARKS, "chute"))
    assert len(found) == compared
    for one in found:
        assert one.added.at_equal_power == pytest.approx(
            1.25**3 - 1
        ) and one.added.at_equal_thrust == pytest.approx(1.25**2 - 1)
