"""What a composed practice could not meet of the wishes, and which of them is in the way."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass

from almanac.arithmetic.composing.around import Proposal
from almanac.arithmetic.composing.asked import NOT_FOR, Asked
from almanac.arithmetic.composing.order import SLACK_MOST, Stood, whole
from almanac.arithmetic.composing.pieces import (
    EASY,
    SKILL,
    TENTHS,
    UNKNOWN,
    PracticePiece,
)
from almanac.arithmetic.composing.shape import are_legs_tired, wants_skill
from almanac.arithmetic.composing.wishes import MAINS

GOAL, EFFORT, MINUTES, TAUGHT, KEEP, NO_SKILL, NO_RELIEF, SLOT = (
    "goals", "effort", "minutes", "taught", "keep", "skill", "relief", "slot",
)  # fmt: skip
WORK = (SKILL, *MAINS)
HARDER = "harder"
"""Why an effort is not met where a main set has it: other work is harder."""
TIME_LEFT = "time-left"
"""Why something is not met where there was time for it."""


@dataclass(frozen=True)
class Unmet:
    """What a practice does not meet: a wish, which of it by place (``UNKNOWN``; of the slot the
    seconds that nothing fills), and the wish that is in the way; ``TIME_LEFT`` where there
    was time, as where what could stand there was taken out.
    """

    wish: str
    which: int
    because: str


def unmet(asked: Asked, own: Proposal) -> Iterator[Unmet]:
    """What a practice could not meet, and which wish to drop for it."""
    work = [one.own for one in own.order if one.role in WORK]
    for goal in asked.wishes.goals:
        if not any(goal in one.own.piece.goals for one in own.order):
            yield Unmet(GOAL, goal, in_the_way(asked, (goal,), asked.works_as))
    yield from _other_effort(asked, own.order)
    roles, left = [one.role for one in own.order], asked.slot - whole(own.order)
    because = TIME_LEFT if left > SLACK_MOST else MINUTES
    gone = "".join(asked.table.pieces[asked.table.piece_of[key]].roles for key in own.out)
    if SKILL not in roles and wants_skill(asked):
        is_taken = because == TIME_LEFT or SKILL in gone
        yield Unmet(NO_SKILL, UNKNOWN, TIME_LEFT if is_taken else _no_skill(asked))
    if EASY not in roles and are_legs_tired(work):
        yield Unmet(NO_RELIEF, UNKNOWN, TIME_LEFT if EASY in gone else because)
    if because == TIME_LEFT:  # only after something was taken out
        yield Unmet(SLOT, left // TENTHS, TIME_LEFT)


def _no_skill(asked: Asked) -> str:
    """What keeps every skill that serves what is wished for from standing: a wish, or the time."""

    def stands_as(piece: PracticePiece) -> str:
        return SKILL if SKILL in asked.roles_of(piece) else ""

    return in_the_way(asked, asked.wanted or asked.wishes.goals, stands_as)


def _other_effort(asked: Asked, order: Sequence[Stood]) -> Iterator[Unmet]:
    """That no main set is of the effort that was wished, or that some work is harder."""
    wished = asked.wishes.effort
    mains = [one.own.piece.effort for one in order if one.role in MAINS]
    work = [one.own.piece.effort for one in order if one.role in WORK]
    if wished == UNKNOWN:
        return
    if wished not in mains:
        yield Unmet(EFFORT, wished, GOAL)
    elif max(work) > wished:
        yield Unmet(EFFORT, wished, HARDER)


def in_the_way(
    asked: Asked,
    goals: Sequence[int],
    stands_as: Callable[[PracticePiece], str],
    stood: AbstractSet[int] = frozenset(),
) -> str:
    """What keeps every piece of work that serves a goal from standing: a wish, or the time. Each is
    asked for in the role that it ``stands_as``, if any; what has ``stood`` already is not.
    """
    found = []
    for offer in asked.offers:
        piece = asked.table.pieces[offer.piece]
        role = "" if set(goals).isdisjoint(piece.goals) else stands_as(piece)
        if role and offer.piece not in stood:
            reason = asked.why_not(offer, role)
            if not reason:
                return MINUTES if asked.wishes.taught.issuperset(piece.asks) else TAUGHT
            found.append(reason)
    return next((reason for reason in found if reason != NOT_FOR), NOT_FOR)
