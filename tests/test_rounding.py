"""Rounding: halves go up, parts sum to their whole as it is shown, differences are those of what is
shown.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from almanac.analysis.figures.figure import Figure, NamedFigure, Shown
from almanac.arithmetic.working import Difference, Known
from almanac.report.shown import rounded, shown
from almanac.rounding import (
    SECOND,
    TENTH,
    apportion,
    clock_time,
    difference,
    half_up,
    in_tenths,
    show_number,
    show_shares,
    show_time,
    tenths,
)

PARTS = st.lists(st.integers(0, 10_000).map(lambda n: Fraction(n, 12)), min_size=1, max_size=9)


@pytest.mark.parametrize(
    ("value", "step", "expected"),
    [(0.5, SECOND, 1), (1.5, SECOND, 2), (2.5, SECOND, 3), (0.05, TENTH, 0.1), (0.15, TENTH, 0.2),
     (0.25, TENTH, 0.3), (599.999, TENTH, 600), (-0.5, SECOND, -1)],
)  # fmt: skip
def test_halves_go_away_from_zero(value, step, expected):
    assert half_up(value, step) == Decimal(str(expected))


# Worked by hand: Hamilton's method of largest remainders.
APPORTIONED = [
    ([1, 1, 1], Decimal(100), [34, 33, 33]),
    ([1, 1, 1, 1, 1, 1], Decimal(100), [17, 17, 17, 17, 16, 16]),
    ([166, 166, 668], Decimal(100), [17, 16, 67]),
    ([250, 150], Decimal(100), [63, 37]),
    ([150, 250], Decimal(100), [37, 63]),  # the same 250 of 400 in whatever order
    ([0, 5], Decimal(100), [0, 100]),
    ([999, 1], Decimal(100), [100, 0]),
    ([0, 0], Decimal(100), [0, 0]),
    ([Fraction(275, 3), Fraction(250, 3), 25], None, [92, 83, 25]),  # 91.67 + 83.33 + 25 = 200
]


@pytest.mark.parametrize(("parts", "whole", "expected"), APPORTIONED)
def test_largest_remainders_by_hand(parts, whole, expected):
    assert apportion(parts, SECOND, whole) == expected


@given(PARTS, st.sampled_from([SECOND, TENTH, Decimal("0.001")]))
def test_parts_sum_to_their_whole_and_none_is_a_step_off(parts, step):
    shown_parts = apportion(parts, step)
    assert sum(shown_parts) == half_up(sum(parts), step)
    assert all(
        abs(Fraction(part) - exact) < Fraction(step)
        for part, exact in zip(shown_parts, parts, strict=True)
    )


@given(PARTS)
def test_shares_sum_to_a_hundred(parts):
    said = show_shares(parts)
    percents = [int(share.removesuffix(" %")) for share in said if share != "under 1 %"]
    assert sum(percents) == (100 if sum(parts) else 0)
    for share, part in zip(said, parts, strict=True):
        assert (share in {"0 %", "under 1 %"}) or part
        assert share != "0 %" or not part


@given(st.floats(0, 90_000), st.floats(0, 90_000), st.sampled_from([Shown.TIME, Shown.TENTHS]))
@example(599.5, 299.5, Shown.TIME)
def test_a_difference_is_that_of_the_shown_numbers(whole, less, how):
    kind = Figure("rest", "Rest", lambda of: of, how)
    step = SECOND if how is Shown.TIME else TENTH
    given_figure = NamedFigure("rest", Difference(Known(whole), Known(less)), "s", kind)
    plain = [NamedFigure("", Known(value), "s", kind) for value in (whole, less)]
    if whole >= less:
        left = difference(whole, less, step)
        assert shown(given_figure) == shown(NamedFigure("", Known(float(left)), "s", kind))
    in_json = [rounded(figure, 1) for figure in (*plain, given_figure)]
    assert in_json[2] == pytest.approx(in_json[0] - in_json[1], abs=1e-6)


def test_json_holds_tenths_of_seconds_and_leaves_the_rest_alone():
    assert in_tenths({"a_s": 599.999, "b": 0.123, "c": [{"d_s": 0.25}], "e_s": None,
                      "f_s": [1.26]}) == {
        "a_s": 600.0, "b": 0.123, "c": [{"d_s": 0.3}], "e_s": None, "f_s": [1.3]}  # fmt: skip
    assert tenths(599.999) == 600


def test_numbers_and_times_of_day():
    assert [show_number(value) for value in (0.05, 1.25, 1.35, 1000, -0.04)] == [
        "0.1", "1.3", "1.4", "1,000", "0"]  # fmt: skip
    assert clock_time("18:00", 0.5) == "18:00:01" and clock_time("18:00", 2.5) == "18:00:03"


def test_nothing_is_no_less_than_nothing():
    assert repr(tenths(-0.002)) == "0.0" and show_time(-0.002) == "0:00"
