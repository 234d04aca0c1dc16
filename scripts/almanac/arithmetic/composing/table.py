"""What a practice is composed of: a squad's table of pieces, groups, gear and pools.

The choice reads this table and nothing else, so that whoever has the table can choose the same.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from almanac.arithmetic.composing.pieces import UNKNOWN, Offer, PracticePiece

ANY = "any"
"""The stroke of what is swum as one likes."""


@dataclass(frozen=True)
class TableGroup:
    """A lane group with the lanes and heads that it usually has; ``gap`` is the longest time that
    one swimmer of a lane leaves after another.
    """

    id: str
    title: str
    lanes: int
    heads: int
    gap: int


@dataclass(frozen=True)
class Limits:
    """The most metres of a practice at a level: fast, against gear that resists, with plates on the
    hands, under water; and how long after fast work nobody goes under.
    """

    fast: int
    resisted: int
    plates: int
    under: int
    under_after_fast: int


@dataclass(frozen=True)
class TableSquad:
    """A squad: ``taught`` are the drills that its blocks have had done, or ask for, with all that
    these need first. A session has ``minutes`` at most. ``watch`` is by pool the fewest adults, and
    the most heads to each of them (0: all can stand); ``offers`` are by pool.
    """

    id: str
    title: str
    level: str
    groups: tuple[TableGroup, ...]
    limits: Limits
    taught: frozenset[int]
    minutes: int
    watch: Mapping[str, tuple[int, int]]
    offers: Mapping[str, tuple[Offer, ...]]


@dataclass(frozen=True)
class PoolHere:
    """A pool of the club."""

    id: str
    title: str
    course: str
    lanes: int


@dataclass(frozen=True)
class GearHere:
    """A piece of gear: how many the club owns, and how long it takes to put on or off."""

    id: str
    title: str
    owned: int
    change: int


@dataclass(frozen=True)
class Named:
    """A word or an entry that a wish may name."""

    id: str
    title: str


@dataclass(frozen=True)
class Taught:
    """A progression, with the drills of each of its stages."""

    id: str
    title: str
    stages: tuple[tuple[int, ...], ...]


@dataclass(frozen=True)
class Done:
    """A practice of the squad, with the pieces that doing it has done."""

    id: str
    title: str
    pieces: tuple[int, ...]


@dataclass(frozen=True)
class Planned:
    """A block of the squad: its first day (YYYY-MM-DD), and for each day that has practices, how
    many days after that it is, and which they are, by place in the table.
    """

    id: str
    title: str
    starts: str
    days: tuple[tuple[int, int], ...]


@dataclass(frozen=True)
class ComposeTable:
    """All that the choice knows of one squad. ``efforts`` are the easiest first, ``fast`` the first
    of them that counts as fast, ``gentle`` the last that counts as gentle. ``strokes_swum`` are
    the drills that are whole strokes.
    """

    goals: tuple[Named, ...]
    efforts: tuple[Named, ...]
    gentle: int
    fast: int
    strokes: tuple[Named, ...]
    gear: tuple[GearHere, ...]
    drills: tuple[str, ...]
    strokes_swum: frozenset[int]
    pools: tuple[PoolHere, ...]
    squad: TableSquad
    progressions: tuple[Taught, ...]
    practices: tuple[Done, ...]
    blocks: tuple[Planned, ...]
    pieces: tuple[PracticePiece, ...]

    @cached_property
    def any_stroke(self) -> int:
        """The place of the word for whatever stroke one likes; ``UNKNOWN`` where nothing has it."""
        return next((at for at, own in enumerate(self.strokes) if own.id == ANY), UNKNOWN)

    @cached_property
    def piece_of(self) -> Mapping[str, int]:
        """The place of a piece by its key."""
        return {piece.key: place for place, piece in enumerate(self.pieces)}
