"""Drag over speed: a piece of gear as a line, with the swimmer's own band behind it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape

from almanac.arithmetic.gear_drag import DragAtSpeed

WIDTH, HEIGHT = 640, 360
LEFT, RIGHT, TOP, BOTTOM = 60, 20, 20, 50

Place = Callable[[float, float], str]  # speed and newtons to "x,y"


def drag_chart(rows: Sequence[DragAtSpeed], identifier: str, name: str) -> str:
    """The figure as SVG. ``rows`` run from the lowest speed to the highest; a gear without a number
    has no line.
    """
    top = _round_up(max(max(row.own.most, row.gear_n or 0.0) for row in rows))
    low, high = rows[0].speed, rows[-1].speed

    def at(speed: float, newtons: float) -> str:
        x = LEFT + (speed - low) / (high - low) * (WIDTH - LEFT - RIGHT)
        y = HEIGHT - BOTTOM - newtons / top * (HEIGHT - TOP - BOTTOM)
        return f"{x:.1f},{y:.1f}"

    upper = [at(row.speed, row.own.most) for row in rows]
    lower = [at(row.speed, row.own.least) for row in reversed(rows)]
    line = " ".join(at(row.speed, row.gear_n) for row in rows if row.gear_n is not None)
    grid = "".join(_grid_line(at, low, high, newtons) for newtons in _steps(top))
    ticks = "".join(_tick(at, row.speed) for row in rows)
    drawn = f'<polyline class="drag-line" points="{line}"/>' if line else ""
    return (
        f'<svg class="chart" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        f'aria-labelledby="{identifier}-t {identifier}-d">'
        f'<title id="{identifier}-t">Drag over speed: {escape(name)}</title>'
        f'<desc id="{identifier}-d">{escape(_described(rows, name))}</desc>{grid}'
        f'<polygon class="drag-band" points="{" ".join(upper + lower)}"/>{drawn}{ticks}'
        f'<text class="chart-label" x="{LEFT}" y="14">newtons</text>'
        f'<text class="chart-label" x="{WIDTH - RIGHT}" y="{HEIGHT - 6}" '
        'text-anchor="end">metres a second</text></svg>'
    )


def _grid_line(at: Place, low: float, high: float, newtons: float) -> str:
    (x0, y), (x1, _) = (at(speed, newtons).split(",") for speed in (low, high))
    return (
        f'<path class="chart-grid" d="M{x0} {y}H{x1}"/>'
        f'<text class="chart-label" x="{LEFT - 8}" y="{float(y) + 5:.1f}" '
        f'text-anchor="end">{newtons:g}</text>'
    )


def _tick(at: Place, speed: float) -> str:
    x, y = at(speed, 0).split(",")
    return (
        f'<text class="chart-label" x="{x}" y="{float(y) + 20:.1f}" '
        f'text-anchor="middle">{speed:.1f}</text>'
    )


def _round_up(newtons: float) -> float:
    step = next(step for step in (20, 50, 100, 200, 500, 1000, 10**9) if newtons / step <= 5)
    return -(-newtons // step) * step


def _steps(top: float) -> list[float]:
    return [top * part / 4 for part in range(5)]


def _described(rows: Sequence[DragAtSpeed], name: str) -> str:
    phrases = [
        f"at {row.speed:.1f} m/s "
        f"{f'{row.gear_n:.0f} N' if row.gear_n is not None else 'not known'},"
        f" the swimmer's own {row.own.least:.0f} to {row.own.most:.0f} N"
        for row in rows
    ]
    return f"{name}: " + "; ".join(phrases) + "."
