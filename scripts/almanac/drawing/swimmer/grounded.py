"""What bodies on dry ground have in common: where the hands rest, where the shoulder is."""

from __future__ import annotations

from typing import Literal

from almanac.drawing.swimmer.arms import Pair
from almanac.drawing.swimmer.geometry import Axes, Point
from almanac.drawing.swimmer.segments import TRUNK, Leg, Posture

AHEAD, BACK, UP, DOWN = Point(1.0, 0.0), Point(-1.0, 0.0), Point(0.0, 1.0), Point(0.0, -1.0)
IDLE = ("at-sides", "free", "sculling", "holding-wall")
"""Words for which the hands rest on the ground, the bench or the body."""


def placed(
    trunk: float,
    belly: Literal[1, -1],
    hip: Point,
    both_legs: tuple[Leg, Leg],
    both_arms: Pair,
    chin: float = 0.0,
) -> Posture:
    """A body by how steep its trunk is, which way its front looks, its hips, legs and arms."""
    return Posture(trunk, belly, *both_legs, *both_arms, chin=chin, hip=hip)


def shoulder_over(hip: Point, body: Axes) -> Point:
    """Where the shoulder is of a body whose hips are known."""
    return hip.plus(body.up, TRUNK)
