"""The trunk as SVG, from its side or rolled, with shoulders, neck and swimming shorts."""

from __future__ import annotations

from math import hypot

from almanac.drawing.shapes import Disc, capsule, circle, tapered
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.limbs import View, between
from almanac.drawing.swimmer.segments import LegJoints, Skeleton


def _spine(body: Skeleton, part: float, forward: float) -> Point:
    if body.arch:
        forward += body.arch * (1 - (2 * part - 1) ** 2)
    return between(body.hip, body.shoulder, part).plus(body.trunk_axes.front, forward)


# Stations of the trunk: part of the way from hips to shoulders, how far to the front, half-depth,
# half-breadth.
_TRUNK = (
    (-0.1, -0.003, 0.043, 0.086),
    (0.0, -0.004, 0.0525, 0.098),
    (0.18, -0.003, 0.052, 0.09),
    (0.42, 0.002, 0.0475, 0.071),
    (0.72, 0.006, 0.057, 0.09),
    (0.9, 0.002, 0.047, 0.092),
    (1.02, 0.0, 0.034, 0.055),
)


def _trunk_discs(view: View, body: Skeleton, upto: float) -> list[Disc]:
    """The trunk's stations as discs as wide as the roll shows them: its sections are ellipses."""
    square = body.trunk_axes.near.z
    aside = max(0.0, 1.0 - square * square) ** 0.5
    return [
        view.disc(_spine(body, part, forward), hypot(deep * square, broad * aside))
        for part, forward, deep, broad in _TRUNK
        if part <= upto
    ]


def from_the_side(body: Skeleton) -> bool:
    """Whether the body is seen square from its side, not rolled."""
    return abs(body.trunk_axes.near.z) > 0.99


def trunk_path(view: View, body: Skeleton) -> str:
    """Path data of the trunk and the neck, narrow from the side and broader the more the body is
    rolled.
    """
    throat = view.disc(between(body.shoulder, body.head, 0.55), 0.03)
    if from_the_side(body):
        return tapered(_trunk_discs(view, body, 1.1)) + capsule(
            view.disc(_spine(body, 0.96, 0.0), 0.034), throat
        )
    return tapered(_trunk_discs(view, body, 0.95), cut=True) + _yoke(view, body, throat)


def _yoke(view: View, body: Skeleton, throat: Disc) -> str:
    """Path data of both shoulders and of what slopes up from them to the neck, as a rolled body
    shows them.
    """
    ends = [
        view.disc(arm.shoulder.plus(body.trunk_axes.up, -0.008), 0.031)
        for arm in (body.near_arm, body.far_arm)
    ]
    half = 0.5 * hypot(ends[0].x - ends[1].x, ends[0].y - ends[1].y)
    slope = [
        Disc(*view.spot(_spine(body, 0.97, 0.0)), half),
        view.disc(_spine(body, 1.07, 0.0), 0.044),
        throat,
    ]
    return capsule(*ends) + tapered(slope, cut=True)


def suit_path(view: View, body: Skeleton) -> str:
    """Path data of swimming shorts around the hips."""
    discs = _trunk_discs(view, body, 0.2)
    return tapered(discs, cut=True) + (circle(discs[0]) if from_the_side(body) else "")


def short_path(view: View, leg: LegJoints) -> str:
    """Path data of the leg of swimming shorts."""
    top = [
        view.disc(between(leg.hip, leg.knee, part), 0.0505 - part * 0.004)
        for part in (0.0, 0.16, 0.3)
    ]
    return circle(top[0]) + tapered(top, cut=True)
