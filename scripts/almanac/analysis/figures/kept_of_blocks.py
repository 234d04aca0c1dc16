"""The figures of what was kept: of a week of a block, and of each session."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.figures.figure import Figure, Shown
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.kept import (
    KeptSession,
    kept_load,
    kept_metres,
    kept_minutes,
    kept_of_week,
    kept_rating,
    kept_sessions,
    planned_metres,
    planned_minutes,
    planned_rating,
    planned_session_load,
    week_kept_load,
    week_kept_metres,
)
from almanac.arithmetic.week_change import (
    WeekOfBlock,
)
from almanac.arithmetic.working import Working


def kept_of(summary: BlockSummary) -> Iterator[tuple[str, KeptSession]]:
    """``2026-11-24 17:30 kept load``: a session by its day and start."""
    for kept in kept_sessions(summary):
        yield f"{kept.day.on} {kept.plan.start} {{}}", kept


def _kept_metres(of: WeekOfBlock) -> Working | None:
    return week_kept_metres(of.group, of.week)


def _kept_load(of: WeekOfBlock) -> Working | None:
    return week_kept_load(of.group, of.week)


def _kept_count(of: WeekOfBlock) -> str:
    """Of how many sessions of the week it is."""
    sessions = sum(len(day.sessions) for day in of.week.days)
    kept = len(list(kept_of_week(of.group, of.week)))
    return "" if kept == sessions else f"{kept} of {sessions} sessions"


# What was done beside what was planned: of a week, and of each session that was kept.
KEPT_OF_WEEK: tuple[Figure[WeekOfBlock], ...] = (
    Figure("kept distance", "Metres done", _kept_metres, Shown.WHOLE, "m",
           (week_kept_metres,), partly=_kept_count),
    Figure("kept load", "Load done", _kept_load, Shown.WHOLE, "", (week_kept_load, kept_load),
           partly=_kept_count),
)  # fmt: skip
KEPT: tuple[Figure[KeptSession], ...] = (
    Figure("planned minutes", "Minutes planned", planned_minutes, Shown.WHOLE, "min"),
    Figure("kept minutes", "done", kept_minutes, Shown.WHOLE, "min"),
    Figure("planned metres", "Metres planned", planned_metres, Shown.WHOLE, "m"),
    Figure("kept metres", "done", kept_metres, Shown.WHOLE, "m"),
    Figure("planned rating", "Rating planned", planned_rating, Shown.NUMBER),
    Figure("kept rating", "given", kept_rating, Shown.NUMBER),
    Figure("planned load", "Load planned", planned_session_load, Shown.WHOLE),
    Figure("kept load", "done", kept_load, Shown.WHOLE, absent="not known"),
)  # fmt: skip
