"""The page of a set: the whiteboard, the sums, and the clock of the lane group and pool that it is
written for; beside it a page with the clocks of every lane group in every pool.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import table
from almanac.arithmetic.summary import SetSummary
from almanac.arithmetic.swum import Swum
from almanac.findings import Finding
from almanac.model.catalogue import Catalogue
from almanac.model.progression import Progression
from almanac.model.swim_set import SwimSet
from almanac.report.brief_text import house_rules, shown_brief
from almanac.report.known_words import unfit_lines
from almanac.report.pool_text import set_needs
from almanac.report.set_text import CLOCK_CONVENTION
from almanac.report.timed_board import timed_lines
from almanac.report.ways import distance_words, ways_of
from almanac.report.whiteboard import board
from almanac.site.adapt_lines import adapted_set
from almanac.site.entry_page import entry_page, findings_on
from almanac.site.group_table import group_table
from almanac.site.links import Page, link, links
from almanac.site.preferences import preferences
from almanac.site.run_data import run_version
from almanac.site.scaled_page import of_what, offers, ways_offered
from almanac.site.set_clocks import own_pool, pool_clocks
from almanac.site.shown_figures import PageFigure, effort_legend, page_figures, swum_ways
from almanac.units import COURSES, LAND

_CLOCKS = "sets/clocks"


def set_page(
    analysis: Analysis,
    summary: SetSummary,
    findings: Sequence[Finding],
    pools: list[dict[str, Any]],
) -> Page:
    """The page of a set that can be worked out, from its summary in its own pool."""
    catalogue, swim_set = analysis.catalogue, summary.swim_set
    written, groups = board(catalogue, swim_set), tuple(catalogue.lane_groups)
    unfit = list(unfit_lines(catalogue, summary.clocks, analysis.meant(swim_set)))
    timed = timed_lines(catalogue, written, summary.clocks, groups)
    titles = {id: group.title for id, group in catalogue.lane_groups.items()}
    drills = {piece.drill.id: piece.drill for rep in summary.every_rep for piece in rep.pieces}
    return entry_page(
        catalogue,
        swim_set,
        level=catalogue.words("levels")[swim_set.level].title,
        goals=[(goal, catalogue.words("goals")[goal].title) for goal in swim_set.goals],
        board=[*timed, *unfit],
        every_group=group_table(timed, summary.clocks, titles),
        written=[*written, *unfit],
        totals=[
            (who, ids, totals(swum)) for who, ids, swum in ways_of(catalogue.lane_groups, summary)
        ],
        ways=swum_ways("set", catalogue, summary),
        gear=[link(catalogue.gear[id]) for id in summary.gear],
        chips=_chips(catalogue, summary),
        drills=links(drills.values()),
        asks=set_needs(catalogue, swim_set),
        brief=shown_brief(catalogue, summary.brief, swim_set.key),
        house=house_rules(catalogue),
        pools=pools,
        times_elsewhere=_elsewhere(analysis, swim_set),
        clocks=f"{_CLOCKS}/{swim_set.id}.html",
        version=run_version(analysis, summary),
        offers=offers(analysis, swim_set),
        ways_offered=ways_offered(analysis, swim_set),
        of_what=of_what(analysis, swim_set),
        findings=findings_on(swim_set, findings),
        progressions=links(catalogue.users(swim_set, Progression)),
        adapted=adapted_set(analysis, swim_set),
        **_shared(analysis, swim_set),
    )


def _elsewhere(analysis: Analysis, swim_set: SwimSet) -> list[str]:
    """The courses in which the times of the whiteboard are others; on land there are none."""
    own = str(own_pool(analysis, swim_set))
    return [] if swim_set.is_on_land else [course for course in COURSES if course != own]


def _chips(catalogue: Catalogue, summary: SetSummary) -> list[tuple[str, str, str]]:
    """What holds for every lane group: metres where all swim the same, gear, level."""
    swim_set, ways = summary.swim_set, ways_of(catalogue.lane_groups, summary)
    gear = [
        ("gear", own.title, own.href) for own in (link(catalogue.gear[id]) for id in summary.gear)
    ]
    level = catalogue.words("levels")[swim_set.level].title
    swum = ways[0][2]
    same = len(ways) == 1 and swum.course != LAND
    return [
        ("metres", distance_words(swum) if same else "", ""),
        *(gear or [("gear", "no gear", "")]),
        ("level", level, f"by/level.html#{swim_set.level}"),
    ]


def clocks_page(analysis: Analysis, swim_set: SwimSet, told: list[dict[str, Any]]) -> Page:
    """The clocks of a computable set for every lane group in every pool; those ``told`` on
    its own page are taken as they are there.
    """
    pools = pool_clocks(analysis, swim_set, told)
    context = {"entry": swim_set, "pools": pools, **_shared(analysis, swim_set)}
    return Page(f"{_CLOCKS}/{swim_set.id}.md", "clocks", context)


def _shared(analysis: Analysis, swim_set: SwimSet) -> dict[str, Any]:
    """What both pages show with the clocks; of a circuit on land no pool is chosen."""
    meant = analysis.meant(swim_set)
    pool = str(own_pool(analysis, swim_set))
    choosing = preferences(analysis, next(iter(meant), ""), pool, meant=meant)
    return {
        "choosing": {**choosing, "pools": []} if swim_set.is_on_land else choosing,
        "efforts": effort_legend(analysis.catalogue),
        "convention": CLOCK_CONVENTION,
    }


def totals(swum: Swum) -> list[PageFigure]:
    """The figures of the set as a whole, in one pool; on land only what there is to count."""
    figures = table("set", "set", "totals", swum)
    if swum.course == LAND:
        figures = [figure for figure in figures if figure.name == "reps"]
    return page_figures(figures, swum.course.unit)
