"""Where in a pool a part of a rep ends: at a wall, or at a mark between the walls."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from almanac.model.changes import changed
from almanac.model.reps import Change, Distance, Reps
from almanac.model.swim_set import Item, Round
from almanac.units import METRES_PER_YARD, Course, Unit

FLAGS_FROM_WALL = 5  # in the pool's unit: 5 m, and 5 yd where the pool is in yards
_FIFTEEN_M = {Unit.METRE: Fraction(15), Unit.YARD: Fraction(15) / Fraction(str(METRES_PER_YARD))}
END = "end"


def mark_from_wall(mark: str, course: Course) -> Fraction:
    """How far a mark stands from the wall that swimmers leave, in the course's unit.

    ``wall`` is the one ahead. Backstroke flags hang 5.0 m from each end wall (World Aquatics,
    facilities rules), 5 yd in a pool of yards; the 15 m mark stands at 15 m in every pool (16.4 yd,
    1 yd = 0.9144 m); the middle at half a length. Raises KeyError for another mark.
    """
    length = Fraction(course.length)
    return {
        "wall": length,
        "flags": length - FLAGS_FROM_WALL,
        "near-flags": Fraction(FLAGS_FROM_WALL),
        "middle": length / 2,
        "15m": _FIFTEEN_M[course.unit],
    }[mark]


def place_items(items: tuple[Item, ...], course: Course) -> tuple[Item, ...]:
    """Items with each part that ends at a mark given its distance in a course: 15 m stays 15 m, the
    middle moves.
    """
    return tuple(
        replace(item, items=place_items(item.items, course))
        if isinstance(item, Round)
        else placed(item, course)
        if isinstance(item, Reps)
        else item
        for item in items
    )


def placed(item: Reps, course: Course) -> Reps:
    """Reps with each part that ends at a mark given its distance in a course: to the next such mark
    ahead, and never beyond the end of the rep. Distances are exact.
    """
    if item.by_round:
        item = replace(item, by_round=_placed_changes(item, course))
    if not any(part.to for part in item.parts):
        return item
    parts, at, end = [], Fraction(0), Fraction(item.distance)
    for part in item.parts:
        distance: Distance = part.distance
        if part.to:
            reached = end if part.to == END else _next(mark_from_wall(part.to, course), at, course)
            distance = max(Fraction(0), min(reached, end) - at)
        parts.append(replace(part, distance=_plain(distance)))
        at += distance
    return replace(item, parts=tuple(parts))


def beyond_the_end(item: Reps, course: Course) -> int | None:
    """The first part (from 0) of reps, placed in a course, whose mark lies beyond the end of the
    rep; None where none does.
    """
    at, end = Fraction(0), Fraction(item.distance)
    for number, part in enumerate(item.parts):
        if part.to and part.to != END and _next(mark_from_wall(part.to, course), at, course) > end:
            return number
        at += part.distance
    return None


def _placed_changes(item: Reps, course: Course) -> Mapping[str, Change]:
    return {
        number: replace(
            change, parts=placed(replace(changed(item, change), by_round={}), course).parts
        )
        if change.parts
        else change
        for number, change in item.by_round.items()
    }


def _next(from_wall: Fraction, at: Fraction, course: Course) -> Fraction:
    """The first place beyond ``at`` that stands so far from the wall before it."""
    lengths = math.floor((at - from_wall) / course.length) + 1
    return from_wall + lengths * course.length


def _plain(distance: Distance) -> Distance:
    return int(distance) if distance.denominator == 1 else distance
