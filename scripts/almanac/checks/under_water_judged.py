"""What the rules on work under water look at: drills, tests, sets, practices and days, each against
the limits of the level of those who do it.
"""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.under_water import (
    counts,
    is_under,
    metres_off_walls,
    metres_under,
)
from almanac.checks.after_fast import after_fast
from almanac.checks.once import Coded
from almanac.checks.rule import Problem
from almanac.checks.under_water_days import on_days
from almanac.checks.under_water_on_clock import BY_DISTANCE, on_clock
from almanac.checks.ways import Said, Way, judged_ways
from almanac.model.drill import Drill
from almanac.model.policy import LevelLimits
from almanac.units import show_number, show_time


def judged(analysis: Analysis) -> Iterator[Coded]:
    """Every breach, with the code of its rule."""
    catalogue = analysis.catalogue
    push_off = catalogue.policy.limit("push_off_most")
    for drill in catalogue.drills.values():
        limits = catalogue.policy.of_level(drill.level)
        for code, path, message, hint in _drill(drill, limits, push_off):
            yield code, Problem(drill, path, message, hint, level=drill.level)
    for test in catalogue.benchmarks.values():
        if test.is_under_water:
            hint = "time it from the wall to a mark at the surface"
            yield "under-water-goal", Problem(test, ("mode",), "a test under water", hint)
    yield from judged_ways(analysis, lambda way: _way(analysis, way))
    yield from after_fast(analysis)
    yield from on_days(analysis)


def _drill(drill: Drill, limits: LevelLimits, push_off: float) -> Iterator[Said]:
    if drill.is_under_water:
        yield from _distance(drill, limits)
    else:
        yield from _at_walls(drill, limits)
    if counts(drill, push_off):
        yield from _dose(drill, limits)


def _distance(drill: Drill, limits: LevelLimits) -> Iterator[Said]:
    dose, code = drill.dose, "under-water-drill"
    metres = drill.under_water if drill.under_water is not None else float(dose.distance or 0)
    if dose.distance is None:
        yield code, ("dose", "time"), "it is done under water for a time", BY_DISTANCE
    if metres > limits.limit("under_water_rep_most"):
        path = ("under_water",) if drill.under_water is not None else ("dose", "distance")
        yield code, path, *_over(metres, limits.limit("under_water_rep_most"), "under water", drill)


def _dose(drill: Drill, limits: LevelLimits) -> Iterator[Said]:
    dose, code = drill.dose, "under-water-drill"
    if dose.rest < limits.limit("under_water_rest_least"):
        least = show_time(limits.limit("under_water_rest_least"))
        message = f"{show_time(dose.rest)} of rest after a rep under water"
        yield code, ("dose", "rest"), message, f"write {least} or more"
    most = limits.limit("under_water_reps_most")
    if dose.most > most:
        message = f"up to {dose.most} reps under water in a practice"
        yield code, ("dose", "most"), message, f"{drill.level} holds {show_number(most)} at most"


def _at_walls(drill: Drill, limits: LevelLimits) -> Iterator[Said]:
    code = "under-water-wall"
    if drill.under_water is None and drill.drawing.setting == "under-water":
        hint = "write under_water: metres from the wall until the head is up"
        message = "its picture is under water, and it does not say how far that goes"
        yield code, ("figure", "setting"), message, hint
    elif (drill.under_water or 0.0) > limits.limit("wall_most"):
        over = _over(drill.under_water or 0.0, limits.limit("wall_most"), "after a wall", drill)
        yield code, ("under_water",), *over


def _over(metres: float, most: float, where: str, drill: Drill) -> tuple[str, str]:
    message = f"{show_number(metres)} m {where}"
    return message, f"{drill.level} holds {show_number(most)} m at most"


def _way(analysis: Analysis, way: Way) -> Iterator[Said]:
    drills = {id(piece.drill): piece.drill for piece in way.swum.pieces}.values()
    if not any(drill.is_under_water or drill.under_water for drill in drills):
        return
    limits = analysis.catalogue.policy.of_level(way.level)
    for rep in way.swum.reps:
        for piece in rep.pieces:
            off = metres_off_walls(piece, way.swum.course) if piece.drill.under_water else 0.0
            if off > limits.limit("wall_most"):
                message = f"'{piece.drill.id}' goes {show_number(off)} m under after each wall"
                most = show_number(limits.limit("wall_most"))
                hint = f"{way.level} holds {most} m at most: take another drill"
                yield "under-water-wall", rep.path, message, hint
    push_off = analysis.catalogue.policy.limit("push_off_most")
    if not any(is_under(rep, push_off) for rep in way.swum.reps):
        return
    yield from _amount(way, limits, push_off)
    for clock in way.clocks or (None,):
        yield from on_clock(analysis, way, limits, clock)


def _amount(way: Way, limits: LevelLimits, push_off: float) -> Iterator[Said]:
    reps = [rep for rep in way.swum.reps if is_under(rep, push_off)]
    metres = sum(metres_under(p, way.swum.course, push_off) for rep in reps for p in rep.pieces)
    most = limits.limit("under_water_reps_most")
    if len(reps) > most:
        message = f"{len(reps)} reps with work under water"
        hint = f"{way.level} holds {show_number(most)} in a set at most: fewer, or at the surface"
        yield "under-water-set", reps[0].path, message, hint
    elif metres > limits.limit("under_water_set_most"):
        message = f"{show_number(metres)} m under water"
        most_m = show_number(limits.limit("under_water_set_most"))
        hint = f"{way.level} holds {most_m} m in a set at most: shorter, or fewer"
        yield "under-water-set", reps[0].path, message, hint
