"""The pages of drills, faults, gear, benchmarks and progressions."""

from __future__ import annotations

from collections.abc import Iterator

from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.gear_drag import drag_rows, pull_of
from almanac.drawing.charts.drag import drag_chart
from almanac.kinds import KIND
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry, Evidence
from almanac.model.knowledge import Benchmark, Drill, Fault, Gear
from almanac.model.moving import Moving
from almanac.model.progression import Progression
from almanac.model.swim_set import SwimSet
from almanac.model.vocabularies import VOCABULARY_OF
from almanac.site.drawing_html import figure, ladder_chart, neighbours_chart
from almanac.site.links import Page, link, links
from almanac.site.test_tables import Table, added_drag_table, critical_speed_table, drag_table
from almanac.units import show_distance, show_time


def entry_pages(analysis: Analysis) -> Iterator[Page]:
    """A page for each drill, fault, piece of gear, benchmark and progression."""
    catalogue = analysis.catalogue
    yield from (_drill(catalogue, drill) for drill in catalogue.drills.values())
    yield from (_fault(catalogue, fault) for fault in catalogue.faults.values())
    yield from (_gear(catalogue, gear) for gear in catalogue.gear.values())
    yield from (_benchmark(catalogue, benchmark) for benchmark in catalogue.benchmarks.values())
    yield from (
        _progression(catalogue, progression) for progression in catalogue.progressions.values()
    )


def _page(catalogue: Catalogue, entry: Entry, **context: object) -> Page:
    shared = {"entry": entry, "review": review_words(catalogue, entry), "file": entry.file}
    return Page(f"{KIND[entry.kind].pages}/{entry.id}.md", entry.kind, {**shared, **context})


def review_words(catalogue: Catalogue, entry: Entry) -> str:
    """Who reviewed the entry, by role, and when it is due again; "" where nobody has."""
    if entry.review is None:
        return ""
    role = catalogue.words("roles")[entry.review.by].title
    return (
        f"Reviewed by the {role.lower()} on {entry.review.on}; due again on {entry.review.again}."
    )


def tags(catalogue: Catalogue, moving: Moving) -> list[str]:
    """What is done, in the words of the vocabularies: position, arms, kick, stroke, mode."""
    fields = ("position", "arms", "kick", "stroke")
    words = (catalogue.words(VOCABULARY_OF[field])[getattr(moving, field)] for field in fields)
    return [word.title for word in words if not word.quiet]


def dose_words(drill: Drill) -> Markup:
    """The dose in one line. Its distance is in the pool's unit, and follows the unit that is chosen
    in the browser.
    """
    dose = drill.dose
    length = Markup('<span data-length="{0}">{0} m or yd</span>').format(dose.distance)
    each = show_time(dose.time) if dose.time else length
    reps = (
        f"{dose.reps.least}"
        if dose.reps.least == dose.reps.most
        else f"{dose.reps.least} to {dose.reps.most}"
    )
    return Markup("{} × {}, {} rest; at most {} in one practice").format(
        reps, each, show_time(dose.rest), dose.most
    )


def effort_range(catalogue: Catalogue, drill: Drill) -> str:
    """The efforts that a drill makes sense in, in words."""
    easiest, hardest = (
        catalogue.words("efforts")[word].title
        for word in (drill.effort.easiest, drill.effort.hardest)
    )
    return easiest if easiest == hardest else f"{easiest} to {hardest.lower()}"


def _drill(catalogue: Catalogue, drill: Drill) -> Page:
    words = catalogue.words
    return _page(
        catalogue,
        drill,
        figure=figure(catalogue, drill),
        neighbours=neighbours_chart(catalogue, drill),
        tags=tags(catalogue, drill),
        level=words("levels")[drill.level].title,
        goals=[(goal, words("goals")[goal].title) for goal in drill.goals],
        effort=effort_range(catalogue, drill),
        dose=dose_words(drill),
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
        evidence=_evidence(catalogue, drill.evidence),
        pace=(link(catalogue.benchmarks[drill.pace.like]), drill.pace.factor)
        if drill.pace
        else None,
    )


def _evidence(catalogue: Catalogue, evidence: tuple[Evidence, ...]) -> list[tuple[str, Evidence]]:
    return [(catalogue.words("bases")[item.basis].title, item) for item in evidence]


