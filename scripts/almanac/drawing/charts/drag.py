"""Drag over speed: a piece of gear as a line, with the swimmer's own band behind it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape

from almanac.arithmetic.gear_drag import DragAtSpeed
from almanac.drawing.charts.ticks import round_ticks, tick_words
from almanac.drawing.lettering import width_of

WIDTH, HEIGHT = 360, 250
LEFT, RIGHT, TOP, BOTTOM = 40, 16, 26, 44
_BESIDE, _KEY, _KEY_Y = 6, 20, TOP + 24
_SIZE = 16.0  # as figures.css has it

Place = Callable[[float, float], tuple[float, float]]  # speed and newtons to x, y


def drag_chart(rows: Sequence[DragAtSpeed], identifier: str, name: str) -> str:
    """The figure as SVG. ``rows`` run from the lowest speed to the highest; a gear without a number
    has no line.
    """
    ticks = round_ticks(max(max(row.own.most, row.gear_n or 0.0) for row in rows))
    low, high = rows[0].speed, rows[-1].speed

    def at(speed: float, newtons: float) -> tuple[float, float]:
        x = LEFT + (speed - low) / (high - low) * (WIDTH - LEFT - RIGHT)
        return x, HEIGHT - BOTTOM - newtons / ticks[-1] * (HEIGHT - TOP - BOTTOM)

    band = [at(row.speed, row.own.most) for row in rows]
    band += [at(row.speed, row.own.least) for row in reversed(rows)]
    line = [at(row.speed, row.gear_n) for row in rows if row.gear_n is not None]
    drawn = f'<polyline class="drag-line" points="{_points(line)}"/>' if line else ""
    return (
        f'<svg class="chart chart-drag" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        f'aria-labelledby="{identifier}-t {identifier}-d">'
        f'<title id="{identifier}-t">Drag over speed: {escape(name)}</title>'
        f'<desc id="{identifier}-d">{escape(_described(rows, name))}</desc>'
        f"{''.join(_grid_line(at, low, high, newtons) for newtons in ticks)}"
        f'<polygon class="drag-band" points="{_points(band)}"/>{drawn}'
        f"{''.join(_tick(at, row.speed) for row in rows)}{_names(rows, at, name)}"
        f"{_text(LEFT, 14, 'newtons', 'start')}"
        f"{_text(WIDTH - RIGHT, HEIGHT - 6, 'metres a second', 'end')}</svg>"
    )


def _names(rows: Sequence[DragAtSpeed], at: Place, name: str) -> str:
    """What the band is, beside it, and above both what the line is, with the gear's drag at the
    highest speed: beside it is no room.
    """
    inner, last = rows[-2], rows[-1]
    x, y = at(inner.speed, inner.own.most)
    names = _text(x - _BESIDE, y - _BESIDE, "swimmer's own", "end")
    if last.gear_n is None:
        return names
    key = _points([(LEFT + _BESIDE, _KEY_Y - 5), (LEFT + _BESIDE + _KEY, _KEY_Y - 5)])
    left = LEFT + 2 * _BESIDE + _KEY
    told = f"{last.gear_n:.0f} N at {last.speed:.1f}"
    words = f"{name}: {told}" if width_of(f"{name}: {told}", _SIZE) < WIDTH - left else told
    return (
        f'{names}<polyline class="drag-line" points="{key}"/>{_text(left, _KEY_Y, words, "start")}'
    )


def _points(places: Sequence[tuple[float, float]]) -> str:
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in places)


def _text(x: float, y: float, words: str, anchor: str) -> str:
    return (
        f'<text class="chart-label" x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">'
        f"{escape(words)}</text>"
    )


def _grid_line(at: Place, low: float, high: float, newtons: float) -> str:
    (left, y), (right, _) = (at(speed, newtons) for speed in (low, high))
    return (
        f'<path class="chart-grid" d="M{left:.1f} {y:.1f}H{right:.1f}"/>'
        f"{_text(left - _BESIDE, y + 5, tick_words(newtons), 'end')}"
    )


def _tick(at: Place, speed: float) -> str:
    x, y = at(speed, 0)
    return _text(x, y + 18, f"{speed:.1f}", "middle")


def _described(rows: Sequence[DragAtSpeed], name: str) -> str:
    phrases = [
        f"at {row.speed:.1f} m/s "
        f"{f'{row.gear_n:.0f} N' if row.gear_n is not None else 'not known'},"
        f" the swimmer's own {row.own.least:.0f} to {row.own.most:.0f} N"
        for row in rows
    ]
    return f"{name}: " + "; ".join(phrases) + "."
