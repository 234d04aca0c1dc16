"""What is left of what a lane group does where reps or rounds are left out, and whether it is then
at the end of the pool where what follows begins.
"""

from __future__ import annotations

from collections.abc import Iterable
from collections.abc import Set as AbstractSet
from fractions import Fraction

from almanac.arithmetic.expand import Event, Rep
from almanac.source.reader import DataPath
from almanac.units import LAND, Course

_STEPS = (1, 2, 4)


def step_home(rep: Rep, course: Course) -> int:
    """How many reps are left out together, so that whatever follows begins at the end where it is
    planned: one where a rep comes back to its own end, two where it ends at the other, four where
    it ends halfway to it; 0 where no such number does.

    On land, held in place and where one gets back to the start each time, one.
    """
    if course == LAND or not rep.distance or rep.item.manner.ready_s:
        return 1
    lengths = Fraction(rep.distance) * rep.item.manner.swimmers / course.length
    return next((step for step in _STEPS if lengths * step % 2 == 0), 0)


def comes_home(reps: Iterable[Rep], course: Course) -> bool:
    """Whether reps, one after the other, end at the end where the first of them began."""
    if course == LAND:
        return True
    lengths = sum(
        (
            Fraction(rep.distance) * rep.item.manner.swimmers / course.length
            for rep in reps
            if not rep.item.manner.ready_s
        ),
        Fraction(0),
    )
    return lengths % 2 == 0


def without_last(events: Iterable[Event], path: DataPath, most: int) -> tuple[Event, ...]:
    """Events without the reps of one item beyond so many in each round."""
    return tuple(
        event
        for event in events
        if not (isinstance(event, Rep) and event.path == path and event.number > most)
    )


def until(events: tuple[Event, ...], rep: Rep | None) -> tuple[Event, ...]:
    """Events up to a rep, which is the last of them; none where there is no such rep."""
    place = next((number for number, event in enumerate(events) if event is rep), -1)
    return events[: place + 1]


def without_rounds(
    events: Iterable[Event], path: DataPath, gone: AbstractSet[int]
) -> tuple[Event, ...]:
    """Events without some, by number, of the outermost rounds at a path in the items."""
    return tuple(
        event for event in events if not (event.path[:2] == path and event.rounds[0] in gone)
    )
