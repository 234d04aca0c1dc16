"""Gear in the hands: a kickboard, paddles, anything that is held."""

from __future__ import annotations

from almanac.drawing.shapes import capsule, path, polyline
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.limbs import Layer, View, between, beyond, depth
from almanac.drawing.swimmer.poses import Pose
from almanac.drawing.swimmer.segments import HAND

UNDER_HANDS, OVER_BODY, IN_HANDS = -0.2, 0.08, 0.0
_ALONG, _UP = Point(1.0, 0.0), Point(0.0, 1.0)
_HALF_BOARD = 0.12
# How far the middle of a board is ahead of the hands that lie on it.
_AHEAD = {"short-grip": -0.1, "middle-grip": 0.0, "long-grip": 0.1}


def hand_paddles(held: Pose, view: View) -> list[Layer]:
    """A flat plate along the palm of each hand."""
    layers: list[Layer] = []
    for arm in (held.skeleton.far_arm, held.skeleton.near_arm):
        start, end = between(arm.wrist, arm.fingertip, 0.2), beyond(arm.wrist, arm.fingertip, 0.02)
        x, y = (arm.fingertip.x - arm.wrist.x) / HAND, (arm.fingertip.y - arm.wrist.y) / HAND
        palm = Point(y, -x) if x >= 0 else Point(-y, x)
        plate = capsule(
            view.disc(start.plus(palm, 0.016), 0.008), view.disc(end.plus(palm, 0.016), 0.008)
        )
        layers.append(
            (depth(arm) + 0.002, [path("gear", plate, paint_order="stroke", stroke_width=2)])
        )
    return layers


def _board(view: View, middle: Point, way: Point) -> list[str]:
    ends = [view.disc(middle.plus(way, side * _HALF_BOARD), 0.0125) for side in (-1, 1)]
    return [path("gear", capsule(*ends), paint_order="stroke", stroke_width=2)]


def _hands(held: Pose) -> Point:
    """The middle between the hands."""
    near, far = held.skeleton.near_arm, held.skeleton.far_arm
    return between(
        between(near.wrist, near.fingertip, 0.7), between(far.wrist, far.fingertip, 0.7), 0.5
    )


def kickboard(held: Pose, view: View) -> list[Layer]:
    """A board under the hands that lie on it; upright in the water, or flat in the hands, of who
    holds it.
    """
    bones, word = held.skeleton, held.spec.arms
    leading = max((bones.near_arm, bones.far_arm), key=lambda arm: arm.fingertip.x)
    if word == "holding-gear" and held.spec.lie == "prone" and held.spec.hold == "lying":
        return [(UNDER_HANDS, _board(view, leading.fingertip.plus(_UP, -0.03), _UP))]
    if word == "crossed" and held.spec.lie == "supine":
        chest = between(bones.hip, bones.shoulder, 0.62).plus(_UP, 0.075)
        return [(OVER_BODY, _board(view, chest, _ALONG))]
    if word == "holding-gear":
        return [(OVER_BODY, _board(view, _hands(held), _ALONG))]
    if word not in ("board", "one-extended", "streamline"):
        return []
    hand = between(leading.wrist, leading.fingertip, 0.6)
    if leading.fingertip.x > bones.shoulder.x:
        middle = hand.plus(Point(_AHEAD.get(held.spec.hands, 0.06), -0.026))
        return [(UNDER_HANDS, _board(view, middle, _ALONG))]
    return [(OVER_BODY, _board(view, hand.plus(Point(-0.05, -0.024)), _ALONG))]


def held_block(held: Pose, view: View) -> list[Layer]:
    """A block in both hands: something is held, and it is not drawn what."""
    x, y = view.spot(_hands(held))
    w, h = 0.04 * view.height, 0.026 * view.height
    corners = [(x - w, y - h), (x + w, y - h), (x + w, y + h), (x - w, y + h)]
    return [(IN_HANDS, [path("gear", polyline(corners) + "Z")])]
