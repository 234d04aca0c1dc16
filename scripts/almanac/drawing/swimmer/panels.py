"""Several bodies in one picture, in one scale: a row each where they lie, a column each where one
of them is upright.
"""

from __future__ import annotations

from typing import NamedTuple
from xml.sax.saxutils import escape

from almanac.drawing.lettering import LEADING, lines_of
from almanac.drawing.paints import colour
from almanac.drawing.shapes import at, number, path
from almanac.drawing.swimmer.framing import WIDTH, Box, box_of
from almanac.drawing.swimmer.limbs import View
from almanac.drawing.swimmer.scene import Scene, Sign, scene_parts

_BESIDE = 104.0
"""How wide the words of a row stand to the left of it."""
_SIZE, _GAP, _SIGN = 17.0, 4.0, 20.0
_MOST_SCALE, _ROW_LEAST = 190.0, 44.0
_ROWS_HEIGHT = {1: 78.0, 2: 140.0, 3: 162.0}
_COLUMN_HEIGHT = 118.0
_TALL = 1.0


class Panel(NamedTuple):
    """A scene and the part of its own plane that is shown of it."""

    scene: Scene
    box: Box


def panels(scenes: list[Scene]) -> tuple[list[str], float]:
    """The elements of all scenes with what is said of each, and the height that they take."""
    found = [Panel(scene, box_of(scene.held, scene.worn, scene.place)) for scene in scenes]
    if any(panel.box.up + panel.box.down > _TALL for panel in found):
        return _columns(found)
    return _rows(found)


def _rows(found: list[Panel]) -> tuple[list[str], float]:
    beside = _BESIDE if any(panel.scene.says for panel in found) else 0.0
    room = WIDTH - beside
    widest = max(panel.box.right - panel.box.left for panel in found)
    deep = sum(panel.box.up + panel.box.down for panel in found)
    height = _ROWS_HEIGHT.get(len(found), 68.0 * len(found))
    scale = min(_MOST_SCALE, room / widest, (height - _GAP * (len(found) - 1)) / deep)
    parts, top = [], 0.0
    for panel in found:
        free = _BESIDE - 6 - (_SIGN if panel.scene.sign else 2.0)
        lines = lines_of(panel.scene.says, free, _SIZE)
        drawn = (panel.box.up + panel.box.down) * scale
        tall = max(drawn, _ROW_LEAST, len(lines) * _SIZE * LEADING + 4)
        level = panel.box.up * scale + (0.5 * (tall - drawn) if panel.scene.held.above else 0.0)
        parts.append(_window(panel, (beside, top, room, tall), scale, level))
        middle = top + (tall - (len(lines) - 1) * _SIZE * LEADING) / 2 + _SIZE * 0.36
        if panel.scene.sign:
            parts.append(_sign(panel.scene.sign, 8.0, middle - _SIZE * 0.36))
        parts += _said(lines, _SIGN if panel.scene.sign else 0.0, middle, "start")
        top += tall + _GAP
    return parts, top - _GAP


def _columns(found: list[Panel]) -> tuple[list[str], float]:
    widths = [panel.box.right - panel.box.left for panel in found]
    up = max(panel.box.up for panel in found)
    tall = up + max(panel.box.down for panel in found)
    room = WIDTH - _GAP * (len(found) - 1)
    scale = min(_MOST_SCALE, room / sum(widths), _COLUMN_HEIGHT / tall)
    spare = (room - sum(widths) * scale) / len(found)
    parts, left, most = [], 0.0, 1
    for at_column, (panel, width) in enumerate(zip(found, widths, strict=True)):
        wide = width * scale + spare
        where = (left, 0.0, wide, tall * scale)
        is_met = _is_met(panel, found[:at_column])
        parts.append(_window(panel, where, scale, up * scale, mirrored=is_met))
        said, lines = _under(panel.scene, left, wide, tall * scale + _SIZE + 2)
        parts += said
        most, left = max(most, lines), left + wide + _GAP
    return parts, tall * scale + 6 + most * _SIZE * LEADING


def _is_met(panel: Panel, before: list[Panel]) -> bool:
    """Whether somebody comes in to the wall on whose block this one stands: they face each other,
    and the block is drawn the other way round.
    """
    walls = [one.scene.held.wall for one in before]
    return panel.scene.held.blocked and any(wall and wall[1] == "ahead" for wall in walls)


def _under(scene: Scene, left: float, wide: float, y: float) -> tuple[list[str], int]:
    """What is said under a column, after its sign where it has one, and how many lines it takes."""
    if not scene.sign:
        lines = lines_of(scene.says, wide - 2, _SIZE)
        return _said(lines, left + wide / 2, y, "middle"), len(lines)
    lines = lines_of(scene.says, wide - 2 - _SIGN, _SIZE)
    sign = _sign(scene.sign, left + 8, y - _SIZE * 0.36)
    return [sign, *_said(lines, left + _SIGN, y, "start")], len(lines)


def _window(
    panel: Panel,
    where: tuple[float, float, float, float],
    scale: float,
    level: float,
    *,
    mirrored: bool = False,
) -> str:
    """A scene behind a window: what is outside of it is cut off. ``where`` is its left, top, width
    and height.
    """
    left, top, wide, tall = where
    box = panel.box
    middle = (wide - (box.left + box.right) * scale) / 2
    inner = scene_parts(panel.scene, View(middle, level, scale), calm=True)
    size = f'width="{number(wide)}" height="{number(tall)}"'
    drawn = "".join(inner)
    if mirrored:
        drawn = f'<g transform="translate({number(wide)} 0) scale(-1 1)">{drawn}</g>'
    return f'<svg x="{number(left)}" y="{number(top)}" {size}>{drawn}</svg>'


def _sign(sign: Sign, x: float, y: float) -> str:
    """A cross by what is wrong, a tick by what is right."""
    if sign == "wrong":
        cross = f"M{at(x - 5, y - 5)}L{at(x + 5, y + 5)}M{at(x + 5, y - 5)}L{at(x - 5, y + 5)}"
        return path("sign", cross)
    return path("sign", f"M{at(x - 6, y)}L{at(x - 2, y + 5)}L{at(x + 6, y - 6)}")


def _said(lines: list[str], x: float, y: float, anchor: str) -> list[str]:
    """Lines of text; their size stands with them, for pictures that are shown without styles."""
    return [
        f'<text class="figure-text" x="{number(x)}" y="{number(y + row * _SIZE * LEADING)}" '
        f'fill="{colour("text")}" font-family="sans-serif" font-size="{number(_SIZE)}" '
        f'text-anchor="{anchor}">{escape(line)}</text>'
        for row, line in enumerate(lines)
    ]
