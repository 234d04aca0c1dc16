"""What gear pulls with: from two times, by a measured table, a hanging mass, a cord's readings."""

from __future__ import annotations

from collections.abc import Mapping

from almanac.analysis.calculators.calculator import (
    Answer,
    Calculator,
    ClubNumbers,
    Field,
    Given,
    Line,
    NoAnswer,
    Takes,
    fields,
    number,
    word,
)
from almanac.arithmetic.resistance import (
    OutsideMeasured,
    added_drag,
    cord_force,
    drag_force,
    parachute_k,
    pulley_force,
    swimmer_drag,
)
from almanac.model.club import CordReading
from almanac.model.drag import DragReading

_CAUTION = "The cautions on the gear's own page hold whatever the number."
# k of flat parachutes, N s²/m² by cm²: Coloretti et al. 2025, J Strength Cond Res 39:e701-5.
CHUTES = tuple(
    DragReading(area_cm2=area, k=k)
    for area, k in ((400, 15.4), (529, 19.7), (900, 37.2), (1600, 73.9))
)


def _from_times(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    found = added_drag(number(values, "plain"), number(values, "resisted"))
    numbers = {"power": 100 * found.at_equal_power, "thrust": 100 * found.at_equal_thrust}
    return Answer(numbers, ("read",) if found.at_equal_thrust > 0 else ("none",))


def _parachute(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    speed = number(values, "speed")
    try:
        k = parachute_k(CHUTES, number(values, "area"))
    except OutsideMeasured as beyond:
        raise NoAnswer("outside", low=beyond.low, high=beyond.high) from None
    own = swimmer_drag(speed)
    numbers = {"force": drag_force(k, speed), "k": k, "least": own.least, "most": own.most}
    return Answer(numbers, ("read", "own"))


def _pulley(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    ratio = {"straight": 1.0, "doubled": 0.5}[word(values, "rope")]
    return Answer({"force": pulley_force(number(values, "mass"), ratio)}, ("read",))


def _cord(values: Mapping[str, Given], club: ClubNumbers) -> Answer:
    readings = []
    for end in ("", "-2", "-3"):
        stretch, force = values.get(f"stretch{end}"), values.get(f"force{end}")
        if (stretch is None) != (force is None):
            raise NoAnswer("half-a-reading")
        if isinstance(stretch, (int, float)) and isinstance(force, (int, float)):
            readings.append(CordReading(stretch, force))
    if len({reading.stretch_m for reading in readings}) < len(readings):
        raise NoAnswer("same-stretch")
    try:
        force = cord_force(readings, number(values, "at"))
    except OutsideMeasured as beyond:
        raise NoAnswer("outside", low=beyond.low, high=beyond.high) from None
    return Answer({"force": force}, ("read",))


FROM_TIMES = Calculator(
    name="added-drag",
    title="Added drag from two times",
    asks="The same distance plain and resisted: how much did the gear add?",
    fields=fields(
        Field("plain", "Time without it", Takes.TIME, least=3, most=3_600),
        Field("resisted", "Time with it", Takes.TIME, least=3, most=3_600),
    ),
    lines=(
        Line("thrust", "Added drag at equal thrust", unit="%", places=0),
        Line("power", "Added drag at equal power", unit="%", places=0),
    ),
    sentences={
        "read": "It added between {thrust} and {power} of the swimmer's own drag.",
        "none": "With it the swimmer was no slower: it did not resist, or one of the times is "
        "wrong.",
    },
    limits="Nobody knows whether a swimmer keeps the thrust or the power: so both are shown, and "
    "neither is measured. " + _CAUTION,
    work=_from_times,
    by=(added_drag,),
    refusals={},
    example={"plain": 20.0, "resisted": 24.0},
    asked_as=(
        "how much resistance",
        "drag of socks",
        "how much do socks slow",
        "how hard is the drag",
    ),
)
PARACHUTE = Calculator(
    name="parachute",
    title="Pull of a parachute",
    asks="How hard does a flat parachute pull at a speed?",
    fields=fields(
        Field("area", "Area of the parachute", unit="cm²", least=1, most=10_000, default=400),
        Field("speed", "Speed", unit="m/s", least=0.1, most=3, default=1),
    ),
    lines=(
        Line("force", "Pull", unit="N"),
        Line("k", "k, its pull at 1 m/s", unit="N s²/m²"),
        Line("least", "Swimmer's own drag, at least", unit="N", places=0),
        Line("most", "Swimmer's own drag, at most", unit="N", places=0),
    ),
    sentences={
        "read": "It pulls with {force}; at twice the speed with four times as much.",
        "own": "The swimmer's own drag is somewhere between {least} and {most}.",
    },
    limits="By a table of four flat parachutes (Coloretti et al. 2025), between its rows and never "
    "beyond. Towed: behind a kicking swimmer it may pull some 15 % more, behind one who glides 21 "
    "% less. " + _CAUTION,
    work=_parachute,
    by=(drag_force, parachute_k, swimmer_drag),
    refusals={"outside": "Measured were parachutes of {low} to {high} cm²: for another size there "
              "is no number."},
    example={"area": 900, "speed": 1.2},
    asked_as=("chute force",),
)  # fmt: skip
PULLEY = Calculator(
    name="pulley",
    title="Pull of a pulley",
    asks="How hard does a hanging mass pull?",
    fields=fields(
        Field("mass", "Mass that hangs", unit="kg", least=0.1, most=100),
        Field("rope", "Rope", Takes.CHOICE, default="straight",
              choices=(("straight", "Straight, 1 : 1"), ("doubled", "Doubled, half the pull"))),
    ),
    lines=(Line("force", "Pull", unit="N"),),
    sentences={"read": "{mass} pull with {force}, the same at every speed."},
    limits="Without the rope's friction, and without what it takes to set the mass moving. "
    + _CAUTION,
    work=_pulley,
    by=(pulley_force,),
    refusals={},
    example={"mass": 10, "rope": "doubled"},
    asked_as=("weight stack", "bucket of water"),
)  # fmt: skip
CORD = Calculator(
    name="cord",
    title="Pull of a cord",
    asks="How hard does your cord pull at a stretch, by your own readings?",
    fields=fields(
        Field("stretch", "First reading, stretch", unit="m", most=30),
        Field("force", "First reading, force", unit="N", most=500),
        Field("stretch-2", "Second reading, stretch", unit="m", most=30),
        Field("force-2", "Second reading, force", unit="N", most=500),
        Field("stretch-3", "Third reading, stretch", unit="m", most=30, optional=True),
        Field("force-3", "Third reading, force", unit="N", most=500, optional=True),
        Field("at", "At a stretch of", unit="m", most=30),
    ),
    lines=(Line("force", "Pull", unit="N"),),
    sentences={"read": "Stretched by {at} it pulls with {force}."},
    limits="Makers' tables say too much: hang a luggage scale on your own cord, and read again "
    "each season. " + _CAUTION,
    work=_cord,
    by=(cord_force,),
    refusals={
        "outside": "Your readings go from {low} to {high} m. Beyond them there is no number, and "
        "beyond the greatest a cord breaks.",
        "half-a-reading": "A reading needs both: the stretch and the force.",
        "same-stretch": "Two readings are at one stretch: read at different ones.",
    },
    example={"stretch": 2, "force": 30, "stretch-2": 4, "force-2": 70, "at": 3},
    asked_as=("bungee force", "tether", "surgical tubing"),
)
