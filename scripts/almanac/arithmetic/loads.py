"""What is swum or held against gear that resists, and with plates on the hands."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from almanac.arithmetic.events import Piece, Rep
from almanac.arithmetic.swum import Swum
from almanac.model.gear import Gear
from almanac.units import Course

Worn = Callable[[Gear], bool]


def resists(gear: Gear) -> bool:
    """Whether distance with it counts as resisted."""
    return gear.resists


def loads_hands(gear: Gear) -> bool:
    """Whether it makes the hands take hold of more water, and the shoulders pay for it."""
    does_something = gear.resists or gear.assists or gear.pace_factor != 1
    return "hands" in gear.acts_on and does_something


def worn_metres(
    pieces: Iterable[Piece],
    course: Course,
    gear: Mapping[str, Gear],
    worn: Worn,
    held_as_50_s: float,
) -> float:
    """Metres with gear of some sort. What is held rather than travelled counts as 50 m for each
    ``held_as_50_s`` seconds (``held_as_50`` in the policy).
    """
    return sum(
        float(piece.distance) * course.unit.metres
        if piece.distance
        else 50 * (piece.hold_s or 0.0) / held_as_50_s
        for piece in pieces
        if any(worn(gear[id]) for id in piece.gear)
    )


def worn_in(swum: Swum, gear: Mapping[str, Gear], worn: Worn, held_as_50_s: float) -> float:
    """Metres with gear of some sort in all that is swum."""
    return worn_metres(swum.pieces, swum.course, gear, worn, held_as_50_s)


def excluded(pieces: Iterable[str], gear: Mapping[str, Gear]) -> tuple[str, str] | None:
    """The first two of some gear that are not worn together; None where all go together."""
    ids = sorted(pieces)
    for number, one in enumerate(ids):
        for other in ids[number + 1 :]:
            if other in gear[one].excludes or one in gear[other].excludes:
                return one, other
    return None


def longest_worn(rep: Rep, course: Course, gear: Mapping[str, Gear], held_as_50_s: float) -> float:
    """Resisted metres of one rep, all its pieces together."""
    return worn_metres(rep.pieces, course, gear, resists, held_as_50_s)
