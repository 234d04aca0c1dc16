"""A posed body as SVG: limbs as rounded shapes, the head with a nose, cap and goggles. The trunk is
in ``trunk``.
"""

from __future__ import annotations

from dataclasses import dataclass

from almanac.drawing.shapes import Disc, Spot, at, capsule, circle, number, path, polyline, tapered
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.segments import HEAD_RADIUS, ArmJoints, LegJoints, Skeleton

# Half-widths of limbs in standing heights, and where along the segment; ours, by eye.
_THIGH = ((0.0, 0.05), (0.3, 0.0485), (0.7, 0.038), (1.0, 0.0325))
_SHANK = ((0.0, 0.0325), (0.28, 0.0345), (0.7, 0.023), (1.0, 0.0185))
_UPPER_ARM = ((0.0, 0.032), (0.35, 0.0295), (0.75, 0.0235), (1.0, 0.022))
_FOREARM = ((0.0, 0.022), (0.25, 0.0235), (0.75, 0.0165), (1.0, 0.0145))
_HAND = ((0.0, 0.0145), (0.35, 0.0165), (0.7, 0.013), (0.94, 0.007))

Layer = tuple[float, list[str]]
"""Elements with how near the viewer they are; painted from the farthest on."""
FAR_LEG, NEAR_LEG, HEAD = -0.03, -0.001, 0.03
"""Where legs and head are painted. The trunk, at 0, covers the top of the near thigh."""


@dataclass(frozen=True)
class View:
    """Where standing heights land in the figure: ``x``, ``y`` of the origin, ``height`` of a
    swimmer.
    """

    x: float
    y: float
    height: float

    def spot(self, point: Point) -> Spot:
        """The place of a point."""
        return self.x + point.x * self.height, self.y - point.y * self.height

    def disc(self, point: Point, radius: float) -> Disc:
        """A disc around a point, its radius in standing heights."""
        return Disc(*self.spot(point), radius * self.height)


def between(one: Point, other: Point, part: float) -> Point:
    """The point ``part`` of the way."""
    x, y, z = one
    return Point(x + (other.x - x) * part, y + (other.y - y) * part, z + (other.z - z) * part)


def beyond(one: Point, other: Point, length: float) -> Point:
    """The point ``length`` past ``other``, coming from ``one``."""
    return between(one, other, 1.0 + length / one.distance(other))


def _segment(view: View, one: Point, other: Point, widths: tuple[tuple[float, float], ...]) -> str:
    return tapered([view.disc(between(one, other, part), width) for part, width in widths])


def thigh_path(view: View, hip: Point, knee: Point) -> str:
    """Path data of a thigh."""
    return _segment(view, hip, knee, _THIGH)


def shank_path(view: View, knee: Point, ankle: Point) -> str:
    """Path data of a shank."""
    return _segment(view, knee, ankle, _SHANK)


def foot_path(view: View, leg: LegJoints) -> str:
    """Path data of a foot."""
    heel = view.disc(between(leg.heel, leg.ankle, 0.5), 0.0165)
    ball, tip = between(leg.heel, leg.toe, 0.68), between(leg.heel, leg.toe, 0.95)
    instep = between(leg.ankle, ball, 0.42)
    arch = view.disc(between(ball, instep, 0.22), 0.0125)
    sole = [
        view.disc(leg.ankle, 0.0185),
        view.disc(instep, 0.0175),
        arch,
        view.disc(between(tip, arch_point(leg), 0.1), 0.0085),
    ]
    tendon = capsule(view.disc(between(leg.ankle, leg.knee, 0.2), 0.0195), heel)
    return tendon + tapered(sole) + capsule(heel, arch)


def leg_path(view: View, leg: LegJoints) -> str:
    """Path data of a whole leg."""
    return (
        thigh_path(view, leg.hip, leg.knee)
        + shank_path(view, leg.knee, leg.ankle)
        + foot_path(view, leg)
    )


def arch_point(leg: LegJoints) -> Point:
    """A point above the ball of the foot that the toes slope up to."""
    return between(between(leg.heel, leg.toe, 0.68), leg.ankle, 0.42)


