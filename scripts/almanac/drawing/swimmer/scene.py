"""One body with what is around it: water or ground, gear, marks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from almanac.drawing.shapes import at, circle, number, path
from almanac.drawing.swimmer.beating_legs import beats, leg_layers, short, swaying
from almanac.drawing.swimmer.framing import RING
from almanac.drawing.swimmer.gear import gear_layers
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.limbs import (
    FAR_LEG,
    HEAD,
    NEAR_LEG,
    Layer,
    View,
    arm_path,
    depth,
    head,
    leg_path,
)
from almanac.drawing.swimmer.marks import BEHIND, OVER, marks
from almanac.drawing.swimmer.poses import Pose, place_of
from almanac.drawing.swimmer.scenery import backdrop, waterline
from almanac.drawing.swimmer.trunk import short_path, suit_path, trunk_path

Sign = Literal["", "wrong", "right"]


@dataclass(frozen=True)
class Scene:
    """A posed body, its gear, and what is said of it where it stands beside another.

    ``sign`` and ``place``: whether it is wrong or right, and where the two differ. ``mirrored``: it
    is drawn the other way round.
    """

    held: Pose
    worn: tuple[str, ...] = ()
    says: str = ""
    sign: Sign = ""
    place: str = ""
    mirrored: bool = False


def scene_parts(
    scene: Scene, view: View, *, calm: bool = False, still: bool = False, like: Pose | None = None
) -> list[str]:
    """The elements of a scene, the farthest first; ``calm``: without short waves; ``still``: with
    legs that no page can set going; ``like``: in the order in which this pose would be painted, so
    that the one drawing can move to the other.
    """
    held = scene.held
    layers = [*body_layers(held, view, still=still), *gear_layers(held, view, scene.worn)]
    if like:
        order = [*_depths(like), *(at for at, _ in gear_layers(like, view, scene.worn))]
        layers = [(at, own) for at, (_, own) in zip(order, layers, strict=True)]
    parts = [*backdrop(held, view, calm=calm), *marks(BEHIND, held, view), *painted(layers)]
    parts += [*waterline(held, view), *marks(OVER, held, view)]
    if scene.place:
        ring = circle(view.disc(place_of(held, scene.place), RING))
        parts += [path("ring-edge", ring), path("ring", ring)]
    if held.spec.position == "rotating" and held.spec.hold == "lying" and not scene.says:
        parts.append(turning(held, view))
    return parts


def painted(layers: list[Layer]) -> list[str]:
    """The elements of all layers, the farthest first."""
    return [part for _, elements in sorted(layers, key=lambda layer: layer[0]) for part in elements]


def body_layers(held: Pose, view: View, *, still: bool = False) -> list[Layer]:
    """Limbs, trunk and head, each with its depth."""
    sway = _as_they_are if still else swaying
    bones, fist = held.skeleton, held.spec.hands == "fists"
    far = "near" if held.turned else "far"
    trunk = [path("trunk", trunk_path(view, bones)), path("near-suit", suit_path(view, bones))]
    if beats(held.spec) and not still:
        far_short, near_short = (short(held, view, near=near) for near in (False, True))
        (_, far_leg), (_, near_leg) = leg_layers(held, view)
    else:
        far_leg, near_leg = (
            [path(far, leg_path(view, bones.far_leg))],
            [path("near", leg_path(view, bones.near_leg))],
        )
        far_short, near_short = (
            path(f"{far}-suit", short_path(view, bones.far_leg)),
            path("near-suit", short_path(view, bones.near_leg)),
        )
    middle = [*trunk, near_short, *([far_short] if held.turned else [])]
    drawn = [
        sway(held, view, [*far_leg, far_short]),
        sway(held, view, near_leg),
        sway(held, view, middle),
        head(view, bones, goggles=held.spec.wet),
        [path(far, arm_path(view, bones.far_arm, fist=fist))],
        [path("near", arm_path(view, bones.near_arm, fist=fist))],
    ]
    return list(zip(_depths(held), drawn, strict=True))


def _depths(held: Pose) -> list[float]:
    """The depth of each of the layers of a body."""
    bones = held.skeleton
    return [FAR_LEG, NEAR_LEG, 0.0, HEAD, depth(bones.far_arm), depth(bones.near_arm)]


def _as_they_are(held: Pose, view: View, elements: list[str]) -> list[str]:
    return elements


def turning(held: Pose, view: View) -> str:
    """A bent arrow with two heads above the hips: the body turns from side to side."""
    x, y = view.spot(held.skeleton.hip.plus(Point(-0.08, 0.2)))
    r = 0.052 * view.height
    d = f"M{at(x - r, y)}A{number(r)} {number(r)} 0 0 1 {at(x + r, y)}"
    for end in (x - r, x + r):
        d += f"M{at(end - 3.5, y - 4)}L{at(end, y + 1)}L{at(end + 3.5, y - 4)}"
    return path("arrow", d)
