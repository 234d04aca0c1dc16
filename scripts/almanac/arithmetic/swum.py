"""What is swum of a set or a practice, laid out in a course and added up."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from almanac.arithmetic.by_time import estimate
from almanac.arithmetic.course import Misfit, misfits
from almanac.arithmetic.events import Event, Piece, Rep, reps
from almanac.arithmetic.expand import expand
from almanac.arithmetic.facets import Shares, all_facets, distance_working, shares
from almanac.arithmetic.manners import with_manners
from almanac.arithmetic.marks import place_items
from almanac.arithmetic.pace import Pacer
from almanac.arithmetic.timing import Clocks, Timing
from almanac.arithmetic.working import Known, Labelled, Working, gathered, total
from almanac.frozen import kept, quick
from almanac.model.reps import Distance, in_all
from almanac.model.swim_set import Item
from almanac.units import Course


@quick
@dataclass(frozen=True)
class Swum:
    """Events in one course, added up, as one or more lane groups swim them.

    ``distance`` is in the course's unit, ``metres`` in metres; ``lengths`` is a whole number
    where every rep ends at a wall.
    """

    course: Course
    events: tuple[Event, ...]
    timing: Clocks = field(repr=False)
    distance: Working
    misfits: tuple[Misfit, ...] = ()
    most_in_lane: int | None = None

    @kept
    def reps(self) -> tuple[Rep, ...]:
        """Every rep, in order."""
        return tuple(reps(self.events))

    @kept
    def pieces(self) -> tuple[Piece, ...]:
        """Every piece of every rep, in order."""
        return tuple(piece for rep in self.reps for piece in rep.pieces)

    @kept
    def by(self) -> Mapping[str, Mapping[str, Fraction]]:
        """The distance by the words of each facet, in the course's unit."""
        return all_facets(self.pieces, self.timing.scale)

    @kept
    def shares(self) -> Shares:
        """The shares that coaches ask for."""
        return shares(self.reps, self.timing.gear, self.timing.scale)

    @kept
    def gear(self) -> tuple[str, ...]:
        """All gear that is worn or held, in order of appearance."""
        return tuple(dict.fromkeys(gear for piece in self.pieces for gear in piece.gear))

    @kept
    def by_time(self) -> tuple[Piece, ...]:
        """What is swum by time, and so has a distance that is estimated, or not known."""
        return tuple(piece for piece in self.pieces if piece.by_time)

    @property
    def estimated(self) -> Distance:
        """How much of the distance is estimated."""
        return in_all(piece.distance for piece in self.by_time)

    @property
    def metres(self) -> float:
        """The distance in metres."""
        return self.distance.value * self.course.unit.metres

    @property
    def lengths(self) -> Fraction:
        """The distance in lengths of the pool."""
        return Fraction(in_all(rep.distance for rep in self.reps)) / self.course.length


def lay_out(
    timing: Timing,
    items: tuple[Item, ...],
    course: Course,
    most_in_lane: int | None = None,
    pacer: Pacer | None = None,
) -> Swum:
    """Items as one lane group swims them, laid out in a course and added up."""
    items = with_manners(place_items(items, course), timing.catalogue.vocabularies)
    catalogue, far = timing.catalogue, estimate(pacer) if pacer else None
    events = expand(items, catalogue.drills, timing.scale, catalogue.gear, far)
    pieces = [piece for rep in reps(events) for piece in rep.pieces if piece.by_time]
    estimated = gathered(Known(float(piece.distance)) for piece in pieces if piece.distance)
    by_time = [Labelled(estimated, "estimated, by time", course.unit.value)] if pieces else []
    return Swum(
        course,
        events,
        timing.clocks,
        total([distance_working(items), *by_time]),
        tuple(misfits(items, course, drills=catalogue.drills)),
        most_in_lane,
    )


def together(parts: Iterable[Swum], course: Course, timing: Clocks) -> Swum:
    """Several things that are swum one after the other, as one."""
    each = tuple(parts)
    events = tuple(event for part in each for event in part.events)
    return Swum(course, events, timing, total(part.distance for part in each))
