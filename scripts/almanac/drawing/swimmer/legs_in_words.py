"""What the legs of a body figure do, in words."""

from __future__ import annotations

from almanac.drawing.swimmer.kicks import Phase, phases
from almanac.drawing.swimmer.land import dead_bug
from almanac.drawing.swimmer.phrases import (
    DEAD_BUG,
    KICK_WORDS,
    LEG_WORDS,
    OWN_LEGS,
    PART_WORDS,
    SIZE_WORDS,
)
from almanac.drawing.swimmer.pose_spec import PoseSpec
from almanac.drawing.swimmer.poses import Pose


def kick_words(spec: PoseSpec) -> str:
    """The kick, and that one leg makes it where that is so."""
    return (
        f"{KICK_WORDS[spec.kick].split(',')[0]} with one leg"
        if spec.one_leg
        else KICK_WORDS[spec.kick]
    )


def leg_words(side: str, phase: Phase) -> str:
    """What a leg does, as `near leg on the up-beat, the propulsive one (knee bent, shin
    behind)`.
    """
    return f"{side} on the {phase.beat}, {PART_WORDS[phase.part]} ({phase.stage})"


def legs_in_words(held: Pose) -> str:
    """What both legs do, as drawn, in a sentence."""
    spec = held.spec
    if spec.hold == "posed":
        return f"{DEAD_BUG if dead_bug(spec) else LEG_WORDS[spec.posture][spec.kick != 'none']}."
    if spec.hold in OWN_LEGS:
        return OWN_LEGS[spec.hold]
    if spec.hold in ("planted", "hung"):
        return "Feet on the wall under water, knees at about a right angle."
    if spec.wall == "leaving":
        return "Legs long and still."
    if spec.size:
        return f"{SIZE_WORDS[spec.size]} {kick_words(spec).lower()}."
    both = phases(spec.kick, spec.moment, spec.lie)
    if both is None:
        return f"{kick_words(spec)}."
    return (
        f"{kick_words(spec)}: "
        f"{_phases(spec, *both)}{', knees under water' if _knees_under(held) else ''}."
    )


def _phases(spec: PoseSpec, near: Phase, far: Phase) -> str:
    if spec.one_leg:
        return f"{leg_words('near leg', near)}; far leg long and still"
    if near == far:
        return leg_words("both legs", near)
    if spec.roll:
        upper, lower = (far, near) if spec.face_up else (near, far)
        return (
            f"{leg_words('leg of the upper side', upper)}; "
            f"{leg_words('leg of the lower side', lower)}"
        )
    return f"{leg_words('near leg', near)}; {leg_words('far leg', far)}"


def _knees_under(held: Pose) -> bool:
    """Whether both knees are below the surface of a swimmer who lies in it."""
    lying = held.spec.wet and held.spec.hold == "lying"
    return lying and max(held.skeleton.near_leg.knee.y, held.skeleton.far_leg.knee.y) < 0
