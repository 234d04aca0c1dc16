"""A small chart of one number a week, to stand beside others of the same weeks."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from almanac.drawing.charts.ticks import round_ticks

WIDTH, HEIGHT = 160, 112
_LEFT, _TOP, _BASE = 4, 20, 92
_COLUMN_WIDTH, _COLUMN_HEIGHT = 64, 48


def small_columns(
    values: Sequence[float | None], identifier: str, title: str, unit: str = "", digits: int = 0
) -> str:
    """Columns as SVG, one a week from the first; None, where a number is not known, is an empty
    place. The highest carries its number, to ``digits`` places; the axis names the first week and
    the last.
    """
    known = [value for value in values if value is not None]
    top = round_ticks(max(known, default=0.0))[-1]
    step = (WIDTH - _LEFT) / max(len(values), 1)
    columns = "".join(
        f'<path class="bar-fill" d="M{_LEFT + number * step:.1f} {_BASE}'
        f'V{_y(value, top):.1f}h{step * 0.7:.1f}V{_BASE}z"/>'
        for number, value in enumerate(values)
        if value
    )
    return (
        f'<svg class="chart small-chart" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        f'aria-labelledby="{identifier}-t {identifier}-d">'
        f'<title id="{identifier}-t">{escape(title)}</title>'
        f'<desc id="{identifier}-d">{escape(_described(values, unit, digits))}</desc>'
        f'<path class="chart-grid" d="M0 {_y(top, top)}H{WIDTH}M0 {_BASE}H{WIDTH}"/>'
        f"{columns}{_labels(values, top, step, digits)}</svg>"
    )


def column(value: float | None, top: float) -> str:
    """One column by itself, to stand in a table over its number, which says what it shows; ``top``
    is what the highest of its row stands for. "" where there is none.
    """
    if not value:
        return ""
    height = max(value / top * _COLUMN_HEIGHT, 1)
    return (
        f'<svg class="week-bar" viewBox="0 0 {_COLUMN_WIDTH} {_COLUMN_HEIGHT}" aria-hidden="true">'
        f'<path class="bar-fill" d="M0 {_COLUMN_HEIGHT}v-{height:.1f}h{_COLUMN_WIDTH}'
        f'v{height:.1f}z"/></svg>'
    )


def shown_value(value: float | None, digits: int = 0) -> str:
    """The number over a column."""
    return "–" if value is None else f"{value:,.{digits}f}"


def _y(value: float, top: float) -> float:
    return _BASE - value / top * (_BASE - _TOP)


def _labels(values: Sequence[float | None], top: float, step: float, digits: int) -> str:
    """The number over the highest column, and the first and last week under the axis."""
    weeks = (
        f'<text class="small-label" x="{_LEFT}" y="{HEIGHT - 4}">1</text>'
        f'<text class="small-label" x="{WIDTH - 4}" y="{HEIGHT - 4}" text-anchor="end">'
        f"{len(values)}</text>"
    )
    most = max((value, -number) for number, value in enumerate([*(v or 0.0 for v in values), 0.0]))
    if not most[0]:
        return (
            f'{weeks}<text class="small-label" x="{WIDTH / 2}" y="{_BASE - 8}" '
            f'text-anchor="middle">{"none" if None not in values else "not known"}</text>'
        )
    x = _LEFT + (-most[1] + 0.35) * step
    anchor = "start" if x < WIDTH / 3 else "end" if x > WIDTH * 2 / 3 else "middle"
    at = {"start": x - 0.35 * step, "middle": x, "end": x + 0.35 * step}[anchor]
    return (
        f'{weeks}<text class="small-label" x="{at:.1f}" y="{_y(most[0], top) - 4:.1f}" '
        f'text-anchor="{anchor}">{most[0]:,.{digits}f}</text>'
    )


def _described(values: Sequence[float | None], unit: str, digits: int) -> str:
    told = (
        f"week {number} {'not known' if value is None else f'{value:,.{digits}f}{unit}'}"
        for number, value in enumerate(values, 1)
    )
    return "; ".join(told) + "."
