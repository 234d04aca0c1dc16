"""The set strip: a set along the clock, each rep coloured and hatched by its effort, rest left
open.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

from almanac.units import show_time

WIDTH, HEIGHT, TOP, BASE = 1000, 92, 6, 62
_HATCHES = {
    "dots": '<circle cx="3" cy="3" r="1.2"/>',
    "slant": '<path d="M0 8L8 0"/>',
    "cross": '<path d="M0 8L8 0M0 0L8 8"/>',
    "bars": '<path d="M2 0V8M6 0V8"/>',
}
# One hatch an effort, easiest first: colour is never alone.
HATCH_ORDER = ("", "dots", "slant", "cross", "bars")


@dataclass(frozen=True)
class Stretch:
    """A stretch of the strip: seconds from the start, its length, and the effort word; "" for
    rest.
    """

    start: float
    length: float
    effort: str
    words: str = ""


def strip(
    stretches: Sequence[Stretch],
    efforts: Sequence[str],
    identifier: str,
    title: str,
    total_s: float,
) -> str:
    """The strip as SVG, WIDTH × HEIGHT; ``efforts`` are the effort words, easiest first.

    Colours come from the style sheet by class (``effort-0`` and so on); it is drawn with a title
    and a description in words.
    """
    if total_s <= 0:
        return ""
    scale = WIDTH / total_s
    body = "".join(_stretch(stretch, scale, efforts, identifier) for stretch in stretches)
    return (
        f'<svg class="strip" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        f'aria-labelledby="{identifier}-t {identifier}-d">'
        f'<title id="{identifier}-t">{escape(title)}</title>'
        f'<desc id="{identifier}-d">{escape(_described(stretches, total_s))}</desc>'
        f"<defs>{hatch_patterns(identifier)}</defs>"
        f'<rect class="strip-ground" x="0" y="{TOP}" width="{WIDTH}" height="{BASE - TOP}"/>'
        f"{body}{''.join(_ticks(total_s, scale))}</svg>"
    )


def hatch_of(effort: str, efforts: Sequence[str]) -> str:
    """The hatch of an effort word."""
    return HATCH_ORDER[min(list(efforts).index(effort), len(HATCH_ORDER) - 1)]


def swatch(effort: str, efforts: Sequence[str], identifier: str) -> str:
    """A small patch of an effort's colour and hatch, for a legend. Hidden from screen readers: the
    word stands beside it.
    """
    stretch = Stretch(0, 1, effort)
    return (
        f'<svg class="swatch" viewBox="0 {TOP} 30 20" '
        f'aria-hidden="true"><defs>{hatch_patterns(identifier)}</defs>'
        f"{_stretch(stretch, 30, efforts, identifier)}</svg>"
    )


def _stretch(stretch: Stretch, scale: float, efforts: Sequence[str], identifier: str) -> str:
    if not stretch.effort:
        return ""
    number = list(efforts).index(stretch.effort)
    box = (
        f'x="{stretch.start * scale:.2f}" y="{TOP}" '
        f'width="{max(stretch.length * scale, 0.5):.2f}" height="{BASE - TOP}"'
    )
    hatch = hatch_of(stretch.effort, efforts)
    over = f'<rect {box} fill="url(#{identifier}-{hatch})"/>' if hatch else ""
    return f'<g><rect class="effort-{number}" {box}/>{over}</g>'


def hatch_patterns(identifier: str) -> str:
    """The hatches as SVG patterns, each under its name after ``identifier``."""
    return "".join(
        f'<pattern id="{identifier}-{name}" class="hatch" width="8" height="8" '
        f'patternUnits="userSpaceOnUse">{drawing}</pattern>'
        for name, drawing in _HATCHES.items()
    )


def _ticks(total_s: float, scale: float) -> Iterator[str]:
    step = next(step for step in (60, 120, 300, 600, 1200, 3600, 36000) if total_s / step <= 12)
    for number in range(int(total_s // step) + 1):
        x = number * step * scale
        anchor = "start" if number == 0 else "end" if x > WIDTH - 30 else "middle"
        yield (
            f'<path class="strip-tick" d="M{x:.1f} {BASE}v7"/>'
            f'<text class="strip-label" x="{x:.1f}" y="{HEIGHT - 4}" '
            f'text-anchor="{anchor}">{show_time(number * step)}</text>'
        )


def _described(stretches: Sequence[Stretch], total_s: float) -> str:
    """The strip in words: runs of reps at one effort, with when they begin."""
    runs: list[tuple[str, float, int]] = []
    for stretch in stretches:
        if not stretch.effort:
            continue
        if runs and runs[-1][0] == stretch.effort:
            word, start, count = runs[-1]
            runs[-1] = (word, start, count + 1)
        else:
            runs.append((stretch.effort, stretch.start, 1))
    phrases = "; ".join(
        f"from {show_time(start)}, {count} × {word}" for word, start, count in runs[:40]
    )
    more = f"; and {len(runs) - 40} more changes" if len(runs) > 40 else ""
    return f"{show_time(total_s)} on the clock: {phrases}{more}."
