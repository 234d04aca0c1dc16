"""What a body is in or on: water and its surface, walls with tiles, the deck, the ground, a
bench.
"""

from __future__ import annotations

from math import ceil

from almanac.drawing.shapes import at, circle, element, number, path
from almanac.drawing.swimmer.framing import WIDTH, frame_of
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.land import ROLL_RADIUS
from almanac.drawing.swimmer.limbs import View, between
from almanac.drawing.swimmer.pose_spec import DECK
from almanac.drawing.swimmer.poses import Pose
from almanac.drawing.swimmer.seated_on_land import SEAT


def backdrop(held: Pose, view: View, *, calm: bool = False) -> list[str]:
    """What is painted before the body: water, walls, deck or ground; no short waves where it is to
    be ``calm``.
    """
    frame = frame_of(held)
    if held.above:
        return _from_above(held, view, frame.height, calm=calm)
    if not held.spec.wet:
        return ground(held, view, frame.height)
    parts = [element("rect", "water", x=0, y=view.y, width=WIDTH, height=frame.height - view.y)]
    if not calm:
        parts.append(path("ripple", _ripples(view.y, frame.height)))
    top = view.y - DECK * view.height
    if held.wall and held.wall[1] == "ahead":
        parts += wall(
            view.x + held.wall[0] * view.height, WIDTH, top, frame.height, facing_left=True
        )
    if held.wall and held.wall[1] == "behind":
        parts += wall(
            0.0, view.x + held.wall[0] * view.height, top, frame.height, facing_left=False
        )
    if held.edge is not None:
        parts += wall(view.x + held.edge * view.height, WIDTH, top, frame.height, facing_left=True)
    if held.spec.hold == "wading":
        floor = view.spot(Point(0.0, held.skeleton.hip.y - 0.53))[1]
        parts.append(
            element("rect", "wall", x=0, y=floor, width=WIDTH, height=frame.height - floor)
        )
    return parts


def _from_above(held: Pose, view: View, height: float, *, calm: bool) -> list[str]:
    """Water, or a mat, all round the body, and the deck beyond a wall ahead."""
    kind = "water" if held.spec.wet else "wall"
    parts = [element("rect", kind, x=0, y=0, width=WIDTH, height=height)]
    if held.spec.wet and not calm:
        parts.append(path("ripple", _ripples(0.0, height)))
    if held.wall and held.wall[1] == "ahead":
        x = view.x + held.wall[0] * view.height
        parts.append(element("rect", "wall", x=x, y=0, width=WIDTH, height=height))
    return parts


def waterline(held: Pose, view: View) -> list[str]:
    """The surface, painted over the body that lies in it, as far as there is water."""
    if not held.spec.wet or held.above:
        return []
    start, end = 0.0, WIDTH
    if held.edge is not None:
        end = view.x + held.edge * view.height
    if held.wall:
        x = view.x + held.wall[0] * view.height
        start, end = (start, x) if held.wall[1] == "ahead" else (x, end)
    return [path("surface", _waves(start, end, view.y, 1.1))]


def wall(start: float, end: float, top: float, bottom: float, *, facing_left: bool) -> list[str]:
    """A pool wall from ``top`` to ``bottom`` with tiles and a coping that hangs a little over its
    face.
    """
    lip = 2.5
    left, right = (start - lip, end) if facing_left else (start, end + lip)
    lines = "".join(f"M{at(start, y)}H{number(end)}" for y in _steps(top + 13, bottom, 12))
    for row, y in enumerate(_steps(top + 13, bottom, 12)):
        first = start + (8 if row % 2 else 14)
        lines += "".join(
            f"M{at(x, y)}V{number(min(y + 12, bottom))}" for x in _steps(first, end, 14)
        )
    return [
        element("rect", "wall", x=start, y=top, width=end - start, height=bottom - top),
        path("tiles", lines),
        element("rect", "wall", x=left, y=top, width=right - left, height=5),
    ]


def _steps(start: float, end: float, by: float) -> list[float]:
    """Numbers from ``start`` to before ``end``."""
    return [start + by * count for count in range(max(0, ceil((end - start) / by)))]


def _waves(start: float, end: float, y: float, lift: float) -> str:
    """Path data of a gently waved line."""
    length = 11.0
    count = max(1, round((end - start) / length))
    step = (end - start) / count
    d = f"M{at(start, y)}"
    for index in range(count):
        bend = -lift if index % 2 else lift
        d += (
            f"Q{at(start + (index + 0.5) * step, y + 2 * bend)} {at(start + (index + 1) * step, y)}"
        )
    return d


def _ripples(top: float, bottom: float) -> str:
    """Path data of a few short waves below the surface."""
    spots = ((24, 0.42), (92, 0.78), (150, 0.9), (204, 0.62), (262, 0.84), (290, 0.36), (44, 0.9))
    return "".join(_waves(x, x + 22, top + part * (bottom - top), 0.8) for x, part in spots)


def ground(held: Pose, view: View, height: float) -> list[str]:
    """Dry ground, with the wall, the bench or the rolled towel that belongs to the posture."""
    parts = [
        element("rect", "wall", x=0, y=view.y, width=WIDTH, height=height - view.y),
        path("arrow", f"M{at(0, view.y)}H{number(WIDTH)}"),
    ]
    if held.wall:
        x = view.x + held.wall[0] * view.height
        start, end = (x, WIDTH) if held.wall[1] == "ahead" else (0.0, x)
        parts.append(element("rect", "wall", x=start, y=0, width=end - start, height=view.y))
        parts.append(
            path("tiles", "".join(f"M{at(start, y)}H{number(end)}" for y in _steps(10, view.y, 14)))
        )
    if held.spec.posture == "sitting-on-bench":
        parts += _bench(view)
    if held.spec.posture == "lying-over-roll":
        under = between(held.skeleton.hip, held.skeleton.shoulder, 0.8)
        parts.append(path("gear", circle(view.disc(Point(under.x, ROLL_RADIUS), ROLL_RADIUS))))
    return parts


def _bench(view: View) -> list[str]:
    """A plank on two feet."""
    left, top = view.spot(Point(-0.14, SEAT))
    width, thick = 0.26 * view.height, 0.03 * view.height
    foot, high = 0.025 * view.height, view.y - top - thick
    legs = [
        element("rect", "wall", x=x, y=top + thick, width=foot, height=high)
        for x in (left + foot, left + width - 2 * foot)
    ]
    return [*legs, element("rect", "wall", x=left, y=top, width=width, height=thick)]
