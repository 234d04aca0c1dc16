"""A body and a wall: feet set on it, hands and feet on it before a start, and where it stands for
every other.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from almanac.drawing.swimmer.arms import LEADING, Pair, arms
from almanac.drawing.swimmer.geometry import Point, axes
from almanac.drawing.swimmer.inverse_kinematics import arm_to, leg_to
from almanac.drawing.swimmer.pose_spec import DECK, PoseSpec
from almanac.drawing.swimmer.segments import FOOT_HEIGHT, TRUNK, Leg, Posture, Skeleton

Wall = tuple[float, Literal["ahead", "behind"]]
"""The x of a wall and whether it is ahead (to the right) or behind."""
_AGAINST = FOOT_HEIGHT + 0.004
_FEET_ON, _START = -0.4, -0.365
GRIPS = 0.2
"""How far above the water the hand grips of a block are."""
_ON_LEDGE = -0.055
"""How high the ankles are where the balls of the feet are on a ledge, at the water line."""
_TOES_UP = Point(0.06, 1.0)


def planted(spec: PoseSpec) -> Posture:
    """Feet on the wall behind, knees at about a right angle, hands ahead in streamline: ready to
    push.
    """
    belly: Literal[1, -1] = 1 if spec.face_up else -1
    hip, body = Point(0.0, -0.24), axes(0, belly, 0.0)
    toes = Point(0.06, float(belly))
    near = leg_to(Point(_FEET_ON + _AGAINST, hip.y - 0.02 * belly), toes, hip, body)
    far = leg_to(Point(_FEET_ON + _AGAINST, hip.y + 0.025 * belly), toes, hip, body)
    return Posture(
        0,
        belly,
        near,
        far,
        *arms("streamline", "supine" if spec.face_up else "prone"),
        chin=2,
        hip=hip,
    )


def hung(spec: PoseSpec) -> Posture:
    """Hands on the edge, the balls of the feet on the wall below it, drawn up: the backstroke
    start.
    """
    hip, body = Point(0.0, -0.125), axes(97, 1, 0.0)
    shoulder = hip.plus(body.up, TRUNK)
    low = _ON_LEDGE if "ledge" in spec.marks else -0.165
    near = leg_to(Point(_START + _AGAINST, low), _TOES_UP, hip, body)
    far = leg_to(Point(_START + _AGAINST, low + 0.02), _TOES_UP, hip, body)
    hold = Point(_START + 0.02, GRIPS if "block" in spec.marks else DECK + 0.02)
    grip = Point(-1.0, -0.35)
    near_arm = arm_to(hold, grip, shoulder, body)
    far_arm = arm_to(hold.plus(Point(0.0, 0.008)), grip, shoulder, body)
    return Posture(97, 1, near, far, near_arm, far_arm, chin=10, hip=hip)


def wading_legs(spec: PoseSpec, hip: Point) -> tuple[Leg, Leg]:
    """Legs that stand on the pool's floor, heels light in a dolphin."""
    body = axes(86, -1, 0.0)
    floor = hip.y - 0.53
    ankle = Point(-0.075, floor + FOOT_HEIGHT + (0.045 if spec.kick == "dolphin" else 0.0))
    toes = Point(1.0, -0.42 if spec.kick == "dolphin" else 0.0)
    near = leg_to(ankle, toes, hip, body)
    return near, replace(near, hip=near.hip - 2)


def touching_arms(spec: PoseSpec) -> Pair:
    """The hand that leads is on the wall, the other has finished its pull; both hands where the
    stroke asks it.
    """
    near, far = arms("board", "prone")
    if spec.stroke in ("butterfly", "breaststroke"):
        return near, far
    far, near = arms("one-extended", "supine" if spec.face_up else "prone")
    return near, far


def wall_of(spec: PoseSpec, bones: Skeleton) -> Wall | None:
    """Where a wall stands: where hands or feet are on it; else a little beyond leading hands, or
    behind the feet.
    """
    near, far = bones.near_arm, bones.far_arm
    if spec.hold in ("planted", "hung"):
        return (_FEET_ON if spec.hold == "planted" else _START), "behind"
    if spec.hold in ("flying", "blocked"):
        return min(bones.near_leg.toe.x, bones.far_leg.toe.x) - 0.02, "behind"
    if spec.hold == "edged":
        return 0.25, "behind"
    if spec.hold == "kneed":
        return bones.far_leg.toe.x - 0.02, "behind"
    if spec.hold == "entering":
        return min(bones.near_leg.toe.x, bones.far_leg.toe.x) - 0.22, "behind"
    if spec.hold in ("tucked", "gathered"):
        return (0.42, "ahead") if spec.setting == "at-wall" else None
    if spec.wall == "at-back" and spec.hold == "posed":
        return -0.07, "behind"
    if spec.grips:
        if spec.wet and spec.setting != "under-water":
            return max(near.wrist.x, far.wrist.x) + 0.012, "ahead"
        return max(near.fingertip.x, far.fingertip.x) + 0.008, "ahead"
    if not spec.wet or (spec.setting != "at-wall" and not spec.wall):
        return None
    return _of_water(spec, bones)


def _of_water(spec: PoseSpec, bones: Skeleton) -> Wall:
    tip = max(bones.near_arm.fingertip.x, bones.far_arm.fingertip.x)
    if spec.wall == "leaving":
        return min(bones.near_leg.toe.x, bones.far_leg.toe.x) - 0.012, "behind"
    if spec.wall == "touching":
        return max(tip, bones.vertex.x) + 0.008, "ahead"
    coming = spec.wall == "coming-in" or spec.hold in ("upright", "wading")
    if coming or (spec.arms in LEADING and tip > bones.vertex.x):
        least = 0.15 if spec.hold in ("upright", "wading") else 0.0
        return max(tip, bones.vertex.x, least) + (
            0.22 if spec.arms == "board" or spec.wall == "coming-in" else 0.09
        ), "ahead"
    return -0.63, "behind"
