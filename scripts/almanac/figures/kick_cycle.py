"""The kick cycle: eight moments of a flutter, on the back and on the front side by side, each phase named."""

from __future__ import annotations

from xml.sax.saxutils import escape

from almanac.figures.body import body_layers, checked_identifier, document, painted
from almanac.figures.flutter import MOMENTS, Lie, Phase, flutter_phase
from almanac.figures.limbs import View
from almanac.figures.poses import pose
from almanac.figures.segments import LegJoints
from almanac.figures.settle import plan_of
from almanac.figures.shapes import at, colour, element, number, path
from almanac.figures.words import leg_words

WIDTH = 340.0
COLUMN = 170.0
HEADING = 82.0
ROW = 118.0
COLUMNS: tuple[tuple[Lie, str, str], ...] = (
    ("supine", "On the back", "drives up, recovers down"),
    ("prone", "On the front", "drives down, recovers up"),
)
_LEVEL = 20.0
_DEPTH = 46.0
_SWIMMER = 132.0
_KEY = (
    "Plain leg: near side. Outlined leg: far side.",
    "Full arrow: the beat that drives. Dashed: the recovery.",
)
_PART = {"propulsive": "drives", "recovery": "recovers", "glide": "glides"}


def kick_cycle_figure(*, identifier: str = "kick-cycle") -> str:
    """Eight rows (moments 0 to 7) of two columns, a portrait SVG that reads at a phone's width.

    ``identifier`` begins the ids of title and description and must be unique on the page. Raises ValueError
    where it cannot begin an id.
    """
    checked_identifier(identifier)
    height = HEADING + MOMENTS * ROW
    parts = [label(WIDTH / 2, 56 + 15 * line, text, 11.5) for line, text in enumerate(_KEY)]
    for column, (lie, title, gist) in enumerate(COLUMNS):
        middle = (column + 0.5) * COLUMN
        parts += [label(middle, 18, title, 15, weight="bold"), label(middle, 36, gist, 11.5)]
        for moment in range(MOMENTS):
            parts += cell(column * COLUMN, HEADING + moment * ROW, lie, moment)
    return document("kick-cycle", WIDTH, height, identifier, _told(), parts)


def label(
    x: float, y: float, text: str, size: float, *, anchor: str = "middle", weight: str = "normal"
) -> str:
    """A line of text."""
    return (
        f'<text class="figure-text" fill="{colour("text")}" x="{number(x)}" y="{number(y)}" '
        f'font-size="{number(size)}" font-weight="{weight}" text-anchor="{anchor}">{escape(text)}</text>'
    )


def cell(left: float, top: float, lie: Lie, moment: int) -> list[str]:
    """One moment: the swimmer at the water line, an arrow at each foot, both phases in words."""
    held = pose(plan_of(position=lie, arms="at-sides", kick="flutter", moment=moment))
    view = View(left + 101, top + _LEVEL, _SWIMMER)
    start, end = left + 4, left + COLUMN - 4
    parts = [element("rect", "water", x=start, y=view.y, width=end - start, height=_DEPTH)]
    parts += painted(body_layers(held, view))
    parts.append(path("surface", f"M{at(start, view.y)}H{number(end)}"))
    near, far = both_phases(lie, moment)
    parts += foot_arrow(view, held.skeleton.near_leg, near, left + 14)
    parts += foot_arrow(view, held.skeleton.far_leg, far, left + 6)
    parts.append(label(start, top + 13, str(moment), 13, anchor="start", weight="bold"))
    lines = (f"Near: {near.beat}, {_PART[near.part]},", near.stage, f"Far: {far.beat}, {_PART[far.part]}")
    for line, text in enumerate(lines):
        parts.append(label(start, top + _LEVEL + _DEPTH + 13 + 14 * line, text, 11.5, anchor="start"))
    return parts


def both_phases(lie: Lie, moment: int) -> tuple[Phase, Phase]:
    """The phases of the near and the far leg."""
    return flutter_phase(moment, lie), flutter_phase((moment + MOMENTS // 2) % MOMENTS, lie)


def foot_arrow(view: View, leg: LegJoints, phase: Phase, x: float) -> list[str]:
    """Which way a foot goes: a full line for the beat that drives, a dashed one for the recovery."""
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


def _told() -> tuple[str, str]:
    rows = []
    for moment in range(MOMENTS):
        told = []
        for lie, title, _ in COLUMNS:
            near, far = both_phases(lie, moment)
            told.append(f"{title.lower()}, {leg_words('near leg', near)}, {leg_words('far leg', far)}")
        rows.append(f"Moment {moment}: {'; '.join(told)}.")
    start = (
        "Eight moments of a flutter kick, the legs half a cycle apart, swimmer with the head to the right."
    )
    return "The flutter kick on the back and on the front", " ".join([start, *rows])
