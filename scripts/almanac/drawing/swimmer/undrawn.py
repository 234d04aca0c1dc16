"""The neutral picture: what stands in place of a body figure whose words cannot be drawn."""

from __future__ import annotations

from collections.abc import Mapping
from xml.sax.saxutils import escape

from almanac.drawing.document import document
from almanac.drawing.lettering import LEADING, short_lines
from almanac.drawing.paints import colour
from almanac.drawing.shapes import Disc, capsule, circle, element, number, path
from almanac.drawing.swimmer.framing import LOW, WIDTH

_LEFT, _SIZE = 104.0, 15.0
_ROWS = 6


def undrawn_drawing(undrawn: Mapping[str, str], identifier: str) -> str:
    """A plain figure in a frame, and beside it what it cannot show, as an SVG element.

    ``undrawn``: by field (``position``, ``arms``, ...) the title of the word.
    """
    named = [f"{field}: {title}" for field, title in undrawn.items()]
    title = f"Body figure: not drawn yet ({', '.join(named)})"
    description = (
        "A plain standing figure in a frame. There is no drawing yet for what this entry says: "
        f"{'; '.join(named)}."
    )
    room = max(1, _ROWS // len(named) - (len(named) == 1))
    lines = ["Not drawn yet:"]
    for name in named:
        lines += short_lines(name, WIDTH - _LEFT - 16, _SIZE, room)
    top = LOW / 2 - (len(lines) - 1) * _SIZE * LEADING / 2 + _SIZE * 0.35
    parts = [
        element("rect", "wall", x=3, y=3, width=WIDTH - 6, height=LOW - 6, stroke_dasharray="6 4"),
        *_figure(),
        *(_line(line, top + row * _SIZE * LEADING) for row, line in enumerate(lines)),
    ]
    return document("body", WIDTH, LOW, identifier, (title, description), parts)


def _figure() -> list[str]:
    """A standing figure from the front that does nothing in particular."""
    x, foot = 54.0, 124.0
    limbs = [
        capsule(Disc(x - 8, 76, 7), Disc(x - 9, foot - 5, 4.5)),
        capsule(Disc(x + 8, 76, 7), Disc(x + 9, foot - 5, 4.5)),
        capsule(Disc(x - 15, 46, 5), Disc(x - 21, 82, 4)),
        capsule(Disc(x + 15, 46, 5), Disc(x + 21, 82, 4)),
    ]
    trunk = capsule(Disc(x, 50, 14), Disc(x, 72, 13))
    return [path("far", "".join(limbs)), path("far", trunk), path("far", circle(Disc(x, 24, 11)))]


def _line(text: str, y: float) -> str:
    """A line of the text; its size stands with it, for pictures that are shown without styles."""
    return (
        f'<text class="figure-text" x="{number(_LEFT)}" y="{number(y)}" '
        f'fill="{colour("text")}" font-family="sans-serif" font-size="{number(_SIZE)}">'
        f"{escape(text)}</text>"
    )
