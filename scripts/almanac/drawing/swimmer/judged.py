"""A fault as two drawings of one body in one frame, right and wrong, so alike that a page can draw
what lies between: the numbers of the one move to those of the other. Seen from the side, from over
the water, or as from the deck, from above and the side.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from math import cos, hypot, radians, sin

from almanac.drawing.shapes import Spot, number
from almanac.drawing.swimmer.body import Words, spec_of
from almanac.drawing.swimmer.framing import RING, WIDTH
from almanac.drawing.swimmer.geometry import Axes, Point
from almanac.drawing.swimmer.limbs import View
from almanac.drawing.swimmer.poses import Pose, place_of, pose
from almanac.drawing.swimmer.scene import Scene, scene_parts
from almanac.drawing.swimmer.segments import ArmJoints, LegJoints, Posture, Skeleton
from almanac.drawing.swimmer.slips import from_above, slipped
from almanac.model.drawing import OPEN
from almanac.model.fault_drawing import FaultDrawing, WrongBody

DECK_ANGLE = 30.0
"""How steeply the deck looks down on the lane, in degrees; ours."""
_ROOM, _OVER, _UNDER = 0.1, 0.08, 0.14
_MOST_SCALE, _MOST_HEIGHT = 190.0, 170.0
_PAINT = re.compile(r' (?:fill|stroke|stroke-[a-z]+|paint-order)="[^"]*"')
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


@dataclass(frozen=True)
class Judged:
    """A body drawn right and wrong, element by element alike but for their numbers.

    ``shift`` is how far the joint that moves most moves from the one to the other, in standing
    heights as they are seen; ``scale`` how many units of the picture, which is 320 wide, a standing
    height takes. ``where`` is the place of the difference in the right one and in the wrong one,
    ``ring`` how far from it counts as there, ``level`` the height of the water line, None where it
    is seen from above.
    """

    right: tuple[str, ...]
    wrong: tuple[str, ...]
    height: float
    shift: float
    scale: float
    where: tuple[Spot, Spot]
    ring: float
    level: float | None

    @property
    def shift_px(self) -> float:
        """How far the joint that moves most moves, on a picture 320 px wide."""
        return self.shift * self.scale


def is_judged(choice: FaultDrawing) -> bool:
    """Whether a still picture can show the fault as more or less of something: where the wrong body
    differs in the angles of its joints or the size of its kick and in nothing else.
    """
    wrong = choice.wrong
    plain = WrongBody(says=wrong.says, slips=wrong.slips, size=wrong.size, view=wrong.view)
    return (
        bool(wrong.slips or wrong.size) and wrong == plain and choice.wrong_body.view == choice.view
    )


def judged(choice: FaultDrawing, *, deck: bool = False) -> Judged | None:
    """The two drawings of a fault; None where they are not of one make, or where it is seen from
    above and asked for as from the deck.
    """
    above = choice.view == "above"
    if not is_judged(choice) or (above and deck):
        return None
    words = Words(
        choice.position or "prone", choice.arms or "at-sides", choice.kick or "none", OPEN
    )
    # the page draws a rope along every lane that is seen from above, or it would tell the fault
    marks = () if above else tuple(choice.marks or ())
    right = pose(
        replace(spec_of(words, choice), marks=marks), from_above if above else None, above=above
    )
    spec = replace(spec_of(words, choice.wrong_body), marks=marks)

    def change(held: Posture) -> Posture:
        return slipped(from_above(held) if above else held, choice.wrong.slips)

    wrong = replace(pose(spec, change, above=above), wall=right.wall, edge=right.edge)
    if deck:
        right, wrong = from_deck(right), from_deck(wrong)
    view, height = _frame(right, wrong, choice.place)
    drawn = [_parts(choice, held, view, right) for held in (right, wrong)]
    if _make(drawn[0]) != _make(drawn[1]):
        return None
    return Judged(
        drawn[0],
        drawn[1],
        height,
        shift(right.skeleton, wrong.skeleton),
        view.height,
        (view.spot(place_of(right, choice.place)), view.spot(place_of(wrong, choice.place))),
        RING * view.height,
        None if above else view.y,
    )


def between(one: Judged, along: float) -> list[str]:
    """The drawing that lies ``along`` the way from right, 0, to wrong, 1; a little beyond each."""
    return [
        _blended(right, wrong, along) for right, wrong in zip(one.right, one.wrong, strict=True)
    ]


def _blended(right: str, wrong: str, along: float) -> str:
    others = iter(map(float, NUMBER.findall(wrong)))

    def moved(found: re.Match[str]) -> str:
        own = float(found[0])
        return number(own + along * (next(others) - own))

    return NUMBER.sub(moved, right)


def shift(right: Skeleton, wrong: Skeleton) -> float:
    """How far the joint that moves most moves between two skeletons, as it is seen, in standing
    heights.
    """
    return max(
        hypot(own.x - other.x, own.y - other.y)
        for own, other in zip(_joints(right), _joints(wrong), strict=True)
    )


def _joints(bones: Skeleton) -> tuple[Point, ...]:
    return (bones.hip, bones.shoulder, bones.head, bones.vertex, *bones.near_leg, *bones.far_leg,
            *bones.near_arm, *bones.far_arm)  # fmt: skip


def from_deck(held: Pose) -> Pose:
    """A pose as it is seen from the deck: tilted about the length of the pool, so that what is near
    stands lower in the picture.
    """
    bones = held.skeleton

    tilted = Skeleton(
        hip=_tilted(bones.hip),
        shoulder=_tilted(bones.shoulder),
        head=_tilted(bones.head),
        vertex=_tilted(bones.vertex),
        near_leg=LegJoints(*map(_tilted, bones.near_leg)),
        far_leg=LegJoints(*map(_tilted, bones.far_leg)),
        near_arm=ArmJoints(*map(_tilted, bones.near_arm)),
        far_arm=ArmJoints(*map(_tilted, bones.far_arm)),
        trunk_axes=_turned(bones.trunk_axes),
        head_axes=_turned(bones.head_axes),
        arch=bones.arch,
    )
    return replace(held, skeleton=tilted)


def _turned(own: Axes) -> Axes:
    return Axes(_tilted(own.up), _tilted(own.front), _tilted(own.near))


def _tilted(point: Point) -> Point:
    down = radians(DECK_ANGLE)
    return Point(
        point.x,
        point.y * cos(down) - point.z * sin(down),
        point.z * cos(down) + point.y * sin(down),
    )


def _frame(right: Pose, wrong: Pose, place: str) -> tuple[View, float]:
    """One frame for both, with the ring that tells the place: as large as its height and width
    allow.
    """
    ends = [*_joints(right.skeleton), *_joints(wrong.skeleton)]
    ringed = place_of(wrong, place)
    xs = [*(end.x for end in ends), ringed.x - RING + _ROOM / 2, ringed.x + RING - _ROOM / 2]
    ys = [*(end.y for end in ends), ringed.y + RING + 0.02 - _OVER, ringed.y - RING - 0.02 + _UNDER]
    if right.wall:
        xs.append(right.wall[0])
    left, end = min(xs) - _ROOM, max(xs) + _ROOM
    up = max(max(ys) + _OVER, 0.09)
    down = max(_UNDER, _UNDER - min(ys))
    scale = min(_MOST_SCALE, WIDTH / (end - left), _MOST_HEIGHT / (up + down))
    middle = (WIDTH - (left + end) * scale) / 2
    return View(middle, up * scale, scale), (up + down) * scale


def _parts(choice: FaultDrawing, held: Pose, view: View, like: Pose) -> tuple[str, ...]:
    """Painted in the order of the right one: an arm that comes nearer is no other drawing."""
    scene = Scene(held, choice.gear or ())
    parts = scene_parts(scene, view, calm=True, still=True, like=like)
    return tuple(_PAINT.sub("", part) for part in parts)


def _make(parts: tuple[str, ...]) -> list[str]:
    """What the elements are but for their numbers."""
    return [NUMBER.sub("#", part) for part in parts]
