"""Bodies that lie: trunk, head, arms and legs by how steep they lie and what carries them."""

from __future__ import annotations

from dataclasses import replace
from math import radians, sin

from almanac.drawing.swimmer.arms import (
    BUTTERFLY_OVER,
    TOGETHER,
    Pair,
    Stance,
    arms,
    rolled_arms,
)
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.hands import with_hands
from almanac.drawing.swimmer.kicks import legs, sized, still, sway_at
from almanac.drawing.swimmer.pose_spec import DECK, PoseSpec
from almanac.drawing.swimmer.segments import TRUNK, Arm, Leg, Posture
from almanac.drawing.swimmer.walls import touching_arms

LEAN = 1.8
"""How steep the trunk of a lying swimmer is, in degrees, shoulders above hips."""
# How much steeper a trunk lies: sitting in the water, or over a board that carries the chest.
_SLOPES = {"sitting": 15.0, "short-grip": 8.0, "middle-grip": 4.0}
_BREATH = {"to-you": 78.0, "away": -78.0}
_HALF_WIDTH = {90.0: 0.126, 42.0: 0.1}


def lying(spec: PoseSpec) -> Posture:
    """A body that lies in the water or on the ground."""
    near_leg, far_leg = _lying_legs(spec)
    tilt = _tilt(spec, near_leg)
    near_arm, far_arm = (_level(arm, tilt - LEAN, spec) for arm in _lying_arms(spec))
    if spec.other_side:
        near_arm, far_arm = far_arm, near_arm
    drop = 0.0 if spec.grounded else TRUNK * sin(radians(tilt - LEAN))
    return Posture(
        trunk=tilt,
        belly=1 if spec.face_up else -1,
        near_leg=near_leg,
        far_leg=far_leg,
        near_arm=near_arm,
        far_arm=far_arm,
        roll=spec.roll,
        head_roll=_head_roll(spec),
        chin=_chin(spec),
        hip=Point(0.0, _hip_height(spec) - drop),
    )


def _lying_legs(spec: PoseSpec) -> tuple[Leg, Leg]:
    near, far = (
        still(spec.lie)
        if spec.wall == "leaving"
        else sized(legs(spec.kick, spec.moment, spec.lie), spec.size, spec.kick, spec.lie)
    )
    if spec.one_leg:
        far = Leg(4, 1, 72) if spec.lie == "supine" else Leg(-4, 2, 70)
    if spec.setting == "deck-edge":  # the hips are on the deck, the legs slope down into the water
        near, far = replace(near, hip=near.hip + 14), replace(far, hip=far.hip + 14)
    elif spec.grounded:
        near, far = _above_ground(near, spec), _above_ground(far, spec)
    return (_together(near), _together(far)) if spec.roll else (near, far)


def _lying_arms(spec: PoseSpec) -> Pair:
    if spec.together and not spec.hands:
        return TOGETHER[spec.together]
    stance: Stance = "supine" if spec.face_up else "prone"
    word = spec.arms
    if word == "holding-wall" and spec.setting == "deck-edge":  # no wall there: hands on the deck
        word = "at-sides" if spec.face_up else "free"
    if spec.wall == "touching" and not spec.hands:
        if not spec.roll:
            return touching_arms(spec)
        word = "one-extended"
    if spec.roll:
        if spec.setting == "under-water" and word in (
            "stroking",
            "one-arm-strokes",
        ):  # no arm comes over there
            word = "one-extended"
        if spec.hands:
            return with_hands(spec.hands, stance, arms(word, stance))
        return rolled_arms(word, stance, on_side=spec.roll > 60, grounded=spec.grounded)
    if (word, spec.stroke, spec.rising) == ("one-arm-strokes", "butterfly", True):
        return BUTTERFLY_OVER
    if spec.hands:
        return with_hands(spec.hands, stance, arms(word, stance, grounded=spec.grounded))
    return arms(word, stance, grounded=spec.grounded, under=spec.setting == "under-water")


def _tilt(spec: PoseSpec, leg: Leg) -> float:
    """How steep a lying trunk is.

    In water a dolphin kick sways it, and a breaststroke kick on the front lifts the shoulders over
    the hips as the heels are drawn up.
    """
    if spec.grounded:
        return 0.0
    if spec.hands in _SLOPES:
        return LEAN + _SLOPES[spec.hands]
    if spec.kick == "dolphin":
        return LEAN + sway_at(spec.moment) * (1 if spec.face_up else -1)
    if spec.kick == "breaststroke":
        return LEAN + (3.0 if spec.face_up else max(leg.hip, 0.0) * 0.24)
    raised = spec.arms == "board" and not spec.face_up and spec.face != "in"
    return LEAN + (2.5 if raised else 0.0)


def _level(arm: Arm, steeper: float, spec: PoseSpec) -> Arm:
    """An arm that reaches ahead keeps its line in the water where the trunk lies steeper."""
    if arm.shoulder < 150 or spec.grounded:
        return arm
    return replace(arm, shoulder=arm.shoulder + (steeper if spec.face_up else -steeper))


def _head_roll(spec: PoseSpec) -> float:
    """How far the head is turned: for air towards the viewer or away; with a body on its side."""
    if spec.face in _BREATH:
        return _BREATH[spec.face]
    return spec.roll if abs(spec.roll) > 60 and spec.stroke == "any" else 0.0


def _chin(spec: PoseSpec) -> float:
    if not spec.face_up:
        if spec.together == "breaststroke":
            return -22.0
        raised = spec.face or ("out" if spec.arms == "board" else "in")
        return -34.0 if raised == "out" and not spec.roll else -2.0
    return 2.0 if spec.grounded else 4.0


def _hip_height(spec: PoseSpec) -> float:
    if spec.grounded:
        return (DECK if spec.wet else 0.0) + _HALF_WIDTH.get(abs(spec.roll), 0.06)
    if spec.setting == "under-water":
        return -0.46 if spec.rising else -0.27
    return {90.0: -0.075, 42.0: -0.06}.get(abs(spec.roll), -0.052)


def _above_ground(leg: Leg, spec: PoseSpec) -> Leg:
    """The same leg where there is ground in place of water: raised to kick, never bent through the
    floor.
    """
    if spec.lie == "centred":
        return replace(leg, hip=leg.hip * 0.6)
    if spec.kick == "none":
        return replace(leg, hip=0.0)
    if spec.lie == "supine":
        return replace(leg, hip=leg.hip + 24, knee=leg.knee * 0.4)
    if spec.kick == "breaststroke":
        return replace(leg, hip=-2.0)
    return replace(leg, hip=min(leg.hip - 23, -1.0), knee=leg.knee * 0.5)


def _together(leg: Leg) -> Leg:
    """Legs closer than the hips are, as a roll shows them."""
    return replace(leg, spread=min(leg.spread, 6.0) - 4.0, turn_out=min(leg.turn_out, 6.0) - 4.0)
