"""The JSON contract of practices, version 1. Distances in the unit named beside them, times in
seconds.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from almanac.analysis.figures import by_name
from almanac.analysis.figures.figure import NamedFigure
from almanac.analysis.figures.practices import PracticeForGroup
from almanac.arithmetic.practice import PracticeSummary
from almanac.findings import Finding
from almanac.report.brief_text import brief_json
from almanac.report.set_json import facets_json
from almanac.report.sheet_json import hands_json, lanes_json, sheet_json
from almanac.report.shown import SHARES_IN_WORDS, other_figures_json, rounded
from almanac.rounding import decimals

VERSION = 1


def practice_json(summary: PracticeSummary, findings: Iterable[Finding] = ()) -> dict[str, Any]:
    """A practice's summary."""
    course = summary.pool.course
    totals, times, shares = (
        by_name("practice", key, of)
        for key, of in (("practice", summary.first), ("time", summary), ("shares", summary.first))
    )
    loads = {
        group: by_name("practice", "group", PracticeForGroup(summary, group))
        for group in summary.groups
    }
    return {
        "version": VERSION,
        "kind": "practice",
        "id": summary.practice.id,
        "course": str(course),
        "distance": totals["distance"].value,
        "unit": course.unit.value,
        "metres": decimals(summary.metres, 3),
        "by": facets_json(summary.first),
        **_by_group(summary),
        "slot_s": 60 * summary.practice.slot.minutes,
        "ends_s": times["time"].value,
        "slack_s": times["slack"].value,
        **lanes_json(summary),
        **({"figures_of_first_half": list(summary.halved)} if summary.halved else {}),
        "sheet": sheet_json(summary),
        **hands_json(summary),
        **{
            key: {group: rounded(figures[key], 1) for group, figures in loads.items()}
            for key in ("minutes", "rating", "load")
        },
        "gear": [
            {"gear": need.gear, "needed": need.needed, "owned": need.owned} for need in summary.gear
        ],
        "brief": brief_json(summary.brief),
        "findings": [finding.as_json() for finding in findings],
        **_others([*totals.values(), *times.values(), *shares.values()], loads),
    }


def _by_group(summary: PracticeSummary) -> dict[str, Any]:
    """What each lane group swims, where some swim another thing than others."""
    if not summary.differs:
        return {}
    return {
        "groups": {
            group: {"distance": swum.distance.value, "by": facets_json(swum)}
            for group, swum in summary.swum.items()
        }
    }


def _others(
    whole: list[NamedFigure], loads: Mapping[str, Mapping[str, NamedFigure]]
) -> dict[str, Any]:
    """The figures that the contract gives no key: of the practice, and of each lane group."""
    told = ("distance", "time", "slack", *SHARES_IN_WORDS)
    of_groups = {
        group: own["figures"]
        for group, figures in loads.items()
        if (own := other_figures_json(figures.values(), ("load", "minutes", "rating")))
    }
    return {
        **other_figures_json(whole, told),
        **({"group_figures": of_groups} if of_groups else {}),
    }
