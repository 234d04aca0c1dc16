"""The small charts of a block: for one lane group, one number a week in each."""

from __future__ import annotations

from collections.abc import Sequence

from markupsafe import Markup

from almanac.arithmetic.block import BlockSummary
from almanac.drawing.charts.small_columns import column, shown_value, small_columns

Chart = tuple[str, Markup]  # what it shows, and the drawing


def chief_charts(group: str, summary: BlockSummary) -> list[Chart]:
    """Metres, load, kick and metres with resistance, week by week."""
    units = (" m", "", " m", " m")
    return [
        _chart(group, title, values, unit)
        for (title, values), unit in zip(_chief(summary), units, strict=True)
    ]


def week_bars(summary: BlockSummary) -> list[tuple[str, list[tuple[Markup, str]]]]:
    """The same four as bars that stand in the columns of a table: by title a drawing and the number
    of each week.
    """
    return [(title, _bars(values)) for title, values in _chief(summary)]


def _bars(values: Sequence[float | None]) -> list[tuple[Markup, str]]:
    top = max((value for value in values if value), default=1.0)
    return [(Markup(column(value, top)), shown_value(value)) for value in values]


def _chief(summary: BlockSummary) -> list[tuple[str, list[float | None]]]:
    balances = [week.balance for week in summary.weeks]
    return [
        ("Metres a week", [float(own.metres) for own in balances]),
        ("Load a week", [week.load.total if week.load else None for week in summary.weeks]),
        ("Kick, metres", [float(own.kick_m) for own in balances]),
        ("Resisted, metres", [float(own.resisted_m) for own in balances]),
    ]


def spread_charts(group: str, summary: BlockSummary) -> list[Chart]:
    """How alike the days of each week are, and what that makes of its load."""
    loads = [week.load for week in summary.weeks]
    monotony = [load.monotony if load else None for load in loads]
    return [
        _chart(group, "Monotony", monotony, digits=2),
        _chart(group, "Strain", [load.strain if load else None for load in loads]),
    ]


def _chart(
    group: str, title: str, values: Sequence[float | None], unit: str = "", digits: int = 0
) -> Chart:
    identifier = f"small-{group}-{title.split(maxsplit=1)[0].rstrip(',').lower()}"
    named = f"{title}, week by week"
    return title, Markup(small_columns(values, identifier, named, unit, digits))
