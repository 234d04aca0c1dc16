"""Text in figures: broken into lines that fit, since SVG does not break them itself.

Widths are estimates for the sans-serif faces that phones and computers bring along, on the wide
side: a line that is taken to fit fits.
"""

from __future__ import annotations

from collections.abc import Sequence
from xml.sax.saxutils import escape

from almanac.drawing.shapes import number

_NARROW, _WIDE, _CAPITAL, _USUAL = 0.3, 0.87, 0.7, 0.55
_NARROW_LETTERS = frozenset("iljtfrI.,:;'’!|()[] -")
_WIDE_LETTERS = frozenset("mwMW@%—…")
_CLAUSE_ENDS = (", ", "; ", ": ", " – ")
LEADING = 1.28
"""The distance of two lines, in sizes of the type."""


def width_of(text: str, size: float) -> float:
    """About how wide a text is set at ``size``."""
    return size * sum(_letter(letter) for letter in text)


def _letter(letter: str) -> float:
    if letter in _NARROW_LETTERS:
        return _NARROW
    if letter in _WIDE_LETTERS:
        return _WIDE
    return _CAPITAL if letter.isupper() else _USUAL


def lines_of(text: str, width: float, size: float) -> list[str]:
    """The text in lines no wider than ``width``; a word that is wider by itself is broken where it
    must be.
    """
    lines: list[str] = []
    line = ""
    for word in text.split():
        longer = f"{line} {word}".strip()
        if width_of(longer, size) <= width:
            line = longer
            continue
        lines += [line] if line else []
        *whole, line = _broken(word, width, size)
        lines += whole
    return [*lines, line] if line else lines


def _broken(word: str, width: float, size: float) -> list[str]:
    pieces = [""]
    for letter in word:
        if pieces[-1] and width_of(pieces[-1] + letter, size) > width:
            pieces.append("")
        pieces[-1] += letter
    return pieces


def short(text: str, most: int) -> str:
    """The text, or its beginning with an ellipsis: up to the end of a clause where one ends late
    enough.
    """
    if len(text) <= most:
        return text
    head = text[: most + 1]
    ends = [head.rfind(mark) for mark in _CLAUSE_ENDS]
    end = max(ends) if max(ends) > most * 0.5 else head.rfind(" ")
    return f"{head[: end if end > 0 else most].rstrip(' ,;:–')}…"


def short_lines(text: str, width: float, size: float, most: int) -> list[str]:
    """The text in at most ``most`` lines, shortened as ``short`` does where it needs more."""
    letters, lines = len(text), lines_of(text, width, size)
    while len(lines) > most:
        letters -= 3
        lines = lines_of(short(text, letters), width, size)
    return lines


def lettered(
    kind: str, x: float, y: float, lines: Sequence[str], size: float, anchor: str = "start"
) -> str:
    """Lines of text of a class, the first with its foot at ``y``."""
    return "".join(
        f'<text class="figure-{kind}" x="{number(x)}" y="{number(y + row * size * LEADING)}" '
        f'text-anchor="{anchor}">{escape(line)}</text>'
        for row, line in enumerate(lines)
    )
