"""Kick and stroke figures. A *beat* is one leg moving one way; a *leg cycle* is two beats of one
leg: never a bare kick.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NewType

from almanac.arithmetic.guard import above_zero, not_below_zero

BeatsPerMinute = NewType("BeatsPerMinute", float)
LegCyclesPerSecond = NewType("LegCyclesPerSecond", float)

BEATS_IN_SIX_BEAT = 6


@dataclass(frozen=True)
class KickRate:
    """A kick's rate: beats a minute of both legs together, and cycles a second of each leg."""

    beats_per_minute: BeatsPerMinute
    leg_cycles_per_second: LegCyclesPerSecond


def kick_rate(arm_cycles_per_minute: float, beats_per_cycle: int = BEATS_IN_SIX_BEAT) -> KickRate:
    """The kick that goes with an arm stroke.

    Six-beat is six beats, three full cycles of each leg, to an arm cycle, by definition: at 50 arm
    cycles a minute 300 beats a minute, 2.5 cycles a second of each leg. Raises ValueError for a
    rate below zero.
    """
    not_below_zero(arm_cycles_per_minute=arm_cycles_per_minute, beats_per_cycle=beats_per_cycle)
    beats = arm_cycles_per_minute * beats_per_cycle
    return KickRate(BeatsPerMinute(beats), LegCyclesPerSecond(beats / 2 / 60))


def distance_per_leg_cycle(speed: float, leg_cycles_per_second: float) -> float:
    """Metres travelled in one cycle of a leg: v / f, from m/s and cycles a second.

    Zamparo et al. 2006, Eur J Appl Physiol 96:459-70: 0.50 m at 0.8 m/s and 1.6 Hz, barefoot
    flutter. Raises ValueError for legs that do not move, or a speed below zero.
    """
    above_zero(leg_cycles_per_second=leg_cycles_per_second)
    not_below_zero(speed=speed)
    return speed / leg_cycles_per_second


def speed_from_stroke(stroke_length_m: float, cycles_per_minute: float) -> float:
    """Speed in m/s from metres an arm cycle and arm cycles a minute: v = SL × SF / 60."""
    return stroke_length_m * cycles_per_minute / 60


def strouhal(frequency_hz: float, peak_to_peak_m: float, speed: float) -> float:
    """St = f A / U with the amplitude from peak to peak (the convention of Taylor et al. 2003). A
    bare number.

    Some authors write 2 f A / U with half that amplitude, which is the same. Swimmers lie near 0.8,
    far from the 0.2 to 0.4 of animals that cruise: the value is shown without a verdict. Raises
    ValueError where the swimmer stands still, or for a frequency or an amplitude below zero.
    """
    above_zero(speed=speed)
    not_below_zero(frequency_hz=frequency_hz, peak_to_peak_m=peak_to_peak_m)
    return frequency_hz * peak_to_peak_m / speed
