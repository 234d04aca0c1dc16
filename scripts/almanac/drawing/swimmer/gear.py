"""Gear on feet and head and between the thighs; the list of all gear that can be drawn."""

from __future__ import annotations

from collections.abc import Callable

from almanac.drawing.shapes import Disc, Spot, at, chain, circle, path, polyline
from almanac.drawing.swimmer.beating_legs import FOOT, beats, on_feet
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.handheld import hand_paddles, held_block, kickboard
from almanac.drawing.swimmer.harness import parachute, pulley_tower, stretch_cord
from almanac.drawing.swimmer.limbs import (
    FAR_LEG,
    NEAR_LEG,
    Layer,
    View,
    between,
    beyond,
    head_place,
)
from almanac.drawing.swimmer.poses import Pose
from almanac.drawing.swimmer.segments import LegJoints

UP = Point(0.0, 1.0)
ON_HEAD, BETWEEN_LEGS = 0.045, -0.01


def _legs(held: Pose) -> tuple[tuple[float, LegJoints], tuple[float, LegJoints]]:
    """The legs, each with where something worn on it is painted."""
    return (FAR_LEG + 0.0001, held.skeleton.far_leg), (NEAR_LEG + 0.0001, held.skeleton.near_leg)


def _crossing(disc: Disc, along: Spot) -> str:
    """A line across a limb at a disc, square to ``along``."""
    length = max((along[0] ** 2 + along[1] ** 2) ** 0.5, 1e-6)
    x, y = -along[1] / length * disc.r, along[0] / length * disc.r
    return polyline([(disc.x - x, disc.y - y), (disc.x + x, disc.y + y)])


def drag_socks(held: Pose, view: View) -> list[Layer]:
    """Loose mesh bags around feet and ankles."""
    return _on_feet(held, view, _sock)


def _sock(view: View, leg: LegJoints) -> list[str]:
    cuff = view.disc(between(leg.ankle, leg.knee, 0.16), 0.024)
    instep = view.disc(between(leg.ankle, between(leg.heel, leg.toe, 0.45), 0.45), 0.034)
    ball = view.disc(between(leg.heel, leg.toe, 0.78), 0.036)
    tip = view.disc(beyond(leg.heel, leg.toe, 0.02), 0.022)
    along = (tip.x - instep.x, tip.y - instep.y)
    mesh = "".join(_crossing(disc, along) for disc in (instep, ball))
    mesh += polyline([(cuff.x, cuff.y), (instep.x, instep.y), (tip.x, tip.y)])
    bag = path("gear", chain([cuff, instep, ball, tip]), paint_order="stroke", stroke_width=2)
    return [bag, path("gear-line", mesh, stroke_width=0.7)]


def fins(held: Pose, view: View) -> list[Layer]:
    """A blade on each foot, in line with the sole."""
    return _on_feet(held, view, _fin)


def _fin(view: View, leg: LegJoints) -> list[str]:
    pocket = [view.disc(between(leg.heel, leg.toe, 0.42), 0.024), view.disc(leg.toe, 0.014)]
    blade = [*pocket, view.disc(beyond(leg.heel, leg.toe, 0.16), 0.006)]
    return [path("gear", chain(blade), paint_order="stroke", stroke_width=2)]


def _on_feet(held: Pose, view: View, worn: Callable[[View, LegJoints], list[str]]) -> list[Layer]:
    """What is worn on each foot; it goes with a foot that can beat."""
    if beats(held.spec):
        layers = on_feet(held, view, "".join(worn(View(0.0, 0.0, view.height), FOOT)))
    else:
        layers = [(order, worn(view, leg)) for order, leg in _legs(held)]
    return layers[1:] if "one-foot" in held.spec.marks else layers


def tempo_beeper(held: Pose, view: View) -> list[Layer]:
    """A small box at the cap with two arcs of sound."""
    box = view.disc(head_place(held.skeleton, 0.6, -0.25, 0.3), 0.016)
    ahead = view.spot(head_place(held.skeleton, 1.6, -0.7))
    way = (ahead[0] - box.x, ahead[1] - box.y)
    arcs = ""
    for part in (0.95, 1.3):
        x, y = box.x + way[0] * part, box.y + way[1] * part
        across = (-way[1] * 0.34 * part, way[0] * 0.34 * part)
        start, end = at(x - across[0], y - across[1]), at(x + across[0], y + across[1])
        arcs += f"M{start}Q{at(x + way[0] * 0.26, y + way[1] * 0.26)} {end}"
    return [(ON_HEAD, [path("gear", circle(box)), path("gear-line", arcs)])]


