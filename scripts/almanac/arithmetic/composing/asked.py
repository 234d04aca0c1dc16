"""Wishes held against a table: each piece as it is for them, how long it takes, and why it is left
out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from almanac.arithmetic.composing.pieces import (
    DRILL,
    EASY,
    MAIN,
    SKILL,
    TENTHS,
    UNKNOWN,
    Offer,
    PracticePiece,
    Size,
)
from almanac.arithmetic.composing.table import ComposeTable
from almanac.arithmetic.composing.wishes import MAINS, Wishes

REPEATED_AFTER = 7
"""Days before a main set comes again; house preference."""
A_DRILL_BELOW = 18001
"""Tenths of a slot from which a drill is no main set: half an hour is short."""

NOT_FOR, GEAR, ROOM, ADULTS, LATELY, LEFT_OUT = (
    "groups",
    "gear",
    "lanes",
    "adults",
    "done",
    "leave_out",
)
"""Why a piece is left out: the wish that is in the way."""


def in_a_lane(heads: int, lanes: int) -> int:
    """The swimmers of the fullest lane."""
    return -(-heads // lanes)


@dataclass(frozen=True)
class Sized:
    """A piece so often, as it is for the wishes: ``takes`` is until the slowest lane group is
    done.
    """

    place: int
    piece: PracticePiece
    size: Size
    takes: int
    adults: int

    @property
    def number(self) -> int:
        """How often."""
        return self.size.number

    @cached_property
    def steps(self) -> int:
        """How many rounds or reps more or fewer than written."""
        return abs(self.size.number - self.piece.written) if self.piece.what else 0


@dataclass(frozen=True)
class Asked:
    """Wishes held against a table."""

    table: ComposeTable
    wishes: Wishes

    @property
    def slot(self) -> int:
        """The whole time, in tenths."""
        return 60 * TENTHS * self.wishes.minutes

    @property
    def adults_least(self) -> int:
        """The fewest adults for so many heads in this pool, whatever is done."""
        fewest, each = self.table.squad.watch[self.wishes.pool]
        heads = sum(self.wishes.heads[group] for group in self.wishes.groups)
        return max(fewest, -(-heads // each) if each else 0)

    @cached_property
    def offers(self) -> tuple[Offer, ...]:
        """All that the squad may do in the pool."""
        return self.table.squad.offers.get(self.wishes.pool, ())

    @cached_property
    def aside(self) -> frozenset[int]:
        """The wished goals that no work is chosen for: those that none serves here, and beside work
        those that gentle swimming alone does, as recovery. What opens, eases or closes serves them.
        """
        none = {goal for goal, work in self._work.items() if not work}
        rest = {goal for goal, work in self._work.items() if all(map(self.only_eases, work))}
        return frozenset(none if rest >= {*self.wishes.goals} else rest)

    @cached_property
    def wanted(self) -> tuple[int, ...]:
        """The wished goals that work is chosen for, as they are wished."""
        return tuple(goal for goal in self.wishes.goals if goal not in self.aside)

    @cached_property
    def is_rest(self) -> bool:
        """Whether all that is wished for is served by gentle work alone that may stand as relief,
        as recovery is.
        """
        work = [piece for goal in self.wanted for piece in self._work[goal]]
        return bool(self.wanted) and all(map(self.only_eases, work))

    @property
    def asks_work(self) -> bool:
        """Whether more is wished for than rest or gentle swimming."""
        return not self.is_rest and not 0 <= self.effort <= self.table.gentle

    @cached_property
    def _work(self) -> Mapping[int, Sequence[PracticePiece]]:
        """By wished goal the work that serves it here."""
        every = [self.table.pieces[offer.piece] for offer in self.offers]
        work = [own for own in every if MAIN in own.roles or SKILL in own.roles]
        return {goal: [own for own in work if goal in own.goals] for goal in self.wishes.goals}

    def only_eases(self, own: PracticePiece) -> bool:
        """Whether a piece of work is gentle, teaches nothing and may stand as relief."""
        return own.hardest <= self.table.gentle and SKILL not in own.roles and EASY in own.roles

    @cached_property
    def effort(self) -> int:
        """The effort that is wished for; gentle where all that is wished for is rest, or no
        work.
        """
        if self.wishes.effort == UNKNOWN and (
            self.is_rest or self.aside.issuperset(self.wishes.goals)
        ):
            return self.table.gentle
        return self.wishes.effort

    @cached_property
    def extra(self) -> tuple[int, ...]:
        """By lane group how many more swimmers are in its fullest lane than usual."""
        every = enumerate(self.table.squad.groups)
        return tuple(
            max(0, self.in_lane(place) - in_a_lane(group.heads, group.lanes))
            for place, group in every
        )

    def in_lane(self, group: int) -> int:
        """The swimmers of a lane group's fullest lane."""
        return in_a_lane(self.wishes.heads[group], self.wishes.lanes[group])

    def sized(self, offer: Offer) -> Iterator[Sized]:
        """The sizes of an offer that every lane group that is asked for can do."""
        piece = self.table.pieces[offer.piece]
        for size in offer.sizes:
            takes = [self._takes(size, group) for group in self.wishes.groups]
            if UNKNOWN not in takes:
                yield Sized(offer.piece, piece, size, max(takes), offer.adults)

    def _takes(self, size: Size, group: int) -> int:
        time = size.times[group]
        if time is None:
            return UNKNOWN
        return time + self.extra[group] * self.table.squad.groups[group].gap

    def roles_of(self, piece: PracticePiece) -> str:
        """The letters that a piece may stand as in such a slot: one drill in its own dose is a main
        set where there is time for little else.
        """
        is_short = self.slot < A_DRILL_BELOW
        return piece.roles if is_short or piece.of != DRILL else piece.roles.replace(MAIN, "")

    def works_as(self, piece: PracticePiece) -> str:
        """What a piece stands as where it is work, a main set before a skill; "" where it is
        none.
        """
        if MAIN not in piece.roles and SKILL not in piece.roles:
            return ""
        return MAIN if MAIN in self.roles_of(piece) else SKILL

    def why_not(self, offer: Offer, role: str) -> str:
        """Why a piece may not stand in a role; "" where it may. What is kept may, whenever it was
        done.
        """
        wishes, piece = self.wishes, self.table.pieces[offer.piece]
        if not any(True for _ in self.sized(offer)):
            return NOT_FOR
        if any(self.used_at_once(piece) > wishes.gear[gear] for gear in piece.gear):
            return GEAR
        if any(self._is_full(offer, group) for group in wishes.groups):
            return ROOM
        if wishes.adults != UNKNOWN and offer.adults > wishes.adults:
            return ADULTS
        if offer.piece in wishes.left_out:
            return LEFT_OUT
        is_kept = any(own.piece == offer.piece for own in wishes.kept)
        days = wishes.days.get(offer.piece, UNKNOWN)
        if role in MAINS and 0 <= days < REPEATED_AFTER and not is_kept:
            return LATELY
        return ""

    def used_at_once(self, piece: PracticePiece) -> int:
        """How many of each of its gear are in use at the same moment."""
        most, heads, lanes = piece.most_in_lane, self.wishes.heads, self.wishes.lanes
        return sum(
            min(heads[group], most * lanes[group]) if most else heads[group]
            for group in self.wishes.groups
        )

    def _is_full(self, offer: Offer, group: int) -> bool:
        """Whether a lane has no room for those who are in it; a piece that lets few of a lane go at
        once takes longer with more of them, and is left out.
        """
        room = offer.room[group]
        turns = self.table.pieces[offer.piece].most_in_lane and self.extra[group]
        return bool(turns) or 0 < room < self.in_lane(group)
