"""Gear that goes on and off between the reps of a set, and what that costs of the clock."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from almanac.arithmetic.events import Event, Rep
from almanac.model.gear import Gear
from almanac.model.reps import Distance
from almanac.units import Course


@dataclass(frozen=True)
class GearChange:
    """Gear that goes on and off before a rep; ``cost_s`` of which ``covered_s`` falls into a
    pause.
    """

    before: Rep
    on: frozenset[str]
    off: frozenset[str]
    cost_s: int
    covered_s: float
    at_far_end: bool

    @property
    def uncovered_s(self) -> float:
        """Seconds that it adds to the clock."""
        return max(0.0, self.cost_s - self.covered_s)


def gear_changes(
    events: tuple[Event, ...], gear: Mapping[str, Gear], course: Course
) -> Iterator[GearChange]:
    """Gear that goes on or off between one rep and the next, and whether swimmers are then at the
    far end.

    Between reps of two items it is the gear of the last part of the one and the first part of the
    other that counts; reps of one item are compared whole, for what goes on again for the next of
    them does so in the rest between. The change costs the largest ``change_s`` of what goes on or
    off; a pause between the two reps covers it. What the first rep starts with is put on before the
    set.
    """
    before: Rep | None = None
    pause = 0.0
    swum: Distance = 0
    for event in events:
        if not isinstance(event, Rep):
            pause += event.seconds
            continue
        worn, wanted = _between(before, event) if before is not None else (event.gear, event.gear)
        if worn != wanted:
            on, off = wanted - worn, worn - wanted
            cost = max(gear[id].change_s for id in on | off)
            yield GearChange(event, on, off, cost, pause, at_far_end=swum // course.length % 2 == 1)
        before, pause = event, 0.0
        swum += event.distance


def _between(before: Rep, after: Rep) -> tuple[frozenset[str], frozenset[str]]:
    """The gear at the end of a rep, and at the start of the next."""
    if before.path == after.path:
        return before.gear, after.gear
    return frozenset(before.pieces[-1].gear), frozenset(after.pieces[0].gear)
