"""Numbers and times that somebody said in words: read whole, or not at all."""

from __future__ import annotations

import pytest

from almanac.source.said.days import later_meant
from almanac.source.said.numbers import number_hint, range_meant
from almanac.source.said.times import time_meant


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("sixty", "60"), ("twice", "2"), ("twice a week", "2"), ("four lengths", "4"),
        ("two hundred", "200"), ("two hundred and fifty metres", "250"), ("twenty five", "25"),
        ("thirty-five m", "35"), ("a hundred", "100"), ("one thousand five hundred", "1500"),
        ("one and a half", "a number"), ("three or four", "a number"), ("two dozen", "24"),
        ("fifteen hundred", "a number"), ("", "a number"),
    ],
)  # fmt: skip
def test_a_number_in_words_is_read_to_its_end(said: str, meant: str) -> None:
    assert number_hint(said, "integer", "distance").startswith(f"write {meant} in digits")


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("twenty five seconds", "0:25"), ("thirty five seconds", "0:35"), ("two minutes", "2:00"),
        ("two hundred seconds", "3:20"), ("forty-five seconds", "0:45"),
        ("one and a half minutes", ""), ("three or four minutes", ""),
    ],
)  # fmt: skip
def test_a_time_in_words_is_read_to_its_end(said: str, meant: str) -> None:
    assert time_meant(said) == meant


def test_a_list_is_counted_only_where_something_is_counted() -> None:
    assert number_hint([25, 50], "integer", "distance") == "write one number: 25 or 50"
    assert number_hint([1, 1, 1], "integer", "reps").endswith(": 3")
    assert "without brackets" in number_hint(["a"], "integer", "distance")
    assert number_hint("half a dozen", "number").startswith("write 6 in digits")
    assert number_hint("half a metre", "number") == "write 0.5"


def test_a_number_of_hundreds_of_digits_is_nothing_that_was_meant() -> None:
    assert range_meant("4-12 ft", "depth_m") == ("1.22", "3.66")
    for text in (f"1-{'9' * 400}", f"1-{'9' * 400} ft"):
        assert range_meant(text, "depth_m") == ()


@pytest.mark.parametrize(
    ("said", "since", "day"),
    [
        ("in a year", "2026-10-05", "2027-10-05"), ("in a year", "2028-02-29", "2029-02-28"),
        ("six months", "2026-08-31", "2027-02-28"), ("after 4 months", "2027-10-31", "2028-02-29"),
        ("2 weeks", "2026-12-25", "2027-01-08"), ("every ten days", "2026-12-25", "2027-01-04"),
        ("in 0 years", "2026-10-05", ""), ("some years", "2026-10-05", ""), ("a year", "soon", ""),
        ("99 years", "9990-01-01", ""), ("2 weeks", "9999-12-31", ""),
        ("in 100 years", "2026-10-05", ""), ("", "2026-10-05", ""),
        ("in ١ year", "2026-10-05", ""),
    ],
)  # fmt: skip
def test_a_day_said_by_how_much_later_it_is_lies_in_the_calendar(
    said: str, since: str, day: str
) -> None:
    assert later_meant(said, since) == day
