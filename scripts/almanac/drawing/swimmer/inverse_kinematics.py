"""Joint angles from places: which angles bring an ankle to the wall or a hand to the ground.

Only for a body that is not rolled, whose limbs move in the picture's plane.
"""

from __future__ import annotations

from math import acos, atan2, degrees, hypot

from almanac.drawing.swimmer.geometry import Axes, Point
from almanac.drawing.swimmer.segments import FOREARM, SHANK, THIGH, UPPER_ARM, Arm, Leg

REACH = 0.9995
"""The part of its length at which a limb counts as straight: what is farther is reached towards."""


def towards(start: Point, end: Point) -> Point:
    """The direction from one point to another, not of unit length."""
    return Point(end.x - start.x, end.y - start.y)


def flexion_of(way: Point, body: Axes) -> float:
    """The flexion, -180 to 180, at which a limb of the body points in the direction ``way``."""
    along_front = way.x * body.front.x + way.y * body.front.y
    along_up = way.x * body.up.x + way.y * body.up.y
    return degrees(atan2(along_front, -along_up))


def _triangle(start: Point, end: Point, first: float, second: float) -> tuple[float, float]:
    """The angle at ``start`` of a bent limb that ends at ``end``, and how far its joint is bent."""
    far, near = (first + second) * REACH, abs(first - second) + 1e-6
    length = min(max(hypot(end.x - start.x, end.y - start.y), near), far)
    lean = (first**2 + length**2 - second**2) / (2 * first * length)
    inside = (first**2 + second**2 - length**2) / (2 * first * second)
    return degrees(acos(min(1.0, lean))), 180 - degrees(acos(max(-1.0, inside)))


def _turn(angle: float) -> float:
    return (angle + 180) % 360 - 180


def leg_to(ankle: Point, toes: Point, hip: Point, body: Axes) -> Leg:
    """The leg whose ankle is at ``ankle`` with the toes in the direction ``toes``; the knee bends
    to the belly.
    """
    lean, knee = _triangle(hip, ankle, THIGH, SHANK)
    thigh = flexion_of(towards(hip, ankle), body) + lean
    return Leg(_turn(thigh), knee, _turn(thigh - knee + 90 - flexion_of(toes, body)))


def arm_to(wrist: Point, hand: Point, shoulder: Point, body: Axes) -> Arm:
    """The arm whose wrist is at ``wrist`` with the hand in the direction ``hand``; the elbow bends
    to the belly.
    """
    lean, elbow = _triangle(shoulder, wrist, UPPER_ARM, FOREARM)
    upper = flexion_of(towards(shoulder, wrist), body) - lean
    return Arm(_turn(upper), elbow, wrist=_turn(flexion_of(hand, body) - upper - elbow))
