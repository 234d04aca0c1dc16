"""A set laid out in full: every rep and every break, in the order in which they are swum."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import pairwise
from typing import Any

from almanac.arithmetic.effort import EffortScale, EffortSpan
from almanac.arithmetic.pace_lines import Because, NoNumber
from almanac.frozen import kept, quick
from almanac.model.changes import rounds_of
from almanac.model.drill import Drill
from almanac.model.effort_plans import Descend, Rotate
from almanac.model.gear import Gear
from almanac.model.reps import Distance, Part, Reps, in_all
from almanac.model.swim_set import Item, Pause, Round, changes_of
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


def count_reps(items: tuple[Item, ...]) -> int:
    """How many reps the items make at most, for whichever lane group, without laying them out."""
    return sum(
        item.most * count_reps(item.items)
        if isinstance(item, Round)
        else max((item.reps, *(change.reps or 0 for change in changes_of((item,)))))
        if isinstance(item, Reps)
        else 0
        for item in items
    )


def expand(
    items: tuple[Item, ...],
    drills: Mapping[str, Drill],
    scale: EffortScale,
    gear: Mapping[str, Gear] | None = None,
    far: Far | None = None,
) -> tuple[Event, ...]:
    """Lay items out into reps and breaks, in order.

    Rounds nest without limit of meaning and a descend starts again in each. What is said of a round
    by its number, or of the last, takes the place of what is written for all. There is no pause
    after the last round. Gear that changes inside a rep costs the largest ``change_s`` of what goes
    on or off, less the rest there, unless the part says that it does so in passing; without
    ``gear`` it costs nothing. ``far`` says how far what is swum by time goes. Raises KeyError for a
    drill that ``drills`` does not hold.
    """
    laying = _Laying(drills, scale, gear or {}, far)
    return tuple(_events(items, ("items",), (), laying))


def _events(
    items: tuple[Item, ...],
    path: DataPath,
    rounds: tuple[int, ...],
    laying: _Laying,
) -> Iterator[Event]:
    for index, item in enumerate(items):
        here = (*path, index)
        if isinstance(item, Pause):
            yield Break(here, rounds, item.seconds, item.note)
        elif isinstance(item, Reps):
            for number in range(1, item.reps + 1):
                yield _rep(item, here, rounds, number, laying)
        else:
            yield from _rounds(item, here, rounds, laying)


def _rep(item: Reps, path: DataPath, rounds: tuple[int, ...], number: int, laying: _Laying) -> Rep:
    """One rep. What reps of one item have alike, in whichever round, is made once."""
    key = id(item), number if _differ(item) else 0
    if key not in laying.known:
        pieces = [_piece(part, item, number, laying) for part in item.parts]
        first = Rep(path, rounds, number, item, _with_changes(pieces, item, laying.gear))
        laying.known[key] = first, {"distance": first.distance, "inner_rest_s": first.inner_rest_s}
        return first
    first, known = laying.known[key]
    rep = Rep(path, rounds, number, first.item, first.pieces)
    vars(rep).update(known)
    return rep


def _differ(item: Reps) -> bool:
    """Whether reps of an item do other drills, or at other efforts, than one another."""
    return any(part.turns or isinstance(part.effort, (Descend, Rotate)) for part in item.parts)


def _rounds(
    item: Round,
    path: DataPath,
    rounds: tuple[int, ...],
    laying: _Laying,
) -> Iterator[Event]:
    for number, inner in enumerate(rounds_of(item), 1):
        yield from _events(inner, (*path, "items"), (*rounds, number), laying)
        if item.pause_between is not None and number < item.rounds:
            yield Break((*path, "pause_between"), (*rounds, number), item.pause_between)


@quick
@dataclass(frozen=True)
class _Laying:
    """What items are laid out with."""

    drills: Mapping[str, Drill]
    scale: EffortScale
    gear: Mapping[str, Gear]
    far: Far | None
    known: dict[tuple[int, int], tuple[Rep, dict[str, Any]]] = field(default_factory=dict)


def _piece(part: Part, item: Reps, number: int, laying: _Laying) -> Piece:
    drill = laying.drills[part.drill_of(number)]
    gear = tuple(sorted({*item.gear, *part.gear, *drill.gear.needs}))
    effort = laying.scale.span(part.effort, number, item.reps)
    swimmers = item.manner.swimmers
    distance = in_all([part.distance if swimmers == 1 else Fraction(part.distance) / swimmers])
    piece = Piece(distance, drill, effort, gear, part.hold_s, float(part.rest or 0))
    if not piece.by_time:
        return piece
    found = laying.far(piece) if laying.far else NoNumber(Because.NO_GROUP, drill.id)
    if isinstance(found, NoNumber):
        return replace(piece, unknown=found)
    return replace(piece, distance=found)


def _with_changes(pieces: list[Piece], item: Reps, gear: Mapping[str, Gear]) -> tuple[Piece, ...]:
    """The pieces of a rep with what changing gear before each of them costs."""
    for number, (before, after) in enumerate(pairwise(pieces), 1):
        changed = {*before.gear} ^ {*after.gear}
        if changed and not item.parts[number].in_passing:
            cost = max((gear[id].change_s for id in changed if id in gear), default=0)
            pieces[number] = replace(after, change_s=max(0.0, cost - before.rest_s))
    return tuple(pieces)


def reps(events: tuple[Event, ...]) -> Iterator[Rep]:
    """The reps among events."""
    return (event for event in events if isinstance(event, Rep))
