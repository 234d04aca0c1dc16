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
from almanac.drawing.swimmer.one_wall import reach_from_wall, turned_round
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
    far = max(reach_from_wall(panel.scene.held, panel.box) for panel in found)
    parts, top = [], 0.0
    for panel in found:
        free = _BESIDE - 6 - (_SIGN if panel.scene.sign else 2.0)
        lines = lines_of(panel.scene.says, free, _SIZE)
        drawn = (panel.box.up + panel.box.down) * scale
        tall = max(drawn, _ROW_LEAST, len(lines) * _SIZE * LEADING + 4)
        level = panel.box.up * scale + (0.5 * (tall - drawn) if panel.scene.held.above else 0.0)
        parts.append(_window(panel, (beside, top, room, tall), scale, level, far))
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
    for panel, width in zip(found, widths, strict=True):
        wide = width * scale + spare
        where = (left, 0.0, wide, tall * scale)
        parts.append(_window(panel, where, scale, up * scale))
        said, lines = _under(panel.scene, left, wide, tall * scale + _SIZE + 2)
        parts += said
        most, left = max(most, lines), left + wide + _GAP
    return parts, tall * scale + 6 + most * _SIZE * LEADING


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
    far: float = 0.0,
) -> str:
    """A scene behind a window: what is outside of it is cut off. ``where`` is its left, top, width
    and height; ``far``: how far any body of the picture reaches from its wall, where all of them
    are to have its face at one place.
    """
    left, top, wide, tall = where
    view = View(_middle(panel, wide, scale, far), level, scale)
    drawn = "".join(scene_parts(panel.scene, view, calm=True))
    if panel.scene.mirrored:
        drawn = turned_round(drawn, wide)
    size = f'width="{number(wide)}" height="{number(tall)}"'
    return f'<svg x="{number(left)}" y="{number(top)}" {size}>{drawn}</svg>'


def _middle(panel: Panel, wide: float, scale: float, far: float) -> float:
    """Where the hips are in a window: what there is to see is in its middle, or the farther from
    there towards the wall the less it reaches away from it.
    """
    box = panel.box
    middle = (wide - (box.left + box.right) * scale) / 2
    wall = panel.scene.held.wall
    if not far or panel.scene.held.edge is not None or wall is None:
        return middle
    spare = (far - reach_from_wall(panel.scene.held, box)) * scale / 2
    return middle + (spare if wall[1] == "ahead" else -spare)


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
