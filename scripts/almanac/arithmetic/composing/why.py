"""Why each piece of a composed practice stands there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.costs import uses
from almanac.arithmetic.composing.order import Stood
from almanac.arithmetic.composing.pieces import (
    COOL_DOWN,
    EASY,
    MAIN,
    SKILL,
    UNKNOWN,
    WARM_UP,
    PracticePiece,
)
from almanac.arithmetic.composing.shape import CALM_LEGS, are_legs_first, are_legs_tired
from almanac.arithmetic.composing.unmet import WORK, in_the_way
from almanac.arithmetic.composing.wishes import MAINS, is_held

WARMS, LEGS, COMES_UP, CARRIES, AFTER, USED, AS_WISHED, TRAINS, STANDS, NO_OTHER = (
    "warms", "legs", "comes-up", "carries", "after", "used", "as-wished", "trains", "stands",
    "no-other",
)  # fmt: skip
"""What a piece does where it stands, beside the goals that it serves; the last is that work stands
there because nothing does that serves one.
"""


@dataclass(frozen=True)
class Note:
    """What a piece does where it stands, and of what: strokes that it warms or carries, an effort,
    the goal that it trains, the goals that nothing else serves there, by place; of these
    ``because`` is what is in the way.
    """

    does: str
    which: tuple[int, ...] = ()
    because: str = ""


@dataclass(frozen=True)
class Why:
    """Of a piece: the wished goals that it serves, what else it does there, days since it was done
    (``UNKNOWN``), and of each of its gear how many are in use at once and how many are at hand.
    """

    goals: tuple[int, ...]
    notes: tuple[Note, ...]
    days: int
    gear: tuple[tuple[int, int, int], ...]


def why(asked: Asked, order: Sequence[Stood], one: Stood) -> Why:
    """Why a piece stands there."""
    wishes, piece = asked.wishes, one.own.piece
    used = asked.used_at_once(piece)
    goals = tuple(goal for goal in wishes.goals if goal in piece.goals)
    return Why(
        goals,
        tuple(_notes(asked, order, one, bool(goals))),
        wishes.days.get(one.own.place, UNKNOWN),
        tuple((gear, used, wishes.gear[gear]) for gear in piece.gear),
    )


def _notes(asked: Asked, order: Sequence[Stood], one: Stood, serves: bool) -> Iterator[Note]:
    work = [own.own for own in order if own.role in WORK]
    piece = one.own.piece
    if one.role == WARM_UP:
        yield from _warming(asked, one.own, work)
    elif one.role == EASY:
        shared = _shared(one.own, work)
        carries = shared and are_legs_tired(work) and piece.kick <= CALM_LEGS
        yield Note(CARRIES, shared) if carries else Note(AFTER, (piece.hardest,))
    elif one.role == COOL_DOWN or is_held(one.role):
        yield Note(STANDS)
    else:
        yield from _working(asked, order, one, serves)


def _working(asked: Asked, order: Sequence[Stood], one: Stood, serves: bool) -> Iterator[Note]:
    """What work does there; where it serves no goal, what is in the way of what would."""
    piece = one.own.piece
    if one.role == SKILL:
        later = order[order.index(one) + 1 :]
        if any(uses(asked, one.own, own.own) for own in later if own.role in MAINS):
            yield Note(USED)
        elif not serves:
            yield Note(STANDS)
    elif not serves:
        yield Note(TRAINS, piece.goals[:1]) if piece.goals else Note(STANDS)
    if not serves and asked.wishes.goals:
        yield _no_other(asked, order, one.role)
    if one.role != SKILL and piece.effort == asked.wishes.effort:
        yield Note(AS_WISHED, (piece.effort,))


def _no_other(asked: Asked, order: Sequence[Stood], role: str) -> Note:
    """That nothing else for the goals stands in a role."""
    goals, letter = asked.wishes.goals, MAIN if role in MAINS else role

    def stands_as(piece: PracticePiece) -> str:
        return role if letter in asked.roles_of(piece) else ""

    stood = {own.own.place for own in order}
    return Note(NO_OTHER, goals, in_the_way(asked, goals, stands_as, stood))


def _warming(asked: Asked, warm_up: Sized, work: Sequence[Sized]) -> Iterator[Note]:
    """What of the work is warm after it; that it eases in, where it is nothing of these."""
    shared, legs = _shared(warm_up, work), warm_up.piece.kick and are_legs_first(asked, work)
    hardest = max(own.piece.hardest for own in work)
    reached = warm_up.piece.hardest
    comes_up = reached > asked.table.gentle and reached >= hardest - 1
    yield Note(WARMS, shared) if shared else Note(STANDS)
    if legs:
        yield Note(LEGS)
    if comes_up:
        yield Note(COMES_UP, (reached,))


def _shared(own: Sized, work: Sequence[Sized]) -> tuple[int, ...]:
    """The strokes of a piece that the work has too."""
    strokes = {stroke for each in work for stroke in each.piece.strokes}
    return tuple(stroke for stroke in own.piece.strokes if stroke in strokes)
