"""Practices and blocks: sessions on the clock, and weeks of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import ClassVar

from almanac.model.entry import Entry, Hazard, Ids, Reference, Seconds, references
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


@dataclass(frozen=True)
class Day:
    """A day of a block: a practice, rest, or other work with minutes and a 0-10 rating."""

    practice: str | None = None
    rest: bool = False
    other: str = ""
    minutes: int = 0
    rating: float = 0.0


@dataclass(frozen=True)
class Week:
    """A week of a block; ``days`` by mon .. sun, those that are named."""

    focus: str
    days: Mapping[str, Day]
    taper: bool = False
    benchmarks: Ids = ()


@dataclass(frozen=True)
class ShareRange:
    """The range that a share should lie in, 0 to 1."""

    least: float = 0.0
    most: float = 1.0


@dataclass(frozen=True, kw_only=True)
class Block(Entry):
    """Weeks of days for one squad."""

    kind: ClassVar[str] = "block"
    squad: str
    goals: Ids
    starts: date
    purpose: str
    weeks: tuple[Week, ...]
    balance: Mapping[str, ShareRange] = field(default_factory=dict)

    def references(self) -> Iterator[Reference]:
        yield Reference("squad", self.squad, "for")
        for week in self.weeks:
            yield from references("benchmark", week.benchmarks, "runs")
            yield from references(
                "practice", (day.practice for day in week.days.values() if day.practice), "uses"
            )
