"""Session load, monotony and strain: identities, a worked week, a printed ratio; check-values.md,
section 5.
"""

from __future__ import annotations

import math
import statistics
from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from almanac.arithmetic.training_load import Deviation, session_load, variation, week_load

SAMPLE, POPULATION = Deviation.SAMPLE, Deviation.POPULATION
WEEK = [480, 300, 0, 540, 240, 600, 0]  # the worked week of check-values.md

days = st.lists(st.floats(0, 2000), min_size=2, max_size=14)


@pytest.mark.parametrize(
    ("rating", "minutes", "load"), [(7, 60, 420), (0, 60, 0), (6, 6, 36)]
)  # 60 min at 7: Foster et al. 2001
def test_session_load(rating, minutes, load):
    assert session_load(rating, minutes) == load


@pytest.mark.parametrize(
    ("training_days", "population", "sample"),
    [
        (1, 0.408248, 0.377964), (2, 0.632456, 0.585540), (3, 0.866025, 0.801784),
        (4, 1.154701, 1.069045),
        (5, 1.581139, 1.463850), (6, 2.449490, 2.267787), (7, None, None),
    ],
)  # fmt: skip
@pytest.mark.parametrize("load", [1, 300, 437.5])
def test_equal_training_days(
    training_days, population, sample, load
):  # sqrt(k / (7 - k)) and sqrt(6 k / (7 (7 - k)))
    week = [load] * training_days + [0] * (7 - training_days)
    for convention, printed in ((POPULATION, population), (SAMPLE, sample)):
        found = variation(week, convention)
        assert found.convention is convention and found.total == load * training_days
        if printed is None:
            assert (found.deviation, found.monotony, found.strain) == (0, None, None)
            continue
        share = training_days / (7 - training_days) * (1 if convention is POPULATION else 6 / 7)
        assert (
            found.monotony
            == pytest.approx(math.sqrt(share), abs=1e-12)
            == pytest.approx(printed, abs=1e-6)
        )
        assert found.strain == pytest.approx(found.total * math.sqrt(share), rel=1e-12)


@pytest.mark.parametrize(
    ("convention", "deviation", "monotony", "strain"),
    [(SAMPLE, 245.996516, 1.254373, 2709.446), (POPULATION, 227.748519, 1.354878, 2926.536)],
)
def test_the_worked_week(convention, deviation, monotony, strain):
    found = variation(WEEK, convention)
    assert found.total == 2160 and found.mean == pytest.approx(308.571429, abs=1e-6)
    assert found.deviation == pytest.approx(deviation, abs=1e-6)
    assert found.monotony == pytest.approx(monotony, abs=1e-6) and found.strain == pytest.approx(
        strain, abs=1e-3
    )


def test_the_sample_convention_is_the_default_and_the_two_differ_by_one_factor():
    assert variation(WEEK) == variation(WEEK, SAMPLE)
    assert variation(WEEK).monotony / variation(WEEK, POPULATION).monotony == pytest.approx(
        math.sqrt(6 / 7)
    )


# BMJ Military Health, table 1, resistance exercise: mean 790 over SD 897, printed 0.88
def test_a_printed_ratio():
    low, high = (
        790 - 897 / math.sqrt(2),
        790 + 897 / math.sqrt(2),
    )  # two days of that mean and that sample SD
    assert (
        variation([low, high]).monotony
        == pytest.approx(790 / 897)
        == pytest.approx(0.88, abs=0.005)
    )


@given(days, st.floats(0.01, 100), st.sampled_from(list(Deviation)))
def test_scaling_every_day(week, factor, convention):
    assume(statistics.pstdev(week) > 1e-3)
    found, scaled = (
        variation(week, convention),
        variation([factor * load for load in week], convention),
    )
    assert scaled.monotony == pytest.approx(found.monotony)
    assert scaled.strain == pytest.approx(factor * found.strain) and scaled.total == pytest.approx(
        factor * found.total
    )


@given(
    days.flatmap(lambda week: st.tuples(st.just(week), st.permutations(week))),
    st.sampled_from(list(Deviation)),
)
def test_the_order_of_days_changes_nothing(weeks, convention):
    found, shuffled = (variation(week, convention) for week in weeks)
    assert shuffled.total == pytest.approx(found.total) and shuffled.mean == pytest.approx(
        found.mean
    )
    assert (shuffled.monotony is None) == (found.monotony is None)
    if found.monotony is not None:
        assert shuffled.strain == pytest.approx(found.strain)


