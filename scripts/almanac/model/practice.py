"""Practices: one session of a squad, together, apart, or changing over from station to station."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import ClassVar

from almanac.frozen import quick
from almanac.model.entry import Entry, Hazard, Helper, Ids, Reference, Seconds, references
from almanac.model.swim_set import Item, item_references
from almanac.source.reader import DataPath

Lanes = tuple[int, ...]  # the numbers of lanes


@dataclass(frozen=True)
class Slot:
    """Pool time: ``start`` as HH:MM, and minutes."""

    start: str
    minutes: int


@dataclass(frozen=True)
class LanesInUse:
    """What is otherwise than usual with the lanes, by number."""

    out_of_use: Lanes = ()
    shared: Lanes = ()
    groups: Mapping[str, Lanes] = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True)
class Doing:
    """What is done in a part or at a station: a set by id, or items in place.

    ``variants`` are those of the set that lane groups are given here, where they are others than
    the set says; ``rounds`` or ``reps`` of it are asked for instead of those written; ``talk``
    seconds before it; ``place`` where that is not the group's own lanes; ``end`` of the pool that
    reps leave from; ``led_by`` the role of the adult who takes it alone; ``coach_is`` the job of a
    helper that falls to whoever takes it; ``lanes`` by lane group, where they are others than
    usual.
    """

    set: str | None = None
    variants: Mapping[str, str] = field(default_factory=dict)
    rounds: int | None = None
    reps: int | None = None
    items: tuple[Item, ...] = ()
    talk: Seconds | None = None
    place: str = ""
    end: str = "start"
    led_by: str | None = None
    coach_is: str = ""
    lanes: Mapping[str, Lanes] = field(default_factory=dict)
    helpers: tuple[Helper, ...] = ()
    note: str = ""

    def references(self) -> Iterator[Reference]:
        """Every entry that it names."""
        yield from references("set", [self.set] if self.set else [], "uses")
        yield from references("lane_group", self.lanes, "lanes")
        yield from references("lane_group", self.variants, "variants")
        yield from item_references(self.items)


@dataclass(frozen=True)
class PartOfSome(Doing):
    """A part that only some lane groups do."""

    part: str


@dataclass(frozen=True)
class ListOfSome:
    """The parts of some lane groups, or of the ``half`` of the lanes: ``first`` or ``second``."""

    parts: tuple[PartOfSome, ...]
    groups: Ids = ()
    half: str = ""


@dataclass(frozen=True, kw_only=True)
class Station(Doing):
    """A station, and the lane groups that begin at it, or the ``half`` of the lanes that does."""

    begins: Ids = ()
    half: str = ""


@quick
@dataclass(frozen=True)
class PracticePart(Doing):
    """A part of a practice: a set or items for all, lists of parts ``apart``, or ``stations`` that
    the groups change over between, ``change`` seconds each time.
    """

    part: str
    apart: tuple[ListOfSome, ...] = ()
    stations: tuple[Station, ...] = ()
    change: Seconds | None = None

    @property
    def doings(self) -> Iterator[tuple[DataPath, Doing]]:
        """What is done in it, each with the path that leads there from the part."""
        for list_number, own in enumerate(self.apart):
            for number, part in enumerate(own.parts):
                yield ("apart", list_number, "parts", number), part
        for number, station in enumerate(self.stations):
            yield ("stations", number), station
        if not self.apart and not self.stations:
            yield (), self


@dataclass(frozen=True, kw_only=True)
class Practice(Entry):
    """One session of a squad; ``composed`` are the words of the address that makes it again."""

    kind: ClassVar[str] = "practice"
    squad: str
    pool: str
    slot: Slot
    focus: str
    parts: tuple[PracticePart, ...]
    adults: int | None = None
    lanes: LanesInUse = field(default_factory=LanesInUse)
    composed: str = ""
    hazards: tuple[Hazard, ...] = ()

    @property
    def doings(self) -> Iterator[tuple[DataPath, Doing]]:
        """What is done in it, each with its path in the file."""
        for number, part in enumerate(self.parts):
            for path, doing in part.doings:
                yield ("parts", number, *path), doing

    def references(self) -> Iterator[Reference]:
        yield Reference("squad", self.squad, "for")
        yield Reference("pool", self.pool, "in")
        yield from references("lane_group", self.lanes.groups, "lanes")
        for part in self.parts:
            for own in part.apart:
                yield from references("lane_group", own.groups, "apart")
            for station in part.stations:
                yield from references("lane_group", station.begins, "begins")
        for _, doing in self.doings:
            yield from doing.references()
