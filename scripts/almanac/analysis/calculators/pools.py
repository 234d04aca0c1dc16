"""Units, and what a set becomes in another pool."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from almanac.analysis.calculators.calculator import (
    Answer,
    Calculator,
    ClubNumbers,
    Field,
    Given,
    How,
    Line,
    Takes,
    fields,
    number,
    word,
)
from almanac.arithmetic.course import lay_in_course, nearest_lengths
from almanac.arithmetic.working import Known, UpTo
from almanac.units import COURSES, METRES_PER_YARD

_UNITS = (("m", "Metres"), ("yd", "Yards"))
_POOLS = tuple((name, f"{course.length} {course.unit.value}") for name, course in COURSES.items())


def _units(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    distance = number(values, "distance")
    if word(values, "unit") == "yd":
        return Answer({"metres": distance * METRES_PER_YARD}, ("metres",))
    return Answer({"yards": distance / METRES_PER_YARD}, ("yards",))


def _other_pool(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    here, there = (COURSES[word(values, name)] for name in ("from", "to"))
    reps, rep = int(number(values, "reps")), int(number(values, "rep"))
    new = int(nearest_lengths(Fraction(rep), there))
    ratio = (new * there.unit.metres) / (rep * here.unit.metres)
    step = club.catalogue.policy.limit("sendoff_step")
    send_off = UpTo(Known(number(values, "send-off") * ratio), step).value
    return Answer(
        {
            "rep-there": float(new),
            "send-off-there": send_off,
            "metres": reps * rep * here.unit.metres,
            "metres-there": reps * new * there.unit.metres,
            "clock": reps * number(values, "send-off"),
            "clock-there": reps * send_off,
        },
        ("read", "same" if new == rep else "nearest", "turns"),
    )


UNITS = Calculator(
    name="units",
    title="Yards and metres",
    asks="How far is it in the other unit?",
    fields=fields(
        Field("distance", "Distance", least=1, default=100),
        Field("unit", "In", Takes.CHOICE, default="yd", choices=_UNITS),
    ),
    lines=(
        Line("metres", "Metres", unit="m", places=2),
        Line("yards", "Yards", unit="yd", places=2),
    ),
    sentences={
        "metres": "{distance} yards are {metres}.",
        "yards": "{distance} metres are {yards}.",
    },
    limits="A yard is 0.9144 m exactly. Distances convert; times do not: there is no standard.",
    work=_units,
    by=(),
    refusals={},
    example={"distance": 500, "unit": "yd"},
    asked_as=(
        "convert yards to metres",
        "metres to yards",
        "yards to meters",
        "metres into yards",
        "scy to scm",
        "25 yards in metres",
        "scy conversion",
        "convert yards",
        "convert distance",
    ),
)
OTHER_POOL = Calculator(
    name="other-pool",
    title="A set in another pool",
    asks="The same set over there: which reps, which send-off?",
    fields=fields(
        Field("reps", "Reps", Takes.WHOLE, least=1, most=100, default=8),
        Field("rep", "Distance of a rep", Takes.WHOLE, least=10, most=2_000, default=75),
        Field("send-off", "Send-off", Takes.TIME, least=10, most=3_600),
        Field("from", "Written for", Takes.CHOICE, default="25m", choices=_POOLS),
        Field("to", "Swum in", Takes.CHOICE, default="50m", choices=_POOLS),
    ),
    lines=(
        Line("rep-there", "Distance of a rep there", places=0),
        Line("send-off-there", "Send-off there", How.CLOCK),
        Line("metres", "Whole distance as written", unit="m", places=0),
        Line("metres-there", "Whole distance there", unit="m", places=0),
        Line("clock", "Whole clock as written", How.CLOCK),
        Line("clock-there", "Whole clock there", How.CLOCK),
    ),
    sentences={
        "read": "{reps} × {rep-there} on {send-off-there}.",
        "same": "The reps stay as they are written.",
        "nearest": "{rep} does not end at a wall there: the nearest that does is {rep-there}.",
        "turns": "The send-off goes by length alone: with fewer turns give a little more.",
    },
    limits="For plain reps. A set's own page lays the whole of it into each pool, with what "
    "changes inside its reps.",
    work=_other_pool,
    by=(lay_in_course, nearest_lengths),
    refusals={},
    example={"reps": 8, "rep": 75, "send-off": 90.0, "from": "25m", "to": "50m"},
    asked_as=(
        "long course version",
        "short course to long course",
        "convert a set",
        "50 m pool instead of 25",
        "do this set in another pool",
        "change pool length",
        "different pool length",
        "set in yards",
    ),
)
