"""Bodies on dry ground that carry themselves on hands, on one forearm or on their heels."""

from __future__ import annotations

from almanac.drawing.swimmer.geometry import Point, axes
from almanac.drawing.swimmer.inverse_kinematics import arm_to, leg_to
from almanac.drawing.swimmer.pose_spec import PoseSpec
from almanac.drawing.swimmer.segments import FOOT_HEIGHT, TRUNK, Arm, Leg, Posture

_AHEAD = Point(1.0, 0.0)


def press_up(spec: PoseSpec) -> Posture:
    """On hands and toes, arms straight, one line from ankle to ear; a kick lifts one leg."""
    slope = 16.4  # the shoulders an arm's length from the hands
    body = axes(slope, -1, 0.0)
    hip = Point(-0.482, 0.119).plus(body.up, 0.491)
    shoulder = hip.plus(body.up, TRUNK)
    near = Leg(-12, 0, 30) if spec.kick != "none" else Leg(0, 0, 8)
    hand = arm_to(Point(shoulder.x + 0.08, 0.018), _AHEAD, shoulder, body)
    return Posture(slope, -1, near, Leg(0, 0, 8), hand, hand, chin=-4, hip=hip)


def side_bridge(spec: PoseSpec) -> Posture:
    """On one forearm and the edge of a foot, the front towards the viewer; a kick lifts the upper
    leg, and a hand that is free goes to the ceiling.
    """
    slope, straight = 15.4, Leg(0, 0, 20)
    upper = Leg(0, 0, 30, spread=24) if spec.kick != "none" else straight
    raised = spec.arms in ("hands-up", "one-extended", "streamline", "stroking")
    far_arm = Arm(0, 0, spread=88) if raised else Arm(4, 6)
    return Posture(
        slope,
        1,
        straight,
        upper,
        Arm(0, 90, spread=96),
        far_arm,
        roll=90,
        head_roll=90,
        hip=Point(0.0, 0.213),
    )


def on_heels(spec: PoseSpec) -> Posture:
    """On both knees and the backs of the feet, the seat over the heels, both hands on the ground
    ahead to carry the weight.
    """
    trunk, hip = 24.0, Point(0.0, 0.232)
    body = axes(trunk, -1, 0.0)
    hand = arm_to(Point(0.335, 0.03), _AHEAD, hip.plus(body.up, TRUNK), body)
    return Posture(trunk, -1, Leg(106, 128, 84), Leg(104, 128, 84), hand, hand, chin=-16, hip=hip)


def track_stance(spec: PoseSpec) -> Posture:
    """Bent down on the ground as on a block, one foot ahead, fingers at the line; the hands of
    learners, who have less bend in the hips, only just reach it.
    """
    trunk, hip = 4.0, Point(0.0, 0.47)
    body = axes(trunk, -1, 0.0)
    near = leg_to(Point(0.05, FOOT_HEIGHT), Point(1.0, 0.0), hip, body)
    far = leg_to(Point(-0.2, FOOT_HEIGHT + 0.045), Point(1.0, -0.63), hip, body)
    shoulder = hip.plus(body.up, TRUNK)
    hand = arm_to(Point(shoulder.x - 0.06, 0.168), Point(0.0, -1.0), shoulder, body)
    return Posture(trunk, -1, near, far, hand, hand, chin=-24, hip=hip)
