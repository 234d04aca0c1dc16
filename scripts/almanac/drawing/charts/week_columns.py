"""The weeks of a block as columns: distance stacked by effort, one column a week."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape

from almanac.drawing.charts.effort_marks import EffortMark, hatch_patterns, marked

WIDTH, HEIGHT = 640, 300
LEFT, TOP, BOTTOM = 92, 20, 40  # "17,000 m" stands left of the columns


def week_columns(
    weeks: Sequence[Mapping[str, float]],
    marks: Mapping[str, EffortMark],
    identifier: str,
    title: str,
) -> str:
    """Columns of metres by effort as SVG, one a week from the first, each stacked from the easiest
    effort up, in the order of ``marks``. A week without distance is an empty place.
    """
    top = max((sum(week.values()) for week in weeks), default=0.0) or 1.0
    step = (WIDTH - LEFT) / max(len(weeks), 1)
    columns = "".join(
        _column(week, marks, LEFT + number * step, step * 0.7, top, identifier)
        + _label(number, LEFT + number * step, step * 0.7)
        for number, week in enumerate(weeks)
    )
    grid = "".join(_grid(top, share) for share in (0, 0.25, 0.5, 0.75, 1))
    return (
        f'<svg class="chart" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        f'aria-labelledby="{identifier}-t {identifier}-d">'
        f'<title id="{identifier}-t">{escape(title)}</title><desc '
        f'id="{identifier}-d">{escape(_described(weeks, marks))}</desc>'
        f"<defs>{hatch_patterns(identifier, marks)}</defs>{grid}{columns}</svg>"
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


def _label(number: int, x: float, width: float) -> str:
    return (
        f'<text class="chart-label" x="{x + width / 2:.1f}" y="{HEIGHT - 14}" '
        f'text-anchor="middle">{number + 1}</text>'
    )


def _grid(top: float, share: float) -> str:
    y = _y(share * top, top)
    return (
        f'<path class="chart-grid" d="M{LEFT - 6} {y:.1f}H{WIDTH}"/>'
        f'<text class="chart-label" x="{LEFT - 10}" y="{y + 5:.1f}" '
        f'text-anchor="end">{share * top:,.0f} m</text>'
    )


def _described(weeks: Sequence[Mapping[str, float]], marks: Mapping[str, EffortMark]) -> str:
    phrases = [
        f"week {number} {sum(week.values()):,.0f} m: "
        + ", ".join(f"{marks[word].title} {metres:,.0f}" for word, metres in week.items() if metres)
        for number, week in enumerate(weeks, 1)
    ]
    return "; ".join(phrases) + "."
