"""How fast a drill is swum over a length or from rep to rep: a line of steps under the body."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import NamedTuple
from xml.sax.saxutils import escape

from almanac.drawing.lettering import width_of
from almanac.drawing.paints import colour
from almanac.drawing.shapes import at, element, number, path
from almanac.drawing.swimmer.framing import WIDTH

ROOM = 64.0
"""How much higher a picture is for it."""
_SIZE = 17.5
_LEFT, _RIGHT = 6.0, WIDTH - 34.0  # beside the mark of a picture that moves
_RISE = 20.0
"""From the slowest to the fastest; few steps are drawn higher than many, to be seen on a phone."""


class Speed(NamedTuple):
    """A speed of a trace: how many are slower, and its name."""

    level: int
    name: str


STILL = Speed(0, "still")


def speed_trace(speeds: Sequence[Speed], over: str, top: float) -> list[str]:
    """The line, the name of its speed over each step, and what it runs over; of ``speeds`` there is
    one for each equal part.
    """
    foot = top + ROOM - 21
    wide = (_RIGHT - _LEFT) / len(speeds)
    runs = [(speed, len(list(same))) for speed, same in groupby(speeds)]
    levels = [speed.level for speed in speeds]
    step = _RISE / max(max(levels) - min(levels), 2)
    line, parts, x = "", [], _LEFT
    for speed, count in runs:
        y = foot - 3 - step * (speed.level - min(levels))
        end = x + wide * count
        line += f"{'L' if line else 'M'}{at(x, y)}H{number(end)}"
        room = width_of(speed.name, _SIZE)
        middle = min(max((x + end) / 2, _LEFT + room / 2), _RIGHT - room / 2)
        parts.append(_word(middle, y - 5, speed.name, "middle"))
        x = end
    ground = element("rect", "water", x=_LEFT, y=foot - 1.5, width=_RIGHT - _LEFT, height=3)
    ticks = "".join(
        f"M{at(_LEFT + part * wide, foot - 4)}V{number(foot + 2)}"
        for part in range(len(speeds) + 1)
    )
    parts.append(_word(_LEFT, foot + 17, over, "start"))
    steps = path("surface", line, stroke_width=3)
    return [ground, path("tiles", ticks, stroke_width=1.2), steps, *parts]


def _word(x: float, y: float, text: str, anchor: str) -> str:
    return (
        f'<text class="figure-text" x="{number(x)}" y="{number(y)}" fill="{colour("text")}" '
        f'font-family="sans-serif" font-size="{number(_SIZE)}" text-anchor="{anchor}">'
        f"{escape(text)}</text>"
    )