def arm_path(view: View, arm: ArmJoints, *, fist: bool = False) -> str:
    """Path data of a whole arm, its hand open or closed."""
    closed = circle(view.disc(between(arm.wrist, arm.fingertip, 0.24), 0.026))
    return (
        _segment(view, arm.shoulder, arm.elbow, _UPPER_ARM)
        + _segment(view, arm.elbow, arm.wrist, _FOREARM)
        + (closed if fist else _segment(view, arm.wrist, arm.fingertip, _HAND))
    )


def head_place(body: Skeleton, up: float, front: float, near: float = 0.0) -> Point:
    """A point of the head, in head radii from its centre towards vertex, face and near side."""
    axes, r = body.head_axes, HEAD_RADIUS
    return body.head.plus(axes.up, up * r).plus(axes.front, front * r).plus(axes.near, near * r)


def head(view: View, body: Skeleton, *, goggles: bool = True) -> list[str]:
    """The head as elements: the skull with its nose, the cap or the hair, the goggles or the
    eyes.
    """
    skull = view.disc(body.head, HEAD_RADIUS * 0.97)
    seen = (body.head_axes.front.x**2 + body.head_axes.front.y**2) ** 0.5
    jaw = capsule(
        view.disc(body.head, HEAD_RADIUS * 0.9),
        view.disc(head_place(body, -0.62, 0.28), HEAD_RADIUS * 0.5),
    )
    nose = capsule(
        view.disc(head_place(body, -0.02, 0.82), 0.011),
        view.disc(head_place(body, -0.22, 1.08), 0.0075),
    )
    parts = [path("near", circle(skull) + jaw + (nose if seen > 0.4 else ""))]
    brow, nape = (0.5, 0.86), (-0.32, -0.94)
    if seen <= 0.4:
        ends = (
            view.spot(head_place(body, 0.36, 0.0, 0.9)),
            view.spot(head_place(body, 0.36, 0.0, -0.9)),
        )
    else:
        ends = view.spot(head_place(body, *brow)), view.spot(head_place(body, *nape))
    parts.append(path("near-suit", _cap(skull, *ends, view.spot(body.vertex))))
    return parts + _face(view, body, seen, goggles)


def _cap(skull: Disc, brow: Spot, nape: Spot, vertex: Spot) -> str:
    """The part of the skull on the vertex's side of the line from brow to nape."""
    turn = (vertex[0] - brow[0]) * (nape[1] - brow[1]) - (vertex[1] - brow[1]) * (nape[0] - brow[0])
    r = number(skull.r)
    return f"M{at(*brow)}A{r} {r} 0 0 {int(turn > 0)} {at(*nape)}Z"


def _face(view: View, body: Skeleton, seen: float, goggles: bool) -> list[str]:
    r = HEAD_RADIUS
    if seen > 0.4:
        eye = capsule(
            view.disc(head_place(body, 0.12, 0.62), r * 0.17),
            view.disc(head_place(body, 0.16, 0.72), r * 0.15),
        )
        strap = polyline(
            [view.spot(head_place(body, 0.16, 0.6)), view.spot(head_place(body, 0.26, -0.2))]
        )
        return [*([path("skin-line", strap)] if goggles else []), path("goggles", eye)]
    if body.head_axes.front.z < 0:  # the face is on the far side
        return []
    eyes = "".join(
        circle(view.disc(head_place(body, 0.1, 0.9, side), r * 0.17)) for side in (0.38, -0.38)
    )
    nose = polyline(
        [
            view.spot(head_place(body, up, 0.9, side))
            for up, side in ((-0.05, 0.0), (-0.3, 0.0), (-0.3, 0.13))
        ]
    )
    return [path("goggles", eyes), path("skin-line", nose)]


def depth(points: tuple[Point, ...]) -> float:
    """How near the viewer a limb is, the mean of its joints' z in standing heights: what has
    more is drawn later.
    """
    return sum(point.z for point in points) / len(points)
