"""What a picture shows beside the body: flags, rope, watch, whistle, counts, a turn, a block."""

from __future__ import annotations

from collections.abc import Callable

from almanac.drawing.paints import colour
from almanac.drawing.shapes import Disc, at, circle, number, path, polyline
from almanac.drawing.swimmer.framing import WATCH_ROOM, WIDTH
from almanac.drawing.swimmer.geometry import Point
from almanac.drawing.swimmer.limbs import View
from almanac.drawing.swimmer.poses import Pose
from almanac.drawing.swimmer.surroundings import (
    block,
    elbow_roll,
    flags,
    ledge,
    rope,
    towel,
)

_SIZE = 16.0


def label(x: float, y: float, text: str, anchor: str = "middle") -> str:
    """A short text whose size stands with it, for pictures that are shown without styles."""
    return (
        f'<text class="figure-text" x="{number(x)}" y="{number(y)}" fill="{colour("text")}" '
        f'font-family="sans-serif" font-weight="700" font-size="{number(_SIZE)}" '
        f'text-anchor="{anchor}">{text}</text>'
    )


def stopwatch(held: Pose, view: View) -> list[str]:
    """A watch in the corner that the body leaves free."""
    (x, y), r = _free_corner(held, view), 13.0
    hand = f"M{at(x, y)}V{number(y - 8)}M{at(x, y)}L{at(x + 5, y + 4)}"
    knob = f"M{at(x - 3, y - r - 3)}H{number(x + 3)}M{at(x, y - r - 3)}V{number(y - r)}"
    knob += f"M{at(x + 10, y - 12)}L{at(x + 12.5, y - 14.5)}"
    return [
        path("gear-line", knob, stroke_width=2.4),
        path("wall", circle(Disc(x, y, r)), stroke_width=2),
        path("arrow", hand, stroke_width=2),
    ]


def _free_corner(held: Pose, view: View) -> tuple[float, float]:
    """The middle of what stands in the corner that the body leaves free: ahead of one who is by a
    block.
    """
    if not held.blocked:
        return 22.0, 24.0
    ahead = view.x + (held.span[1] + 0.5 * WATCH_ROOM) * view.height
    return ahead, max(view.y - 0.3 * view.height, 24.0)


def signal(held: Pose, view: View) -> list[str]:
    """A whistle that sounds, in the corner that a watch would have."""
    x, y = _free_corner(held, view)
    mouth = [(x - 1, y - 7), (x + 15, y - 7), (x + 15, y - 1), (x + 6.5, y - 1)]
    sound = "".join(
        f"M{at(x - r * 0.9, y - r * 0.42)}A{number(r)} {number(r)} 0 0 1 {at(x - r * 0.2, y - r)}"
        for r in (12.0, 17.0)
    )
    return [
        path("gear", polyline(mouth) + "Z" + circle(Disc(x, y, 7.0)), stroke_width=2),
        path("gear-line", sound, stroke_width=2),
    ]


def foot_count(held: Pose, view: View) -> list[str]:
    """One, two, three over the feet: beats are counted."""
    x, y = view.spot(Point(held.span[0], min(held.top, 0.0)))
    return [label(x + 6 + 17 * step, y - 9, str(step + 1)) for step in range(3)]


def six_beats(held: Pose, view: View) -> list[str]:
    """One to six over the legs: six beats to a stroke of both arms."""
    x, y = view.x - 0.62 * view.height, view.y - 12
    return [label(x + 17 * step, y, str(step + 1)) for step in range(6)]


def hand_count(held: Pose, view: View) -> list[str]:
    """One, two, three ahead of the hands: strokes are counted."""
    x = view.x + held.span[1] * view.height
    return [
        label(min(x + 8 + 16 * step, WIDTH - 6), view.y - 30, str(step + 1)) for step in range(3)
    ]


def spin(held: Pose, view: View) -> list[str]:
    """Two arrows round the shoulder: the arms go fast."""
    x, y = view.spot(held.skeleton.shoulder)
    parts = ""
    for r in (0.2 * view.height, 0.26 * view.height):
        start, end = (x - r * 0.77, y - r * 0.64), (x + r * 0.77, y - r * 0.64)
        parts += f"M{at(*start)}A{number(r)} {number(r)} 0 0 1 {at(*end)}"
    parts += f"M{at(end[0] - 7, end[1] - 2)}L{at(*end)}L{at(end[0] + 1, end[1] - 8)}"
    return [path("arrow", parts, stroke_width=2)]


