"""Points and directions that a body is drawn by.

Coordinates are in standing heights: x along the pool, y up, z towards the viewer. Angles are in
degrees.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, hypot, radians, sin
from typing import NamedTuple


class Point(NamedTuple):
    """A place or a direction, in standing heights."""

    x: float
    y: float
    z: float = 0.0

    def plus(self, way: Point, length: float = 1.0) -> Point:
        """The point ``length`` along ``way`` from here."""
        return Point(self.x + length * way.x, self.y + length * way.y, self.z + length * way.z)

    def distance(self, other: Point) -> float:
        """The distance to another point."""
        return hypot(self.x - other.x, self.y - other.y, self.z - other.z)


def blend(one: Point, weight: float, other: Point, other_weight: float) -> Point:
    """The weighted sum of two directions."""
    return Point(0.0, 0.0, 0.0).plus(one, weight).plus(other, other_weight)


@dataclass(frozen=True)
class Axes:
    """Unit directions of a part of the body: towards the head, to the belly, to the near side."""

    up: Point
    front: Point
    near: Point

    def along(self, flexion: float) -> Point:
        """The direction in the side plane, 0 towards the feet, 90 to the belly."""
        return blend(self.up, -cos(radians(flexion)), self.front, sin(radians(flexion)))


def axes(direction: float, belly: int, roll: float) -> Axes:
    """The axes of a part that lies in ``direction`` and is turned by ``roll`` about it."""
    angle, turn = radians(direction), radians(roll)
    front, side = Point(-belly * sin(angle), belly * cos(angle)), Point(0.0, 0.0, 1.0)
    return Axes(
        up=Point(cos(angle), sin(angle)),
        front=blend(front, cos(turn), side, sin(turn)),
        near=blend(side, cos(turn), front, -sin(turn)),
    )
