"""Work under water rep by rep: speed, rest after it and rest that shrinks, what is noted, worn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.under_water import (
    UnderWater,
    counts,
    under_water,
)
from almanac.checks.ways import Said, Way
from almanac.model.gear import Gear
from almanac.model.policy import LevelLimits
from almanac.units import show_number, show_time

_SHRINKS_BY_S = 1.0
BY_DISTANCE = "give it a distance: nobody stays under water for a time"


def speed_under(limits: LevelLimits) -> float:
    """The least speed under water of a level in m/s, which its limits imply: distance over time."""
    time, metres = limits.limit("under_water_time_most"), limits.limit("under_water_rep_most")
    return metres / time if time and metres else 1.0


def on_clock(
    analysis: Analysis, way: Way, limits: LevelLimits, clock: GroupClock | None
) -> Iterator[Said]:
    """Every breach of work under water on the clock of one lane group, or on none."""
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
        yield "under-water-rep", path, "it is done under water for a time", BY_DISTANCE
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
