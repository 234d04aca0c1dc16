"""What the rules on work under water look at: drills, tests, sets, practices and days, each against
the limits of the level of those who do it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.under_water import (
    UnderWater,
    counts,
    is_under,
    metres_off_walls,
    metres_under,
    under_water,
)
from almanac.checks.after_fast import after_fast
from almanac.checks.once import Coded
from almanac.checks.rule import Problem
from almanac.checks.under_water_days import on_days
from almanac.checks.ways import Said, Way, judged_ways
from almanac.model.drill import Drill
from almanac.model.gear import Gear
from almanac.model.policy import LevelLimits
from almanac.units import show_number, show_time

_SHRINKS_BY_S = 1.0


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
        yield code, ("dose", "time"), "it is done under water for a time", _BY_DISTANCE
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


_BY_DISTANCE = "give it a distance: nobody stays under water for a time"


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
        yield from _on_clock(analysis, way, limits, clock)


def speed_under(limits: LevelLimits) -> float:
    """The least speed under water of a level in m/s, which its limits imply: distance over time."""
    time, metres = limits.limit("under_water_time_most"), limits.limit("under_water_rep_most")
    return metres / time if time and metres else 1.0


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


def _on_clock(
    analysis: Analysis, way: Way, limits: LevelLimits, clock: GroupClock | None
) -> Iterator[Said]:
    swum = way.swum
    push_off = analysis.catalogue.policy.limit("push_off_most")
    reps = [*under_water(swum.events, swum.course, speed_under(limits), clock, push_off)]
    share = analysis.catalogue.policy.limit("under_water_rest_share")
    for own in reps:
        if not own.is_at_walls:  # there each wall has a limit of its own, and air between
            yield from _rep(way, limits, own)
        least = max(limits.limit("under_water_rest_least"), share * own.seconds)
        yield from _rest(way, own, least)
        yield from _goal(analysis, own)
    yield from _shrinking(reps)


def _rep(way: Way, limits: LevelLimits, own: UnderWater) -> Iterator[Said]:
    path, level = own.rep.path, way.level
    metres, seconds = limits.limit("under_water_rep_most"), limits.limit("under_water_time_most")
    held = any(piece.drill.is_under_water and piece.hold_s for piece in own.rep.pieces)
    if held:
        yield "under-water-rep", path, "it is done under water for a time", _BY_DISTANCE
    elif own.metres > metres:
        message = f"{show_number(own.metres)} m under water in one rep"
        hint = f"{level} holds {show_number(metres)} m at most: the rest of it at the surface"
        yield "under-water-rep", path, message, hint
    elif own.seconds > seconds:
        message = f"{show_number(own.seconds)} s under water in one rep"
        hint = f"{level} holds {show_number(seconds)} s at most: a shorter one"
        yield "under-water-rep", path, message, hint


def _rest(way: Way, own: UnderWater, least: float) -> Iterator[Said]:
    path, code = own.rep.path, "under-water-rest"
    wanted = f"at least {show_number(least)} s from the touch, for {way.level}"
    if own.rest_s is None:
        hint = f"write rest: {show_time(least)}, or assume the time of the rep"
        yield code, path, "how much rest follows work under water is not known", hint
    elif own.rest_s < least - 0.5:
        rest = f"{show_number(own.rest_s)} s" if own.rest_s else "no"
        yield code, path, f"{rest} rest after work under water", wanted


def _shrinking(reps: Sequence[UnderWater]) -> Iterator[Said]:
    """One that falls within an item; and two that fall one after the other, in items of their
    own, with none that grows between.
    """
    falls = 0
    for before, own in pairwise(reps):
        change_s = _change_of_rest(before, own)
        if change_s > _SHRINKS_BY_S:
            falls = 0
        elif change_s < -_SHRINKS_BY_S:
            falls += 2 if own.rep.path == before.rep.path else 1
        if falls >= 2:
            message = "the rest after work under water shrinks from rep to rep"
            yield "under-water-rest", own.rep.path, message, "keep it, or let it grow"
            return


def _change_of_rest(before: UnderWater, own: UnderWater) -> float:
    """By how many seconds the rest changes, or the send-off where both leave on one; 0 where that
    is not known.
    """
    on_sendoffs = before.rep.item.sendoff is not None and own.rep.item.sendoff is not None
    is_one_item = own.rep.path == before.rep.path
    if on_sendoffs or is_one_item:
        was, now = before.interval_s, own.interval_s
    else:
        was, now = before.rest_s, own.rest_s
    return 0.0 if was is None or now is None else now - was


def _goal(analysis: Analysis, own: UnderWater) -> Iterator[Said]:
    item, code = own.rep.item, "under-water-goal"
    push_off = analysis.catalogue.policy.limit("push_off_most")
    counted = item.note_result in ("lengths", "count") and not own.is_at_walls
    if counted or (item.note_result and own.is_whole):
        hint = "note nothing of it: nobody measures how far or how long"
        yield code, (*own.rep.path, "note_result"), "a result of work under water is noted", hint
    if item.aim and own.is_whole:
        hint = "take the time out: nobody holds a time under water"
        yield code, (*own.rep.path, "aim"), "a time to hold under water", hint
    for piece in own.rep.pieces:
        gear = analysis.catalogue.gear
        loads = [id for id in piece.gear if _loads(gear[id])]
        if counts(piece.drill, push_off) and loads:
            message = f"{gear[loads[0]].title.lower()} under water"
            yield "under-water-loaded", own.rep.path, message, "take it off for this"


def _loads(gear: Gear) -> bool:
    return gear.resists or any(own.has_line for own in gear.helpers)
