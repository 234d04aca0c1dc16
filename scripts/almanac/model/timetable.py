"""Timetables: which squad has which lanes of which pool when."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import ClassVar

from almanac.model.entry import Entry, Ids, Reference, references

Days = tuple[date, ...]


@dataclass(frozen=True)
class Opening:
    """When the club has lanes of a pool, from HH:MM to HH:MM: on ``days`` of each week (mon ..
    sun), or ``on`` single days. All lanes where none is named.
    """

    pool: str
    begins: str
    ends: str
    days: Ids = ()
    on: Days = ()
    lanes: tuple[int, ...] = ()


@dataclass(frozen=True)
class PoolSlot:
    """The lanes of a squad, from HH:MM to HH:MM: on ``days`` of each week, or ``on`` single days,
    on which it stands in place of what the squad has by the week. ``adults`` who are with it, None
    where that is not said; ``gear`` that is laid out for it.
    """

    squad: str
    pool: str
    begins: str
    ends: str
    lanes: tuple[int, ...]
    days: Ids = ()
    on: Days = ()
    adults: int | None = None
    gear: Mapping[str, int] = field(default_factory=dict)

    def is_beside(self, other: PoolSlot) -> bool:
        """Whether both are at one moment of a day that both have."""
        return self.begins < other.ends and other.begins < self.ends


@dataclass(frozen=True, kw_only=True)
class Timetable(Entry):
    """Which squad has which lanes when, from its ``first`` to its ``last`` day. ``adults`` of the
    club who can be at the pools at one moment, None where that is not said.
    """

    kind: ClassVar[str] = "timetable"
    first: date
    last: date
    adults: int | None = None
    open: tuple[Opening, ...]
    slots: tuple[PoolSlot, ...]

    def holds(self, on: date) -> bool:
        """Whether it is in force on a day."""
        return self.first <= on <= self.last

    def references(self) -> Iterator[Reference]:
        yield from references("pool", (own.pool for own in self.open), "in")
        for slot in self.slots:
            yield Reference("pool", slot.pool, "in")
            yield Reference("squad", slot.squad, "for")
            yield from references("gear", slot.gear, "uses")
