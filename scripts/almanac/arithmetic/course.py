"""A set in another pool: what still ends and changes at a wall, and how its send-offs move."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import accumulate

from almanac.model.swim_set import Item, Pause, Reps, Round, SwimSet
from almanac.source.reader import DataPath
from almanac.units import METRES_PER_YARD, Course, Unit

_METRES = {Unit.METRE: Fraction(1), Unit.YARD: Fraction(str(METRES_PER_YARD))}


@dataclass(frozen=True)
class Misfit:
    """A rep that a course does not fit: where it stands, what fails, and the nearest distance that
    fits.

    ``ends``: the rep ends between walls. Otherwise ``part`` (from 0) is the part that ends between
    walls inside the rep. ``nearest`` is a distance of the rep, or of the part, in whole lengths.
    """

    path: DataPath
    distance: int
    ends: bool
    part: int | None
    nearest: int


def misfits(
    items: tuple[Item, ...], course: Course, path: DataPath = ("items",)
) -> Iterator[Misfit]:
    """Every rep of ``items`` that does not end at a wall of ``course``, or changes between
    walls.
    """
    for index, item in enumerate(items):
        here = (*path, index)
        if isinstance(item, Round):
            yield from misfits(item.items, course, (*here, "items"))
        elif isinstance(item, Reps):
            yield from _rep_misfits(item, course, here)


def _rep_misfits(item: Reps, course: Course, path: DataPath) -> Iterator[Misfit]:
    if item.distance % course.length:
        yield Misfit(path, item.distance, True, None, nearest_lengths(item.distance, course))
        return
    reached = accumulate(part.distance for part in item.parts)
    for number, (part, at) in enumerate(zip(item.parts, reached, strict=True)):
        if at % course.length:
            yield Misfit(path, part.distance, False, number, nearest_lengths(part.distance, course))
            return


def nearest_lengths(distance: int, course: Course) -> int:
    """The nearest whole number of lengths, at least one, as a distance; of two as near, the
    longer.
    """
    return max(1, (2 * distance + course.length) // (2 * course.length)) * course.length


def lay_in_course(swim_set: SwimSet, course: Course) -> SwimSet:
    """The set as it would be swum in another course: the same numbers on the board, in that pool's
    unit.

    Send-offs carry the ratio of the two lengths (9144/10000 from metres to yards), to be rounded
    when they are shown; there is no standard for turning times from one course into another. Laying
    a set there and back gives the set again.
    """
    return replace(
        swim_set, course=course, items=lay_items_in_course(swim_set.items, swim_set.course, course)
    )


def lay_items_in_course(
    items: tuple[Item, ...], written_for: Course, course: Course
) -> tuple[Item, ...]:
    """Items written for one course, as they would be swum in another."""
    ratio = _METRES[course.unit] / _METRES[written_for.unit]
    return items if ratio == 1 else tuple(_lay_item(item, ratio) for item in items)


def _lay_item(item: Item, ratio: Fraction) -> Item:
    if isinstance(item, Pause):
        return item
    if isinstance(item, Round):
        return replace(item, items=tuple(_lay_item(inner, ratio) for inner in item.items))
    if item.sendoff is None:
        return item
    return replace(item, sendoff=replace(item.sendoff, ratio=item.sendoff.ratio * ratio))
