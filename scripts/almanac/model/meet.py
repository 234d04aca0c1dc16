"""Meets: days of races in one pool, with the lanes for warming up. No person is named."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from almanac.model.entry import Entry, Hazard, Ids, Reference, references
from almanac.source.reader import DataPath

HEATS, FINAL, TIMED_FINAL = "heats", "final", "timed-final"
SWIM, STARTS, SWIM_DOWN = "swim", "starts", "swim-down"


@dataclass(frozen=True)
class WarmUp:
    """Lanes of the club's own beside the races, by number, from HH:MM to HH:MM; ``use`` is to swim,
    for starts that all go one way, or to swim down. All squads that go where none is named.
    """

    use: str
    begins: str
    ends: str
    lanes: tuple[int, ...]
    squads: Ids = ()


@dataclass(frozen=True)
class Event:
    """A race: ``distance`` for one swimmer in the pool's own unit, ``legs`` swimmers in a relay;
    ``medley`` or one ``stroke``. ``at`` as HH:MM, "" where it is not known; ``who`` as the
    programme says.
    """

    number: int
    distance: int
    round: str
    stroke: str = ""
    medley: bool = False
    legs: int = 1
    who: str = ""
    at: str = ""
    from_water: bool = False
    squads: Ids = ()

    @property
    def race(self) -> tuple[int, int, str, str]:
        """What its heats and its final are one race by."""
        return self.legs, self.distance, self.stroke, self.who


@dataclass(frozen=True)
class MeetSession:
    """Races from ``begins`` to ``ends``, HH:MM, and the lanes for warming up before and between."""

    title: str
    begins: str
    ends: str
    warm_up: tuple[WarmUp, ...]
    events: tuple[Event, ...]


@dataclass(frozen=True)
class MeetDay:
    """A day of a meet."""

    on: date
    sessions: tuple[MeetSession, ...]


@dataclass(frozen=True, kw_only=True)
class Meet(Entry):
    """A meet that squads of the club swim in."""

    kind: ClassVar[str] = "meet"
    pool: str
    squads: Ids
    purpose: str
    days: tuple[MeetDay, ...]
    entries_by: date | None = None
    bring: tuple[str, ...] = ()
    hazards: tuple[Hazard, ...] = ()

    @property
    def first(self) -> date:
        """Its first day."""
        return min(day.on for day in self.days)

    @property
    def last(self) -> date:
        """Its last day."""
        return max(day.on for day in self.days)

    @property
    def sessions(self) -> Iterator[tuple[DataPath, MeetDay, MeetSession]]:
        """Its sessions in order, each with its path in the file and its day."""
        for number, day in enumerate(self.days):
            for place, session in enumerate(day.sessions):
                yield ("days", number, "sessions", place), day, session

    def squads_of(self, own: WarmUp | Event) -> Ids:
        """The squads that lanes or a race are for."""
        return own.squads or self.squads

    def references(self) -> Iterator[Reference]:
        yield Reference("pool", self.pool, "in")
        yield from references("squad", self.squads, "for")
        for _, _, session in self.sessions:
            each: tuple[WarmUp | Event, ...] = (*session.warm_up, *session.events)
            for own in each:
                yield from references("squad", own.squads, "for")
