"""Times, courses and numbers: how they are read, refused and shown, case by case."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from almanac.source import schemas
from almanac.source.names import Names
from almanac.source.validate import Shapes
from almanac.units import (
    COURSES,
    DAY_S,
    Course,
    TimeError,
    Unit,
    parse_time,
    parse_whole_time,
    show_distance,
    show_number,
    show_share,
    show_time,
)  # fmt: skip

VALIDATOR = Shapes(Names({})).validator("set")
CLOCKS = st.from_regex(r"[0-9]{1,3}(:[0-9]{1,3}){1,2}(\.[0-9]{1,3})?", fullmatch=True)


@pytest.mark.parametrize(
    ("written", "seconds"),
    [
        ("0:01", 1), ("0:45", 45), ("1:15", 75), ("01:15", 75), ("9:59", 599), ("10:00", 600),
        ("59:59", 3599),
        ("1:00:00", 3600), ("1:02:30", 3750), ("12:00:00", 43200), ("23:59:59", 86399),
        ("0:45.3", 45.3), ("1:15.25", 75.25), ("0:00.5", 0.5), ("1:00:00.5", 3600.5),
        (75, 75), (0.5, 0.5), (27.8, 27.8), (86399.5, 86399.5),
    ],
)  # fmt: skip
def test_times_that_are_read(written: str | float, seconds: float) -> None:
    assert parse_time(written) == pytest.approx(seconds)


@pytest.mark.parametrize(
    ("written", "message", "hint"),
    [
        ("1:75", "'1:75' is no time: seconds run from 00 to 59", "write 2:15, or 75 for seconds"),
        ("0:60", "'0:60' is no time: seconds run from 00 to 59", "write 1:00, or 60 for seconds"),
        (
            "0:120",
            "'0:120' is no time: seconds run from 00 to 59",
            "write 2:00, or 120 for seconds",
        ),
        ("1:02:75", "'1:02:75' is no time: seconds run from 00 to 59", "write 1:03:15"),
        ("1:5", "'1:5' is no time: seconds have two digits", "write 1:05 or 1:50"),
        ("75:00", "'75:00' is no time: minutes run from 00 to 59", "write 1:15:00"),
        ("100:00", "'100:00' is no time: minutes run from 00 to 59", "write 1:40:00"),
        ("1:75:00", "'1:75:00' is no time: minutes run from 00 to 59", "write 2:15:00"),
        ("1:5:00", "'1:5:00' is no time: minutes have two digits", "write 1:05:00"),
        ("001:05", "'001:05' is no time: minutes have two digits", "write 1:05"),
        (
            "0:00",
            "'0:00' is no time: it must be more than zero",
            "write a time above 0:00, or leave it out",
        ),
        (0, "0 is no time: it must be more than zero", "write a time above 0:00, or leave it out"),
        (
            -5,
            "-5 is no time: it must be more than zero",
            "write a time above 0:00, or leave it out",
        ),
        (
            "24:00:00",
            "'24:00:00' is no time: it is a day or longer",
            "write a shorter one; a bare number is seconds",
        ),
        (
            86400,
            "86400 is no time: it is a day or longer",
            "write a shorter one; a bare number is seconds",
        ),
    ],
)
def test_times_that_are_refused_with_the_mend(
    written: str | float, message: str, hint: str
) -> None:
    with pytest.raises(TimeError) as refused:
        parse_time(written)
    assert (str(refused.value), refused.value.hint) == (message, hint)


@pytest.mark.parametrize(
    "written",
    ["", " ", ":", "1:", ":15", "-1:15", "+1:15", "1:15 ", " 1:15", "1:15\n", "1.15", "1:15:",
     "1:15.", "1:15.123", "1:1a",
     "1 min", "1'15", "1:15pm", "1::15", "1:15:00:00", "١:١٥", "inf", "nan", "1e3", "x" * 1000],
)  # fmt: skip
def test_texts_that_are_no_time(written: str) -> None:
    with pytest.raises(TimeError) as refused:
        parse_time(written)
    assert (
        refused.value.hint == "write minutes and seconds as m:ss, say 1:15, or a number of seconds"
    )
    assert len(str(refused.value)) < 80


@given(
    CLOCKS
    | st.text(alphabet="0123456789:. -", max_size=12)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.integers()
)
def test_the_schema_takes_the_same_times(written: str | float) -> None:
    """The checker, which parses, and the published schema, which has a pattern and bounds, agree on
    every time.
    """
    time = schemas.raw("common")["$defs"]["time"]
    plain = {key: value for key, value in time.items() if key != "clock"}
    assert VALIDATOR.evolve(schema=plain).is_valid(written) == VALIDATOR.evolve(
        schema={"clock": True}
    ).is_valid(written)


@pytest.mark.parametrize(
    ("seconds", "shown", "tenths"),
    [
        (0, "0:00", "0:00.0"), (45, "0:45", "0:45.0"), (75, "1:15", "1:15.0"),
        (3599.96, "1:00:00", "1:00:00.0"),
        (3750, "1:02:30", "1:02:30.0"), (59.5, "1:00", "0:59.5"), (59.4, "0:59", "0:59.4"),
        (27.85, "0:28", "0:27.9"),
        (-15, "-0:15", "-0:15.0"), (86400, "24:00:00", "24:00:00.0"),
        (1e15, "277777777777:46:40", "277777777777:46:40.0"),
    ],
)  # fmt: skip
def test_times_shown(seconds: float, shown: str, tenths: str) -> None:
    assert (show_time(seconds), show_time(seconds, tenths=True)) == (shown, tenths)


@given(st.floats(min_value=-1e250, max_value=1e250))
def test_any_number_of_seconds_can_be_shown(seconds: float) -> None:
    assert ":" in show_time(seconds) and ":" in show_time(seconds, tenths=True)


@given(st.integers(1, DAY_S - 1))
def test_whole_seconds_go_there_and_back(seconds: int) -> None:
    assert parse_time(show_time(seconds)) == seconds


@pytest.mark.parametrize(("text", "length", "unit", "metres"), [
    ("25yd", 25, Unit.YARD, 22.86), ("25m", 25, Unit.METRE, 25), ("50m", 50, Unit.METRE, 50),
])  # fmt: skip
def test_courses(text: str, length: int, unit: Unit, metres: float) -> None:
    course = Course.parse(text)
    assert (course.length, course.unit, str(course)) == (length, unit, text)
    assert course.metres == pytest.approx(metres)


@pytest.mark.parametrize("text", ["25", "25 m", "25M", "33m", "50yd", ""])
def test_no_other_course(text: str) -> None:
    with pytest.raises(KeyError):
        Course.parse(text)


def test_the_schema_names_the_same_courses() -> None:
    assert set(schemas.resolve({"$ref": "common.json#/$defs/course"})["enum"]) == set(COURSES)


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (0, "0"),
        (1000, "1,000"),
        (12.5, "12.5"),
        (12.04, "12"),
        (0.05, "0.1"),
        (1234.56, "1,234.6"),
        (-3, "-3"),
    ],
)
def test_numbers_shown(value: float, shown: str) -> None:
    assert show_number(value) == shown


def test_distances_and_shares_shown() -> None:
    assert show_distance(1000, Unit.METRE) == "1,000 m"
    assert show_distance(25, Unit.YARD) == "25 yd"
    assert [show_share(share) for share in (None, 0, 0.004, 0.005, 0.125, 0.7, 1)] == [
        "none", "0 %", "under 1 %", "1 %", "13 %", "70 %", "100 %",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("value", "seconds"), [("1:30", 90), (90, 90), (90.0, 90), ("0:45.0", 45), ("1:00:00", 3600)]
)
def test_whole_times(value, seconds):
    assert parse_whole_time(value) == seconds


@pytest.mark.parametrize(
    ("value", "hint"),
    [
        (1.30, "write 1:30; 0:01.3, which it says, is 0:01 in whole seconds"),
        (1.05, "write 1:05; 0:01.1, which it says, is 0:01 in whole seconds"),
        (1.75, "write 0:02"),  # there is no 1:75
        (0.4, "write 0:01"),
        ("0:45.5", "write 0:46"),
    ],
)
def test_a_time_that_is_not_whole_is_told_both_of_what_it_may_mean(value, hint):
    with pytest.raises(TimeError) as told:
        parse_whole_time(value)
    assert told.value.hint == hint
