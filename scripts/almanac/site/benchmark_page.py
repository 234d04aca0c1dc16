"""The page of a benchmark."""

from __future__ import annotations

from datetime import date

from almanac.analysis.figures import table
from almanac.analysis.figures.benchmarks import BenchmarkForGroup
from almanac.analysis.figures.figure import NamedFigure
from almanac.model.benchmark import Benchmark
from almanac.model.catalogue import Catalogue
from almanac.model.drill import Drill
from almanac.site.entry_page import dangers, entry_page, evidence_rows, tags
from almanac.site.links import Page, link, links
from almanac.site.shown_figures import page_figure
from almanac.site.test_tables import Table, added_drag_table, critical_speed_table
from almanac.units import show_distance, show_time


def benchmark_page(catalogue: Catalogue, benchmark: Benchmark, day: date) -> Page:
    """The page of a benchmark, with what the tests known by a day tell together."""
    course = benchmark.protocol.course
    return entry_page(
        catalogue,
        benchmark,
        dangers=dangers(catalogue, benchmark),
        tags=tags(catalogue, benchmark),
        distance=show_distance(benchmark.distance, course.unit),
        course=course.shown,
        rest=show_time(benchmark.protocol.rest),
        gives=[catalogue.words("test-uses")[use] for use in benchmark.gives],
        gear=[link(catalogue.gear[id]) for id in benchmark.gear],
        pair_with=[link(catalogue.benchmarks[id]) for id in benchmark.pair_with],
        drills=links(catalogue.users(benchmark, Drill, "pace")),
        totals=[page_figure(figure) for figure in _totals(catalogue, benchmark)],
        times=_group_times(catalogue, benchmark),
        tables=_tables(catalogue, benchmark, day),
        evidence=evidence_rows(catalogue, benchmark.evidence),
    )


def _totals(catalogue: Catalogue, benchmark: Benchmark) -> list[NamedFigure]:
    whole = BenchmarkForGroup(catalogue, benchmark, None)
    return table("benchmark", "benchmark", "totals", whole)


def _tables(catalogue: Catalogue, benchmark: Benchmark, day: date) -> list[Table]:
    tables = [
        critical_speed_table(catalogue, benchmark, day),
        *(added_drag_table(catalogue, id, day) for id in benchmark.gear),
    ]
    return [table for table in tables if table is not None]


def _group_times(catalogue: Catalogue, benchmark: Benchmark) -> list[tuple[str, str, str, str]]:
    return [
        (group.title, show_time(test.time, tenths=True), test.course.shown, str(test.on))
        for group in catalogue.lane_groups.values()
        for test in group.tests
        if test.benchmark == benchmark.id
    ]
