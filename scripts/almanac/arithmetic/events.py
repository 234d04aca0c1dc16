"""What is swum, in its order: reps, of one piece or several, and breaks between them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from almanac.arithmetic.effort import EffortSpan
from almanac.arithmetic.pace_lines import NoNumber
from almanac.frozen import kept, quick
from almanac.model.drill import Drill
from almanac.model.reps import Distance, Reps, in_all
from almanac.source.reader import DataPath


@quick
@dataclass(frozen=True)
class Piece:
    """One part of one rep as one swimmer swims it; ``distance`` in the set's unit, ``gear`` all
    that is worn or held.

    ``hold_s`` is how long it is held, in seconds, where it has no distance; or how long it is swum
    by time, where its distance is estimated, and ``unknown`` says why where it cannot be.
    ``rest_s`` seconds go by after it, before the next piece of the same rep; ``change_s`` before
    it, for gear that goes on or comes off, beyond that rest.
    """

    distance: Distance
    drill: Drill
    effort: EffortSpan
    gear: tuple[str, ...]
    hold_s: float | None = None
    rest_s: float = 0.0
    unknown: NoNumber | None = None
    change_s: float = 0.0

    @property
    def by_time(self) -> bool:
        """Whether it is swum by time, so that its distance is an estimate."""
        return self.hold_s is not None and self.drill.travels


Far = Callable[[Piece], Distance | NoNumber]  # how far a piece swum by time goes


@quick
@dataclass(frozen=True)
class Rep:
    """One rep as it is swum.

    ``path`` leads to its item in the file; ``rounds`` are the numbers, from 1, of the rounds around
    it, the outermost first; ``number`` of ``item.reps`` is its own.
    """

    path: DataPath
    rounds: tuple[int, ...]
    number: int
    item: Reps
    pieces: tuple[Piece, ...]

    @kept
    def distance(self) -> Distance:
        """Its distance, in the set's unit."""
        return in_all(piece.distance for piece in self.pieces)

    @kept
    def inner_rest_s(self) -> float:
        """What goes by between its pieces, in seconds: the rests of a broken swim, and gear that
        goes on or comes off.
        """
        return sum(piece.rest_s + piece.change_s for piece in self.pieces)

    @kept
    def mean_rating(self) -> float:
        """Its mean effort rating, 0 to 10, by distance."""
        if not self.distance:
            return float(self.pieces[0].effort.mean)
        return float(
            sum(piece.distance * piece.effort.mean for piece in self.pieces) / self.distance
        )

    @kept
    def gear(self) -> frozenset[str]:
        """Everything worn or held at some point of it."""
        return frozenset(gear for piece in self.pieces for gear in piece.gear)


@dataclass(frozen=True)
class Break:
    """A pause that the entry names, of ``seconds``: an item of its own, or between two rounds."""

    path: DataPath
    rounds: tuple[int, ...]
    seconds: float
    note: str = ""


Event = Rep | Break


def reps(events: tuple[Event, ...]) -> Iterator[Rep]:
    """The reps among events."""
    return (event for event in events if isinstance(event, Rep))
