"""The kicks: joint angles of both legs at eight moments of a cycle, and what each leg is doing
then.

The shapes follow what coaches teach (common practice; the angles are ours, not measured). In a
flutter the two legs are half a cycle apart. Each leg starts its propulsive beat at moment 0
straight and at the far end behind the body, the thigh leads, the knee gives late and the shin whips
after it; at moment 4 it is straight again and goes back straight. On the back that propulsive beat
goes up and the recovery down, on the front the other way round.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import pi, sin
from typing import Literal

from almanac.drawing.swimmer.segments import Leg

MOMENTS = 8
Lie = Literal["supine", "prone", "centred"]
"""How the body lies for the kick: face up, face down, or neither (on the side, upright)."""


@dataclass(frozen=True)
class Phase:
    """What a leg does: the beat as the swimmer lies, its part in the kick, and how the leg
    looks.
    """

    beat: str
    part: Literal["propulsive", "recovery", "glide"]
    stage: str


# Hip for a swimmer on the back, knee and ankle, moment by moment.
_FLUTTER = (
    Leg(-13.5, 4, 64),
    Leg(-8, 20, 76),
    Leg(-1, 31, 80),
    Leg(3.5, 18, 80),
    Leg(4.5, 2, 74),
    Leg(0.5, 0, 66),
    Leg(-5, 0, 64),
    Leg(-10, 0, 63),
)
_STAGES = (
    "straight, {start}",
    "thigh leads, knee gives",
    "knee bent, shin behind",
    "shin and foot whip",
    "straight, {end}",
    "straight, from the hip",
    "straight, from the hip",
    "straight, from the hip",
)
_ENDS: dict[Lie, dict[str, str]] = {
    "supine": {"start": "deepest", "end": "foot at surface"},
    "prone": {"start": "foot at surface", "end": "deepest"},
    "centred": {"start": "furthest back", "end": "furthest forward"},
}
_BREASTSTROKE = (
    Leg(-2, 0, 76),
    Leg(12, 38, 60),
    Leg(30, 95, 30),
    Leg(40, 122, 0, 12, 20),
    Leg(34, 95, -12, 22, 35),
    Leg(20, 52, 5, 20, 30),
    Leg(6, 14, 45, 10, 12),
    Leg(-2, 0, 72),
)
_BREASTSTROKE_PHASES = (
    Phase("glide", "glide", "straight and together"),
    Phase("draw-up", "recovery", "heels start to the seat"),
    Phase("draw-up", "recovery", "heels half-way to the seat"),
    Phase("draw-up", "recovery", "heels at the seat, feet turned out"),
    Phase("whip", "propulsive", "feet sweep out and back"),
    Phase("whip", "propulsive", "feet sweep round and back"),
    Phase("whip", "propulsive", "legs close"),
    Phase("glide", "glide", "straight and together"),
)
# On the front the same kick lies deeper: the thigh works in front of the trunk, so that the foot
# stays at the
# surface.
_HIP_SHIFT: dict[Lie, float] = {"supine": 0.0, "prone": 15.0, "centred": 6.0}
_DRIVE: dict[Lie, str] = {"supine": "up-beat", "prone": "down-beat", "centred": "forward beat"}
_RETURN: dict[Lie, str] = {"supine": "down-beat", "prone": "up-beat", "centred": "backward beat"}


def moment_of(number: int) -> int:
    """The moment as given; raises ValueError outside 0 to 7."""
    if isinstance(number, bool) or not isinstance(number, int) or not 0 <= number < MOMENTS:
        raise ValueError(f"unknown moment {number!r}: a whole number from 0 to {MOMENTS - 1}")
    return number


def flutter_leg(moment: int, lie: Lie) -> Leg:
    """A leg's joint angles, ``moment`` (0 to 7) of its own cycle."""
    leg = _FLUTTER[moment_of(moment)]
    return replace(leg, hip=leg.hip + _HIP_SHIFT[lie])


def flutter_phase(moment: int, lie: Lie) -> Phase:
    """What a leg does at ``moment`` of its own cycle: the first half is the propulsive beat."""
    stage = _STAGES[moment_of(moment)].format(**_ENDS[lie])
    if moment < MOMENTS // 2:
        return Phase(_DRIVE[lie], "propulsive", stage)
    return Phase(_RETURN[lie], "recovery", stage)


