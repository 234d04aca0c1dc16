"""Bodies that sit or kneel on dry ground or on a bench."""

from __future__ import annotations

from almanac.drawing.swimmer.arms import Pair, arms
from almanac.drawing.swimmer.geometry import Axes, Point, axes
from almanac.drawing.swimmer.grounded import AHEAD, BACK, IDLE, placed, shoulder_over
from almanac.drawing.swimmer.inverse_kinematics import arm_to, leg_to
from almanac.drawing.swimmer.pose_spec import PoseSpec
from almanac.drawing.swimmer.segments import FOOT_HEIGHT, THIGH, Arm, Leg, Posture

SEAT = 0.232
"""The height of a bench."""


def _seated_arms(spec: PoseSpec, hip: Point, body: Axes, wrist: Point, hand: Point) -> Pair:
    shoulder = shoulder_over(hip, body)
    rest = (
        arm_to(wrist, hand, shoulder, body),
        arm_to(wrist.plus(BACK, 0.025), hand, shoulder, body),
    )
    if spec.arms in IDLE:
        return rest
    near, far = arms(spec.arms, "upright")
    if spec.arms in ("one-extended", "one-arm-strokes"):
        return (near, rest[1]) if near.shoulder > far.shoulder else (rest[0], far)
    return near, far


def _on_the_floor(
    spec: PoseSpec, lean: float, feet: tuple[tuple[Point, Point], ...], wrist: Point, chin: float
) -> Posture:
    """Seated with the hands behind; ``feet`` are where both ankles are and where the toes point."""
    hip, body = Point(0.0, 0.07), axes(lean, -1, 0.0)
    near, far = (leg_to(ankle, toes, hip, body) for ankle, toes in feet)
    hands = _seated_arms(spec, hip, body, wrist, Point(-1.0, -0.12))
    return placed(lean, -1, hip, (near, far), hands, chin)


def sitting(spec: PoseSpec) -> Posture:
    """Legs long, the feet pointed; the hands behind."""
    feet = (Point(0.487, 0.052), Point(1.0, 0.5)), (Point(0.48, 0.054), Point(1.0, 0.62))
    return _on_the_floor(spec, 106, feet, Point(-0.2, 0.032), 8.0)


def sitting_bent(spec: PoseSpec) -> Posture:
    """Knees at about a right angle, feet flat; the hands behind."""
    feet = (Point(0.32, FOOT_HEIGHT), AHEAD), (Point(0.36, FOOT_HEIGHT), AHEAD)
    return _on_the_floor(spec, 104, feet, Point(-0.19, 0.032), 6.0)


def on_bench(spec: PoseSpec) -> Posture:
    """Thighs level on a bench, feet flat on the ground; the hands on the thighs."""
    hip, body = Point(0.0, SEAT + 0.068), axes(91, -1, 0.0)
    near = leg_to(Point(0.25, FOOT_HEIGHT), AHEAD, hip, body)
    far = leg_to(Point(0.29, FOOT_HEIGHT), AHEAD, hip, body)
    return placed(
        91,
        -1,
        hip,
        (near, far),
        _seated_arms(spec, hip, body, hip.plus(Point(0.15, 0.066)), Point(1.0, -0.25)),
    )


def kneeling(spec: PoseSpec) -> Posture:
    """One knee down, its thigh just past upright; the other foot ahead, a hand on that knee."""
    hip, body = Point(0.0, 0.034 + THIGH * 0.995), axes(91, -1, 0.0)
    near = Leg(-5, 91, 70)
    far = leg_to(Point(0.258, FOOT_HEIGHT), AHEAD, hip, body)
    near_arm, far_arm = arms(spec.arms, "upright")
    if spec.arms in IDLE:
        near_arm = Arm(-4, 12)
        far_arm = arm_to(
            hip.plus(Point(0.225, 0.06)), Point(1.0, -0.5), shoulder_over(hip, body), body
        )
    return placed(91, -1, hip, (near, far), (near_arm, far_arm))
