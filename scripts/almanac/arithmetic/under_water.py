"""How far and how long each rep is under water, and the rest that follows it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from almanac.arithmetic.events import Break, Event, Piece, Rep
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.pace import Target
from almanac.arithmetic.timed_reps import TimedRep
from almanac.model.drill import Drill
from almanac.units import Course


def counts(drill: Drill, push_off_m: float) -> bool:
    """Whether a drill counts as work under water: it is done there, or it stays under after its
    walls for more metres than an ordinary push-off (``push_off_most`` in the policy).
    """
    stated = drill.under_water
    return (stated is not None and stated > push_off_m) or drill.is_under_water


def metres_under(piece: Piece, course: Course, push_off_m: float) -> float:
    """Metres under water of a piece that counts as work under water: what its drill says of each
    wall, in each length that it begins, else all of it. 0 for what is done at the surface, and for
    what is held in one place.
    """
    if not counts(piece.drill, push_off_m):
        return 0.0
    metres = float(piece.distance) * course.unit.metres
    stated = piece.drill.under_water
    return metres if stated is None else _off_walls(metres, stated, course)


def metres_off_walls(piece: Piece, course: Course) -> float:
    """The greatest distance under water after one wall, in metres, of a piece that is done at the
    surface or at the wall; 0 where its drill says nothing of it.
    """
    stated = 0.0 if piece.drill.is_under_water else piece.drill.under_water or 0.0
    # Work at the wall goes no distance, and still leaves it.
    return min(stated, float(piece.distance) * course.unit.metres or stated)


def _off_walls(metres: float, each: float, course: Course) -> float:
    length = course.length * course.unit.metres
    whole, rest = divmod(metres, length)
    return whole * min(each, length) + min(each, rest)


@dataclass(frozen=True)
class UnderWater:
    """A rep with work under water: metres and seconds under; the rest from the touch until the next
    rep, in seconds, None where it is not known; the interval it leaves on, where it is named.
    """

    rep: Rep
    metres: float
    seconds: float
    rest_s: float | None
    interval_s: float | None = None

    @property
    def is_whole(self) -> bool:
        """Whether all of the rep is under water."""
        return all(
            piece.drill.is_under_water and piece.drill.under_water is None
            for piece in self.rep.pieces
        )

    @property
    def is_at_walls(self) -> bool:
        """Whether nothing of it but what follows its walls is under water."""
        return not any(piece.drill.is_under_water for piece in self.rep.pieces)


def is_under(rep: Rep, push_off_m: float) -> bool:
    """Whether something of a rep counts as work under water."""
    return any(counts(piece.drill, push_off_m) for piece in rep.pieces)


def under_water(
    events: Sequence[Event],
    course: Course,
    least_speed: float,
    clock: GroupClock | None,
    push_off_m: float,
) -> Iterator[UnderWater]:
    """Every rep with work under water, in order. How long it is under follows from its target where
    it is under water from end to end, and is never less than ``least_speed`` in m/s makes it;
    ``clock`` is the set on the clock of those who do it, None where no lane group does.
    """
    timed = {id(own.rep): own for own in clock.reps} if clock else {}
    for number, event in enumerate(events):
        if isinstance(event, Rep) and is_under(event, push_off_m):
            own = timed.get(id(event))
            metres = sum(metres_under(piece, course, push_off_m) for piece in event.pieces)
            whole = UnderWater(event, metres, 0.0, None).is_whole
            seconds = max(metres / least_speed, sum(_held_s(event)))
            if whole and own and isinstance(own.target, Target):
                seconds = max(seconds, own.target.seconds)
            # Within an item the rest moves as the interval does: either tells whether it shrinks.
            interval = (own.sendoff_s if own else None) or event.item.rest
            rest = rest_after(events, number, own, _earliest_s(event, own, course, least_speed))
            yield UnderWater(event, metres, seconds, rest, interval)


def _held_s(rep: Rep) -> Iterator[float]:
    """How long each piece that is held under water is held."""
    return (piece.hold_s for piece in rep.pieces if piece.drill.is_under_water and piece.hold_s)


def rest_after(
    events: Sequence[Event], number: int, own: TimedRep | None, touch_least_s: float = 0.0
) -> float | None:
    """Seconds from the touch of a rep, by its number among the events, to the start of the next:
    what its send-off or its rest leaves, and the pauses that follow. None where that is not known;
    0 where nothing is said. The touch comes after ``touch_least_s`` at the earliest.
    """
    rep = events[number]
    assert isinstance(rep, Rep)
    pauses = 0.0
    for event in events[number + 1 :]:
        if not isinstance(event, Break):
            break
        pauses += event.seconds
    item = rep.item
    if item.sendoff is None:
        return (item.rest or 0.0) + pauses
    if own is None or own.touch_s is None or own.sendoff_s is None:
        return None
    return max(0.0, own.sendoff_s - max(own.touch_s, touch_least_s)) + pauses


def _earliest_s(rep: Rep, own: TimedRep | None, course: Course, least_speed: float) -> float:
    """Before when a touch that is assumed, and that nobody has timed, is not believed: one that
    comes too soon would read as rest.
    """
    if own is None or not isinstance(own.target, Target) or not own.target.assumed:
        return 0.0
    return float(rep.distance) * course.unit.metres / least_speed
