"""A drill among its neighbours: what is harder above it, what is easier or must come first below
it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from almanac.drawing.document import checked_identifier, document
from almanac.drawing.lettering import LEADING, lettered, lines_of
from almanac.drawing.shapes import at, number

WIDTH = 340.0
TITLE, TAG = 14.0, 12.5
"""Sizes of type; the style sheet sets the same."""
_MIDDLE, _BOX, _GUTTER, _EDGE = 170.0, 156.0, 20.0, 4.0
_PAD, _ROW_GAP, _TIER_GAP = 8.0, 10.0, 26.0


@dataclass(frozen=True)
class _Box:
    title: list[str]
    tag: str
    kind: str

    @property
    def height(self) -> float:
        """How tall the box is with its text."""
        return 2 * _PAD + len(self.title) * TITLE * LEADING + (TAG * LEADING if self.tag else 0.0)


def neighbours(
    title: str,
    *,
    easier: Sequence[str],
    harder: Sequence[str],
    needs_first: Sequence[str],
    identifier: str = "neighbours",
) -> str:
    """The drill ``title`` and the titles around it as an SVG element, or "" where there are none.

    It scales to its container and reads at a phone's width. ``identifier`` begins the ids of title
    and description; raises ValueError where it cannot.
    """
    checked_identifier(identifier)
    above = [_box(other, "harder", "box") for other in harder]
    below = [_box(other, _before(other, easier), "box-first") for other in needs_first]
    below += [_box(other, "easier", "box") for other in easier if other not in needs_first]
    if not above and not below:
        return ""
    own = _Box(lines_of(title, 220 - 2 * _PAD, TITLE * 1.08), "", "box-own")
    parts, foot = list[str](), _EDGE
    if above:
        rows = _rows(above)[::-1]
        top_of_own = _EDGE + _height(rows) + _TIER_GAP
        parts += _tier(rows, _EDGE, top_of_own, upward=True)
        foot = top_of_own
    parts.append(_drawn(own, _MIDDLE - 110, foot, 220.0, own.height))
    foot += own.height
    if below:
        rows = _rows(below)
        parts += _tier(rows, foot + _TIER_GAP, foot, upward=False)
        foot += _TIER_GAP + _height(rows)
    return document(
        "neighbours",
        WIDTH,
        foot + _EDGE,
        identifier,
        _title_and_description(title, easier, harder, needs_first),
        parts,
    )


def _before(title: str, easier: Sequence[str]) -> str:
    return "needs first, easier" if title in easier else "needs first"


def _box(title: str, tag: str, kind: str) -> _Box:
    return _Box(lines_of(title, _BOX - 2 * _PAD, TITLE), tag, kind)


def _rows(boxes: Sequence[_Box]) -> list[tuple[_Box, ...]]:
    """Two boxes a row, a single one last: it ends the line that joins them."""
    return [tuple(boxes[start : start + 2]) for start in range(0, len(boxes), 2)]


def _height(rows: Sequence[tuple[_Box, ...]]) -> float:
    return sum(max(box.height for box in row) for row in rows) + _ROW_GAP * (len(rows) - 1)


def _tier(rows: Sequence[tuple[_Box, ...]], top: float, own: float, *, upward: bool) -> list[str]:
    """The boxes from ``top`` on with the line that joins them to the drill, whose edge is at
    ``own``.

    Its arrow points the way of teaching: up from what comes first, up to what is harder.
    """
    boxes, line = list[str](), ""
    ends = [own]
    for row in rows:
        height = max(box.height for box in row)
        if len(row) == 1:
            boxes.append(_drawn(row[0], _MIDDLE - _BOX / 2, top, _BOX, height))
            ends.append(top + height if upward else top)
        else:
            middle = top + height / 2
            boxes += [
                _drawn(box, x, top, _BOX, height)
                for box, x in zip(row, (_EDGE, _EDGE + _BOX + _GUTTER), strict=True)
            ]
            left, right = _EDGE + _BOX, _EDGE + _BOX + _GUTTER
            line += f"M{at(left, middle)}H{number(right)}"
            ends.append(middle)
        top += height + _ROW_GAP
    line += f"M{at(_MIDDLE, min(ends))}V{number(max(ends))}"
    tip = own - _TIER_GAP + 3 if upward else own + 1
    head = f"M{at(_MIDDLE - 6, tip + 9)}L{at(_MIDDLE, tip)}L{at(_MIDDLE + 6, tip + 9)}"
    return [
        f'<path class="figure-tie" d="{line}"/><path class="figure-tie-head" d="{head}"/>',
        *boxes,
    ]


def _drawn(box: _Box, x: float, y: float, width: float, height: float) -> str:
    middle = x + width / 2
    text = len(box.title) * TITLE * LEADING + (TAG * LEADING if box.tag else 0.0)
    first = y + (height - text) / 2 + TITLE * 0.95
    frame = (
        f'x="{number(x)}" y="{number(y)}" width="{number(width)}" height="{number(height)}" rx="5"'
    )
    drawn = f'<rect class="figure-{box.kind}" {frame}/>'
    drawn += lettered(
        "box-title" if box.tag else "own-title", middle, first, box.title, TITLE, "middle"
    )
    if not box.tag:
        return drawn
    return drawn + lettered(
        "box-tag", middle, first + len(box.title) * TITLE * LEADING, [box.tag], TAG, "middle"
    )


def _title_and_description(
    title: str, easier: Sequence[str], harder: Sequence[str], needs_first: Sequence[str]
) -> tuple[str, str]:
    groups = (("Needs first", needs_first), ("Easier", easier), ("Harder", harder))
    phrases = " ".join(f"{name}: {', '.join(titles)}." for name, titles in groups if titles)
    return f"Where {title} stands", f"{title} with the drills around it. {phrases}"
