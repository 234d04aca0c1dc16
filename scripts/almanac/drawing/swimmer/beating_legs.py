"""Legs that a page can set beating: each joint is a group that turns about its own origin.

A leg is a chain of groups: thigh, shank and foot, each drawn along the x axis from its joint to the
left, as a swimmer on the back has it. The angle of the moment that is drawn stands with the group;
`site_src/styles/kick.css` moves the same angles through a whole cycle once the picture is asked
to, and a test holds them to those of `kicks`. What else turns a leg (the trunk's slope, a roll, the
other leg's side) stands with the group around it and does not move.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import atan2, cos, degrees, hypot, radians, sin

from almanac.drawing.paints import PAINTS
from almanac.drawing.shapes import Spot, at, number
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.kicks import BEATING, beat_of, sway_at
from almanac.drawing.swimmer.limbs import (
    FAR_LEG,
    NEAR_LEG,
    Layer,
    View,
    foot_path,
    shank_path,
    thigh_path,
)
from almanac.drawing.swimmer.pose_spec import PoseSpec
from almanac.drawing.swimmer.poses import Pose
from almanac.drawing.swimmer.segments import (
    FOOT_HEIGHT,
    FOOT_LENGTH,
    HEEL,
    SHANK,
    THIGH,
    LegJoints,
)
from almanac.drawing.swimmer.trunk import short_path

_HIP, _KNEE, _ANKLE = Point(0.0, 0.0), Point(-THIGH, 0.0), Point(-SHANK, 0.0)
_HEEL = Point(HEEL, -FOOT_HEIGHT)
FOOT = LegJoints(_HIP, Point(SHANK, 0.0), _HIP, _HEEL, Point(HEEL - FOOT_LENGTH, -FOOT_HEIGHT))
"""A foot in line with its shank, the ankle at the origin."""
_ASIDE = 60.0


def beats(spec: PoseSpec) -> bool:
    """Whether the legs of a body can be set beating: those of a flutter or a dolphin in water."""
    carried = spec.hold in ("lying", "upright", "reclined")
    return spec.kick in BEATING and spec.wet and carried and spec.wall != "leaving"


@dataclass(frozen=True)
class Chain:
    """The transforms of a leg: of its groups that stay, and of those that turn."""

    kind: str
    hip: str
    thigh: str
    knee: str
    shank: str
    ankle: str
    foot: str

    def around(self, thigh: str = "", shank: str = "", foot: str = "") -> str:
        """Elements of thigh, shank and foot in their groups."""
        lower = _joint(self.ankle, "kick-foot", self.foot, foot) if foot else ""
        if shank or foot:
            lower = _joint(self.knee, "kick-shank", self.shank, shank + lower)
        moved = f'<g class="kick-thigh"{self.thigh}>{thigh}{lower}</g>'
        return f'<g class="{self.kind}" transform="{self.hip}">{moved}</g>'


def _joint(stays: str, kind: str, turns: str, inner: str) -> str:
    return f'<g transform="{stays}"><g class="{kind}"{turns}>{inner}</g></g>'


def chain_of(held: Pose, view: View, *, near: bool) -> Chain:
    """The chain of a leg."""
    spec, bones = held.spec, held.skeleton
    leg = bones.near_leg if near else bones.far_leg
    aside = abs(held.posture.roll) > _ASIDE
    still = spec.one_leg and not near
    beat = beat_of(spec.kick, spec.moment, spec.size, near=near)
    turned = 0.0 if aside or still else cos(radians(held.posture.roll))
    trunk, belly = held.posture.trunk, held.posture.belly
    thigh, long_thigh = _local(leg.hip, leg.knee, trunk, belly)
    shank, long_shank = _local(leg.knee, leg.ankle, trunk, belly)
    foot, _ = _local(leg.heel, leg.toe, trunk, belly)
    hip, knee, ankle = (angle * turned for angle in beat)
    mirror = "" if belly == 1 else " scale(1 -1)"
    lengths = long_thigh * view.height, (SHANK if aside else long_shank) * view.height
    return Chain(
        _kind(spec, near=near, aside=aside, still=still),
        f"translate({at(*view.spot(leg.hip))}) rotate({number(-trunk)}){mirror}"
        + _rotated(thigh - hip),
        _attribute(_rotated(hip)),
        f"translate({number(-lengths[0])})" + _rotated(shank - thigh - knee),
        _attribute(f" scale({long_shank / SHANK:.3f} 1)" if aside else _rotated(knee)),
        f"translate({number(-lengths[1])})" + _rotated(foot - shank - ankle),
        _attribute(_rotated(ankle)),
    )


def _kind(spec: PoseSpec, *, near: bool, aside: bool, still: bool) -> str:
    """The classes of a leg, by which a page knows how it moves."""
    if still:
        return "kick-still"
    kinds = ["kick-leg"]
    kinds += ["kick-late"] if spec.kick == "flutter" and not near else []
    kinds += ["kick-dolphin"] if spec.kick == "dolphin" else []
    kinds += [f"kick-{spec.size}"] if spec.size else []
    kinds += ["kick-aside"] if aside else ["kick-rolled"] if spec.roll else []
    return " ".join(kinds)


def _local(start: Point, end: Point, trunk: float, belly: int) -> tuple[float, float]:
    """The angle and the length of a limb as the picture shows it, in the trunk's own frame: 0 in
    line with it towards the feet, above 0 towards the belly.
    """
    x, y = end.x - start.x, end.y - start.y
    angle = radians(trunk)
    along, across = x * cos(angle) + y * sin(angle), (y * cos(angle) - x * sin(angle)) * belly
    return degrees(atan2(across, -along)), hypot(x, y)


def _rotated(angle: float) -> str:
    text = number((angle + 180) % 360 - 180)
    return "" if text == "0" else f" rotate({text})"


def _attribute(transform: str) -> str:
    return f' transform="{transform.strip()}"' if transform else ""


@lru_cache(maxsize=512)
def _segments(thigh: float, shank: float, scale: float) -> tuple[str, str, str]:
    """Path elements of a leg's three parts, of the lengths that the picture shows."""
    view = View(0.0, 0.0, scale)
    return (
        _path(thigh_path(view, _HIP, Point(-thigh, 0.0))),
        _path(shank_path(view, _HIP, Point(-shank, 0.0))),
        _path(foot_path(view, FOOT)),
    )


