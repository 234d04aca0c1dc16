"""A whole set on the clock for one lane group: clock, work, rest, density, rated work."""

from __future__ import annotations

from dataclasses import dataclass

from almanac.arithmetic.gear_changes import GearChange
from almanac.arithmetic.pace import Target
from almanac.arithmetic.pace_lines import NoNumber
from almanac.arithmetic.timed_reps import TimedRep
from almanac.arithmetic.working import (
    Difference,
    Labelled,
    Quotient,
    Working,
    gathered,
)
from almanac.frozen import kept, quick


@dataclass(frozen=True)
class DoesNotFit:
    """A rep that a lane group cannot swim on its send-off: the worst of its item. ``fits_s`` is the
    nearest send-off that fits every rep of the item and the least rest after each; ``done_s`` the
    target with the rests inside a broken swim. Seconds.
    """

    timed: TimedRep
    sendoff_s: float
    done_s: float
    fits_s: float


@quick
@dataclass(frozen=True)
class GroupClock:
    """A set on the clock for one lane group. Totals are None where a rep's time is not known.

    Where a target is longer than its send-off the set does not fit the group (``unfit``): it then
    has a clock, which the send-offs make, and no work, rest, density or rated work. ``last_touch``
    is when the last swimmer of the fullest lane is home, None where that is not known.
    """

    group: str
    reps: tuple[TimedRep, ...]
    changes: tuple[GearChange, ...]
    clock: Working | None
    work: Working | None
    unfit: tuple[DoesNotFit, ...] = ()
    last_touch: Working | None = None

    @kept
    def rated_work(self) -> Working | None:
        """Rated work of a set: minutes of work, rests left out, times mean rating, over the pieces
        of every rep. It tells one set from another and is no session load: it is never added to
        one.
        """
        alike = {id(timed.pieces): timed for timed in self.reps}  # many reps share their targets
        pieces = [piece for timed in self.reps for piece in alike[id(timed.pieces)].rated_work]
        known = [piece for piece in pieces if piece is not None]
        return gathered(known) if len(known) == len(pieces) and not self.unfit else None

    @kept
    def rest(self) -> Working | None:
        """Rest over the whole set: clock less work, in seconds."""
        if self.clock is None or self.work is None:
            return None
        return Difference(Labelled(self.clock, "clock", "s"), Labelled(self.work, "work", "s"))

    @kept
    def density(self) -> Working | None:
        """Work as a share of the clock, 0 to 1."""
        if self.clock is None or self.work is None or not self.clock.value:
            return None
        return Quotient(Labelled(self.work, "work", "s"), Labelled(self.clock, "clock", "s"))

    @property
    def assumed(self) -> tuple[str, ...]:
        """The drills whose times are assumed, once each: figures that hang on them are no more than
        that.
        """
        return tuple(
            dict.fromkeys(
                piece.drill.id
                for timed in self.reps
                for piece, target in zip(timed.rep.pieces, timed.pieces, strict=True)
                if isinstance(target, Target) and target.assumed
            )
        )

    @property
    def missing(self) -> tuple[NoNumber, ...]:
        """Each reason why a target is not known, or how far something swum by time goes, once."""
        targets = [timed.target for timed in self.reps if isinstance(timed.target, NoNumber)]
        pieces = (piece for timed in self.reps for piece in timed.rep.pieces)
        far = [piece.unknown for piece in pieces if piece.unknown]
        return tuple(dict.fromkeys([*targets, *far]))