def quarter_turns(held: Pose, view: View) -> list[str]:
    """A bent arrow round the body's long axis."""
    x, y = view.spot(held.skeleton.hip.plus(Point(0.0, 0.12)))
    r, flat = 0.2 * view.height, 0.055 * view.height
    d = f"M{at(x - r, y)}A{number(r)} {number(flat)} 0 0 0 {at(x + r, y)}"
    d += f"M{at(x + r - 6, y + 5)}L{at(x + r, y - 1)}L{at(x + r + 5, y + 5)}"
    return [path("arrow", d, stroke_width=2.4)]


def rolls(held: Pose, view: View) -> list[str]:
    """A bent arrow over the body: it turns about its long axis."""
    x, y = view.spot(held.skeleton.hip.plus(Point(0.12, 0.2)))
    r = 0.06 * view.height
    d = f"M{at(x - r, y)}A{number(r)} {number(r)} 0 0 1 {at(x + r, y)}"
    d += f"M{at(x + r - 4.5, y - 4)}L{at(x + r, y + 1)}L{at(x + r + 3.5, y - 5)}"
    return [path("arrow", d, stroke_width=2.2)]


def knees_turn(held: Pose, view: View) -> list[str]:
    """A bent arrow with two heads over the knees: they go to one side, then to the other."""
    x, y = view.spot(held.skeleton.near_leg.knee.plus(Point(0.0, 0.09)))
    r = 0.075 * view.height
    d = f"M{at(x - r, y + 3)}A{number(r)} {number(r)} 0 0 1 {at(x + r, y + 3)}"
    for end, way in ((x - r, -1), (x + r, 1)):
        d += f"M{at(end - way * 6, y - 1)}L{at(end, y + 4)}L{at(end + way * 3.5, y - 3)}"
    return [path("arrow", d, stroke_width=2.2)]


def head_first(held: Pose, view: View) -> list[str]:
    """An arrow over the water, the way the body moves."""
    return _goes(held, view, 1.0)


def feet_first(held: Pose, view: View) -> list[str]:
    """The same arrow the other way."""
    return _goes(held, view, -1.0)


def _goes(held: Pose, view: View, way: float) -> list[str]:
    x, y = view.spot(Point(0.0, max(held.top, 0.0) + 0.11))
    y = max(y, 9.0)
    tip, tail = x + way * 34, x - way * 34
    d = f"M{at(tail, y)}H{number(tip)}M{at(tip - way * 8, y - 6)}L{at(tip, y)}"
    return [path("arrow", f"{d}L{at(tip - way * 8, y + 6)}", stroke_width=2.6)]


def eyes_shut(held: Pose, view: View) -> list[str]:
    """Two closed lids over the face."""
    x, y = view.spot(held.skeleton.head.plus(Point(0.0, 0.17)))
    y = max(y, 4.0)
    lids = ""
    for middle in (x - 9, x + 9):
        lids += f"M{at(middle - 6, y)}Q{at(middle, y + 6)} {at(middle + 6, y)}"
        for lash in (-3, 0, 3):
            lids += polyline([(middle + lash, y + 4), (middle + lash * 1.6, y + 7.5)])
    return [path("arrow", lids)]


def one_foot(held: Pose, view: View) -> list[str]:
    """An arrow up to the far foot, which is bare where gear is worn on one foot."""
    far = held.skeleton.far_leg
    x, y = view.spot(Point((far.ankle.x + far.toe.x) / 2, min(far.ankle.y, far.toe.y) - 0.05))
    return [
        path(
            "arrow",
            f"M{at(x, y + 14)}V{number(y)}M{at(x - 4, y + 5)}L{at(x, y)}L{at(x + 4, y + 5)}",
        )
    ]


Draw = Callable[[Pose, View], list[str]]
BEHIND: dict[str, Draw] = {
    "rope": rope,
    "flags": flags,
    "block": block,
    "towel": towel,
}
"""Marks that are painted before the body."""
OVER: dict[str, Draw] = {
    "stopwatch": stopwatch,
    "signal": signal,
    "foot-count": foot_count,
    "hand-count": hand_count,
    "six-beats": six_beats,
    "spin": spin,
    "quarter-turns": quarter_turns,
    "rolls": rolls,
    "one-foot": one_foot,
    "ledge": ledge,
    "elbow-roll": elbow_roll,
    "knees-turn": knees_turn,
    "eyes-shut": eyes_shut,
    "head-first": head_first,
    "feet-first": feet_first,
}
"""Marks that are painted after the body."""


def marks(table: dict[str, Draw], held: Pose, view: View) -> list[str]:
    """The elements of those marks of a picture that a table has."""
    named = held.spec.marks
    return [part for word, draw in table.items() if word in named for part in draw(held, view)]
