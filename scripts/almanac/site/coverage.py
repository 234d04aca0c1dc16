"""The page that shows what the catalogue covers."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.coverage import Cell
from almanac.kinds import WITH_PAGES
from almanac.model.policy import Word
from almanac.site.links import Page, is_listed


def coverage_page(analysis: Analysis) -> Page:
    """Goals by levels, the gaps that the policy states, and how many entries there are of each
    kind.
    """
    catalogue = analysis.catalogue
    goals, levels = catalogue.words("goals"), catalogue.words("levels")
    has_water = bool(catalogue.club.waters)
    counts = [
        (kind.plural, sum(kind.key == own for own, _ in catalogue.entries))
        for kind in WITH_PAGES.values()
    ]
    context = {
        "levels": [word.title for word in levels.values()],
        "rows": [
            (goal, goals[goal].title, is_listed(catalogue, goal), row, _holes(row, levels))
            for goal, row in ((row[0].goal, row) for row in analysis.coverage)
            # on land alone a goal of swimming is no gap
            if has_water or any(cell.drills or cell.sets for cell in row)
        ],
        "gaps": [
            (goals[gap.goal].title, levels[gap.level].title.lower(), gap.reason)
            for gap in catalogue.policy.gaps
        ],
        "counts": counts,
    }
    return Page("coverage.md", "coverage", context)


def _holes(row: Sequence[Cell], levels: Mapping[str, Word]) -> list[str]:
    """The titles of the levels at which a goal has a gap."""
    return [levels[cell.level].title.lower() for cell in row if cell.is_hole]