def _path(d: str) -> str:
    return f'<path d="{d}"/>'


def _painted(paint: str, inner: str) -> list[str]:
    """The parts of a leg with one outline round all of them: their edges first, then their fill."""
    look = PAINTS[paint]
    edge = f'fill="none" stroke="{look["stroke"]}" stroke-width="{look["stroke-width"]}"'
    fill = f'class="figure-{paint}" fill="{look["fill"]}"'
    return [f"<g {edge}>{inner}</g>", f"<g {fill}>{inner}</g>"]


def leg_layers(held: Pose, view: View) -> list[Layer]:
    """Both legs, each with its depth."""
    layers: list[Layer] = []
    for near, depth in ((False, FAR_LEG), (True, NEAR_LEG)):
        chain, leg = _chain_and_leg(held, view, near)
        paint = "near" if near or held.turned else "far"
        lengths = (
            round(_flat(leg.hip, leg.knee), 3),
            SHANK if "kick-aside" in chain.kind else round(_flat(leg.knee, leg.ankle), 3),
        )
        parts = _segments(*lengths, round(view.height, 2))
        layers.append((depth, _painted(paint, chain.around(*parts))))
    return layers


def short(held: Pose, view: View, *, near: bool) -> str:
    """The leg of the shorts, which goes with the thigh."""
    chain, leg = _chain_and_leg(held, view, near)
    paint = "near-suit" if near or held.turned else "far-suit"
    d = _short(round(_flat(leg.hip, leg.knee), 3), round(view.height, 2))
    pairs = " ".join(f'{key}="{value}"' for key, value in PAINTS[paint].items())
    return chain.around(thigh=f'<path class="figure-{paint}" {pairs} d="{d}"/>')


@lru_cache(maxsize=512)
def _short(thigh: float, scale: float) -> str:
    return short_path(View(0.0, 0.0, scale), LegJoints(_HIP, Point(-thigh, 0.0), *(_HIP,) * 3))


def on_feet(held: Pose, view: View, worn: str) -> list[Layer]:
    """Something worn on both feet, its elements drawn on ``FOOT``."""
    return [
        (
            depth + 0.0001,
            swaying(held, view, [chain_of(held, view, near=near).around(foot=worn)]),
        )
        for near, depth in ((False, FAR_LEG), (True, NEAR_LEG))
    ]


def _chain_and_leg(held: Pose, view: View, near: bool) -> tuple[Chain, LegJoints]:
    leg = held.skeleton.near_leg if near else held.skeleton.far_leg
    return chain_of(held, view, near=near), leg


def _flat(start: Point, end: Point) -> float:
    return hypot(end.x - start.x, end.y - start.y)


def swaying(held: Pose, view: View, elements: list[str]) -> list[str]:
    """Elements of trunk or legs that sway about the shoulders in a dolphin; all others as they
    are.
    """
    if held.spec.kick != "dolphin" or held.spec.hold != "lying" or not elements:
        return elements
    spot: Spot = view.spot(held.skeleton.shoulder)
    way = -sway_at(held.spec.moment) * held.posture.belly
    kind = "kick-sway" if held.posture.belly == 1 else "kick-sway kick-prone"
    back = f"rotate({number(-way)}) translate({at(-spot[0], -spot[1])})"
    inner = f'<g transform="{back}">{"".join(elements)}</g>'
    turns = _attribute(_rotated(way))
    return [_joint(f"translate({at(*spot)})", kind, turns, inner)]
