"""The set strip: a set along the clock, each rep coloured and hatched by its effort, rest left
open.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from html import escape

from almanac.drawing.charts.effort_marks import EffortMark, hatch_patterns
from almanac.frozen import quick
from almanac.units import show_time

WIDTH, HEIGHT, TOP, BASE = 1000, 164, 4, 104


_SWATCH = 120  # as wide as 40 px of a strip on a phone
_EVERY_S = (60, 120, 300, 600, 900, 1200, 1800, 3600, 36000)
_MOST_TICKS = 4


@quick
@dataclass(frozen=True, slots=True)
class StripPart:
    """A stretch of the strip: seconds from the start, its length, and the effort word; "" for
    rest.
    """

    start: float
    length: float
    effort: str
    words: str = ""


def strip(
    stretches: Sequence[StripPart],
    marks: Mapping[str, EffortMark],
    identifier: str,
    title: str,
    total_s: float,
    hatches: str = "",
) -> str:
    """The strip as SVG, WIDTH × HEIGHT; ``marks`` are those of the efforts, easiest first.

    Colours come from the style sheet by class; it is drawn with a title and a description in
    words. Where ``hatches`` is given, the patterns stand under that name elsewhere on the page.
    """
    if total_s <= 0:
        return ""
    scale = WIDTH / total_s
    defined = "" if hatches else f"<defs>{hatch_patterns(identifier, marks, WIDTH)}</defs>"
    body = "".join(_boxes(stretches, scale, marks, hatches or identifier))
    return (
        f'<svg class="strip" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        f'aria-labelledby="{identifier}-t {identifier}-d">'
        f'<title id="{identifier}-t">{escape(title)}</title>'
        f'<desc id="{identifier}-d">{escape(_described(stretches, marks, total_s))}</desc>'
        f'{defined}<rect class="strip-ground" x="0" y="{TOP}" width="{WIDTH}" '
        f'height="{BASE - TOP}"/>'
        f"{body}{''.join(_ticks(total_s, scale))}</svg>"
    )


def swatches(marks: Mapping[str, EffortMark], identifier: str) -> list[str]:
    """A small patch of each effort's colour and hatch, for a legend. Hidden from screen readers:
    the word stands beside it. The first holds the patterns, under ``identifier``.
    """
    patterns = [f"<defs>{hatch_patterns(identifier, marks, WIDTH)}</defs>", *("" for _ in marks)]
    return [
        f'<svg class="swatch" viewBox="0 {TOP} {_SWATCH} 72" aria-hidden="true">{defined}'
        f"{''.join(_boxes([StripPart(0, 1, effort)], _SWATCH, marks, identifier))}</svg>"
        for effort, defined in zip(marks, patterns, strict=False)
    ]


def _boxes(
    stretches: Sequence[StripPart], scale: float, marks: Mapping[str, EffortMark], hatches: str
) -> Iterator[str]:
    """One path an effort, and one more for its hatch: a set has many reps, and each is drawn for
    every lane group and pool.
    """
    for effort, mark in marks.items():
        path = _path([stretch for stretch in stretches if stretch.effort == effort], scale)
        if path:
            yield f'<path class="{mark.css_class}" d="{path}"/>'
            if mark.hatch:
                yield f'<path fill="url(#{hatches}-{mark.hatch})" d="{path}"/>'


def _path(stretches: Sequence[StripPart], scale: float) -> str:
    """A box for each stretch, in whole thousandths of the strip: each begins where the one before
    it did, so that like reps read alike, and compress.
    """
    drawn: list[str] = []
    before = 0
    for stretch in stretches:
        left, width = round(stretch.start * scale), max(round(stretch.length * scale), 1)
        move = f"m{left - before} 0" if drawn else f"M{left} {TOP}"
        drawn.append(f"{move}h{width}v{BASE - TOP}h-{width}z")
        before = left
    return "".join(drawn)


def _ticks(total_s: float, scale: float) -> Iterator[str]:
    step = next(step for step in _EVERY_S if total_s / step <= _MOST_TICKS)
    places = [round(number * step * scale) for number in range(int(total_s // step) + 1)]
    yield f'<path class="strip-tick" d="{"".join(f"M{x} {BASE}v12" for x in places)}"/>'
    for number, x in enumerate(places):
        anchor = "start" if number == 0 else "end" if x > WIDTH - 60 else ""
        where = f' text-anchor="{anchor}"' if anchor else ""
        yield (
            f'<text class="strip-label" x="{x}" y="{HEIGHT - 12}"{where}>'
            f"{show_time(number * step)}</text>"
        )


def _described(
    stretches: Sequence[StripPart], marks: Mapping[str, EffortMark], total_s: float
) -> str:
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
        f"from {show_time(start)}, {count} × {marks[word].title}"
        for word, start, count in runs[:40]
    )
    more = f"; and {len(runs) - 40} more changes" if len(runs) > 40 else ""
    return f"{show_time(total_s)} on the clock: {phrases}{more}."
