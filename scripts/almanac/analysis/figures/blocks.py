"""The figures of a block, for one lane group, and of each of its weeks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from almanac.analysis.figures.facets import PART_ESTIMATED
from almanac.analysis.figures.figure import Figure, Section, Shown
from almanac.analysis.figures.kept_of_blocks import KEPT, KEPT_OF_WEEK, kept_of
from almanac.arithmetic.block import BlockSummary, WeekPlan
from almanac.arithmetic.block_wishes import (
    GoalOfBlock,
    LoadOfBlock,
    StrokeOfBlock,
    goals_of,
    least_of_two_weeks,
    loads_of,
    part_of_full,
    practices_for,
    practices_wished,
    strokes_of,
)
from almanac.arithmetic.block_workings import (
    block_distance,
    dolphin_part,
    fast_metres,
    fast_part,
    kick_part,
    metres_into_stroke,
    monotony,
    resisted_metres,
    resisted_part,
    strain,
    supine_part,
    taper_cut,
    taper_light_days,
    week_distance,
    week_load_total,
)
from almanac.arithmetic.taper import taper
from almanac.arithmetic.training_load import week_load
from almanac.arithmetic.week_change import (
    WeekOfBlock,
    distance_change,
    fast_change,
    load_change,
    resisted_change,
    week_change,
)


def _itself(summary: BlockSummary) -> Iterator[tuple[str, BlockSummary]]:
    yield "{}", summary


def _weeks(summary: BlockSummary) -> Iterator[tuple[str, WeekOfBlock]]:
    for number, week in enumerate(summary.weeks):
        of = WeekOfBlock(week, summary.weeks[:number], summary.rules.least_load, summary.group)
        yield f"week {week.number} {{}}", of


def weeks_of(summary: BlockSummary) -> list[WeekOfBlock]:
    """The weeks that figures are asked of, in order."""
    return [week for _, week in _weeks(summary)]


def _of_days(known: int, days: int) -> str:
    return "" if known == days else f"{known} of {days} days"


def _planned_days(of: WeekOfBlock) -> str:
    days = _of_days(of.week.planned_days, len(of.week.days))
    return _also_estimated(days, [of.week])


def _planned_days_of_block(of: BlockSummary) -> str:
    days = _of_days(sum(week.planned_days for week in of.weeks), len(of.days))
    return _also_estimated(days, of.weeks)


def _also_estimated(days: str, weeks: Iterable[WeekPlan]) -> str:
    swum = (own.swum for week in weeks for day in week.days for own in day.sessions)
    estimated = any(one is not None and one.by_time for one in swum)
    return ", ".join(filter(None, (days, PART_ESTIMATED if estimated else "")))


def _known_loads(of: WeekOfBlock) -> str:
    return _of_days(of.week.load.known, of.week.load.days) if of.week.load else ""


TOTALS: tuple[Figure[BlockSummary], ...] = ()

# These stand on the page in sentences.
BALANCE: tuple[Figure[BlockSummary], ...] = (
    Figure("distance", "Metres", block_distance, Shown.WHOLE, "m", partly=_planned_days_of_block),
    Figure("kick share", "Kick", kick_part, Shown.SHARE, absent="none"),
    Figure("supine share", "Flutter on the back", supine_part, Shown.SHARE, absent="none"),
    Figure("resisted share", "Resisted", resisted_part, Shown.SHARE, absent="none"),
    Figure("fast share", "Fast", fast_part, Shown.SHARE, absent="none"),
    Figure("dolphin share", "Dolphin kick", dolphin_part, Shown.SHARE, absent="none"),
    Figure("resisted distance", "Resisted, m", resisted_metres, Shown.WHOLE, "m"),
    Figure("fast distance", "Fast, m", fast_metres, Shown.WHOLE, "m"),
    Figure("kick into stroke", "Kick into stroke, m", metres_into_stroke, Shown.WHOLE, "m"),
    Figure("taper", "Taper", taper_cut, Shown.SHARE, explained=(taper,)),
    Figure(
        "taper days", "Lighter days of the taper", taper_light_days, Shown.WHOLE, "days", (taper,)
    ),
)

# The columns of the page's two tables of weeks, and the shares that a terminal shows beside them.
WEEKS: tuple[Figure[WeekOfBlock], ...] = (
    Figure("distance", "Metres", week_distance, Shown.WHOLE, "m", partly=_planned_days),
    Figure(
        "distance change",
        "Against the last four",
        distance_change,
        Shown.CHANGE,
        explained=(week_change,),
    ),
    Figure("kick share", "Kick", kick_part, Shown.SHARE, absent="none"),
    Figure("supine share", "Flutter on the back", supine_part, Shown.SHARE, absent="none"),
    Figure("resisted distance", "Resisted, m", resisted_metres, Shown.WHOLE, "m"),
    Figure(
        "resisted change",
        "Against the last four",
        resisted_change,
        Shown.CHANGE,
        explained=(week_change,),
    ),
    Figure("fast distance", "Fast, m", fast_metres, Shown.WHOLE, "m"),
    Figure(
        "fast change", "Against the last four", fast_change, Shown.CHANGE, explained=(week_change,)
    ),
    Figure("kick into stroke", "Kick into stroke, m", metres_into_stroke, Shown.WHOLE, "m"),
)
SHARES: tuple[Figure[WeekOfBlock], ...] = (
    Figure("resisted share", "Resisted", resisted_part, Shown.SHARE, absent="none"),
    Figure("fast share", "Fast", fast_part, Shown.SHARE, absent="none"),
)
LOAD: tuple[Figure[WeekOfBlock], ...] = (
    Figure(
        "load", "Load", week_load_total, Shown.WHOLE, explained=(week_load,), partly=_known_loads
    ),
    Figure(
        "load change", "Against the last four", load_change, Shown.CHANGE, explained=(week_change,)
    ),
    Figure("monotony", "Monotony", monotony, Shown.HUNDREDTHS, explained=(week_load,)),
    Figure("strain", "Strain", strain, Shown.WHOLE, explained=(week_load,)),
)

# What the block has of what was wished, beside its balance: the first of a table is wished.
WISHED_GOALS: tuple[Figure[GoalOfBlock], ...] = (
    Figure(
        "practices",
        "Practices for it",
        practices_for,
        Shown.WHOLE,
        explained=(practices_for, goals_of, practices_wished),
    ),
)
WISHED_STROKES: tuple[Figure[StrokeOfBlock], ...] = (
    Figure("least share", "Least in two weeks", least_of_two_weeks, Shown.SHARE),
)
WISHED_LOADS: tuple[Figure[LoadOfBlock], ...] = (
    Figure("of full", "Of a full week", part_of_full, Shown.SHARE, absent="not known"),
)


def _goals(summary: BlockSummary) -> Iterator[tuple[str, GoalOfBlock]]:
    for own in goals_of(summary):
        yield f"{own.goal} {{}}", own


def _strokes(summary: BlockSummary) -> Iterator[tuple[str, StrokeOfBlock]]:
    for own in strokes_of(summary):
        yield f"{own.stroke} {{}}", own


def _loads(summary: BlockSummary) -> Iterator[tuple[str, LoadOfBlock]]:
    for own in loads_of(summary):
        yield f"week {own.week.number} {{}}", own


BLOCK = (
    Section("block", _itself, {"totals": TOTALS, "balance": BALANCE}, "Load of a week"),
    Section(
        "week",
        _weeks,
        {"weeks": WEEKS, "shares": SHARES, "load": LOAD, "kept": KEPT_OF_WEEK},
        "Load of a week",
    ),
    Section("kept", kept_of, {"kept": KEPT}, "Load of a week"),
    Section("goal", _goals, {"wishes": WISHED_GOALS}, "Load of a week"),
    Section("stroke", _strokes, {"wishes": WISHED_STROKES}, "Load of a week"),
    Section("wished load", _loads, {"wishes": WISHED_LOADS}, "Load of a week"),
)
