"""What is swum in one go: on and on without a stop, be it written as one rep, as parts of one, or
as reps with no rest between them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from almanac.arithmetic.events import Event, Piece, Rep
from almanac.units import Course


@dataclass
class Go:
    """Pieces without a stop between them, each with its rep; ``begins`` is where, in the course's
    unit from a wall.
    """

    begins: Fraction
    swum: list[tuple[Rep, Piece]] = field(default_factory=list)


def goes(events: Iterable[Event], course: Course) -> Iterator[Go]:
    """Each go of what is swum, in order. A pause, a rest, a send-off and a change of gear are
    stops; the first begins at a wall.
    """
    at = Fraction(0)
    go = Go(at)
    for event in events:
        if isinstance(event, Rep):
            for piece in event.pieces:
                if piece.change_s and go.swum:
                    yield go
                    go = Go(at)
                go.swum.append((event, piece))
                at = (at + Fraction(piece.distance)) % course.length
                if piece.rest_s:
                    yield go
                    go = Go(at)
        stops = not isinstance(event, Rep) or event.item.rest or event.item.sendoff
        if stops and go.swum:
            yield go
            go = Go(at)
    if go.swum:
        yield go


def turns_with(go: Go, gear: str, course: Course) -> Rep | None:
    """The rep of a go in which a turn is made with a piece of gear on: a wall lies within what is
    swum with it. None where there is no such turn.
    """
    at, worn_from = go.begins, None
    for rep, piece in go.swum:
        if gear not in piece.gear:
            worn_from = None
        elif worn_from is None:
            worn_from = at
        at += Fraction(piece.distance)
        if worn_from is not None:
            next_wall = (worn_from // course.length + 1) * course.length
            if next_wall < at:
                return rep
    return None
