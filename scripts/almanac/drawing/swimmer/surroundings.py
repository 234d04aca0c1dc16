"""What stands around a body in a picture: lane rope, flags, starting block and ledge,
towels.
"""

from __future__ import annotations

from almanac.drawing.shapes import Disc, at, circle, element, number, path, polyline
from almanac.drawing.swimmer.framing import WIDTH
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.limbs import View
from almanac.drawing.swimmer.pose_spec import DECK
from almanac.drawing.swimmer.poses import Pose
from almanac.drawing.swimmer.tumbling import BLOCK_TOP
from almanac.drawing.swimmer.walls import GRIPS

_FLOAT, _FLOATS_APART = 3.6, 8.4


def rope(held: Pose, view: View) -> list[str]:
    """A lane rope behind the swimmer: floats on a line along the surface."""
    floats: list[list[str]] = [[], []]
    y = view.y - (0.22 * view.height if held.above else 2.5)
    count = int((WIDTH - 8.0) / _FLOATS_APART) + 1
    for place in range(count):
        disc = Disc(4.0 + place * _FLOATS_APART, y, _FLOAT)
        floats[place // 4 % 2].append(circle(disc))
    return [path("gear", "".join(floats[0])), path("wall", "".join(floats[1]))]


def flags(held: Pose, view: View) -> list[str]:
    """A pole with the line of flags that hangs over the lane: ahead of the swimmer, or behind one
    who has passed them on the way to a wall.
    """
    passed = held.wall is not None
    x = min(view.x + (-0.34 if passed else held.span[1]) * view.height + 62, WIDTH - 10)
    top = max(view.y - 0.34 * view.height, 5.0)
    line = f"M{at(x, view.y + 4)}V{number(top)}L{at(x - 46, top + 7)}"
    corners = ((0.0, 0.0), (-9.0, 0.0), (-4.5, 12.0))
    cloth = "".join(
        polyline([(x - start + dx, top + start * 0.152 + dy) for dx, dy in corners]) + "Z"
        for start in (3.0, 17.0, 31.0)
    )
    return [path("gear-line", line), path("gear", cloth)]


def block(held: Pose, view: View) -> list[str]:
    """A starting block on the wall behind the swimmer, with hand grips under its front edge."""
    if held.wall is None or held.wall[1] != "behind":
        return []
    face = view.x + held.wall[0] * view.height
    if held.spec.hold == "blocked":
        face = view.x + 0.19 * view.height
    top, foot = view.y - BLOCK_TOP * view.height, view.y - 0.045 * view.height
    back = max(face - 0.42 * view.height, -4.0)
    plate = [(back, top - 3), (face, top + 2), (face, top + 7), (back, top + 4)]
    grip = f"M{at(face - 2, top + 9)}V{number(view.y - GRIPS * view.height)}H{number(face + 3)}"
    wide, high = max(face - back - 16, 4.0), foot - top - 4
    return [
        element("rect", "wall", x=back + 6, y=top + 4, width=wide, height=high),
        path("wall", polyline(plate) + "Z"),
        path("gear-line", grip, stroke_width=2.2),
    ]


def ledge(held: Pose, view: View) -> list[str]:
    """A starting ledge on the wall behind: a wedge under the balls of the feet, and the strap that
    it hangs by.
    """
    if held.wall is None or held.wall[1] != "behind":
        return []
    face = view.x + held.wall[0] * view.height
    top, foot = view.y + 0.005 * view.height, view.y + 0.095 * view.height
    thick = 0.085 * view.height
    wedge = [(face, top), (face + 0.25 * thick, top), (face + thick, foot), (face, foot)]
    strap = f"M{at(face + 1.2, top)}V{number(view.y - DECK * view.height)}"
    return [path("gear-line", strap, stroke_width=2), path("gear", polyline(wedge) + "Z")]


def elbow_roll(held: Pose, view: View) -> list[str]:
    """A rolled towel between the upper elbow and the ribs of who lies on the side."""
    bones = held.skeleton
    elbow = max(bones.near_arm.elbow, bones.far_arm.elbow, key=lambda joint: joint.y)
    middle = Point((elbow.x * 2 + bones.shoulder.x) / 3, elbow.y - 0.058)
    return [path("gear", circle(view.disc(middle, 0.026)))]


def towel(held: Pose, view: View) -> list[str]:
    """A towel on the ground that runs from under the foremost toes."""
    x, y = view.spot(Point(held.skeleton.far_leg.toe.x, 0.0))
    folds = "".join(
        f"Q{at(x + 6 + 12 * fold, y - 9)} {at(x + 12 + 12 * fold, y - 2)}" for fold in range(2)
    )
    start, end = f"M{at(x - 22, y)}V{number(y - 2)}H{number(x)}", f"H{number(x + 52)}V{number(y)}Z"
    return [path("gear", start + folds + end)]
