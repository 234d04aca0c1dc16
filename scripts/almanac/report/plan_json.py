"""The JSON contracts of practices and blocks, version 1. Distances in the unit named beside them,
times in seconds.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from almanac.arithmetic.block import Balance, BlockSummary, WeekPlan
from almanac.arithmetic.practice import PracticeSummary
from almanac.findings import Finding

VERSION = 1


def practice_json(summary: PracticeSummary, findings: Iterable[Finding] = ()) -> dict[str, Any]:
    """A practice's summary."""
    course = summary.pool.course
    return {
        "version": VERSION,
        "kind": "practice",
        "id": summary.practice.id,
        "course": str(course),
        "distance": summary.distance.value,
        "unit": course.unit.value,
        "metres": round(summary.metres, 3),
        "by": {
            facet: {word: round(float(value), 3) for word, value in split.items()}
            for facet, split in summary.by.items()
        },
        "slot_s": 60 * summary.practice.slot.minutes,
        "ends_s": summary.ends_s,
        "slack_s": summary.slack_s,
        "sheet": [
            {
                "part": row.run.part.part,
                "set": row.run.part.set,
                "talk_s": row.talk_s,
                "gear_s": row.gear_s,
                "starts_s": row.starts_s,
                "ends_s": row.ends_s,
                "groups": {
                    cell.group: {"ends_s": cell.ends_s, "waits_s": cell.waits_s}
                    for cell in row.cells
                },
            }
            for row in summary.sheet
        ],
        "load": {
            group: _rounded(load.value if (load := summary.load(group)) else None)
            for group in summary.groups
        },
        "gear": [
            {"gear": need.gear, "needed": need.needed, "owned": need.owned} for need in summary.gear
        ],
        "brief": [
            {"hazard": line.hazard, "control": line.control, "from": list(line.sources)}
            for line in summary.brief
        ],
        "findings": [finding.as_json() for finding in findings],
    }


def block_json(
    groups: Mapping[str, BlockSummary], findings: Iterable[Finding] = ()
) -> dict[str, Any]:
    """A block's summary; the balance is the same for every lane group, the loads are not."""
    first = next(iter(groups.values()))
    return {
        "version": VERSION,
        "kind": "block",
        "id": first.block.id,
        "starts": str(first.block.starts),
        "balance": _balance(first.balance),
        "taper": None
        if first.taper is None
        else {"weeks": list(first.taper.weeks), "cut": round(first.taper.cut, 4)},
        "groups": {
            group: [_week(week) for week in summary.weeks] for group, summary in groups.items()
        },
        "findings": [finding.as_json() for finding in findings],
    }


def _week(week: WeekPlan) -> dict[str, Any]:
    load, change = week.load, week.change
    return {
        "week": week.number,
        "metres": round(week.balance.metres, 1),
        "kick_share": _rounded(week.balance.kick_share, 4),
        "supine_share": _rounded(week.balance.supine_share, 4),
        "resisted_share": _rounded(week.balance.resisted_share, 4),
        "fast_share": _rounded(week.balance.fast_share, 4),
        "days": {day.name: _rounded(day.load) for day in week.days},
        "load": _rounded(load.total if load else None),
        "monotony": _rounded(load.monotony if load else None, 4),
        "strain": _rounded(load.strain if load else None),
        "deviation": load.convention.value if load else None,
        "change": None if change is None else _rounded(change.metres, 4),
    }


def _balance(balance: Balance) -> dict[str, Any]:
    return {
        "metres": round(balance.metres, 1),
        "by": {
            facet: {word: round(value, 1) for word, value in split.items()}
            for facet, split in balance.by.items()
        },
        "kick_share": _rounded(balance.kick_share, 4),
        "supine_share": _rounded(balance.supine_share, 4),
        "resisted_m": round(balance.resisted_m, 1),
        "fast_m": round(balance.fast_m, 1),
        "kick_into_stroke_m": round(balance.kick_into_stroke_m, 1),
    }


def _rounded(value: float | None, digits: int = 1) -> float | None:
    return None if value is None else round(value, digits)
