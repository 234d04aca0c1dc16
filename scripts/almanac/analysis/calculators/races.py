"""What timed swims tell: critical speed, fade, points."""

from __future__ import annotations

from collections.abc import Mapping

from almanac.analysis.calculators.calculator import (
    Answer,
    Calculator,
    ClubNumbers,
    Field,
    Given,
    How,
    Line,
    NoAnswer,
    Takes,
    fields,
    number,
)
from almanac.arithmetic.race import critical_speed, fade, points


def _critical(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    trials = [
        (number(values, f"distance{end}"), number(values, f"time{end}")) for end in ("", "-2")
    ]
    (near, near_s), (far, far_s) = sorted(trials)
    if near == far:
        raise NoAnswer("same-distance")
    if far_s <= near_s:
        raise NoAnswer("no-slower")
    found = critical_speed(trials)
    if found.reserve_m <= 0:
        raise NoAnswer("no-reserve")
    numbers = {"speed": found.speed, "pace": 100 / found.speed, "reserve": found.reserve_m}
    return Answer(numbers, ("read", "reserve"))


def _fade(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    laps = values["laps"]
    assert not isinstance(laps, (str, int, float))
    if len(laps) < 3:
        raise NoAnswer("few")
    found = fade(laps)
    numbers = {"last": 100 * found.last_lap, "total": sum(laps)}
    if found.second_half is None:
        return Answer(numbers, ("read", "odd"))
    half = len(laps) // 2
    seconds = sum(laps[half:]) - sum(laps[:half])
    return Answer(
        numbers | {"half": 100 * found.second_half, "half-s": seconds}, ("read", "halves")
    )


def _points(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    return Answer({"points": points(number(values, "base"), number(values, "time"))}, ("read",))


CRITICAL_SPEED = Calculator(
    name="critical-speed",
    title="Critical speed",
    asks="What do a shorter and a longer test tell of the pace that lasts?",
    fields=fields(
        Field("distance", "Shorter test, distance", unit="m", least=25, most=5_000, default=200),
        Field("time", "Shorter test, time", Takes.TIME, least=10, most=7_200),
        Field("distance-2", "Longer test, distance", unit="m", least=25, most=5_000, default=400),
        Field("time-2", "Longer test, time", Takes.TIME, least=10, most=7_200),
    ),
    lines=(
        Line("pace", "Critical pace for 100 m", How.TIME),
        Line("speed", "Critical speed", unit="m/s", places=3),
        Line("reserve", "Reserve D′", unit="m"),
    ),
    sentences={
        "read": "{pace} for each 100 m is about the pace between what can be held and what tires "
        "soon.",
        "reserve": "The reserve of {reserve} is not reliable: judge nobody by it.",
    },
    limits="It is held for some 14 to 39 minutes, not for ever. Shorter tests make it faster: "
    "compare only tests over the same two distances.",
    work=_critical,
    by=(critical_speed,),
    refusals={
        "same-distance": "Two different distances are needed.",
        "no-slower": "The longer test took no longer than the shorter: look at the times again.",
        "no-reserve": "No reserve comes out, so no pace either: one of the two was not swum as "
        "fast as could be.",
    },
    example={"distance": 200, "time": 123.4, "distance-2": 400, "time-2": 262.8},
    asked_as=(
        "css",
        "threshold pace",
        "400 200 test",
        "threshold speed",
        "css test",
        "pace from 400",
        "sustainable pace",
    ),
)
FADE = Calculator(
    name="fade",
    title="Fade of a race",
    asks="How much slower did the race get?",
    fields=fields(
        Field("laps", "Laps, the first first", Takes.TIME, least=5, most=1_200, many=True),
    ),
    lines=(
        Line("last", "Last lap against the laps before it, without the first", unit="%"),
        Line("half", "Second half against the first", unit="%"),
        Line("half-s", "Second half against the first", unit="s", places=2),
        Line("total", "Whole time", How.TIME),
    ),
    sentences={
        "read": "The last lap was slower than those before it by {last}; below zero it was faster.",
        "halves": "The second half was slower by {half}. The first half holds the start, which "
        "alone makes some of it.",
        "odd": "An odd number of laps has no halves.",
    },
    limits="The first lap holds the start, so no lap is compared with it.",
    work=_fade,
    by=(fade,),
    refusals={"few": "Three laps or more are needed: the first, the last, and one between."},
    example={"laps": [26.52, 28.38, 28.4, 28.62]},
    asked_as=(
        "splits",
        "race split drop off",
        "second half slower",
        "slow second half",
        "compare halves",
        "drop off",
    ),
)
POINTS = Calculator(
    name="points",
    title="Points from a base time",
    asks="How many points is a time worth, of a base that is worth 1,000?",
    fields=fields(
        Field("base", "Base time", Takes.TIME, least=5, most=7_200),
        Field("time", "Time swum", Takes.TIME, least=5, most=7_200),
    ),
    lines=(Line("points", "Points", places=0),),
    sentences={"read": "{time} is worth {points} points of 1,000 for {base}."},
    limits="The base is yours to give: no table of base times stands here. Cut, never rounded.",
    work=_points,
    by=(points,),
    refusals={},
    example={"base": 46.91, "time": 52.81},
    asked_as=(
        "fina points",
        "score of a time",
        "points",
        "compare events",
        "score",
        "world record points",
    ),
)