def flutter(moment: int, lie: Lie) -> tuple[Leg, Leg]:
    """The near and the far leg, half a cycle apart."""
    return flutter_leg(moment, lie), flutter_leg((moment_of(moment) + MOMENTS // 2) % MOMENTS, lie)


def dolphin(moment: int, lie: Lie) -> tuple[Leg, Leg]:
    """Both legs together, a little wider than a flutter; the far leg a hair behind, so that it
    shows.
    """
    leg = flutter_leg(moment, lie)
    near = (
        replace(leg, hip=leg.hip + 4, knee=leg.knee * DOLPHIN_BEND)
        if lie == "prone"
        else replace(leg, knee=leg.knee * DOLPHIN_BEND)
    )
    return near, replace(near, hip=near.hip - 1.5)


def breaststroke(moment: int, lie: Lie) -> tuple[Leg, Leg]:
    """Both legs drawn up, whipped round and closed; on the back the knees stay down and the shins
    work.
    """
    leg = _BREASTSTROKE[moment_of(moment)]
    if lie == "supine":
        leg = replace(leg, hip=min(leg.hip * 0.1, 4.0), knee=leg.knee * 0.85)
    return leg, replace(leg, hip=leg.hip - 1.5)


_AMPLITUDE = {"small": 0.45, "large": 1.9}


def sized(both: tuple[Leg, Leg], size: str, kick: str, lie: Lie) -> tuple[Leg, Leg]:
    """The legs of a kick that is smaller or larger than it should be: the feet still come up to the
    surface and go less or more deep. In breaststroke the thighs come forward less or more.
    """
    if size not in _AMPLITUDE:
        return both
    by = _AMPLITUDE[size]
    if kick not in BEATING:
        near, far = (replace(leg, hip=leg.hip * (0.7 if by < 1 else 1.5)) for leg in both)
        return near, far
    middle = MIDDLE + _HIP_SHIFT[lie]
    half = (_FLUTTER[4].hip - _FLUTTER[0].hip) / 2
    deeper = half * (by - 1) * {"supine": -1, "prone": 1, "centred": 0}[lie]
    near, far = (
        replace(leg, hip=middle + (leg.hip - middle) * by + deeper, knee=leg.knee * min(by, 1.3))
        for leg in both
    )
    return near, far


BEATING = ("flutter", "dolphin")
"""Kicks of which the cycle is one of angles alone, so that a picture can move."""
MIDDLE = (_FLUTTER[0].hip + _FLUTTER[4].hip) / 2
"""The hip's angle half-way through a beat, for a swimmer on the back."""
DOLPHIN_BEND = 1.1
TRUNK_SWAY = 2.8
"""How far the trunk sways in a dolphin, in degrees either way."""


def beat_of(kick: str, moment: int, size: str = "", *, near: bool) -> tuple[float, float, float]:
    """How far thigh, shank and foot turn at a moment, each against what it hangs from: the thigh
    against its middle, the foot against the line of the shank; above 0 towards the belly.
    """
    late = kick == "flutter" and not near
    leg = _FLUTTER[(moment_of(moment) + (MOMENTS // 2 if late else 0)) % MOMENTS]
    swing = _AMPLITUDE.get(size, 1.0)
    bend = min(swing, 1.3) * (DOLPHIN_BEND if kick == "dolphin" else 1.0)
    return (leg.hip - MIDDLE) * swing, -leg.knee * bend, 90.0 - leg.ankle


def sway_at(moment: int) -> float:
    """How far the trunk is turned at a moment of a dolphin, in degrees: above 0 where the hips are
    lower, as in the drive on the back.
    """
    return TRUNK_SWAY * sin(pi * moment_of(moment) / (MOMENTS / 2))


def still(lie: Lie) -> tuple[Leg, Leg]:
    """Legs at ease."""
    hip = {"supine": -2.0, "prone": 2.0, "centred": 1.0}[lie]
    return Leg(hip, 3, 66), Leg(hip - 2.5, 4, 64)


def legs(kick: str, moment: int, lie: Lie) -> tuple[Leg, Leg]:
    """The near and the far leg of a kick of the vocabulary; raises ValueError for a word that is
    not one.
    """
    moment_of(moment)
    if kick == "none":
        return still(lie)
    kicks = {"flutter": flutter, "dolphin": dolphin, "breaststroke": breaststroke}
    if kick not in kicks:
        raise ValueError(f"unknown kick {kick!r}: one of {', '.join([*kicks, 'none'])}")
    return kicks[kick](moment, lie)


def phases(kick: str, moment: int, lie: Lie) -> tuple[Phase, Phase] | None:
    """What the near and the far leg do; None where the legs are still."""
    if kick == "none":
        return None
    if kick == "breaststroke":
        return (_BREASTSTROKE_PHASES[moment_of(moment)],) * 2
    near = flutter_phase(moment, lie)
    return near, near if kick == "dolphin" else flutter_phase(
        (moment + MOMENTS // 2) % MOMENTS, lie
    )
