"""The figures of a block, for one lane group, and of each of its weeks."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.figures.figure import Figure, Section, Shown
from almanac.arithmetic.block import BlockSummary, taper
from almanac.arithmetic.block_workings import (
    WeekOfBlock,
    block_distance,
    distance_change,
    fast_change,
    fast_metres,
    fast_part,
    kick_part,
    load_change,
    metres_into_stroke,
    monotony,
    resisted_change,
    resisted_metres,
    resisted_part,
    strain,
    supine_part,
    taper_cut,
    week_distance,
    week_load_total,
)
from almanac.arithmetic.training_load import week_load


def _itself(summary: BlockSummary) -> Iterator[tuple[str, BlockSummary]]:
    yield "{}", summary


def _weeks(summary: BlockSummary) -> Iterator[tuple[str, WeekOfBlock]]:
    for week, before in zip(summary.weeks, (None, *summary.weeks), strict=False):
        yield f"week {week.number} {{}}", WeekOfBlock(week, before)


def weeks_of(summary: BlockSummary) -> list[WeekOfBlock]:
    """The weeks that figures are asked of, in order."""
    return [week for _, week in _weeks(summary)]


TOTALS: tuple[Figure[BlockSummary], ...] = ()

# These stand on the page in sentences.
BALANCE: tuple[Figure[BlockSummary], ...] = (
    Figure("distance", "Metres", block_distance, Shown.WHOLE, "m"),
    Figure("kick share", "Kick", kick_part, Shown.SHARE, absent="none"),
    Figure("supine share", "Flutter on the back", supine_part, Shown.SHARE, absent="none"),
    Figure("resisted share", "Resisted", resisted_part, Shown.SHARE, absent="none"),
    Figure("fast share", "Fast", fast_part, Shown.SHARE, absent="none"),
    Figure("resisted distance", "Resisted, m", resisted_metres, Shown.WHOLE, "m"),
    Figure("fast distance", "Fast, m", fast_metres, Shown.WHOLE, "m"),
    Figure("kick into stroke", "Kick into stroke, m", metres_into_stroke, Shown.WHOLE, "m"),
    Figure("taper", "Taper", taper_cut, Shown.SHARE, explained=(taper,)),
)

# The columns of the page's two tables of weeks, and the shares that a terminal shows beside them.
WEEKS: tuple[Figure[WeekOfBlock], ...] = (
    Figure("distance", "Metres", week_distance, Shown.WHOLE, "m"),
    Figure("distance change", "Change", distance_change, Shown.CHANGE),
    Figure("kick share", "Kick", kick_part, Shown.SHARE, absent="none"),
    Figure("supine share", "Flutter on the back", supine_part, Shown.SHARE, absent="none"),
    Figure("resisted distance", "Resisted, m", resisted_metres, Shown.WHOLE, "m"),
    Figure("resisted change", "Change", resisted_change, Shown.CHANGE),
    Figure("fast distance", "Fast, m", fast_metres, Shown.WHOLE, "m"),
    Figure("fast change", "Change", fast_change, Shown.CHANGE),
    Figure("kick into stroke", "Kick into stroke, m", metres_into_stroke, Shown.WHOLE, "m"),
)
SHARES: tuple[Figure[WeekOfBlock], ...] = (
    Figure("resisted share", "Resisted", resisted_part, Shown.SHARE, absent="none"),
    Figure("fast share", "Fast", fast_part, Shown.SHARE, absent="none"),
)
LOAD: tuple[Figure[WeekOfBlock], ...] = (
    Figure("load", "Load", week_load_total, Shown.NUMBER, explained=(week_load,)),
    Figure("load change", "Change", load_change, Shown.CHANGE),
    Figure("monotony", "Monotony", monotony, Shown.HUNDREDTHS, explained=(week_load,)),
    Figure("strain", "Strain", strain, Shown.WHOLE, explained=(week_load,)),
)

BLOCK = (
    Section("block", _itself, {"totals": TOTALS, "balance": BALANCE}, "Load of a week"),
    Section("week", _weeks, {"weeks": WEEKS, "shares": SHARES, "load": LOAD}, "Load of a week"),
)
