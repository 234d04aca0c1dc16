"""How large a body is drawn and where: the figure's frame, its water line or ground, and the
scale.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from almanac.drawing.swimmer.limbs import View
from almanac.drawing.swimmer.pose_spec import PoseSpec
from almanac.drawing.swimmer.poses import Pose, place_of

WIDTH = 320.0
LOW, TALL = 140.0, 200.0
MARGIN = 8.0
LEGS_REACH, FINS_REACH = 0.62, 0.8
# Room kept free at the left for what is behind the swimmer, in the figure's units.
ROOM_BEHIND = {"parachute": 62.0, "stretch-cord": 46.0, "pulley-tower": 58.0}
WALL_ROOM = 30.0
WALL = 0.13
"""How much of a wall is shown beside others, in standing heights."""
BLOCK_WALL = 0.44
"""How much of one with a block on it."""
RING = 0.09
"""The radius of the ring round what is wrong, in standing heights."""
# Room over the head and over the water that gear and marks take, in standing heights.
OVER_HEAD = {"water-cup": 0.12, "snorkel": 0.18}
OVER_WATER = {
    "flags": 0.38,
    "block": 0.45,
    "rolls": 0.32,
    "eyes-shut": 0.24,
    "head-first": 0.22,
    "feet-first": 0.22,
}
WATCH_ROOM = 0.3
"""Room ahead of one who stands by a block, for a watch, in standing heights."""
_TALL_POSTURES = ("standing", "standing-on-toes")
_HALF_TALL_POSTURES = ("kneeling", "sitting-on-bench", "track-stance")
_ON_DECK = ("blocked", "edged", "kneed")
_ABOVE_WATER = ("flying", "blocked", "edged", "kneed", "entering")


@dataclass(frozen=True)
class Frame:
    """A figure's height, where its water line (or its ground) is, and a standing swimmer's
    height.
    """

    height: float
    level: float
    swimmer: float


class Box(NamedTuple):
    """How far a scene reaches from the hips along the pool, and over and under the surface, in
    standing heights.
    """

    left: float
    right: float
    up: float
    down: float


_FRAMES = {
    "wading": Frame(176.0, 54.0, 150.0),
    "hung": Frame(LOW, 66.0, 160.0),
    "planted": Frame(LOW, 22.0, 190.0),
    "gathered": Frame(176.0, 60.0, 150.0),
    "tucked": Frame(LOW, 40.0, 170.0),
    "flying": Frame(176.0, 118.0, 150.0),
    "blocked": Frame(TALL, 150.0, 130.0),
    "edged": Frame(176.0, 126.0, 140.0),
    "kneed": Frame(176.0, 126.0, 150.0),
    "entering": Frame(176.0, 126.0, 150.0),
}


def frame_of(held: Pose) -> Frame:
    """The frame that holds the pose with its arms at full reach."""
    spec = held.spec
    if held.above:
        return Frame(LOW, 0.5 * LOW, 184.0)
    if spec.setting == "deck-edge":
        return Frame(TALL, 142.0, 138.0)
    if spec.hold == "posed":
        return _on_ground(spec.posture, held.top)
    if spec.hold == "upright":
        return (
            Frame(TALL, 16.0, 128.0) if spec.setting == "under-water" else Frame(TALL, 64.0, 134.0)
        )
    if spec.hold in _FRAMES:
        return _FRAMES[spec.hold]
    if spec.setting == "on-land":
        return Frame(LOW, 122.0, 166.0)
    if spec.setting == "under-water":
        return Frame(LOW, 14.0, 150.0) if spec.rising else Frame(LOW, 16.0, 192.0)
    return Frame(LOW, 77.0, 166.0) if spec.rising else Frame(LOW, 52.0, 192.0)


def _on_ground(posture: str, top: float) -> Frame:
    """A frame as low as the posture allows; the body is smaller where raised arms ask for it."""
    if posture in _TALL_POSTURES:
        return Frame(TALL, 190.0, min(138.0, 184.0 / (top + 0.03)))
    height, level = (176.0, 164.0) if posture in _HALF_TALL_POSTURES else (LOW, 122.0)
    return Frame(height, level, min(184.0, (level - 6.0) / (top + 0.03)))


def view_of(held: Pose, gear: tuple[str, ...]) -> View:
    """Where the body lands: in the middle of the room that gear and walls leave, smaller where it
    must.
    """
    frame = frame_of(held)
    left = MARGIN + max((room for word, room in ROOM_BEHIND.items() if word in gear), default=0.0)
    right = WIDTH - MARGIN
    if held.wall and held.wall[1] == "behind":
        left = max(left, WALL_ROOM)
    if held.wall and held.wall[1] == "ahead":
        right = WIDTH - WALL_ROOM
    start, end = reach(held, gear)
    mast = "pulley-tower" in gear and held.spec.wet
    level = max(frame.level, 56.0) if mast else frame.level
    across, down = (
        (right - left) / (end - start),
        (frame.height - level - 3) / _depth(held.spec, gear),
    )
    scale = min(frame.swimmer, across, down)
    middle = (left + right - (start + end) * scale) / 2
    if held.wall and held.spec.hold in (
        "planted",
        "hung",
        "posed",
    ):  # no more wall than there needs to be
        face = held.wall[0] * scale
        middle = (
            min(middle, 96.0 - face)
            if held.wall[1] == "behind"
            else max(middle, WIDTH - 72.0 - face)
        )
    return View(middle, level, scale)


def _depth(spec: PoseSpec, gear: tuple[str, ...]) -> float:
    """How far below the water line the feet come in any moment of the kick."""
    if spec.hold == "wading":
        return 0.78
    if spec.hold == "planted":
        return 0.5
    if spec.hold in ("tucked", "gathered"):
        return 0.62
    if spec.hold not in ("lying", "upright") or spec.grounded:
        return 0.01
    depth = 0.97 if spec.hold == "upright" else 0.46 if spec.kick == "breaststroke" else 0.4
    depth += 0.14 if "fins" in gear else 0.025 if "drag-socks" in gear else 0.0
    depth += 0.1 if spec.hands == "sitting" else 0.0
    if spec.setting == "under-water":
        depth += 0.415 if spec.hold == "upright" else 0.4 if spec.rising else 0.21
    return depth


def box_of(held: Pose, gear: tuple[str, ...], place: str = "") -> Box:
    """What there is to see of a pose beside others: its body, gear and wall, the ring round a
    ``place``, and no more.
    """
    box = _box_without_ring(held, gear)
    if not place:
        return box
    x, y, _ = place_of(held, place)
    reach = RING + 0.015
    return Box(
        min(box.left, x - reach),
        max(box.right, x + reach),
        max(box.up, y + reach),
        max(box.down, reach - y),
    )


def _box_without_ring(held: Pose, gear: tuple[str, ...]) -> Box:
    spec = held.spec
    left, right = reach(held, gear)
    if held.wall:
        face = held.wall[0]
        wall = BLOCK_WALL if held.blocked else WALL
        behind = min(face - wall, held.span[0] - 0.05) if spec.hold in _ON_DECK else face - wall
        left, right = (left, face + WALL) if held.wall[1] == "ahead" else (behind, right)
    over = max((OVER_HEAD[word] for word in gear if word in OVER_HEAD), default=0.04)
    over = max([over, *(OVER_WATER[mark] - held.top for mark in spec.marks if mark in OVER_WATER)])
    over += 0.06 if spec.hold in _ABOVE_WATER else 0.0
    under = 0.13 if "fins" in gear else 0.03 if "drag-socks" in gear else 0.0
    under += 0.05 if spec.hold == "hung" else 0.0  # the seat hangs lower than any joint
    if held.above:
        rope = 0.27 if "rope" in spec.marks else 0.0
        return Box(left - 0.04, right + 0.04, max(held.top + 0.05, rope), 0.05 - held.bottom)
    low = 0.0 if not spec.wet or spec.hold == "posed" else held.bottom
    return Box(left - 0.04, right + 0.04, max(held.top + over, 0.09), max(0.06 + under - low, 0.12))


def reach(held: Pose, gear: tuple[str, ...]) -> tuple[float, float]:
    """How far the figure reaches left and right of the hips, the same at every moment of the
    kick.
    """
    start, end = _reach(held, gear)
    watched = held.blocked and bool({"stopwatch", "signal"} & set(held.spec.marks))
    return start, max(end, held.span[1] + WATCH_ROOM) if watched else end


def _reach(held: Pose, gear: tuple[str, ...]) -> tuple[float, float]:
    bones, hold = held.skeleton, held.spec.hold
    end = max(*(point.x for point in (*bones.near_arm, *bones.far_arm)), bones.vertex.x + 0.02)
    if held.wall and held.wall[1] == "ahead":
        end = max(end, held.wall[0])
    if hold in ("upright", "wading"):
        return -0.25, max(end, 0.3)
    if hold == "seated":
        return -0.66, max(end, 0.45)
    if hold in ("posed", "gathered", "tucked", *_ABOVE_WATER):
        return min(held.span[0] - 0.05, -0.25), max(held.span[1] + 0.05, end, 0.25)
    if held.spec.arms == "board" or "kickboard" in gear:
        end += 0.2 if held.spec.hands == "long-grip" else 0.15
    start = -(FINS_REACH if "fins" in gear else LEGS_REACH)
    if held.wall and held.wall[1] == "behind" and held.spec.wall:
        start = held.wall[0] if hold in ("planted", "hung") else min(start, held.wall[0])
    return start, max(end, 0.45) if hold == "hung" else end
