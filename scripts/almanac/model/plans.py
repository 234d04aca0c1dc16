"""Practices: sessions on the clock."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar

from almanac.model.entry import Entry, Hazard, Reference, Seconds, references
from almanac.model.swim_set import Item, item_references


@dataclass(frozen=True)
class Slot:
    """Pool time: ``start`` as HH:MM, and minutes."""

    start: str
    minutes: int


@dataclass(frozen=True)
class PracticePart:
    """A part of a practice: a set by id, or items in place; ``talk`` seconds before it."""

    part: str
    set: str | None = None
    items: tuple[Item, ...] = ()
    talk: Seconds | None = None
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Practice(Entry):
    """One session of a squad."""

    kind: ClassVar[str] = "practice"
    squad: str
    pool: str
    slot: Slot
    focus: str
    parts: tuple[PracticePart, ...]
    hazards: tuple[Hazard, ...] = ()

    def references(self) -> Iterator[Reference]:
        yield Reference("squad", self.squad, "for")
        yield Reference("pool", self.pool, "in")
        for part in self.parts:
            yield from references("set", [part.set] if part.set else [], "uses")
            yield from item_references(part.items)
