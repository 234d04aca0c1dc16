"""Lengths and forces against pint; times as they are written and shown."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.resistance import STANDARD_GRAVITY, pulley_force
from almanac.units import (
    COURSES,
    METRES_PER_YARD,
    Course,
    TimeError,
    Unit,
    parse_time,
    show_distance,
    show_number,
    show_share,
    show_time,
)  # fmt: skip


@cache
def pint_units() -> Any:
    """A registry of pint's: it takes half a second to make, so not while tests are collected."""
    import pint

    return pint.UnitRegistry()


YARD = Unit.YARD.metres


# International yard and pound agreement, 1959: 1 yd = 0.9144 m exactly; reproduced with pint.
@pytest.mark.parametrize(
    ("yards", "metres"),
    [
        (25, 22.86),
        (100, 91.44),
        (500, 457.2),
        (1000, 914.4),
        (1650, 1508.76),
        (5, 4.572),
        (1760, 1609.344),
    ],
)
def test_yards_in_metres(yards, metres):
    assert yards * YARD == pytest.approx(metres, abs=1e-9)
    assert yards * YARD == pytest.approx(
        pint_units().Quantity(yards, "yard").to("metre").magnitude, rel=1e-15
    )


@pytest.mark.parametrize(
    ("metres", "yards"), [(25, 27.340332458), (50, 54.680664917), (15, 16.404199475)]
)
def test_metres_in_yards(metres, yards):
    assert metres / YARD == pytest.approx(yards, abs=1e-9)
    assert metres / YARD == pytest.approx(
        pint_units().Quantity(metres, "metre").to("yard").magnitude, rel=1e-15
    )


def test_a_mile_a_foot_and_not_the_survey_foot():
    assert (
        pytest.approx(pint_units().Quantity(1, "mile").to("metre").magnitude, rel=1e-15)
        == 1760 * YARD
    )
    assert (
        YARD / 3
        == pytest.approx(pint_units().Quantity(1, "foot").to("metre").magnitude, rel=1e-15)
        == pytest.approx(0.3048)
    )
    survey = pint_units().Quantity(1, "survey_foot").to("metre").magnitude
    assert survey == pytest.approx(0.304800609601, abs=1e-12)
    assert abs(YARD / 3 - survey) > 6e-7
    assert METRES_PER_YARD == 0.9144


def test_a_kilogram_of_force_and_a_pound():
    assert (
        pint_units().Quantity(1, "kilogram_force").to("newton").magnitude
        == pytest.approx(STANDARD_GRAVITY, rel=1e-15)
        == 9.80665
    )
    pound_kg = pint_units().Quantity(1, "pound").to("kilogram").magnitude
    assert pulley_force(pound_kg, 1) == pytest.approx(4.4482216152605, abs=1e-12)
    assert pulley_force(pound_kg, 1) == pytest.approx(
        pint_units().Quantity(1, "pound_force").to("newton").magnitude, rel=1e-14
    )


@pytest.mark.parametrize(
    ("name", "metres", "unit"),
    [("25yd", 22.86, "yards"), ("25m", 25, "metres"), ("50m", 50, "metres")],
)
def test_courses(name, metres, unit):
    course = Course.parse(name)
    assert str(course) == name and COURSES[name] == course
    assert course.metres == pytest.approx(metres, abs=1e-12) and course.unit.plural == unit


@pytest.mark.parametrize("name", ["25", "25 m", "33m", "50yd", "", "25M"])
def test_no_other_course(name):
    with pytest.raises(KeyError):
        Course.parse(name)


@pytest.mark.parametrize(
    ("written", "seconds"),
    [
        ("1:15", 75), ("0:50", 50), ("0:27.8", 27.8), ("12:30", 750), ("1:02:30", 3750),
        ("0:00.01", 0.01), (75, 75), (0.5, 0.5),
        ("59:59", 3599), ("10:00:00", 36000), ("23:59:59", 86399), (86399, 86399),
    ],
)  # fmt: skip
def test_times(written, seconds):
    assert parse_time(written) == pytest.approx(seconds)


NO_TIMES = [
    "0:00", "0:00.0", 0, -5, 0.0, "1:75", "1:5", "75", "", "1:2:30", "1:60:00", "100:00", "-1:00",
    ("1:15 "
        "pm"), "1.15", "１:15",
    "1:15.123", ":30", "60:00", "24:00:00", 86400, 86401, float("inf"),
]  # fmt: skip


@pytest.mark.parametrize("written", NO_TIMES)
def test_no_times(written):
    with pytest.raises(TimeError) as refused:
        parse_time(written)
    assert refused.value.hint


@pytest.mark.parametrize(
    ("seconds", "tenths", "shown"),
    [
        (45, False, "0:45"), (75, False, "1:15"), (3750, False, "1:02:30"), (45.25, True, "0:45.3"),
        (59.95, True, "1:00.0"),
        (59.5, False, "1:00"), (0.5, False, "0:01"), (3599.5, False, "1:00:00"),
        (-5, False, "-0:05"), (-0.2, False, "0:00"),
        (480, False, "8:00"), (65.04241, True, "1:05.0"),
    ],
)  # fmt: skip
def test_times_shown(seconds, tenths, shown):
    assert show_time(seconds, tenths) == shown


@given(st.integers(1, 86_399))
def test_whole_seconds_shown_are_read_back(seconds):
    assert parse_time(show_time(seconds)) == seconds


@given(st.integers(1, 863_999))
def test_tenths_shown_are_read_back(tenths):
    assert parse_time(show_time(tenths / 10, tenths=True)) == pytest.approx(tenths / 10)


NUMBERS = [(1000, "1,000"), (12.5, "12.5"), (12.0, "12"), (-0.01, "0"), (1234567.89, "1,234,567.9")]
SHARES = [
    (0.7, "70 %"),
    (None, "none"),
    (0, "0 %"),
    (0.0049, "under 1 %"),
    (0.005, "1 %"),
    (1, "100 %"),
    (0.125, "13 %"),
]


@pytest.mark.parametrize(("value", "shown"), NUMBERS)
def test_numbers_shown(value, shown):
    assert show_number(value) == shown


@pytest.mark.parametrize(("share", "shown"), SHARES)
def test_shares_shown(share, shown):
    assert show_share(share) == shown


def test_distance_shown():
    assert show_distance(1650, Unit.YARD) == "1,650 yd"
