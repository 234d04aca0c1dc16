"""The reps of a set on the clock for one lane group, and which of them are timed alike."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from almanac.arithmetic.effort import EffortSpan
from almanac.arithmetic.events import Rep
from almanac.arithmetic.lane_order import LaneOrder
from almanac.arithmetic.manners import until_all_done
from almanac.arithmetic.pace import Target
from almanac.arithmetic.pace_lines import NoNumber
from almanac.arithmetic.working import (
    Difference,
    Known,
    Product,
    Sum,
    Working,
)
from almanac.frozen import kept, quick

Like = tuple[int, int, int]
"""What reps that are timed alike have in common: the item, its rep where each has a send-off of its
own, and what is done."""
_FORGIVEN_S = 0.005  # what a send-off that is rounded up may fall short by: a thousandth of 5 s


def until_done(rep: Rep, target: Working) -> Working:
    """Seconds from the start of a rep to its last touch: the target, which is swum time alone, and
    what goes by inside it: the rests of a broken swim, and changes of gear.
    """
    if not rep.inner_rest_s:
        return target
    return Sum((target, Known(rep.inner_rest_s, "rest and changes of gear inside the rep", "s")))


@quick
@dataclass(frozen=True)
class TimedRep:
    """A rep on the clock; times in seconds. ``pieces`` are the targets of its pieces.

    ``sendoff`` is the interval it leaves on, None for plain rest or straight on; ``suggested``
    where the set names none for this group and one had to be found. ``clock`` is what it takes of
    the clock, ``order`` how the lane swims it, ``aim`` the coach's own time, if one is asked for.
    """

    rep: Rep
    pieces: tuple[Target | NoNumber, ...]
    target: Target | NoNumber
    sendoff: Working | None
    suggested: bool
    clock: Working | None
    order: LaneOrder
    aim: Working | None = None

    def like(self, rep: Rep, aim: Working | None) -> TimedRep:
        """Another rep on the clock, which differs from this one in no number but its aim."""
        if rep is self.rep and aim is self.aim:
            return self
        pieces, target, order = self.pieces, self.target, self.order
        return TimedRep(rep, pieces, target, self.sendoff, self.suggested, self.clock, order, aim)

    @kept
    def rated_work(self) -> tuple[Working | None, ...]:
        """The rated work of each piece: minutes of work times mean rating; None where its target
        is not known.
        """
        return tuple(
            Product((Known(target.seconds / 60, "min"), Known(float(piece.effort.mean), "rating")))
            if isinstance(target, Target)
            else None
            for piece, target in zip(self.rep.pieces, self.pieces, strict=True)
        )

    @property
    def target_s(self) -> float | None:
        """The target, where there is one."""
        return self.target.seconds if isinstance(self.target, Target) else None

    @property
    def sendoff_s(self) -> float | None:
        """The send-off, where it goes on one."""
        return self.sendoff.value if self.sendoff else None

    @property
    def done_s(self) -> float | None:
        """Seconds from its start to its last touch, where the target is known: with the rests
        inside a broken swim, and of a pair or a team with the turns of the others.
        """
        return self.all_done(self.target.working).value if isinstance(self.target, Target) else None

    @property
    def touch_s(self) -> float | None:
        """Seconds from its start to this swimmer's own last touch: the turns of the others of a
        pair or a team are rest.
        """
        target = self.target.working if isinstance(self.target, Target) else None
        return until_done(self.rep, target).value if target else None

    def all_done(self, target: Working) -> Working:
        """From its start until everybody of the pair or team has touched."""
        return until_all_done(self.rep, until_done(self.rep, target))

    @property
    def fits(self) -> bool:
        """Whether it is done within the send-off, as far as both are known."""
        sendoff, done = self.sendoff_s, self.done_s
        return sendoff is None or done is None or done <= sendoff + _FORGIVEN_S

    @kept
    def rest(self) -> Working | None:
        """What the clock leaves after the target, and after the rests inside a broken swim; None
        where they are longer than the send-off, which nobody can swim.
        """
        if self.clock is None or not isinstance(self.target, Target) or not self.fits:
            return None
        return Difference(self.clock, until_done(self.rep, self.target.working))

    @property
    def rest_s(self) -> float | None:
        """The rest in seconds, where it is known."""
        return self.rest.value if self.rest else None


def likes_of(reps: Sequence[Rep]) -> list[Like]:
    """Of each rep what those that are timed as it is have in common. What is done in them goes by
    a number, for it is long to compare, and many reps share their pieces.
    """
    numbers: dict[tuple[tuple[str, EffortSpan], ...], int] = {}
    done = {
        id(pieces): numbers.setdefault(
            tuple((piece.drill.id, piece.effort) for piece in pieces), len(numbers)
        )
        for pieces in {id(rep.pieces): rep.pieces for rep in reps}.values()
    }
    return [_like(rep, done[id(rep.pieces)]) for rep in reps]


def _like(rep: Rep, done: int) -> Like:
    own = rep.number if rep.item.sendoff and rep.item.sendoff.differs else 0
    return id(rep.item), own, done


def unlike(reps: Iterable[TimedRep]) -> tuple[TimedRep, ...]:
    """The first of each sort of rep on one clock: those that share their targets are timed alike,
    and differ in no number.
    """
    found: dict[int, TimedRep] = {}
    for timed in reps:
        found.setdefault(id(timed.pieces), timed)
    return tuple(found.values())