def pull_buoy(held: Pose, view: View) -> list[Layer]:
    """A float between the thighs, seen above and below them; in the hands of who holds gear."""
    near, far = held.skeleton.near_leg, held.skeleton.far_leg
    top = between(between(near.hip, near.knee, 0.42), between(far.hip, far.knee, 0.42), 0.5)
    front = held.skeleton.trunk_axes.front
    lobes = [view.disc(top.plus(front, side), 0.042) for side in (0.034, -0.034)]
    return [(BETWEEN_LEGS, [path("gear", chain(lobes), paint_order="stroke", stroke_width=2)])]


def ankle_band(held: Pose, view: View) -> list[Layer]:
    """A band that ties the ankles; it lies where the still legs are."""
    near, far = held.skeleton.near_leg, held.skeleton.far_leg
    ends = [view.disc(between(leg.knee, leg.ankle, 0.88), 0.026) for leg in (far, near)]
    return [(ON_HEAD, [path("gear", chain(ends), paint_order="stroke", stroke_width=2)])]


def water_cup(held: Pose, view: View) -> list[Layer]:
    """A cup of water upright on the forehead; on top of a head whose face does not look up."""
    forehead = head_place(held.skeleton, 0.35, 0.88)
    if forehead.y < held.skeleton.head.y + 0.03:
        forehead = held.skeleton.head.plus(UP, 0.056)
    x, y = view.spot(forehead)
    low, high, deep = 0.017 * view.height, 0.026 * view.height, 0.075 * view.height
    side = polyline([(x - high, y - deep), (x - low, y), (x + low, y), (x + high, y - deep)]) + "Z"
    level = polyline([(x - high + 0.8, y - deep * 0.72), (x + high - 0.8, y - deep * 0.72)])
    return [(ON_HEAD, [path("gear", side), path("gear-line", level)])]


def snorkel(held: Pose, view: View) -> list[Layer]:
    """A tube from the mouth, close round the forehead, up over the head."""
    bones = held.skeleton
    crown = head_place(bones, 1.3, 0.35)
    top = bones.head.plus(UP, 0.17).plus(bones.head_axes.up, 0.075)
    if bones.head_axes.up.y > 0.7:
        crown, top = head_place(bones, 1.25, 0.8), head_place(bones, 2.6, 0.55)
    bends = [(-0.55, 0.72), (-0.45, 1.35), (0.8, 1.25)]
    mouth, chin, brow = (at(*view.spot(head_place(bones, up, front))) for up, front in bends)
    rise = at(*view.spot(between(crown, top, 0.6)))
    tube = f"M{mouth}C{chin} {brow} {at(*view.spot(crown))}S{rise} {at(*view.spot(top))}"
    return [
        (
            ON_HEAD,
            [path("gear-rim", tube, stroke_width=4.6), path("gear-strap", tube, stroke_width=2.4)],
        )
    ]


Draw = Callable[[Pose, View], list[Layer]]
DRAWN: dict[str, Draw] = {
    "ankle-band": ankle_band,
    "drag-socks": drag_socks,
    "fins": fins,
    "hand-paddles": hand_paddles,
    "tempo-beeper": tempo_beeper,
    "pull-buoy": pull_buoy,
    "water-cup": water_cup,
    "snorkel": snorkel,
    "parachute": parachute,
    "stretch-cord": stretch_cord,
    "pulley-tower": pulley_tower,
}


def gear_layers(held: Pose, view: View, gear: tuple[str, ...]) -> list[Layer]:
    """All gear that can be drawn, in layers by depth; a word that is not known draws nothing."""
    holds = held.spec.arms == "holding-gear"
    worn = [
        word
        for word in dict.fromkeys(gear)
        if word in DRAWN and not (holds and word == "pull-buoy")
    ]
    layers = [layer for word in worn for layer in DRAWN[word](held, view)]
    if "kickboard" in gear or held.spec.arms == "board":
        layers += kickboard(held, view)
    elif holds:
        layers += held_block(held, view)
    return layers
