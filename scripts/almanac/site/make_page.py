"""The page Make a practice: what its script has to know before it reads what the practices of a
squad are composed from (``compose_data``): whose, where and when, and what is planned on which day.
"""

from __future__ import annotations

from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.model.catalogue import Catalogue
from almanac.model.vocabularies import GRAVITIES
from almanac.report.compose.entry import PART_WORDS
from almanac.report.compose.table import can_compose
from almanac.report.compose.usual import usual_minutes, usual_pool, usual_start
from almanac.site.links import Page
from almanac.site.templates import script_json
from almanac.site.tonight import planned


def make_page(analysis: Analysis) -> Page:
    """The page; its questions are drawn by its script."""
    data = make_data(analysis)
    return Page("make.md", "make", {"data": script_json(data), "squads": data["squads"]})


def make_data(analysis: Analysis) -> dict[str, Any]:
    """``squads``: id, title, lane groups by id and title, usual pool, start and minutes;
    ``planned``: of each day and squad the start, the minutes and the pool; ``kept``: of each day
    that was kept its practice; ``gravities``: the gravest first; ``parts``: what a practice calls
    the part that a role is.
    """
    catalogue = analysis.catalogue
    words = catalogue.words("practice-parts")
    return {
        "squads": [
            [id, squad.title, _groups(catalogue, id), usual_pool(catalogue, id),
             usual_start(catalogue, id), usual_minutes(catalogue, id)]
            for id, squad in catalogue.club.squads.items() if can_compose(analysis, id)
        ],
        "planned": _planned(analysis),
        "kept": _kept(catalogue),
        "gravities": [word.title for word in catalogue.words(GRAVITIES).values()],
        "parts": {role: words[word].title for role, word in PART_WORDS.items() if word in words},
    }  # fmt: skip


def _groups(catalogue: Catalogue, squad: str) -> list[list[str]]:
    groups = catalogue.lane_groups.items()
    return [[id, group.title] for id, group in groups if group.squad == squad]


def _kept(catalogue: Catalogue) -> list[list[str]]:
    logs = catalogue.logs.values()
    kept = {(log.on.isoformat(), log.practice) for log in logs if log.practice}
    return [[on, practice] for on, practice in sorted(kept)]


def _planned(analysis: Analysis) -> list[list[Any]]:
    practices = analysis.catalogue.practices
    found = []
    for own in planned(analysis):
        practice = practices[own.id]
        if practice.pool not in analysis.catalogue.club.waters:
            continue
        start = own.start or practice.slot.start
        found.append(
            [own.on.isoformat(), practice.squad, start, practice.slot.minutes, practice.pool]
        )
    return found
