"""Which end of the pool each rep begins at, and which walls its pieces come to."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from almanac.arithmetic.events import Piece, Rep
from almanac.frozen import quick
from almanac.model.policy import Word
from almanac.model.pool import ENDS, START_END, TURN_END
from almanac.model.reps import Distance
from almanac.units import Course

Ends = frozenset[str]
BOTH: Ends = frozenset(ENDS)
_AT_START: Ends = frozenset((START_END,))


@quick
@dataclass(frozen=True)
class PlacedPiece:
    """A piece of a rep with the ends at which it may begin, and those whose walls it comes to."""

    piece: Piece
    begins: Ends
    reaches: Ends


def in_order(ends: Ends) -> list[str]:
    """Ends in the order in which they are told."""
    return [end for end in ENDS if end in ends]


def across(ends: Ends, lengths: Fraction) -> Ends:
    """Where one is who swims so many lengths from an end: there after an even number, at the other
    after an odd one; at either, as far as anyone knows, after part of a length.
    """
    if lengths.denominator > 1:
        return BOTH
    if lengths.numerator % 2 == 0:
        return ends
    return frozenset(TURN_END if end == START_END else START_END for end in ends)


def legs_begin(legs: int, distance: Distance, course: Course, at: Ends = _AT_START) -> Ends:
    """The ends at which the legs of a team begin, each where the one before touches."""
    return frozenset().union(*_in_turn(at, _in_lengths(distance, course.length), legs)[:-1])


def _in_turn(at: Ends, lengths: Fraction, swimmers: int) -> list[Ends]:
    """Where each swimmer of a team begins, who swims so many lengths, and where the last ends."""
    begins = [at]
    for _ in range(swimmers):
        begins.append(across(begins[-1], lengths))
    return begins


def laps(
    reps: Iterable[Rep], course: Course, end: str, starts: Mapping[str, Word]
) -> Iterator[tuple[Rep, Ends]]:
    """Each rep with the ends at which it begins, for those who leave from ``end``. Those of a team
    begin one after the other, each where the one before touches. After a start for which one gets
    back (``ready_s``), and after one of less than a length, the next rep begins where this one did.
    Where a rep's distance is an
    estimate, the next may begin at either end.
    """
    at: Ends = frozenset((end,))
    for rep in reps:
        lengths = _lengths(rep, course)
        if lengths is None:
            yield rep, at
            at = BOTH
            continue
        begins = _in_turn(at, lengths, rep.item.manner.swimmers)
        yield rep, frozenset().union(*begins[:-1])
        if not _gets_back(rep, lengths, starts):
            at = begins[-1]


def _lengths(rep: Rep, course: Course) -> Fraction | None:
    """How many lengths one swimmer swims of a rep; None where that is estimated."""
    if any(piece.by_time for piece in rep.pieces):
        return None
    return _in_lengths(rep.distance, course.length)


@lru_cache(maxsize=2**10)  # few distances are swum, and each by many
def _in_lengths(distance: Distance, length: int) -> Fraction:
    return Fraction(distance) / length


def _gets_back(rep: Rep, lengths: Fraction, starts: Mapping[str, Word]) -> bool:
    if 0 < lengths < 1 and rep.item.manner.swimmers == 1:
        return True  # push and glide: no other rep ends between the walls (``course.misfits``)
    named = {rep.item.start, *(piece.drill.start for piece in rep.pieces)}
    return any(name in starts and starts[name].ready_s for name in named)


def placed_pieces(rep: Rep, begins: Ends, course: Course) -> Iterator[PlacedPiece]:
    """The pieces of a rep, each with where it begins and the walls that it comes to: from one whose
    distance is an estimate on, either end.
    """
    at: Fraction | None = Fraction(0)
    for piece in rep.pieces:
        if at is None or piece.by_time:
            at = None
            yield PlacedPiece(piece, BOTH, BOTH)
            continue
        after = at + _in_lengths(piece.distance, course.length)
        walls = range(int(at) + 1, int(after) + 1)
        reached = (across(begins, Fraction(wall)) for wall in walls)
        yield PlacedPiece(piece, across(begins, at), frozenset().union(*reached))
        at = after
