"""The figures of a piece of gear that resists."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from almanac.analysis.figures.figure import Figure, Section, Shown
from almanac.arithmetic.gear_drag import SPEEDS, TimedComparison, pull_of, timed_comparisons
from almanac.arithmetic.resistance import added_drag, drag_force, swimmer_drag
from almanac.arithmetic.test_workings import (
    GearAtSpeed,
    drag_at_equal_power,
    drag_at_equal_thrust,
    least_own_drag,
    most_own_drag,
    pull_at,
)
from almanac.model.catalogue import Catalogue
from almanac.model.gear import Gear


@dataclass(frozen=True)
class GearForGroup:
    """A piece of gear, and the lane group whose comparisons are asked for, None where no group's
    are.
    """

    catalogue: Catalogue
    gear: Gear
    group: str | None
    day: date | None = None


def speeds_of(gear: Gear) -> list[GearAtSpeed]:
    """A resisting piece of gear at each speed that its page shows; none for one that does not."""
    pull = pull_of(gear)
    return [GearAtSpeed(gear, pull, speed) for speed in SPEEDS] if gear.resists else []


def comparisons_of(catalogue: Catalogue, gear: str, day: date | None) -> Iterator[TimedComparison]:
    """What the club's own times tell of a piece of gear, by lane group, as known by a day."""
    return timed_comparisons(catalogue.club, catalogue.benchmarks, gear, day)


def _speeds(whole: GearForGroup) -> Iterator[tuple[str, GearAtSpeed]]:
    for at in speeds_of(whole.gear):
        yield f"{{}} at {at.speed:.1f} m/s", at


def _comparisons(whole: GearForGroup) -> Iterator[tuple[str, TimedComparison]]:
    if not whole.gear.resists:
        return
    for found in comparisons_of(whole.catalogue, whole.gear.id, whole.day):
        if found.group == whole.group:
            yield f"{found.plain.id} {{}}", found


TOTALS: tuple[Figure[GearForGroup], ...] = ()

AT_SPEED: tuple[Figure[GearAtSpeed], ...] = (
    Figure("pull", "Pull, N", pull_at, Shown.WHOLE, "N", (drag_force,)),
    Figure("least own drag", "Own drag, least, N", least_own_drag, Shown.WHOLE, "N",
           (swimmer_drag,)),
    Figure("most own drag", "Own drag, most, N", most_own_drag, Shown.WHOLE, "N",
           (swimmer_drag,)),
)  # fmt: skip

COMPARED: tuple[Figure[TimedComparison], ...] = (
    Figure("added drag at equal thrust", "Added drag at equal thrust", drag_at_equal_thrust,
           Shown.SHARE, explained=(added_drag,)),
    Figure("added drag at equal power", "at equal power", drag_at_equal_power, Shown.SHARE,
           explained=(added_drag,)),
)  # fmt: skip

GEAR = (
    Section("gear", lambda whole: iter([("{}", whole)]), {"totals": TOTALS}, "Drag"),
    Section("speed", _speeds, {"drag": AT_SPEED}, "Drag"),
    Section("comparison", _comparisons, {"times": COMPARED}, "Drag"),
)
