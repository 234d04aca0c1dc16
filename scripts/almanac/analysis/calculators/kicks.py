"""Kick and stroke: rates, distance of a leg cycle, speed, Strouhal number."""

from __future__ import annotations

from collections.abc import Mapping

from almanac.analysis.calculators.calculator import (
    Answer,
    Calculator,
    ClubNumbers,
    Field,
    Given,
    Line,
    Takes,
    fields,
    number,
    word,
)
from almanac.arithmetic.kick import (
    distance_per_leg_cycle,
    kick_rate,
    speed_from_stroke,
    strouhal,
)

_MOST_SPEED = 3.0
"""m/s; ours: above the 2.4 of the fastest 50 m swims, arms and all (in 21 s, from memory)."""
_MOST_CYCLES = 4.0
"""Of each leg in a second; ours: a six-beat kick at 80 arm cycles a minute, common practice."""
_BEATS = (("6", "Six-beat"), ("4", "Four-beat"), ("2", "Two-beat"))


def _beats(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    cycles = number(values, "rate")
    rate = kick_rate(cycles, int(word(values, "kick")))
    found: dict[str, float] = {
        "beats": rate.beats_per_minute,
        "second": rate.beats_per_minute / 60,
        "legs": rate.leg_cycles_per_second,
    }
    length = values.get("length")
    if not isinstance(length, (int, float)):
        return Answer(found, ("read",))
    return Answer(found | {"speed": speed_from_stroke(length, cycles)}, ("read", "speed"))


def _count(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    seconds, beats = number(values, "time"), number(values, "beats")
    speed, legs = number(values, "distance") / seconds, beats / 2 / seconds
    return Answer(
        {
            "speed": speed,
            "minute": beats / seconds * 60,
            "legs": legs,
            "cycle": distance_per_leg_cycle(speed, legs),
        },
        (
            "read",
            *(("too-fast",) if speed > _MOST_SPEED else ()),
            *(("too-often",) if legs > _MOST_CYCLES else ()),
        ),
    )


def _strouhal(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    found = strouhal(number(values, "rate"), number(values, "height"), number(values, "speed"))
    return Answer({"strouhal": found}, ("read",))


KICK_RATE = Calculator(
    name="kick-rate",
    title="Kick beats from the stroke rate",
    asks="How fast must the legs go for this stroke rate?",
    fields=fields(
        Field("rate", "Arm cycles a minute", least=1, most=120, default=40),
        Field("kick", "Kick", Takes.CHOICE, default="6", choices=_BEATS),
        Field("length", "Metres an arm cycle", unit="m", least=0.1, most=5, optional=True),
    ),
    lines=(
        Line("beats", "Beats a minute, both legs", places=0),
        Line("second", "Beats a second", places=2),
        Line("legs", "Cycles a second of each leg", places=2),
        Line("speed", "Speed", unit="m/s", places=3),
    ),
    sentences={
        "read": "{beats} beats a minute: count {second} in a second.",
        "speed": "With {length} a cycle that is {speed}.",
    },
    limits="A beat is one leg going one way; a cycle of a leg is two. An arm cycle is both arms.",
    work=_beats,
    by=(kick_rate, speed_from_stroke),
    refusals={},
    example={"rate": 44.81, "kick": "6", "length": 2.07},
    asked_as=(
        "kick tempo",
        "beats per minute",
        "stroke rate",
        "tempo",
        "kicks per second",
        "how fast to kick",
        "kicks per minute",
        "cadence",
    ),
)
KICK_COUNT = Calculator(
    name="kick-count",
    title="A kick counted over a length",
    asks="Beats and time over a length: how fast, how often, how far each?",
    fields=fields(
        Field("distance", "Distance kicked", unit="m", least=1, most=200, default=25),
        Field("time", "Time", Takes.TIME, least=3, most=600),
        Field("beats", "Beats counted, both legs", Takes.WHOLE, least=1, most=2_000),
    ),
    lines=(
        Line("speed", "Speed", unit="m/s", places=3),
        Line("minute", "Beats a minute", places=0),
        Line("legs", "Cycles a second of each leg", places=2),
        Line("cycle", "Distance of a leg cycle", unit="m", places=2),
    ),
    sentences={
        "read": "{speed} at {minute} beats a minute: each cycle of a leg goes {cycle}.",
        "too-fast": "Hardly anybody is so fast: look at distance and time again.",
        "too-often": "Hardly anybody kicks so often: look at time and count again.",
    },
    limits="Count from the first beat after the push to the wall, and leave the push out of the "
    "distance where you can: it is faster than any kick. Hardly anybody passes 3 m/s (the "
    "fastest 50 m swims go some 2.4, from memory), or 4 cycles of a leg in a second (common "
    "practice: six beats at 80 arm cycles a minute).",
    work=_count,
    by=(distance_per_leg_cycle,),
    refusals={},
    example={"distance": 25, "time": 25.0, "beats": 110},
    asked_as=(
        "kick count",
        "count kicks",
        "kicks per length",
        "distance per kick",
    ),
)
STROUHAL = Calculator(
    name="strouhal",
    title="Strouhal number",
    asks="How do rate, height and speed of a kick go together?",
    fields=fields(
        Field("rate", "Cycles a second", least=0.1, most=10),
        Field("height", "Height of the kick, from top to bottom", unit="m", least=0.01, most=2),
        Field("speed", "Speed", unit="m/s", least=0.1, most=4),
    ),
    lines=(Line("strouhal", "Strouhal number", places=2),),
    sentences={"read": "{strouhal}: a number to compare one swimmer with, on another day."},
    limits="Swimmers lie near 0.8, animals that cruise at 0.2 to 0.4; neither is a mark to reach. "
    "Some authors take half the height and twice the number: the same.",
    work=_strouhal,
    by=(strouhal,),
    refusals={},
    example={"rate": 2.0, "height": 0.46, "speed": 1.08},
)
