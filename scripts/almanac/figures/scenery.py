"""What a body is in: frame and scale, water and its surface, walls with tiles, the deck, the ground."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from almanac.figures.limbs import View
from almanac.figures.plans import DECK, Plan
from almanac.figures.poses import Pose
from almanac.figures.shapes import at, element, number, path

WIDTH = 320.0
LOW, TALL = 140.0, 200.0
MARGIN = 8.0
LEGS_REACH, FINS_REACH = 0.62, 0.8
# Room kept free at the left for what is behind the swimmer, in the figure's units.
ROOM_BEHIND = {"parachute": 62.0, "stretch-cord": 46.0, "pulley-tower": 58.0}
WALL_ROOM = 30.0


@dataclass(frozen=True)
class Frame:
    """A figure's height, where its water line (or its ground) is, and a standing swimmer's height."""

    height: float
    level: float
    swimmer: float


def frame_of(held: Pose) -> Frame:
    """The frame that holds the pose with its arms at full reach."""
    if held.plan.setting == "deck-edge":
        return Frame(TALL, 142.0, 138.0)
    if held.plan.hold == "standing":
        return Frame(TALL, 190.0, 138.0)
    if held.plan.hold == "upright":
        return Frame(TALL, 16.0, 128.0) if held.plan.setting == "under-water" else Frame(TALL, 64.0, 134.0)
    if held.plan.setting == "on-land":
        return Frame(LOW, 122.0, 166.0)
    if held.plan.setting == "under-water":
        return Frame(LOW, 14.0, 150.0) if held.plan.rising else Frame(LOW, 16.0, 192.0)
    return Frame(LOW, 77.0, 166.0) if held.plan.rising else Frame(LOW, 52.0, 192.0)


def view_of(held: Pose, gear: tuple[str, ...]) -> View:
    """Where the body lands: in the middle of the room that gear and walls leave, smaller where it must."""
    frame = frame_of(held)
    left = MARGIN + max((room for word, room in ROOM_BEHIND.items() if word in gear), default=0.0)
    right = WIDTH - MARGIN
    if held.wall and held.wall[1] == "behind":
        left = max(left, WALL_ROOM)
    if held.wall and held.wall[1] == "ahead":
        right = WIDTH - WALL_ROOM
    start, end = reach(held, gear)
    mast = "pulley-tower" in gear and held.plan.wet
    level = max(frame.level, 56.0) if mast else frame.level
    across, down = (right - left) / (end - start), (frame.height - level - 3) / _depth(held.plan, gear)
    scale = min(frame.swimmer, across, down)
    return View((left + right - (start + end) * scale) / 2, level, scale)


def _depth(plan: Plan, gear: tuple[str, ...]) -> float:
    """How far below the water line the feet come in any moment of the kick."""
    if plan.hold not in ("lying", "upright") or plan.grounded:
        return 0.01
    depth = 0.97 if plan.hold == "upright" else 0.46 if plan.kick == "breaststroke" else 0.4
    depth += 0.14 if "fins" in gear else 0.025 if "drag-socks" in gear else 0.0
    if plan.setting == "under-water":
        depth += 0.415 if plan.hold == "upright" else 0.4 if plan.rising else 0.21
    return depth


def reach(held: Pose, gear: tuple[str, ...]) -> tuple[float, float]:
    """How far the figure reaches left and right of the hips, the same at every moment of the kick."""
    bones = held.skeleton
    end = max(*(point.x for point in (*bones.near_arm, *bones.far_arm)), bones.vertex.x + 0.02)
    if held.wall and held.wall[1] == "ahead":
        end = max(end, held.wall[0])
    if held.plan.hold in ("upright", "standing"):
        return -0.25, max(end, 0.3)
    if held.plan.hold == "seated":
        return -0.66, max(end, 0.45)
    if held.plan.arms == "board" or "kickboard" in gear:
        end += 0.15
    return -(FINS_REACH if "fins" in gear else LEGS_REACH), end


def backdrop(held: Pose, view: View) -> list[str]:
    """What is painted before the body: water, walls, deck or ground."""
    frame = frame_of(held)
    if not held.plan.wet:
        return _ground(held, view, frame)
    parts = [element("rect", "water", x=0, y=view.y, width=WIDTH, height=frame.height - view.y)]
    parts.append(path("ripple", _ripples(view.y, frame.height)))
    top = view.y - DECK * view.height
    if held.wall and held.wall[1] == "ahead":
        parts += wall(view.x + held.wall[0] * view.height, WIDTH, top, frame.height, facing_left=True)
    if held.wall and held.wall[1] == "behind":
        parts += wall(0.0, view.x + held.wall[0] * view.height, top, frame.height, facing_left=False)
    if held.edge is not None:
        parts += wall(view.x + held.edge * view.height, WIDTH, top, frame.height, facing_left=True)
    return parts


def waterline(held: Pose, view: View) -> list[str]:
    """The surface, painted over the body that lies in it, as far as there is water."""
    if not held.plan.wet:
        return []
    start, end = 0.0, WIDTH
    if held.edge is not None:
        end = view.x + held.edge * view.height
    if held.wall:
        x = view.x + held.wall[0] * view.height
        start, end = (start, x) if held.wall[1] == "ahead" else (x, end)
    return [path("surface", _waves(start, end, view.y, 1.1))]


def wall(start: float, end: float, top: float, bottom: float, *, facing_left: bool) -> list[str]:
    """A pool wall from ``top`` to ``bottom`` with tiles and a coping that hangs a little over its face."""
    lip = 2.5
    left, right = (start - lip, end) if facing_left else (start, end + lip)
    lines = "".join(f"M{at(start, y)}H{number(end)}" for y in _steps(top + 13, bottom, 12))
    for row, y in enumerate(_steps(top + 13, bottom, 12)):
        first = start + (8 if row % 2 else 14)
        lines += "".join(f"M{at(x, y)}V{number(min(y + 12, bottom))}" for x in _steps(first, end, 14))
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
        d += f"Q{at(start + (index + 0.5) * step, y + 2 * bend)} {at(start + (index + 1) * step, y)}"
    return d


def _ripples(top: float, bottom: float) -> str:
    """Path data of a few short waves below the surface."""
    spots = ((24, 0.42), (92, 0.78), (150, 0.9), (204, 0.62), (262, 0.84), (290, 0.36), (44, 0.9))
    return "".join(_waves(x, x + 22, top + part * (bottom - top), 0.8) for x, part in spots)


def _ground(held: Pose, view: View, frame: Frame) -> list[str]:
    floor = [
        element("rect", "wall", x=0, y=view.y, width=WIDTH, height=frame.height - view.y),
        path("arrow", f"M{at(0, view.y)}H{number(WIDTH)}"),
    ]
    if held.wall:
        x = view.x + held.wall[0] * view.height
        floor.append(element("rect", "wall", x=x, y=0, width=WIDTH - x, height=view.y))
        floor.append(path("tiles", "".join(f"M{at(x, y)}H{number(WIDTH)}" for y in _steps(10, view.y, 14))))
    return floor
