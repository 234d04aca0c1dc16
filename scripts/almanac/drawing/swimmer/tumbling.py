"""Bodies that turn over, fly, go in or stand ready: the somersault of a turn, the flight of a
backstroke start, hands that enter the water, a swimmer ready to dive.
"""

from __future__ import annotations

from dataclasses import replace

from almanac.drawing.swimmer.arms import arms
from almanac.drawing.swimmer.geometry import Point, axes
from almanac.drawing.swimmer.inverse_kinematics import arm_to, leg_to
from almanac.drawing.swimmer.pose_spec import DECK, PoseSpec
from almanac.drawing.swimmer.segments import FOOT_HEIGHT, THIGH, TRUNK, Arm, Leg, Posture

BLOCK_TOP = 0.38
"""How far above the water the top of a starting block is."""


def tucked(spec: PoseSpec) -> Posture:
    """Half-way over: hips at the surface, head under them with the chin on the chest, knees drawn
    in, heels by the seat.
    """
    near, far = Leg(122, 128, 48), Leg(117, 124, 48)
    return Posture(-118, -1, near, far, Arm(26, 34), Arm(20, 30), chin=34, hip=Point(0.0, -0.08))


def gathered(spec: PoseSpec) -> Posture:
    """At the wall ahead, one hand on it, knees drawn in, the feet on their way to it."""
    wall, trunk = 0.4, 112.0
    hip, body = Point(0.16, -0.3), axes(trunk, -1, 0.0)
    near = leg_to(Point(wall - 0.05, -0.36), Point(0.35, 1.0), hip, body)
    far = leg_to(Point(wall - 0.07, -0.4), Point(0.35, 1.0), hip, body)
    shoulder = hip.plus(body.up, TRUNK)
    hold = arm_to(Point(wall - 0.03, 0.03), Point(1.0, 0.3), shoulder, body)
    return Posture(trunk, -1, near, far, Arm(30, 80), hold, chin=2, hip=hip)


def flying(spec: PoseSpec) -> Posture:
    """Off the wall on the back, arched over the water, head back between the arms."""
    near, far = Leg(-24, 4, 80), Leg(-27, 5, 78)
    near_arm, far_arm = (
        replace(arm, shoulder=arm.shoulder + 14) for arm in arms("streamline", "supine")
    )
    high = 0.28 if "block" in spec.marks else 0.2
    return Posture(4, 1, near, far, near_arm, far_arm, chin=-24, hip=Point(0.0, high))


def entering(spec: PoseSpec) -> Posture:
    """The hands in the water, the rest on its way through the same hole: after a start on the back
    arched, after a dive straight.
    """
    near_arm, far_arm = arms("streamline", "supine" if spec.face_up else "prone")
    if spec.face_up:
        near, far = Leg(-24, 4, 80), Leg(-27, 5, 78)
        return Posture(-22, 1, near, far, near_arm, far_arm, chin=-14, hip=Point(0.0, 0.22))
    near, far = Leg(2, 2, 80), Leg(-1, 3, 78)
    return Posture(-30, -1, near, far, near_arm, far_arm, chin=6, hip=Point(0.0, 0.3))


def blocked(spec: PoseSpec) -> Posture:
    """On a block, bent down to its front edge, one foot ahead: ready to dive."""
    return bent_down(BLOCK_TOP)


def edged(spec: PoseSpec) -> Posture:
    """The same at the edge of the deck, where there is no block."""
    return bent_down(DECK)


def kneed(spec: PoseSpec) -> Posture:
    """On one knee at the edge of the deck, the toes of the other foot over it, hands aimed at the
    water.
    """
    trunk, thigh_down = 8.0, 96.0
    hip, body = Point(0.0, DECK + 0.034 + THIGH * 0.995), axes(trunk, -1, 0.0)
    near = Leg(thigh_down - 5 - trunk, 91, 70)
    far = leg_to(Point(0.258, DECK + FOOT_HEIGHT), Point(1.0, 0.0), hip, body)
    aimed = Arm(146, 2, spread=-13.4), Arm(145, 2, spread=-13.2)
    return Posture(trunk, -1, near, far, *aimed, chin=26, hip=hip)


def bent_down(top: float) -> Posture:
    """Bent down over what is ``top`` high, one foot at its front edge and one behind."""
    hip, body = Point(0.0, top + 0.43), axes(-22, -1, 0.0)
    near = leg_to(Point(0.09, top + FOOT_HEIGHT), Point(1.0, 0.0), hip, body)
    far = leg_to(Point(-0.12, top + FOOT_HEIGHT + 0.02), Point(1.0, -0.3), hip, body)
    shoulder = hip.plus(body.up, TRUNK)
    arm = arm_to(Point(0.17, top + 0.09), Point(-0.1, -1.0), shoulder, body)
    return Posture(-22, -1, near, far, arm, arm, chin=-6, hip=hip)
