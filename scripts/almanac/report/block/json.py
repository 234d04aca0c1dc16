"""The JSON contract of blocks, version 1. Distances in metres, times in minutes, nulls where a
number is not known.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from almanac.analysis.figures import by_name
from almanac.analysis.figures.blocks import weeks_of
from almanac.analysis.figures.figure import NamedFigure
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.block_days import SessionPlan
from almanac.arithmetic.kept import KeptSession, kept_sessions
from almanac.arithmetic.week_change import WeekOfBlock
from almanac.findings import Finding
from almanac.report.block.text import BALANCE, WEEK_FIGURES_ELSEWHERE
from almanac.report.block.ways import block_ways
from almanac.report.block.wishes import wishes_json
from almanac.report.facet_shares import facet_numbers
from almanac.report.shown import other_figures_json, rounded
from almanac.rounding import TENTH, decimals

VERSION = 1
# The keys of the contract, and the figures that they hold; the rest of what is registered stands
# under ``figures``.
_WEEK = {
    "metres": ("distance", 1),
    "kick_share": ("kick share", 4),
    "supine_share": ("supine share", 4),
    "resisted_share": ("resisted share", 4),
    "fast_share": ("fast share", 4),
    "load": ("load", 1),
    "monotony": ("monotony", 4),
    "strain": ("strain", 1),
}
_WEEK_LOAD = ("load", "monotony", "strain")
_TOLD_OF_WEEK = {name for name, _ in _WEEK.values()} | WEEK_FIGURES_ELSEWHERE


def block_json(
    groups: Mapping[str, BlockSummary], findings: Iterable[Finding] = ()
) -> dict[str, Any]:
    """A block's summary. ``balance`` and ``taper`` are the first lane group's; where the groups
    swim different metres, ``of_groups`` has those of each.
    """
    first = next(iter(groups.values()))
    figures = by_name("block", "block", first)
    return {
        "version": VERSION,
        "kind": "block",
        "id": first.block.id,
        "starts": str(first.block.starts),
        "balance": _balance(first, figures),
        "taper": _taper(first, figures),
        "wishes": wishes_json(first),
        **_of_groups(groups),
        "groups": {
            group: [_week(week) for week in weeks_of(summary)] for group, summary in groups.items()
        },
        "kept": {
            group: kept
            for group, summary in groups.items()
            if (kept := [_kept(own) for own in kept_sessions(summary)])
        },
        "findings": [finding.as_json() for finding in findings],
        **other_figures_json(figures.values(), BALANCE),
    }


def _of_groups(groups: Mapping[str, BlockSummary]) -> dict[str, Any]:
    """The balance and the taper of each lane group, where they differ."""
    if len(block_ways(groups)) < 2:
        return {}
    named = {group: by_name("block", "block", summary) for group, summary in groups.items()}
    return {
        "of_groups": {
            group: {
                "balance": _balance(summary, named[group]),
                "taper": _taper(summary, named[group]),
            }
            for group, summary in groups.items()
        }
    }


def _taper(summary: BlockSummary, figures: Mapping[str, NamedFigure]) -> dict[str, Any] | None:
    taper = summary.taper
    return (
        None
        if taper is None
        else {
            "from": str(taper.first),
            "to": str(taper.last),
            "weeks": list(taper.weeks),
            "against": list(taper.against),
            "cut": rounded(figures["taper"], 4),
            "light_days": taper.light_days,
        }
    )


def _session(own: SessionPlan) -> dict[str, Any]:
    """A session of a day: what it is, when, how long, and its load; nulls where not known."""
    return {
        "practice": own.session.practice,
        "land": own.session.land,
        "other": own.session.other or None,
        "start": own.start or None,
        "minutes": None if own.minutes is None else decimals(own.minutes, 1),
        "load": None if own.load is None else decimals(own.load, 1),
    }


def _kept(own: KeptSession) -> dict[str, Any]:
    """A session that was kept: what was done beside what was planned."""
    figures = by_name("block", "kept", own)
    return {
        "log": own.log.id,
        "on": str(own.log.on),
        "practice": own.log.practice,
        "land": own.log.land,
        "other": own.log.other or None,
        "heads": own.log.heads,
        **{name.replace(" ", "_"): rounded(figure, 1) for name, figure in figures.items()},
        "changed": list(own.log.changed),
        "note": own.log.note or None,
    }


def _week(of: WeekOfBlock) -> dict[str, Any]:
    figures, load = by_name("block", "week", of), of.week.load
    told = {key: rounded(figures[name], digits) for key, (name, digits) in _WEEK.items()}
    days = {day.name: None if day.load is None else decimals(day.load, 1) for day in of.week.days}
    change = {"change": rounded(figures["distance change"], 4)}
    return {
        "week": of.week.number,
        **{key: told[key] for key in _WEEK if key not in _WEEK_LOAD},
        "known_days": load.known if load else 0,
        "planned_days": of.week.planned_days,
        "days": days,
        "sessions": {day.name: [_session(own) for own in day.sessions] for day in of.week.days},
        **{key: told[key] for key in _WEEK_LOAD},
        "deviation": load.convention.value if load else None,
        **change,
        **other_figures_json(figures.values(), _TOLD_OF_WEEK),
    }


def _balance(summary: BlockSummary, figures: Mapping[str, NamedFigure]) -> dict[str, Any]:
    return {
        "metres": rounded(figures["distance"], 1),
        "by": {facet: facet_numbers(split, TENTH) for facet, split in summary.balance.by.items()},
        "kick_share": rounded(figures["kick share"], 4),
        "supine_share": rounded(figures["supine share"], 4),
        "resisted_m": rounded(figures["resisted distance"], 1),
        "fast_m": rounded(figures["fast distance"], 1),
        "kick_into_stroke_m": rounded(figures["kick into stroke"], 1),
    }
