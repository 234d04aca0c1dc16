"""The Clock line of a practice: its parts to scale between the start and the end of its slot, each
with its hatch and its word, and what is left open.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from html import escape

from almanac.drawing.charts.effort_marks import EffortMark, hatch_patterns, marked

WIDTH, HEIGHT = 1000, 226
_TOP, _BASE, _HEAD = 54, 124, 40
_ROWS = (168, 216)  # where words stand below the line
_LETTER = 24  # how wide a letter is at the most, of what is 44 high
_GAP = 20


@dataclass(frozen=True)
class PartOnClock:
    """A part: where it starts and ends, in seconds from the start of the slot, its word, the effort
    of most of it; "" where it has none.
    """

    start_s: float
    ends_s: float
    words: str
    effort: str


def clock_line(
    parts: Sequence[PartOnClock],
    marks: Mapping[str, EffortMark],
    identifier: str,
    told: tuple[str, str],
    ends: tuple[str, str],
    slot_s: float,
) -> str:
    """The line as SVG, WIDTH × HEIGHT: ``told`` is its title and description, ``ends`` what stands
    over its start and its end. What goes on after the slot stands beyond a mark.
    """
    total_s = max([slot_s, *(part.ends_s for part in parts)])
    scale = WIDTH / total_s
    used = {part.effort: marks[part.effort] for part in parts if part.effort}
    return (
        f'<svg class="parts-line" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        f'aria-labelledby="{identifier}-t {identifier}-d">'
        f'<title id="{identifier}-t">{escape(told[0])}</title>'
        f'<desc id="{identifier}-d">{escape(told[1])}</desc>'
        f"<defs>{hatch_patterns(identifier, used, WIDTH)}</defs>"
        f'<rect class="strip-ground" x="0" y="{_TOP}" width="{WIDTH}" height="{_BASE - _TOP}"/>'
        f"{''.join(_box(part, scale, marks, identifier) for part in parts)}"
        f"{''.join(_words(parts, scale))}"
        f'<path class="strip-tick" d="M{slot_s * scale:.0f} {_TOP - 10}V{_BASE + 10}"/>'
        f'<text class="parts-label" x="0" y="{_HEAD}">{escape(ends[0])}</text>'
        f'<text class="parts-label" x="{WIDTH}" y="{_HEAD}" text-anchor="end">{escape(ends[1])}'
        "</text></svg>"
    )


def _box(part: PartOnClock, scale: float, marks: Mapping[str, EffortMark], identifier: str) -> str:
    left, width = round(part.start_s * scale), max(round((part.ends_s - part.start_s) * scale), 2)
    box = f'x="{left}" y="{_TOP}" width="{width}" height="{_BASE - _TOP}"'
    return (
        marked(marks[part.effort], box, identifier)
        if part.effort
        else f'<rect class="parts-plain" {box}/>'
    )


def _words(parts: Sequence[PartOnClock], scale: float) -> Iterator[str]:
    """Each word below its part, in the first row that has room; none where neither has."""
    free = [0.0 for _ in _ROWS]
    for part in parts:
        width = _LETTER * len(part.words)
        left = max(min(part.start_s * scale, WIDTH - width), 0)
        row = next((number for number, at in enumerate(free) if at <= left), None)
        if row is not None:
            free[row] = left + width + _GAP
            yield (
                f'<text class="parts-label" x="{left:.0f}" y="{_ROWS[row]}">'
                f"{escape(part.words)}</text>"
            )
