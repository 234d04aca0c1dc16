"""A set in a pool: where its marks lie, what ends and changes at a wall, how send-offs move."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from enum import Enum
from fractions import Fraction
from itertools import accumulate

from almanac.model.changes import rounds_of
from almanac.model.drill import Drill
from almanac.model.entry import Seconds
from almanac.model.reps import Change, Distance, Part, Reps, in_all
from almanac.model.sendoff import Sendoff
from almanac.model.swim_set import Item, Pause, Round, SwimSet
from almanac.source.reader import DataPath
from almanac.units import METRES_PER_YARD, Course, Unit

_METRES = {Unit.METRE: Fraction(1), Unit.YARD: Fraction(str(METRES_PER_YARD))}


class Unfit(Enum):
    """What of a rep does not fit a course; the value is how it is told."""

    ENDS = "ends between the walls"
    CHANGES = "changes between the walls"
    RESTS = "rests between the walls"
    PARTS = "has parts that do not come to its distance"


@dataclass(frozen=True)
class Misfit:
    """A rep that a course does not fit: where it stands, what fails, and the nearest distance that
    fits.

    ``part`` (from 0) is the part that ends between walls inside the rep, None where the rep itself
    does not fit. ``nearest`` is a distance of the rep, or of the part, in whole lengths. Of a rep
    that a team of ``swimmers`` shares, ``distance`` is what each of them swims, and ``nearest`` of
    all. ``whole`` is what parts should come to; ``empty`` is the first with nothing to swim.
    """

    path: DataPath
    distance: Distance
    why: Unfit
    part: int | None
    nearest: int
    swimmers: int = 1
    whole: Distance = 0
    empty: int | None = None

    @property
    def ends(self) -> bool:
        """Whether the rep ends between walls."""
        return self.why is Unfit.ENDS


Drills = Mapping[str, Drill]


def misfits(
    items: tuple[Item, ...],
    course: Course,
    path: DataPath = ("items",),
    drills: Drills | None = None,
) -> Iterator[Misfit]:
    """Every rep of ``items`` that does not end at a wall of ``course``, or changes between walls;
    in each round that differs.

    Drills whose own dose is shorter than a length, push and glide say, end where they end: a rep of
    them is less than a length, has its rest, and one gets back to the wall in it.
    """
    for index, item in enumerate(items):
        here = (*path, index)
        if isinstance(item, Round):
            each = {id(inner): inner for inner in rounds_of(item)}
            for inner in each.values():
                yield from misfits(inner, course, (*here, "items"), drills)
        elif isinstance(item, Reps) and item.reps:
            yield from _rep_misfits(item, course, here, drills or {})


def _rep_misfits(item: Reps, course: Course, path: DataPath, drills: Drills) -> Iterator[Misfit]:
    whole = nearest_lengths(item.distance, course)
    leg = _of_each(item.distance, item)
    if leg % course.length and not _gets_back(item, course, drills):
        swimmers = item.manner.swimmers
        nearest = nearest_lengths(leg, course) * swimmers
        yield Misfit(path, leg, Unfit.ENDS, None, nearest, swimmers)
        return
    distances = [_of_each(part.distance, item) for part in item.parts]
    if in_all(distances) != leg or (len(distances) > 1 and not all(distances)):
        empty = next((number for number, own in enumerate(distances) if not own), None)
        added = in_all([Fraction(part.distance) for part in item.parts])
        yield Misfit(path, added, Unfit.PARTS, None, whole, whole=item.distance, empty=empty)
        return
    for number, (part, at) in enumerate(zip(item.parts, accumulate(distances), strict=True)):
        why = Unfit.RESTS if part.rest else Unfit.CHANGES
        is_meant = _is_meant(part, at, course) or _is_short(part, course, drills)
        if at % course.length and (part.rest or not is_meant):
            yield Misfit(path, part.distance, why, number, nearest_lengths(part.distance, course))
            return


def _of_each(distance: Distance, item: Reps) -> Distance:
    """What each of those who share a rep swims of a distance."""
    swimmers = item.manner.swimmers
    return in_all([distance if swimmers == 1 else Fraction(distance) / swimmers])


def _gets_back(item: Reps, course: Course, drills: Drills) -> bool:
    """Whether a rep is so short that one gets back to where it began in the rest after it."""
    has_rest = item.reps == 1 or item.rest is not None or item.sendoff is not None
    is_alone = item.manner.swimmers == 1 and item.distance < course.length
    return has_rest and is_alone and all(_is_short(part, course, drills) for part in item.parts)


def _is_short(part: Part, course: Course, drills: Drills) -> bool:
    """Whether a part is shorter than a length, of drills whose own dose is."""
    doses = [drills[id].dose.distance for id in part.drills if id in drills]
    return part.distance < course.length and bool(doses) and all(
        dose and dose < course.length for dose in doses
    )  # fmt: skip


def _is_meant(part: Part, at: Distance, course: Course) -> bool:
    """Whether a part is meant to end between walls: at a mark, or, written as half a length, in the
    middle of the pool.
    """
    return bool(part.to) or (at.denominator > 1 and 2 * at % course.length == 0)


def nearest_lengths(distance: Distance, course: Course) -> int:
    """The nearest whole number of lengths, at least one, as a distance; of two as near, the
    longer.
    """
    return max(1, (2 * distance + course.length) // (2 * course.length)) * course.length


def lay_in_course(swim_set: SwimSet, course: Course) -> SwimSet:
    """The set as it would be swum in another course: the same numbers on the board, in that pool's
    unit. A mark is the same mark, where it stands in that pool (``place_items``).

    Send-offs carry the ratio of the two lengths (9144/10000 from metres to yards), to be rounded
    when they are shown; there is no standard for turning times from one course into another. Laying
    a set there and back gives the set again. What is done on land is the same everywhere.
    """
    if swim_set.is_on_land:
        return swim_set
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
        inner = tuple(_lay_item(inner, ratio) for inner in item.items)
        return replace(item, items=inner, by_round=_lay_changes(item.by_round, ratio))
    return replace(
        item,
        sendoff=_lay_sendoff(item.sendoff, ratio),
        assume=replace(item.assume, ratio=item.assume.ratio * ratio) if item.assume else None,
        by_group=_lay_changes(item.by_group, ratio),
        by_variant=_lay_changes(item.by_variant, ratio),
        by_round=_lay_changes(item.by_round, ratio),
    )


def _lay_changes(changes: Mapping[str, Change], ratio: Fraction) -> Mapping[str, Change]:
    return {
        name: replace(
            change,
            sendoff=_lay_sendoff(change.sendoff, ratio),
            assume=Seconds(change.assume * float(ratio)) if change.assume else None,
        )
        for name, change in changes.items()
    }


def _lay_sendoff(sendoff: Sendoff | None, ratio: Fraction) -> Sendoff | None:
    return replace(sendoff, ratio=sendoff.ratio * ratio) if sendoff else None
