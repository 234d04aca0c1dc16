"""Segment lengths, joint angles, and where the joints then are.

Lengths are fractions of standing height: Drillis and Contini 1966 (Body Segment Parameters, New
York University, report 1166-03), as reproduced in Winter's biomechanics text (Biomechanics and
Motor Control of Human Movement, figure 4.1). Written from memory and compared with several public
restatements of that figure, which agree; neither the report nor Winter's text itself was read. They
are averages of a sample nobody has since confirmed, and good enough to draw by. Coordinates are
those of ``space``; angles are in degrees.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from math import cos, radians, sin
from typing import Literal, NamedTuple

from almanac.drawing.swimmer.geometry import Axes, Point, axes, blend

THIGH = 0.245
SHANK = 0.246
FOOT_LENGTH = 0.152
FOOT_HEIGHT = 0.039
UPPER_ARM = 0.186
FOREARM = 0.146
HAND = 0.108
TRUNK = 0.288
NECK_AND_HEAD = 0.182

# Not in the list above: estimates of ours for where the joints sit within the body's breadth, the
# heel behind
# the ankle and the head's radius.
SHOULDER_HALF = 0.1
HIP_HALF = 0.05
HEEL = 0.035
HEAD_RADIUS = 0.06


@dataclass(frozen=True)
class Leg:
    """Joint angles of a leg.

    ``hip``: flexion, the thigh towards the belly, 0 in line with the trunk. ``knee``: flexion, the
    heel towards the seat, never below 0. ``ankle``: pointing, 0 with the sole square to the shank,
    90 with the foot in line with it. ``spread`` and ``turn_out``: how far thigh and shank leave the
    body's side plane, outward.
    """

    hip: float = 0.0
    knee: float = 0.0
    ankle: float = 70.0
    spread: float = 0.0
    turn_out: float = 0.0


@dataclass(frozen=True)
class Arm:
    """Joint angles of an arm.

    ``shoulder``: flexion, 0 along the side, 90 to the front, 180 overhead; below 0 behind the back.
    ``elbow``: flexion, never below 0. ``twist``: the upper arm turned inward about its own length;
    0 bends the elbow to the front, 90 across the body, 180 the way of a high-elbow catch.
    ``wrist``: bend on in the elbow's direction. ``spread``: how far the upper arm leaves the body's
    side plane, outward.
    """

    shoulder: float = 0.0
    elbow: float = 0.0
    twist: float = 0.0
    wrist: float = 0.0
    spread: float = 0.0


@dataclass(frozen=True)
class Posture:
    """How a body is held.

    ``trunk``: direction from hips to head, 0 to the right, 90 up. ``belly``: 1 where the belly is
    anticlockwise of that direction (head right: face up), -1 where it is clockwise. ``roll``: the
    body turned about its long axis, the belly towards the viewer. ``head_roll``: the same for the
    head. ``chin``: the head bent to the chest. ``arch``: how far the middle of the trunk stands out
    to the belly.
    """

    trunk: float
    belly: Literal[1, -1]
    near_leg: Leg
    far_leg: Leg
    near_arm: Arm
    far_arm: Arm
    roll: float = 0.0
    head_roll: float = 0.0
    chin: float = 0.0
    arch: float = 0.0
    hip: Point = field(default=Point(0.0, 0.0))


class LegJoints(NamedTuple):
    """Where a leg's joints are."""

    hip: Point
    knee: Point
    ankle: Point
    heel: Point
    toe: Point


class ArmJoints(NamedTuple):
    """Where an arm's joints are."""

    shoulder: Point
    elbow: Point
    wrist: Point
    fingertip: Point


@dataclass(frozen=True)
class Skeleton:
    """Where every joint is, with the axes of trunk and head."""

    hip: Point
    shoulder: Point
    head: Point
    vertex: Point
    near_leg: LegJoints
    far_leg: LegJoints
    near_arm: ArmJoints
    far_arm: ArmJoints
    trunk_axes: Axes
    head_axes: Axes
    arch: float = 0.0


def leg_joints(leg: Leg, hip: Point, body: Axes, side: int) -> LegJoints:
    """The joints of a leg that hangs from ``hip``; ``side`` is 1 for the near one, -1 for the far
    one.
    """

    def leaning(flexion: float, outward: float) -> Point:
        return blend(
            body.along(flexion), cos(radians(outward)), body.near, side * sin(radians(outward))
        )

    shank_flexion = leg.hip - leg.knee
    toes, sole = body.along(shank_flexion + 90 - leg.ankle), body.along(shank_flexion - leg.ankle)
    out = radians(2 * max(leg.turn_out, 0.0))  # a foot turns out further than its shank does
    toes = blend(toes, cos(out), body.near, side * sin(out))
    knee = hip.plus(leaning(leg.hip, leg.spread), THIGH)
    ankle = knee.plus(leaning(shank_flexion, leg.turn_out), SHANK)
    heel = ankle.plus(toes, -HEEL).plus(sole, FOOT_HEIGHT)
    return LegJoints(hip, knee, ankle, heel, heel.plus(toes, FOOT_LENGTH))


def arm_joints(arm: Arm, shoulder: Point, body: Axes, side: int) -> ArmJoints:
    """The joints of an arm that hangs from ``shoulder``; ``side`` is 1 for the near, -1 for the far
    one.
    """
    lean, twist = radians(arm.spread), radians(arm.twist)
    in_plane, outward = body.along(arm.shoulder), blend(body.near, side, body.near, 0.0)
    upper = blend(in_plane, cos(lean), outward, sin(lean))
    inward = blend(in_plane, sin(lean), outward, -cos(lean))
    bends_to = blend(body.along(arm.shoulder + 90), cos(twist), inward, sin(twist))

    def bent(angle: float) -> Point:
        return blend(upper, cos(radians(angle)), bends_to, sin(radians(angle)))

    elbow = shoulder.plus(upper, UPPER_ARM)
    wrist = elbow.plus(bent(arm.elbow), FOREARM)
    return ArmJoints(shoulder, elbow, wrist, wrist.plus(bent(arm.elbow + arm.wrist), HAND))


def skeleton(posture: Posture) -> Skeleton:
    """The joints of a posture, in standing heights, by forward kinematics from the hips outward."""
    body = axes(posture.trunk, posture.belly, posture.roll)
    shoulder = posture.hip.plus(body.up, TRUNK)
    head = axes(posture.trunk + posture.belly * posture.chin, posture.belly, posture.head_roll)
    return Skeleton(
        hip=posture.hip,
        shoulder=shoulder,
        head=shoulder.plus(head.up, NECK_AND_HEAD - HEAD_RADIUS),
        vertex=shoulder.plus(head.up, NECK_AND_HEAD),
        near_leg=leg_joints(posture.near_leg, posture.hip.plus(body.near, HIP_HALF), body, 1),
        far_leg=leg_joints(posture.far_leg, posture.hip.plus(body.near, -HIP_HALF), body, -1),
        near_arm=arm_joints(posture.near_arm, shoulder.plus(body.near, SHOULDER_HALF), body, 1),
        far_arm=arm_joints(posture.far_arm, shoulder.plus(body.near, -SHOULDER_HALF), body, -1),
        trunk_axes=body,
        head_axes=head,
        arch=posture.arch,
    )
