"""The workings behind the figures of a set, and of what a practice shares with it: distance in
other units, lengths, shares.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Protocol

from almanac.arithmetic.events import Piece
from almanac.arithmetic.facets import Shares, flutter_distance
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.timing import Clocks
from almanac.arithmetic.working import Known, Product, Quotient, Working
from almanac.units import Course, Unit


class Shared(Protocol):
    """What a set and a practice both have: pieces in a course, and the shares of them."""

    @property
    def course(self) -> Course: ...
    @property
    def distance(self) -> Working: ...
    @property
    def pieces(self) -> tuple[Piece, ...]: ...
    @property
    def shares(self) -> Shares: ...
    @property
    def timing(self) -> Clocks: ...


def rep_count(swum: Swum) -> Working:
    """Reps of the whole set, every round counted."""
    return Known(len(swum.reps))


def metres(swum: Swum) -> Working:
    """The distance in metres: a yard is 0.9144 m exactly (1959 agreement)."""
    return Product((swum.distance, _metres_a(swum.course.unit)))


def yards(swum: Swum) -> Working | None:
    """The distance of a set in metres, in yards: over 0.9144, exactly; none for one in yards."""
    if swum.course.unit is Unit.YARD:
        return None
    return Quotient(swum.distance, _metres_a(Unit.YARD))


def _metres_a(unit: Unit) -> Known:
    return Known(unit.metres, f"m a {unit.value}", digits=4)


def lengths(swum: Swum) -> Working:
    """The distance over the length of the pool: a whole number where every rep ends at a wall."""
    a_length = Known(swum.course.length, f"{swum.course.unit.value} a length")
    return Quotient(swum.distance, a_length)


def kick_share(of: Shared) -> Working | None:
    """Legs only, as a share of all distance."""
    return _share_of_all(of, of.shares.kick, "kick")


def supine_share(of: Shared) -> Working | None:
    """Flutter on the back, as a share of all flutter done legs only."""
    return _share_of_flutter(of, of.shares.supine_flutter, "flutter on the back")


def prone_share(of: Shared) -> Working | None:
    """Flutter on the front, as a share of all flutter done legs only."""
    return _share_of_flutter(of, of.shares.prone_flutter, "flutter on the front")


def board_share(of: Shared) -> Working | None:
    """Flutter with a board, as a share of all flutter done legs only."""
    return _share_of_flutter(of, of.shares.board_flutter, "flutter with a board")


def resisted_share(of: Shared) -> Working | None:
    """Distance with gear that resists, as a share of all."""
    return _share_of_all(of, of.shares.resisted, "resisted")


def fast_share(of: Shared) -> Working | None:
    """Distance at efforts that count as fast, as a share of all."""
    return _share_of_all(of, of.shares.fast, of.timing.scale.fast_words("and"))


def kick_into_stroke(of: Shared) -> Working:
    """Full stroke swum straight after kick within one rep, in the pool's unit."""
    return Known(float(of.shares.kick_into_stroke), "", of.course.unit.value)


def _share_of_all(of: Shared, share: Fraction | None, what: str) -> Working | None:
    return _quotient(share, Fraction(of.distance.value), what, "in all", of.course.unit)


def _share_of_flutter(of: Shared, share: Fraction | None, what: str) -> Working | None:
    return _quotient(share, flutter_distance(of.pieces), what, "flutter kick", of.course.unit)


def _quotient(
    share: Fraction | None, whole: Fraction, what: str, of: str, unit: Unit
) -> Working | None:
    """A share as the distance that it is over the whole; None where the whole is zero."""
    if share is None or not whole:
        return None
    part = Known(float(share * whole), what, unit.value)
    return Quotient(part, Known(float(whole), of, unit.value))