@pytest.mark.parametrize("week", [[0] * 7, [300] * 7, [0.1 + 0.2, 0.3, 0.3], [1e9] * 3])
@pytest.mark.parametrize("convention", list(Deviation))
def test_no_variation_is_undefined(week, convention):
    found = variation(week, convention)
    assert found.monotony is None and found.strain is None and math.isfinite(found.total)


@pytest.mark.parametrize(
    ("week", "is_defined"),  # under a billionth of the mean, or of 1, is the machine's rounding
    [
        ([5000, 5000 + 1e-6], False),
        ([5000, 5000 + 1e-5], True),
        ([1e-10, 0], False),
        ([2e-9, 0], True),
    ],
)
def test_variation_that_is_a_rounding_of_the_machine_is_none(week, is_defined):
    assert (variation(week).monotony is not None) is is_defined


def test_missing_days_are_not_rest_days():
    with_gap = variation([300, None, 200])
    assert (with_gap.known, with_gap.days, with_gap.is_whole) == (2, 3, False)
    assert replace(with_gap, days=2) == variation([300, 200])
    assert with_gap != variation([300, 0, 200])
    assert variation([300, 0, 200]).mean == pytest.approx(500 / 3)
    one = variation([None, 300, None])
    assert (one.total, one.mean, one.deviation, one.monotony, one.strain) == (
        300,
        300,
        None,
        None,
        None,
    )


@pytest.mark.parametrize("week", [[], [None], [None] * 7])
def test_a_week_of_which_nothing_is_known(week):
    with pytest.raises(ValueError, match="no day"):
        variation(week)


@given(
    st.lists(st.one_of(st.none(), st.floats(0, 1e6)), min_size=1, max_size=7),
    st.sampled_from(list(Deviation)),
)
def test_no_nan_and_no_infinity(week, convention):
    assume(any(load is not None for load in week))
    found = variation(week, convention)
    figures = [found.total, found.mean, found.deviation, found.monotony, found.strain]
    assert all(figure is None or math.isfinite(figure) for figure in figures)


LOADS = st.one_of(st.just(0.0), st.floats(1, 2000))


@given(
    # Weeks that are known whole, too: of seven days drawn alike hardly any is.
    st.one_of(*(st.lists(day, min_size=7, max_size=7) for day in (st.none() | LOADS, LOADS))),
    st.sampled_from(list(Deviation)),
)
def test_monotony_wants_seven_known_days_and_four_of_training(week, convention):
    assume(any(load is not None for load in week))
    found, formula = week_load(week, convention), variation(week, convention)
    assert (found.total, found.mean, found.known) == (formula.total, formula.mean, formula.known)
    enough = None not in week and sum(load > 0 for load in week) >= 4
    if enough:
        assert found == formula
    else:
        assert (found.deviation, found.monotony, found.strain) == (None, None, None)


def test_a_forgotten_day_of_rest_gives_no_monotony():
    # six equal days and a seventh that nobody named: over six days it would be without bound
    assert week_load([417, 421, 417, 417, 420, 417, None]).monotony is None
    assert week_load([417, 421, 417, 417, 420, 417, 0]).monotony == pytest.approx(2.2677, abs=0.02)


# Foster et al. 2001, J Strength Cond Res 15:109-15, table 5, "Schematic training diary": the loads
# of nine sessions as printed (read in a converted copy of the paper), weekly load 3400, monotony
# 1.26, strain 4284. The printed monotony is that of the sessions with the population's deviation;
# by day it would be 1.21. Two of the printed loads (390) are not the minutes × rating beside them
# (75 × 8), nor is 940 (180 × 5): the other six are.
TABLE_5 = [940, 50, 840, 280, 180, 390, 50, 390, 280]
TABLE_5_DAYS = [940, 50, 840 + 280, 180, 390, 50, 390 + 280]


def test_the_diary_of_foster_2001():
    found = variation(TABLE_5, POPULATION)
    assert found.total == 3400
    assert round(found.monotony, 2) == 1.26
    assert found.total * round(found.monotony, 2) == pytest.approx(4284)
    assert week_load(TABLE_5_DAYS, POPULATION).monotony == pytest.approx(1.21, abs=0.005)
    as_printed = {(2, 25): 50, (7, 120): 840, (7, 40): 280, (3, 60): 180}
    assert all(
        session_load(rating, minutes) == load for (rating, minutes), load in as_printed.items()
    )
