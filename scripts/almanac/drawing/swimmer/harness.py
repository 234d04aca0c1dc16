"""Gear that pulls at a belt: a parachute on a line, a cord to the wall, a pulley tower on the
deck.
"""

from __future__ import annotations

from almanac.drawing.shapes import Disc, Spot, at, circle, element, path, polyline
from almanac.drawing.swimmer.framing import frame_of
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.limbs import Layer, View, between
from almanac.drawing.swimmer.pose_spec import DECK
from almanac.drawing.swimmer.poses import Pose
from almanac.drawing.swimmer.scenery import wall

BEHIND_ALL, BEHIND_LEGS, ON_TRUNK = -0.5, -0.01, 0.012
PARACHUTE_RADIUS = 15.0


def _waist(held: Pose) -> Point:
    return between(held.skeleton.hip, held.skeleton.shoulder, 0.3)


def _seated(held: Pose) -> bool:
    return held.spec.hold in ("seated", "reclined")


def ring(held: Pose, view: View) -> Spot:
    """Where a line leaves the belt: at the back, or in front of a swimmer who sits over the
    water.
    """
    side = 0.05 if _seated(held) else -0.052
    return view.spot(_waist(held).plus(held.skeleton.trunk_axes.front, side))


def belt(held: Pose, view: View) -> Layer:
    """A belt around the waist with the ring that a line is tied to."""
    axes, middle = held.skeleton.trunk_axes, _waist(held)
    across, half = (axes.front, 0.049) if abs(axes.near.z) > 0.5 else (axes.near, 0.07)
    ends = [view.spot(middle.plus(across, half)), view.spot(middle.plus(across, -half))]
    strap = [
        path("gear-rim", polyline(ends), stroke_width=6.4),
        path("gear-strap", polyline(ends), stroke_width=4),
    ]
    return ON_TRUNK, [*strap, path("gear", circle(Disc(*ring(held, view), 2.2)))]


def parachute(held: Pose, view: View) -> list[Layer]:
    """A drogue on a line from the belt, open towards the swimmer, behind the feet; nothing on dry
    land.
    """
    if not held.spec.wet:
        return []
    r, mouth, start = PARACHUTE_RADIUS, 46.0, ring(held, view)
    y = (
        start[1] + 8
        if held.spec.hold in ("upright", "wading")
        else max(start[1] + 8, view.y + r + 4)
    )
    knot = (mouth + 22, y)
    lines = polyline([start, knot, (mouth, y)]) + polyline([(mouth, y - r), knot, (mouth, y + r)])
    cloth = (
        f"M{at(mouth, y - r)}C{at(mouth - 22, y - r)} {at(mouth - 32, y - 6)} {at(mouth - 32, y)}"
        f"C{at(mouth - 32, y + 6)} {at(mouth - 22, y + r)} {at(mouth, y + r)}"
        f"Q{at(mouth + 6, y)} {at(mouth, y - r)}Z"
    )
    seams = "".join(
        f"M{at(mouth, y + side * 5)}Q{at(mouth - 18, y + side * 7)} {at(mouth - 30, y + side)}"
        for side in (-1, 1)
    )
    return [
        (BEHIND_LEGS, [path("gear-line", lines)]),
        (BEHIND_ALL, [path("gear", cloth), path("gear-line", seams, stroke_width=0.8)]),
        belt(held, view),
    ]


def _anchor(held: Pose, view: View) -> tuple[float, list[str]]:
    """What a line is fixed to behind the swimmer: the x of its face, and a wall where there is none
    yet.
    """
    if not held.spec.wet:
        return 14.0, [element("rect", "wall", x=9, y=view.y - 44, width=5, height=44)]
    if held.wall and held.wall[1] == "behind":
        return view.x + held.wall[0] * view.height, []
    top = view.y - DECK * view.height
    return 22.0, wall(0.0, 22.0, top, frame_of(held).height, facing_left=False)


def stretch_cord(held: Pose, view: View) -> list[Layer]:
    """An elastic cord from the belt to a ring in the wall behind; on dry land to a post."""
    face, parts = _anchor(held, view)
    start = ring(held, view)
    hook = (face, view.y + 6 if held.spec.wet else view.y - 34)
    low = (0.5 * (hook[0] + start[0]), max(hook[1], start[1]) + 3)
    cord = f"M{at(*hook)}Q{at(*low)} {at(*start)}"
    ring_in_wall = path("gear", circle(Disc(*hook, 3)))
    line = [
        path("gear-rim", cord, stroke_width=3.2),
        path("gear-strap", cord, stroke_width=1.4, stroke_dasharray="3 2"),
    ]
    return [(BEHIND_ALL, parts), (BEHIND_LEGS, [*line, ring_in_wall]), belt(held, view)]


def pulley_tower(held: Pose, view: View) -> list[Layer]:
    """A mast with a pulley behind the swimmer; the rope goes from the belt over it to a bucket of
    water.
    """
    face, parts = _anchor(held, view) if held.spec.wet else (34.0, [])
    foot = view.y - (DECK * view.height if held.spec.wet else 0.0)
    top = max(6.0, foot - 84)
    mast, wheel = face - 15, (face - 1, top + 7)
    frame = polyline([(mast, foot), (mast, top), (wheel[0], top), wheel])
    frame += polyline([(mast - 5, foot), (mast + 6, foot)])
    hang = (wheel[0] - 5, min(foot - 13, wheel[1] + 30))
    rope = polyline([(hang[0], wheel[1]), hang])
    rope += polyline([(wheel[0] + 4.5, wheel[1] + 2), ring(held, view)])
    half, deep = 4.5, 10.0
    pail = [(hang[0] - half, hang[1]), (hang[0] + half, hang[1])]
    pail += [(hang[0] + half - 1, hang[1] + deep), (hang[0] - half + 1, hang[1] + deep)]
    tower = [path("gear-line", frame, stroke_width=2.8), path("gear", circle(Disc(*wheel, 5)))]
    return [
        (BEHIND_ALL, parts + tower),
        (BEHIND_LEGS, [path("gear-line", rope), path("gear", polyline(pail) + "Z")]),
        belt(held, view),
    ]
