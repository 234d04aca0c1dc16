"""The weeks of a block as columns: distance stacked by effort, one column a week."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape

from almanac.drawing.charts.effort_marks import EffortMark, hatch_patterns, marked
from almanac.drawing.charts.ticks import round_ticks, tick_words

WIDTH, HEIGHT = 640, 320
LEFT, TOP, BOTTOM = 128, 40, 44  # "17,500 m" stands left of the columns
_HALF_NUMBER = 60


def week_columns(
    weeks: Sequence[Mapping[str, float]],
    marks: Mapping[str, EffortMark],
    identifier: str,
    title: str,
) -> str:
    """Columns of metres by effort as SVG, one a week from the first, each stacked from the easiest
    effort up, in the order of ``marks``. A week without distance is an empty place.
    """
    totals = [sum(week.values()) for week in weeks]
    ticks = round_ticks(max(totals, default=0.0))
    top = ticks[-1]
    highest = max(range(len(totals)), key=totals.__getitem__, default=0)
    told = {highest: (f"{totals[highest]:,.0f} m", _y(totals[highest], top) - 8)} if weeks else {}
    step = (WIDTH - LEFT) / max(len(weeks), 1)
    columns = "".join(
        _column(week, marks, LEFT + number * step, step * 0.7, top, identifier)
        + _label(number, *told.get(number, ("", 0.0)), LEFT + number * step, step * 0.7)
        for number, week in enumerate(weeks)
    )
    grid = "".join(_grid(top, tick) for tick in ticks)
    return (
        f'<svg class="chart" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        f'aria-labelledby="{identifier}-t {identifier}-d">'
        f'<title id="{identifier}-t">{escape(title)}</title><desc '
        f'id="{identifier}-d">{escape(_described(weeks, marks))}</desc>'
        f"<defs>{hatch_patterns(identifier, marks, WIDTH)}</defs>{grid}{columns}</svg>"
    )


def _y(metres: float, top: float) -> float:
    return HEIGHT - BOTTOM - metres / top * (HEIGHT - TOP - BOTTOM)


def _column(
    week: Mapping[str, float],
    marks: Mapping[str, EffortMark],
    x: float,
    width: float,
    top: float,
    identifier: str,
) -> str:
    drawn, reached = [], 0.0
    for word, mark in marks.items():
        metres = week.get(word, 0.0)
        if metres <= 0:
            continue
        low, high = _y(reached, top), _y(reached + metres, top)
        box = f'x="{x:.1f}" y="{high:.1f}" width="{width:.1f}" height="{low - high:.1f}"'
        drawn.append(marked(mark, box, identifier))
        reached += metres
    return "".join(drawn)


def _label(number: int, words: str, top: float, x: float, width: float) -> str:
    """The number of a week under its column, and words over it within the drawing."""
    middle = x + width / 2
    week = (
        f'<text class="week-label" x="{middle:.1f}" text-anchor="middle" '
        f'y="{HEIGHT - 12}">{number + 1}</text>'
    )
    if not words:
        return week
    end = min(middle + _HALF_NUMBER, WIDTH)
    over = f'x="{end:.1f}" y="{top:.1f}" text-anchor="end"'
    return f'{week}<text class="week-label" {over}>{words}</text>'


def _grid(top: float, tick: float) -> str:
    y = _y(tick, top)
    return (
        f'<path class="chart-grid" d="M{LEFT - 6} {y:.1f}H{WIDTH}"/>'
        f'<text class="week-label" x="{LEFT - 10}" y="{y + 5:.1f}" '
        f'text-anchor="end">{tick_words(tick)} m</text>'
    )


def _described(weeks: Sequence[Mapping[str, float]], marks: Mapping[str, EffortMark]) -> str:
    phrases = [
        f"week {number} {sum(week.values()):,.0f} m: "
        + ", ".join(f"{marks[word].title} {metres:,.0f}" for word, metres in week.items() if metres)
        for number, week in enumerate(weeks, 1)
    ]
    return "; ".join(phrases) + "."
