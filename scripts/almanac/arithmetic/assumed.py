"""Times that nobody has swum: what an entry assumes of a rep for which no test gives a number."""

from __future__ import annotations

from almanac.arithmetic.events import Rep
from almanac.arithmetic.pace import Pacer, Target
from almanac.arithmetic.pace_lines import Because, NoNumber
from almanac.arithmetic.working import Known, Product, Quotient, Working

Targets = tuple[tuple[Target | NoNumber, ...], Target | NoNumber]  # of the pieces, of the whole


def targets(pacer: Pacer, rep: Rep, group: str) -> Targets:
    """The target of each piece of a rep and of the whole, for a lane group.

    Where no test of the group gives one, the rep takes the time that the entry assumes of it
    (``assume``), else the one that follows from a test time that the club assumes of the group;
    either is marked as assumed wherever it goes. An assumed time holds for the rep as it is
    written, at its effort and with its gear; its pieces share it by distance. In another course it
    moves with the length. It never takes the place of a time that is known, nor of one at which
    nobody stays up.
    """
    pieces = pacer.pieces(rep)
    whole = pacer.whole(rep, pieces)
    assume = rep.item.assume
    open_ = whole.assumed if isinstance(whole, Target) else whole.because is not Because.TOO_SLOW
    if assume is None or not open_ or not rep.distance or (seconds := assume.of(group)) is None:
        return pieces, whole
    working: Working = Known(seconds, "assumed", "s")
    if assume.ratio != 1:
        working = Product((working, Known(float(assume.ratio))))
    every = Known(float(rep.distance))
    shares = [Quotient(Known(float(piece.distance)), every) for piece in rep.pieces]
    pieces = tuple(_assumed(Product((working, share))) for share in shares)
    return pieces, _assumed(working)


def _assumed(working: Working) -> Target:
    return Target(working, estimated=False, other_course=False, assumed=True)
