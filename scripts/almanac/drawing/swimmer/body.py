"""The body figure: a side view of a swimmer at the water line, as SVG text."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from almanac.drawing.document import checked_identifier, document
from almanac.drawing.shapes import at, number, path
from almanac.drawing.swimmer.description import description, title_words
from almanac.drawing.swimmer.framing import WIDTH, frame_of, view_of
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
from almanac.drawing.swimmer.poses import Pose, pose
from almanac.drawing.swimmer.resolve_pose import resolve_pose
from almanac.drawing.swimmer.scenery import backdrop, waterline
from almanac.drawing.swimmer.trunk import short_path, suit_path, trunk_path
from almanac.drawing.swimmer.undrawn import undrawn_drawing
from almanac.model.drawing import OPEN, DrawingChoice, undrawn_words


def body_drawing(
    *,
    position: str,
    arms: str,
    kick: str,
    gear: Sequence[str] = (),
    setting: str | None = None,
    moment: int = 2,
    identifier: str = "body",
    stroke: str = OPEN,
    posture: str | None = None,
    wall: str | None = None,
    face: str | None = None,
    together: bool = False,
    one_leg: bool = False,
    titles: Mapping[str, str] | None = None,
) -> str:
    """The body figure as an SVG element that scales to its container.

    ``position``, ``arms``, ``kick`` and ``stroke`` are words of the vocabularies, ``gear`` ids of
    gear (what cannot be drawn is still named in the description), all from ``setting`` to
    ``one_leg`` but ``identifier`` and ``stroke`` those of a drill's `figure`; ``stroke`` says which
    way the face looks on the side and in rotation. ``identifier`` begins the ids of title and
    description and must be unique on the page.

    Where one of the words cannot be drawn, a neutral picture says so: with the title of the word
    where ``titles`` has it by field, else with the word itself.
    """
    checked_identifier(identifier)
    choice = DrawingChoice(setting, posture, wall, face)
    undrawn = dict(undrawn_words(position, arms, kick, stroke, choice))
    if undrawn:
        return undrawn_drawing({**undrawn, **(titles or {})}, identifier)
    worn = tuple(gear)
    spec = resolve_pose(
        position=position,
        arms=arms,
        kick=kick,
        setting=setting,
        moment=moment,
        gear=worn,
        stroke=stroke,
        posture=posture,
        wall=wall,
        face=face,
        together=together,
        one_leg=one_leg,
    )
    held = pose(spec)
    view = view_of(held, worn)
    layers = [*body_layers(held, view), *gear_layers(held, view, worn)]
    parts = [*backdrop(held, view), *painted(layers), *waterline(held, view)]
    if spec.position == "rotating" and spec.hold == "lying":
        parts.append(turning(held, view))
    title_and_description = (title_words(spec), description(held, worn))
    return document("body", WIDTH, frame_of(held).height, identifier, title_and_description, parts)


def painted(layers: list[Layer]) -> list[str]:
    """The elements of all layers, the farthest first."""
    return [part for _, elements in sorted(layers, key=lambda layer: layer[0]) for part in elements]


def body_layers(held: Pose, view: View) -> list[Layer]:
    """Limbs, trunk and head, each with its depth."""
    bones = held.skeleton
    far = "near" if held.turned else "far"
    far_leg = path(far, leg_path(view, bones.far_leg))
    far_short = path(f"{far}-suit", short_path(view, bones.far_leg))
    trunk = [path("trunk", trunk_path(view, bones)), path("near-suit", suit_path(view, bones))]
    near_short = path("near-suit", short_path(view, bones.near_leg))
    return [
        (FAR_LEG, [far_leg, far_short]),
        (NEAR_LEG, [path("near", leg_path(view, bones.near_leg))]),
        (0.0, [*trunk, near_short, *([far_short] if held.turned else [])]),
        (HEAD, head(view, bones, goggles=held.spec.wet)),
        (depth(bones.far_arm), [path(far, arm_path(view, bones.far_arm))]),
        (depth(bones.near_arm), [path("near", arm_path(view, bones.near_arm))]),
    ]


def turning(held: Pose, view: View) -> str:
    """A bent arrow with two heads above the hips: the body turns from side to side."""
    x, y = view.spot(held.skeleton.hip.plus(Point(-0.08, 0.2)))
    r = 0.052 * view.height
    d = f"M{at(x - r, y)}A{number(r)} {number(r)} 0 0 1 {at(x + r, y)}"
    for end in (x - r, x + r):
        d += f"M{at(end - 3.5, y - 4)}L{at(end, y + 1)}L{at(end + 3.5, y - 4)}"
    return path("arrow", d)
