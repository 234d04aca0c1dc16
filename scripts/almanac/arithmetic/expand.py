"""A set laid out in full: every rep and every break, in the order in which they are swum."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import pairwise
from typing import Any

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.events import Break, Event, Far, Piece, Rep
from almanac.arithmetic.pace_lines import Because, NoNumber
from almanac.frozen import quick
from almanac.model.changes import rounds_of
from almanac.model.drill import Drill
from almanac.model.effort_plans import Descend, Rotate
from almanac.model.gear import Gear
from almanac.model.reps import Part, Reps, in_all
from almanac.model.swim_set import Item, Pause, Round, changes_of
from almanac.source.reader import DataPath


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
    vars(rep).update(known)  # what is worked out once for all of them
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
