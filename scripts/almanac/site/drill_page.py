"""The page of a drill."""

from __future__ import annotations

from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.model.progression import Progression
from almanac.model.swim_set import SwimSet
from almanac.report.pool_text import needs_words
from almanac.site.adapt_lines import adapted_entry
from almanac.site.drawing_html import figure, neighbours_chart
from almanac.site.entry_page import dangers, entry_page, evidence_rows, tags
from almanac.site.links import Page, link, links
from almanac.units import show_number, show_time


def drill_page(analysis: Analysis, drill: Drill) -> Page:
    """The page of a drill."""
    catalogue = analysis.catalogue
    words = catalogue.words
    return entry_page(
        catalogue,
        drill,
        dangers=dangers(catalogue, drill),
        figure=figure(catalogue, drill),
        neighbours=neighbours_chart(catalogue, drill),
        tags=tags(catalogue, drill),
        level=words("levels")[drill.level].title,
        goals=[(goal, words("goals")[goal].title) for goal in drill.goals],
        chips=_chips(catalogue, drill),
        effort=effort_range(catalogue, drill),
        dose=dose_words(drill),
        water=needs_words(catalogue, drill),
        under_water=show_number(drill.under_water) if drill.under_water else "",
        needs=[link(catalogue.gear[id]) for id in drill.gear.needs],
        may_add=[link(catalogue.gear[id]) for id in drill.gear.may_add],
        look_for=[
            (words("viewpoints")[sight.viewpoint].title, sight.what) for sight in drill.look_for
        ],
        mends=[link(catalogue.faults[id]) for id in drill.mends],
        easier=[link(catalogue.drills[id]) for id in drill.easier],
        harder=[link(catalogue.drills[id]) for id in drill.harder],
        needs_first=[link(catalogue.drills[id]) for id in drill.needs_first],
        leads_to=links(catalogue.users(drill, Drill, "needs_first")),
        sets=links(catalogue.users(drill, SwimSet)),
        progressions=links(catalogue.users(drill, Progression)),
        adapted=adapted_entry(analysis, drill),
        evidence=evidence_rows(catalogue, drill.evidence),
        pace=(link(catalogue.benchmarks[drill.pace.like]), drill.pace.factor)
        if drill.pace
        else None,
    )


def _chips(catalogue: Catalogue, drill: Drill) -> list[tuple[str, str | Markup, str]]:
    """The facts of a drill, each with its mark and the page that it leads to, "" for none."""
    gear = [
        (own.title, link(own).href) for own in map(catalogue.gear.__getitem__, drill.gear.needs)
    ]
    level = catalogue.words("levels")[drill.level].title
    return [
        ("minutes" if drill.dose.time else "metres", reps_words(drill), ""),
        ("effort", effort_range(catalogue, drill), ""),
        *(("gear", *own) for own in gear or [("no gear", "")]),
        ("level", level, f"by/level.html#{drill.level}"),
    ]


def dose_words(drill: Drill) -> Markup:
    """The dose in one line."""
    dose = drill.dose
    return Markup("{}, {} rest; at most {} in one practice").format(
        reps_words(drill), show_time(dose.rest), dose.most
    )


def reps_words(drill: Drill) -> Markup:
    """How many of what. A distance is in the pool's unit, and follows the unit that is chosen in
    the browser.
    """
    dose = drill.dose
    length = Markup('<span data-length="{0}">{0} m or yd</span>').format(dose.distance)
    each = show_time(dose.time) if dose.time else length
    reps = (
        f"{dose.reps.least}"
        if dose.reps.least == dose.reps.most
        else f"{dose.reps.least} to {dose.reps.most}"
    )
    return Markup("{} × {}").format(reps, each)


def effort_range(catalogue: Catalogue, drill: Drill) -> str:
    """The efforts that a drill makes sense in, in words."""
    easiest, hardest = (
        catalogue.words("efforts")[word].title
        for word in (drill.effort.easiest, drill.effort.hardest)
    )
    return easiest if easiest == hardest else f"{easiest} to {hardest.lower()}"
