"""What is wished of a practice, by places in the table."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from almanac.arithmetic.composing.pieces import MAIN, PLACES, UNKNOWN

MINUTES_LEAST, MINUTES_MOST = 20, 120
GOALS_MOST = 3
SECOND, THIRD = "n", "o"
"""A second main set, and a third; among the roles of a piece they are main sets like the first."""
MAINS = (MAIN, SECOND, THIRD)


def is_held(role: str) -> bool:
    """Whether a part of a practice that is opened stands as it is written, by its place there
    (``PLACES``): it is swapped for nothing.
    """
    return len(role) == 1 and role in PLACES


@dataclass(frozen=True)
class Kept:
    """A piece that has to stand in a role, so often (``UNKNOWN``: however often)."""

    piece: int
    role: str
    number: int = UNKNOWN


@dataclass(frozen=True)
class Wishes:
    """What is wished. Lane groups, goals, gear, efforts, drills and pieces are by their place in
    the table; ``lanes`` and ``heads`` are of every lane group of the squad, ``gear`` is how many of
    each are at hand. ``days`` are since a piece was done. ``effort`` and ``adults`` may be
    ``UNKNOWN``.
    """

    pool: str
    groups: tuple[int, ...]
    lanes: tuple[int, ...]
    heads: tuple[int, ...]
    minutes: int
    goals: tuple[int, ...]
    gear: tuple[int, ...]
    effort: int = UNKNOWN
    adults: int = UNKNOWN
    days: Mapping[int, int] = field(default_factory=dict)
    taught: frozenset[int] = frozenset()
    kept: tuple[Kept, ...] = ()
    left_out: frozenset[int] = frozenset()
