"""The clocks of a set: by pool and lane group the targets, send-offs and rests, the sums, and the
strip.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import heads, table
from almanac.arithmetic.course import Misfit
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.summary import SetSummary
from almanac.arithmetic.table import item_rows
from almanac.arithmetic.timeline import timeline
from almanac.drawing.charts.effort_marks import effort_marks
from almanac.drawing.charts.strip import StripPart, strip
from almanac.model.swim_set import SwimSet
from almanac.model.walk import reps_with_paths
from almanac.report.known_words import basis_words, no_number_words, paces_words, unfit_words
from almanac.site.clock_rows import COLUMNS, clock_row, reps_label
from almanac.site.shown_figures import LEGEND, page_figures
from almanac.units import COURSES, Course, show_distance, show_time


def own_clock(analysis: Analysis, swim_set: SwimSet) -> dict[str, Any]:
    """A computable set on the clock in its own pool, for the lane group that it is written for."""
    groups = analysis.meant(swim_set) or tuple(analysis.catalogue.lane_groups)
    pool = own_pool(analysis, swim_set)
    return _pool(analysis, swim_set, pool, groups[:1], {})


def own_pool(analysis: Analysis, swim_set: SwimSet) -> Course:
    """The course that a set is shown in first: its own, for a circuit on land that of the club's
    first pool.
    """
    return analysis.catalogue.club.home_course if swim_set.is_on_land else swim_set.course


def pool_clocks(
    analysis: Analysis, swim_set: SwimSet, told: list[dict[str, Any]]
) -> list[dict[str, Any]]:
    """A computable set on the clock in every pool, its own first, for every lane group; ``told``
    is what has been told before, pool by pool.
    """
    own, groups = own_pool(analysis, swim_set), analysis.catalogue.lane_groups
    others = COURSES.values() if analysis.catalogue.club.waters else ()
    courses = [own, *(course for course in others if course != own)]
    known = {pool["course"]: {of["id"]: of for of in pool["groups"]} for pool in told}
    return [
        _pool(analysis, swim_set, course, groups, known.get(str(course), {})) for course in courses
    ]


def _pool(
    analysis: Analysis,
    swim_set: SwimSet,
    course: Course,
    groups: Iterable[str],
    known: Mapping[str, dict[str, Any]],
) -> dict[str, Any]:
    """The set in one pool, for some lane groups; ``known`` are those that have been told before."""
    own = course == own_pool(analysis, swim_set)
    summary = analysis.summary_in(swim_set.id, course)
    return {
        "course": str(course),
        "title": "On land" if swim_set.is_on_land else f"{course.shown} pool",
        "on_land": swim_set.is_on_land,
        "own": own,
        "fits": not summary.misfits,
        "misfits": [_misfit(swim_set, misfit, course) for misfit in summary.misfits],
        "moved": not swim_set.is_on_land and course.unit != swim_set.course.unit,
        "groups": [known.get(id) or _group(analysis, summary, summary.clocks[id]) for id in groups],
    }


def _misfit(swim_set: SwimSet, misfit: Misfit, course: Course) -> str:
    nearest = show_distance(misfit.nearest, course.unit)
    after = "" if misfit.part is None else f" after part {misfit.part + 1}"
    label = _item_label(swim_set, misfit.path)
    return f"{label}: {misfit.why.value}{after}; the nearest in whole lengths is {nearest}"


def _item_label(swim_set: SwimSet, path: Any) -> str:
    return reps_label(next(own for own, at in reps_with_paths(swim_set.items) if at == path))


def _group(analysis: Analysis, summary: SetSummary, run: GroupClock) -> dict[str, Any]:
    catalogue = analysis.catalogue
    return {
        "id": run.group,
        "title": catalogue.lane_groups[run.group].title,
        "figures": page_figures(table("set", "group", "clock", run), summary.course.unit),
        "paces": paces_words(catalogue.lane_groups[run.group], analysis.today),
        "heads": heads("set", "item", "rows")[len(COLUMNS) :],
        "rows": [clock_row(row) for row in item_rows(run)],
        "missing": [no_number_words(catalogue, missing) for missing in run.missing],
        "unfit": [unfit_words(unfit) for unfit in run.unfit],
        "notes": [*basis_notes(analysis, run), *_notes(run)],
        "strip": Markup(_strip(analysis, summary, run)),
    }


def basis_notes(analysis: Analysis, run: GroupClock) -> Iterator[str]:
    """What the times stand on where it is less than fresh tests, as sentences."""
    for line in basis_words(analysis.catalogue, run):
        yield f"{line[0].upper()}{line[1:]}."


def _notes(run: GroupClock) -> Iterator[str]:
    for change in run.changes:
        if change.at_far_end:
            yield "Gear changes come after an odd number of lengths: lay the gear at the far end."
            break
    uncovered = sum(change.uncovered_s for change in run.changes)
    if uncovered:
        yield f"Gear changes that no pause covers take {show_time(uncovered)} of the clock."


def _strip(analysis: Analysis, summary: SetSummary, run: GroupClock) -> str:
    moments = timeline(summary.of(run.group).events, run, analysis.scale)
    if moments is None or run.clock is None:
        return ""
    stretches = [StripPart(moment.start, moment.length, moment.effort) for moment in moments]
    title = f"The set along the clock for {analysis.catalogue.lane_groups[run.group].title}"
    identifier = f"strip-{run.group}-{summary.course}"
    marks = analysis.once(effort_marks, lambda: effort_marks(analysis.catalogue.efforts))
    return strip(stretches, marks, identifier, title, run.clock.value, LEGEND)
