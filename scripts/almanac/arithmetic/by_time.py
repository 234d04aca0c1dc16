"""Swimming by time: how far a lane group comes in so many minutes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from almanac.arithmetic.events import Piece
from almanac.arithmetic.pace import Pacer, Target
from almanac.arithmetic.pace_lines import NoNumber
from almanac.model.reps import Distance

_ROUNDING = 1e-9  # of the machine, in seconds: who needs just as long as there is gets there


def lengths_in(pacer: Pacer, piece: Piece) -> int | NoNumber:
    """The most whole lengths that a piece swum by time holds: the greatest n for which the target
    over n lengths, at its effort and in its gear, is no longer than its time. Rounded down, because
    who stops on the whistle stops in mid-pool and comes in; 0 where one length takes longer. Where
    a target has no number, the distance has none, for the same reason.

    Targets rise with distance, so n is found by doubling and then halving the gap.
    """
    assert piece.hold_s is not None
    fits, over = 0, 1
    while True:
        takes = _takes(pacer, piece, over)
        if isinstance(takes, NoNumber):
            return takes
        if takes > piece.hold_s + _ROUNDING:
            break
        fits, over = over, 2 * over
    while over - fits > 1:
        middle = (fits + over) // 2
        takes = _takes(pacer, piece, middle)
        if isinstance(takes, NoNumber):
            return takes
        fits, over = (fits, middle) if takes > piece.hold_s + _ROUNDING else (middle, over)
    return fits


def _takes(pacer: Pacer, piece: Piece, lengths: int) -> float | NoNumber:
    distance = lengths * pacer.course.length
    target = pacer.piece(replace(piece, distance=distance, hold_s=None), distance)
    return target.seconds if isinstance(target, Target) else target


def estimate(pacer: Pacer) -> Callable[[Piece], Distance | NoNumber]:
    """How far a piece swum by time goes for one lane group, in the course's unit."""

    def far(piece: Piece) -> Distance | NoNumber:
        lengths = lengths_in(pacer, piece)
        return lengths if isinstance(lengths, NoNumber) else lengths * pacer.course.length

    return far
