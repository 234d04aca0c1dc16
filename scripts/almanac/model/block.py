"""Blocks: weeks of days, each with any number of sessions."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import ClassVar

from almanac.frozen import quick
from almanac.model.entry import Entry, Ids, Reference, references


@quick
@dataclass(frozen=True)
class Session:
    """One session of a day: a practice or a circuit on ``land``, whose ``rating`` the coach may
    state, or other work with minutes and a 0-10 rating. ``start`` as HH:MM, "" where it is the
    practice's own or not said; ``groups`` are the lane groups that it is for, all of the squad
    where none is named.
    """

    practice: str | None = None
    land: str | None = None
    other: str = ""
    minutes: int = 0
    rating: float | None = None
    start: str = ""
    groups: Ids = ()

    def is_for(self, group: str) -> bool:
        """Whether a lane group of the squad takes part."""
        return not self.groups or group in self.groups


@dataclass(frozen=True)
class Day:
    """A day of a block: rest, or sessions. A day of one practice, of other work, or of one of each
    may be written without a list.
    """

    practice: str | None = None
    land: str | None = None
    rest: bool = False
    other: str = ""
    minutes: int = 0
    rating: float = 0.0
    sessions: tuple[Session, ...] = ()

    @property
    def every_session(self) -> tuple[Session, ...]:
        """Its sessions, in whichever form they are written."""
        swum = [Session(practice=self.practice)] if self.practice else []
        land = [Session(land=self.land)] if self.land else []
        other = [Session(other=self.other, minutes=self.minutes, rating=self.rating)]
        return (*self.sessions, *swum, *land, *(other if self.minutes else []))

    @property
    def circuits(self) -> Iterator[str]:
        """The circuits on land of its sessions."""
        return (session.land for session in self.every_session if session.land)

    @property
    def practices(self) -> Iterator[str]:
        """The practices of its sessions."""
        return (session.practice for session in self.every_session if session.practice)


@dataclass(frozen=True)
class Week:
    """A week of a block; ``days`` by mon .. sun, those that are named. ``kind`` is loading,
    recovery, test or taper.
    """

    focus: str
    days: Mapping[str, Day]
    taper: bool = False
    kind: str = "loading"
    benchmarks: Ids = ()

    @property
    def is_taper(self) -> bool:
        """Whether it is named as a week of the taper."""
        return self.taper or self.kind == "taper"

    @property
    def is_loading(self) -> bool:
        """Whether it is one that a taper is held against."""
        return self.kind == "loading" and not self.is_taper

    @property
    def kind_told(self) -> str:
        """The kind as pages tell it: "" for a loading week, which needs no word."""
        return "" if self.is_loading else "taper" if self.is_taper else self.kind


@dataclass(frozen=True)
class ShareRange:
    """The range that a share should lie in, 0 to 1."""

    least: float = 0.0
    most: float = 1.0

    def holds(self, share: float | None) -> bool:
        """Whether a share lies in it; nothing swum, None, is nothing missed."""
        return share is None or self.least <= share <= self.most


@dataclass(frozen=True)
class TaperDates:
    """The first and the last day of a taper."""

    first: date
    last: date


@dataclass(frozen=True)
class BlockWish:
    """What was wished of a block and stands nowhere else in it. ``goals`` have weights; ``strokes``
    is the least share that each of the four has of any two weeks; ``loads`` are hundredths of a
    full week, whose load is ``full_load``, 0 where the heaviest week's is taken.
    """

    goals: Mapping[str, int] = field(default_factory=dict)
    shares: Mapping[str, ShareRange] = field(default_factory=dict)
    strokes: float = 0.0
    loads: tuple[int, ...] = ()
    full_load: int = 0


@dataclass(frozen=True, kw_only=True)
class Block(Entry):
    """Weeks of days for one squad."""

    kind: ClassVar[str] = "block"
    squad: str
    goals: Ids
    starts: date
    purpose: str
    weeks: tuple[Week, ...]
    taper: TaperDates | None = None
    race_day: date | None = None
    meet: str | None = None
    balance: Mapping[str, ShareRange] = field(default_factory=dict)
    wishes: BlockWish | None = None

    @property
    def wished_shares(self) -> Mapping[str, ShareRange]:
        """Each share that has a range: those that it is held to, and those only wished."""
        return {**self.balance, **(self.wishes.shares if self.wishes else {})}

    @property
    def days(self) -> Iterator[Day]:
        """Every day that is named, by week."""
        return (day for week in self.weeks for day in week.days.values())

    def references(self) -> Iterator[Reference]:
        yield Reference("squad", self.squad, "for")
        yield from references("meet", [self.meet] if self.meet else [], "leads to")
        for week in self.weeks:
            yield from references("benchmark", week.benchmarks, "runs")
            for day in week.days.values():
                yield from references("practice", day.practices, "uses")
                yield from references("set", day.circuits, "uses")
                for session in day.sessions:
                    yield from references("lane_group", session.groups, "for")
