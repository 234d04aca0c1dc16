"""The weeks of a block on its page: the days of each with their sessions, and the columns of its
table.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from almanac.analysis.figures import by_name, table
from almanac.analysis.figures.figure import NamedFigure
from almanac.arithmetic.block_days import DayPlan, SessionPlan, day_of_all
from almanac.arithmetic.week_change import WeekOfBlock
from almanac.model.catalogue import Catalogue
from almanac.report.block.text import WEEK_SHARES
from almanac.report.shown import day_words, others, shown
from almanac.site.links import Link, link


def columns_of(of: WeekOfBlock) -> list[NamedFigure]:
    """The columns of the weeks' table: the two shares are shown by a terminal alone."""
    shares = table("block", "week", "shares", of)
    return [*table("block", "week", "weeks", of), *others(shares, WEEK_SHARES)]


def week_data(
    catalogue: Catalogue, of: WeekOfBlock, each: Sequence[Sequence[DayPlan]]
) -> dict[str, Any]:
    """A week with its days, for lane groups whose days may differ, and what its deck card shows."""
    week, named = of.week, by_name("block", "week", of)
    return {
        "number": week.number,
        "focus": week.week.focus,
        "kind": week.week.kind_told,
        "from": str(week.days[0].on),
        "day": day_words(week.days[0].on),
        "days": [_day(catalogue, day_of_all(days)) for days in zip(*each, strict=True)],
        "card": {name: shown(named[name]) for name in ("distance", "kick share", "supine share")},
    }


def _day(catalogue: Catalogue, day: DayPlan) -> dict[str, Any]:
    words = "not planned" if day.day is None else "Rest" if not day.sessions else ""
    return {
        "name": day.name.capitalize(),
        "on": str(day.on),
        "sessions": [_session(catalogue, own) for own in day.sessions],
        "words": words,
    }


def _session(catalogue: Catalogue, own: SessionPlan) -> dict[str, Any]:
    """A session: its practice or what else it is, when, and for which lane groups."""
    groups = ", ".join(catalogue.lane_groups[id].title for id in own.session.groups)
    return {
        "practice": _entry(catalogue, own),
        "other": own.session.other,
        "start": own.session.start,
        "groups": groups,
    }


def _entry(catalogue: Catalogue, own: SessionPlan) -> Link | None:
    """The link to the practice or the circuit of a session."""
    if own.practice:
        return link(catalogue.practices[own.practice.practice.id])
    return link(own.circuit.swim_set) if own.circuit else None