def _fault(catalogue: Catalogue, fault: Fault) -> Page:
    viewpoints = catalogue.words("viewpoints")
    return _page(
        catalogue,
        fault,
        stroke=catalogue.words("strokes")[fault.stroke].title,
        see=[(viewpoints[sight.viewpoint].title, sight.what) for sight in fault.see],
        causes=[
            (cause, [link(catalogue.drills[id]) for id in cause.mended_by])
            for cause in fault.causes
        ],
        look_alikes=[
            (link(catalogue.faults[other.fault]), other.difference)
            for other in fault.not_to_confuse_with
        ],
        evidence=_evidence(catalogue, fault.evidence),
    )


def _gear(catalogue: Catalogue, gear: Gear) -> Page:
    return _page(
        catalogue,
        gear,
        effect=catalogue.words("effects")[gear.effect].title,
        acts_on=[catalogue.words("acts-on")[word].title.lower() for word in gear.acts_on],
        change=show_time(gear.change_s),
        needed_by=links(catalogue.users(gear, Drill, "needs")),
        suits=links(catalogue.users(gear, Drill, "may_add")),
        sets=links(catalogue.users(gear, SwimSet)),
        owned=catalogue.club.gear_owned.get(gear.id),
        **_drag(catalogue, gear),
        evidence=_evidence(catalogue, gear.evidence),
    )


def _drag(catalogue: Catalogue, gear: Gear) -> dict[str, object]:
    """What a resisting piece of gear costs: figure, table, timed comparisons and the club's
    calibration.
    """
    if not gear.resists:
        return {"drag_figure": "", "drag_rows": [], "compared": None, "cord": [], "outside": ""}
    pull = pull_of(gear)
    return {
        "drag_figure": Markup(drag_chart(drag_rows(pull), f"drag-{gear.id}", gear.title)),
        "drag_rows": list(drag_table(pull)),
        "compared": added_drag_table(catalogue, gear.id),
        "cord": catalogue.club.calibrations.get(gear.id, ()),
        "outside": pull.outside,
    }


def _benchmark(catalogue: Catalogue, benchmark: Benchmark) -> Page:
    course = benchmark.protocol.course
    return _page(
        catalogue,
        benchmark,
        tags=tags(catalogue, benchmark),
        distance=show_distance(benchmark.distance, course.unit),
        course=str(course),
        rest=show_time(benchmark.protocol.rest),
        gives=[catalogue.words("test-uses")[use] for use in benchmark.gives],
        gear=[link(catalogue.gear[id]) for id in benchmark.gear],
        pair_with=[link(catalogue.benchmarks[id]) for id in benchmark.pair_with],
        drills=links(catalogue.users(benchmark, Drill, "pace")),
        times=_group_times(catalogue, benchmark),
        tables=_tables(catalogue, benchmark),
        evidence=_evidence(catalogue, benchmark.evidence),
    )


def _tables(catalogue: Catalogue, benchmark: Benchmark) -> list[Table]:
    tables = [
        critical_speed_table(catalogue, benchmark),
        *(added_drag_table(catalogue, id) for id in benchmark.gear),
    ]
    return [table for table in tables if table is not None]


def _group_times(catalogue: Catalogue, benchmark: Benchmark) -> list[tuple[str, str, str, str]]:
    return [
        (group.title, show_time(test.time, tenths=True), str(test.course), str(test.on))
        for group in catalogue.lane_groups.values()
        for test in group.tests
        if test.benchmark == benchmark.id
    ]


def _progression(catalogue: Catalogue, progression: Progression) -> Page:
    stages = [
        {
            "stage": stage,
            "drills": [link(catalogue.drills[id]) for id in stage.drills],
            "sets": [link(catalogue.sets[id]) for id in stage.sets],
            "sessions": f"{stage.sessions.least} to {stage.sessions.most}",
        }
        for stage in progression.stages
    ]
    return _page(
        catalogue,
        progression,
        goal=catalogue.words("goals")[progression.goal].title,
        level=catalogue.words("levels")[progression.level].title,
        ladder=ladder_chart(progression),
        stages=stages,
        evidence=_evidence(catalogue, progression.evidence),
    )
