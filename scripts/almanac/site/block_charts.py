"""The small charts of a block: for one lane group, one number a week in each."""

from __future__ import annotations

from collections.abc import Sequence

from markupsafe import Markup

from almanac.arithmetic.block import BlockSummary
from almanac.drawing.charts.small_columns import small_columns

Chart = tuple[str, Markup]  # what it shows, and the drawing


def chief_charts(group: str, summary: BlockSummary) -> list[Chart]:
    """Metres, load, kick and metres with resistance, week by week."""
    balances = [week.balance for week in summary.weeks]
    loads = [week.load.total if week.load else None for week in summary.weeks]
    return [
        _chart(group, "Metres a week", [own.metres for own in balances], " m"),
        _chart(group, "Load a week", loads),
        _chart(group, "Kick, metres", [own.kick_m for own in balances], " m"),
        _chart(group, "Resisted, metres", [own.resisted_m for own in balances], " m"),
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
