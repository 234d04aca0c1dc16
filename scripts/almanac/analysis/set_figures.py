"""The figures of a set by name, each with the working behind it, for ``explain``."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.arithmetic.clock import GroupClock
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.facets import FACETS, facet_working
from almanac.arithmetic.pace import Target
from almanac.arithmetic.summary import SetSummary
from almanac.arithmetic.table import item_rows
from almanac.arithmetic.working import Difference, Known, Labelled, Product, Quotient, Working
from almanac.source.reader import DataPath


@dataclass(frozen=True)
class NamedFigure:
    """A figure: its name, its working and its unit ("" for a bare number, "s" for seconds)."""

    name: str
    working: Working
    unit: str


def set_figures(
    summary: SetSummary, scale: EffortScale, group: str | None
) -> dict[str, NamedFigure]:
    """Every figure of a set that has a number, by name; those on the clock for one lane group,
    where one is given.

    ``target``, ``sendoff`` and ``rest`` are named with the place of their item, counted from 1
    through the rounds: ``target 1.2`` is the second item of the first. They tell of the item's
    slowest rep.
    """
    figures = [*_distances(summary, scale)]
    if group is not None:
        figures += _clock(summary.clocks[group])
        figures += _items(summary.clocks[group])
    return {figure.name: figure for figure in figures}


def _distances(summary: SetSummary, scale: EffortScale) -> Iterator[NamedFigure]:
    unit = summary.course.unit
    yield NamedFigure("distance", summary.distance, unit.value)
    yield NamedFigure(
        "metres", Product((summary.distance, Known(unit.metres, f"m a {unit.value}"))), "m"
    )
    yield NamedFigure(
        "lengths",
        Quotient(summary.distance, Known(summary.course.length, f"{unit.value} a length")),
        "",
    )
    for facet in FACETS:
        for word in summary.by[facet]:
            yield NamedFigure(
                f"{facet} {word}", facet_working(summary.pieces, facet, word, scale), unit.value
            )


def _clock(run: GroupClock) -> Iterator[NamedFigure]:
    if run.clock:
        yield NamedFigure("clock", run.clock, "s")
    if run.work:
        yield NamedFigure("work", run.work, "s")
    if run.clock and run.work:
        clock, work = Labelled(run.clock, "clock", "s"), Labelled(run.work, "work", "s")
        yield NamedFigure("rest", Difference(clock, work), "s")
        yield NamedFigure("density", Quotient(work, clock), "")
    if run.load:
        yield NamedFigure("load", run.load, "")


def _items(run: GroupClock) -> Iterator[NamedFigure]:
    for row in item_rows(run):
        slow, place = row.slowest, item_place(row.path)
        if isinstance(slow.target, Target):
            yield NamedFigure(f"target {place}", slow.target.working, "s")
        if slow.sendoff:
            yield NamedFigure(f"sendoff {place}", slow.sendoff, "s")
        if slow.rest:
            yield NamedFigure(f"rest {place}", slow.rest, "s")


def item_place(path: DataPath) -> str:
    """Where an item stands, counted from 1 through the rounds around it: ``1.2``."""
    return ".".join(str(step + 1) for step in path if isinstance(step, int))
