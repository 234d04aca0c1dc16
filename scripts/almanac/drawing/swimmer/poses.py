"""From the words of an entry to a posed body: position, arms, kick, setting and moment to joints.

Heights are in standing heights with the water line at 0; on dry land the ground is at 0.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.inverse_kinematics import towards
from almanac.drawing.swimmer.pose_spec import PoseSpec
from almanac.drawing.swimmer.postures import posture
from almanac.drawing.swimmer.segments import Posture, Skeleton, skeleton
from almanac.drawing.swimmer.walls import Wall, wall_of


@dataclass(frozen=True)
class Pose:
    """A posed body and where it is.

    ``wall``: the x of a wall and whether it is ahead (to the right) or behind; ``edge``: the x of a
    deck edge, the deck to its right; ``above``: whether it is seen from over the water.
    """

    spec: PoseSpec
    posture: Posture
    skeleton: Skeleton
    wall: Wall | None
    edge: float | None
    above: bool = False

    @property
    def turned(self) -> bool:
        """Whether the body is rolled so far that it is seen from the front rather than from the
        side.
        """
        return abs(self.posture.roll) > 60

    @property
    def blocked(self) -> bool:
        """Whether a starting block takes the corner behind the body."""
        return "block" in self.spec.marks and self.wall is not None and self.wall[1] == "behind"

    @property
    def _ends(self) -> tuple[Point, ...]:
        bones = self.skeleton
        return (bones.vertex, *bones.near_arm, *bones.far_arm, *bones.near_leg, *bones.far_leg)

    @property
    def top(self) -> float:
        """The height of the highest joint."""
        return max(point.y for point in self._ends)

    @property
    def bottom(self) -> float:
        """The height of the lowest joint."""
        return min(point.y for point in self._ends)

    @property
    def span(self) -> tuple[float, float]:
        """The x of the joints farthest to the left and to the right."""
        xs = [point.x for point in self._ends]
        return min(xs), max(xs)


def pose(
    spec: PoseSpec, change: Callable[[Posture], Posture] | None = None, *, above: bool = False
) -> Pose:
    """The posed body, with the wall or the deck's edge that belongs to it; ``change`` is made to
    its joint angles; ``above``: seen from over the water.
    """
    angles = change(posture(spec)) if change else posture(spec)
    bones = skeleton(angles)
    edge = None if spec.setting != "deck-edge" else -0.2 if spec.hold == "seated" else -0.05
    return Pose(spec, angles, bones, wall_of(spec, bones), edge, above)


def place_of(held: Pose, place: str) -> Point:
    """Where a part of the body is, by its name in ``model.fault_drawing.PLACES``."""
    bones = held.skeleton
    near, far = bones.near_leg, bones.far_leg
    return {
        "head": bones.head,
        "waist": bones.hip.plus(towards(bones.hip, bones.shoulder), 0.45),
        "hip": bones.hip,
        "knee": near.knee,
        "foot": near.ankle.plus(towards(near.ankle, near.toe), 0.5),
        "far-foot": far.ankle.plus(towards(far.ankle, far.toe), 0.5),
        "elbow": bones.near_arm.elbow,
        "hand": bones.near_arm.wrist,
        "far-hand": bones.far_arm.wrist,
    }[place]
