"""The kick cycle: one moment of a flutter, on the back and on the front side by side, with each
leg's phase in words.
"""

from __future__ import annotations

from dataclasses import dataclass

from almanac.drawing.document import checked_identifier, document
from almanac.drawing.lettering import lettered
from almanac.drawing.shapes import at, element, number, path
from almanac.drawing.swimmer.kicks import MOMENTS, Lie, Phase, flutter_phase, moment_of
from almanac.drawing.swimmer.legs_in_words import leg_words
from almanac.drawing.swimmer.limbs import View
from almanac.drawing.swimmer.poses import pose
from almanac.drawing.swimmer.resolve_pose import resolve_pose
from almanac.drawing.swimmer.scene import body_layers, painted
from almanac.drawing.swimmer.segments import LegJoints

WIDTH, HEIGHT = 340.0, 98.0
COLUMN = 166.0
HEADING = 14.0
SIDES: tuple[tuple[Lie, str], ...] = (("supine", "On the back"), ("prone", "On the front"))
_LEVEL, _DEPTH = 42.0, 56.0
_SWIMMER = 132.0
_PART = {"propulsive": "drives", "recovery": "recovers", "glide": "glides"}


@dataclass(frozen=True)
class LegWords:
    """What a leg does as the swimmer lies: the beat, whether it drives, and how it looks."""

    beat: str
    part: str
    stage: str


def moment_drawing(moment: int, *, identifier: str = "moment") -> str:
    """One moment (0 to 7) as an SVG element: the swimmer on the back, then on the front, an arrow
    at each foot.

    ``identifier`` begins the ids of title and description and must be unique on the page. Raises
    ValueError where it cannot begin an id, or there is no such moment.
    """
    checked_identifier(identifier)
    parts: list[str] = []
    for column, (lie, title) in enumerate(SIDES):
        left = column * (WIDTH - COLUMN)
        parts.append(lettered("side", left + COLUMN / 2, HEADING, [title], 14.0, "middle"))
        parts += _swimmer(left, lie, moment)
    return document(
        "moment", WIDTH, HEIGHT, identifier, _title_and_description(moment_of(moment)), parts
    )


def moment_words(moment: int, lie: Lie) -> tuple[LegWords, LegWords]:
    """The near and the far leg in words at a moment."""
    near, far = (
        LegWords(phase.beat, _PART[phase.part], phase.stage) for phase in both_phases(lie, moment)
    )
    return near, far


def both_phases(lie: Lie, moment: int) -> tuple[Phase, Phase]:
    """The phases of the near and the far leg."""
    return flutter_phase(moment, lie), flutter_phase((moment + MOMENTS // 2) % MOMENTS, lie)


def _swimmer(left: float, lie: Lie, moment: int) -> list[str]:
    """The swimmer at the water line, an arrow at each foot."""
    held = pose(resolve_pose(position=lie, arms="at-sides", kick="flutter", moment=moment))
    view = View(left + 98, _LEVEL, _SWIMMER)
    parts = [element("rect", "water", x=left, y=view.y, width=COLUMN, height=_DEPTH)]
    parts += painted(body_layers(held, view))
    parts.append(path("surface", f"M{at(left, view.y)}H{number(left + COLUMN)}"))
    near, far = both_phases(lie, moment)
    parts += foot_arrow(view, held.skeleton.near_leg, near, left + 13)
    parts += foot_arrow(view, held.skeleton.far_leg, far, left + 5)
    return parts


def foot_arrow(view: View, leg: LegJoints, phase: Phase, x: float) -> list[str]:
    """Which way a foot goes: a full line for the beat that drives, a dashed one for the
    recovery.
    """
    y = view.spot(leg.ankle)[1]
    way = -1 if phase.beat == "up-beat" else 1
    tip = y + way * 7
    line = f"M{at(x, y - way * 6)}V{number(tip)}"
    head = f"M{at(x - 3, tip - way * 4)}L{at(x, tip)}L{at(x + 3, tip - way * 4)}"
    if phase.part == "propulsive":
        return [path("arrow", line + head, stroke_width=2)]
    return [
        path("arrow", line, stroke_dasharray="2 2.6", stroke_width=1.2),
        path("arrow", head, stroke_width=1.2),
    ]


def _title_and_description(moment: int) -> tuple[str, str]:
    phrases = []
    for lie, title in SIDES:
        near, far = both_phases(lie, moment)
        phrases.append(f"{title}: {leg_words('near leg', near)}; {leg_words('far leg', far)}.")
    title = f"Flutter kick, moment {moment + 1} of {MOMENTS}, on the back and on the front"
    return (
        title,
        f"Two swimmers side by side at the surface, heads to the right. {' '.join(phrases)}",
    )
