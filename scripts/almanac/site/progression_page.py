"""The page of a progression."""

from __future__ import annotations

from almanac.model.catalogue import Catalogue
from almanac.model.progression import Progression
from almanac.site.drawing_html import ladder_chart
from almanac.site.entry_page import entry_page, evidence_rows
from almanac.site.links import Page, is_listed, link


def progression_page(catalogue: Catalogue, progression: Progression) -> Page:
    """The page of a progression."""
    stages = [
        {
            "stage": stage,
            "drills": [link(catalogue.drills[id]) for id in stage.drills],
            "sets": [link(catalogue.sets[id]) for id in stage.sets],
            "sessions": f"{stage.sessions.least} to {stage.sessions.most}",
        }
        for stage in progression.stages
    ]
    return entry_page(
        catalogue,
        progression,
        goal=catalogue.words("goals")[progression.goal].title,
        is_listed=is_listed(catalogue, progression.goal),
        level=catalogue.words("levels")[progression.level].title,
        ladder=ladder_chart(progression),
        stages=stages,
        evidence=evidence_rows(catalogue, progression.evidence),
    )
