"""Kick and stroke: beats and leg cycles, distance per leg cycle, Strouhal; check-values.md, section
9.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.kick import distance_per_leg_cycle, kick_rate, speed_from_stroke, strouhal


@pytest.mark.parametrize(
    ("arm_cycles", "beats", "leg_cycles"),
    [
        pytest.param(
            50, 300, 2.5, id="by definition: six beats, three cycles of each leg, to an arm cycle"
        ),
        pytest.param(44.81, 268.86, 2.2405, id="backstroke, Gonjo et al. 2020, J Biomech 109452"),
        pytest.param(51.67, 310.02, 2.5835, id="crawl, Gonjo et al. 2020"),
        pytest.param(0, 0, 0, id="arms at rest"),
    ],
)
def test_six_beat(arm_cycles, beats, leg_cycles):
    found = kick_rate(arm_cycles)
    assert found.beats_per_minute == pytest.approx(
        beats
    ) and found.leg_cycles_per_second == pytest.approx(leg_cycles)
    assert found.beats_per_minute / 60 == pytest.approx(
        2 * found.leg_cycles_per_second
    )  # a leg's cycle is two beats


@given(st.floats(1, 100), st.sampled_from([2, 4, 6]))
def test_beats_and_leg_cycles_keep_step(arm_cycles, beats):
    found = kick_rate(arm_cycles, beats)
    assert found.beats_per_minute == pytest.approx(beats * arm_cycles)
    assert found.leg_cycles_per_second * 60 / arm_cycles == pytest.approx(beats / 2)


@pytest.mark.parametrize(
    ("length", "rate", "speed", "printed", "within"),
    [
        pytest.param(
            2.00,
            51.67,
            1.722,
            1.70,
            0.03,
            id="crawl, Gonjo et al. 2020, J Biomech 109452: 1.70 +/- 0.04 m/s",
        ),
        pytest.param(
            2.07, 44.81, 1.546, 1.54, 0.01, id="backstroke, Gonjo et al. 2020: 1.54 +/- 0.06 m/s"
        ),
    ],
)
def test_speed_is_stroke_length_times_rate(length, rate, speed, printed, within):
    assert (
        speed_from_stroke(length, rate)
        == pytest.approx(speed, abs=5e-4)
        == pytest.approx(printed, abs=within)
    )


# Zamparo et al. 2006, Eur J Appl Physiol 96:459-70: 0.50 +/- 0.01 m, barefoot flutter
def test_distance_per_leg_cycle():
    assert distance_per_leg_cycle(0.8, 1.6) == pytest.approx(0.50, abs=0.01)


# Wadrzyk et al. 2017, Human Movement 18(4): mean 0.83 +/- 0.08; a ratio of means is not a mean of
# ratios
def test_strouhal():
    assert (
        strouhal(2.00, 0.46, 1.08)
        == pytest.approx(0.8519, abs=5e-5)
        == pytest.approx(0.83, abs=0.03)
    )


@given(st.floats(0.1, 5), st.floats(0.01, 1), st.floats(0.1, 3))
def test_strouhal_of_half_the_amplitude_counts_it_twice(frequency, amplitude, speed):
    # Taylor et al. 2003 (peak to peak) and Floryan et al. 2018 (2 f A / U with half of it) are one
    # number.
    assert strouhal(frequency, amplitude, speed) == pytest.approx(
        2 * frequency * (amplitude / 2) / speed
    )
    assert strouhal(frequency, amplitude, speed) == pytest.approx(
        amplitude / distance_per_leg_cycle(speed, frequency)
    )


@pytest.mark.parametrize(
    "broken",
    [
        lambda: distance_per_leg_cycle(0.8, 0), lambda: distance_per_leg_cycle(0.8, -1),
        lambda: distance_per_leg_cycle(-1, 1),
        lambda: distance_per_leg_cycle(math.nan, 1), lambda: strouhal(2, 0.4, 0),
        lambda: strouhal(-2, 0.4, 1),
        lambda: strouhal(2, -0.4, 1), lambda: strouhal(math.inf, 0.4, 1), lambda: kick_rate(-1),
        lambda: kick_rate(math.nan),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused(broken):
    with pytest.raises(ValueError):
        broken()
