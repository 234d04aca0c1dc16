"""Who goes under water out of breath: in sets, and over the parts of whole practices."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.crews import FIRST, SECOND
from almanac.arithmetic.out_of_breath import Breath, GoesUnder
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.run_sheet import SheetCell, SheetRow
from almanac.arithmetic.under_water import is_under
from almanac.checks.once import Coded
from almanac.checks.rule import Problem
from almanac.checks.ways import is_above, set_ways
from almanac.source.reader import DataPath
from almanac.units import show_number

_CODE = "under-water-after-fast"


def after_fast(analysis: Analysis) -> Iterator[Coded]:
    """Every rep that goes under water too soon after fast work."""
    told: dict[str, list[str]] = {}
    push_off = analysis.catalogue.policy.limit("push_off_most")
    for id in analysis.computable:
        for way in set_ways(analysis, id):
            if not any(is_under(rep, push_off) for rep in way.swum.reps):
                continue
            for clock in way.clocks or (None,):
                breath = breath_of(analysis)
                breath.swim(way.swum.events, way.swum.course, clock)
                for found, message, hint in too_soon(analysis, breath.found):
                    told.setdefault(id, []).append(way.level)
                    own = Problem(way.entry, way.path(found.rep.path), message + way.asked, hint)
                    yield _CODE, own._replace(level=way.level)
    for summary in analysis.practices.values():
        if any(is_under(rep, push_off) for swum in summary.every_way for rep in swum.reps):
            yield from _in_practice(analysis, summary, told)


def _in_practice(
    analysis: Analysis, summary: PracticeSummary, told: dict[str, list[str]]
) -> Iterator[Coded]:
    level = analysis.catalogue.club.squads[summary.practice.squad].level
    for group in summary.groups:
        for half in (FIRST, SECOND) if group in summary.halved else (FIRST,):
            breath, before = breath_of(analysis), None
            for row, cell in _rows(summary, group, half):
                if before:
                    breath.wait(_between(*before, row))
                breath.found.clear()
                swum, clock = row.run.of(group), row.run.clocks[group]
                breath.swim(swum.events, swum.course, clock)
                before = row, cell
                own_set = row.run.swim_set
                levels = told.get(own_set.id, ()) if own_set else ()
                at_set = any(not is_above(analysis.catalogue, one, level) for one in levels)
                for found, message, hint in too_soon(analysis, breath.found):
                    if found.carried or not at_set:
                        path = (*row.run.path, "set") if own_set else _at(row, found)
                        yield _CODE, Problem(summary.practice, path, message, hint, level=level)


def _at(row: SheetRow, found: GoesUnder) -> DataPath:
    return (*row.run.path, *found.rep.path)


def _rows(summary: PracticeSummary, group: str, half: str) -> Iterator[tuple[SheetRow, SheetCell]]:
    """What half of a lane group does, in order, with its own cell of it."""
    for row in summary.sheet:
        for cell in row.cells:
            if (group, half) in cell.crew.halves:
                yield row, cell


def _between(row: SheetRow, cell: SheetCell, after: SheetRow) -> float:
    """Seconds from the end of a part's clock to the start of the next part of the same swimmers:
    the last of the lane swims home, the others are waited for, there is talk, gear is changed. At
    least so many, where one of the two is not known.
    """
    ends, starts, over = cell.ends_s, after.starts_s, cell.clock_over_s
    if ends is None or starts is None or over is None:
        return after.talk_s + after.change_s + after.gear_s + (cell.waits_s or 0.0)
    return max(0.0, starts - over)


def breath_of(analysis: Analysis) -> Breath:
    """The breath of somebody who has not swum yet."""
    return Breath(analysis.scale, analysis.catalogue.policy.limit("push_off_most"))


def too_soon(analysis: Analysis, each: Iterable[GoesUnder]) -> Iterator[tuple[GoesUnder, str, str]]:
    """Those that go under too soon, each with what is wrong and what would mend it."""
    least = analysis.catalogue.policy.limit("under_water_after_fast")
    hint = f"let {show_number(least)} s go by first: rest, easy swimming or talk"
    for found in each:
        if found.since_s < least - 0.5:
            what = "a fast part of the same rep" if found.same_rep else "fast work"
            yield found, f"under water {int(found.since_s)} s after {what}", hint
