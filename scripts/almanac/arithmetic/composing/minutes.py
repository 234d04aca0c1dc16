"""A practice that is given other minutes: its pieces stay in their order, and as few of them as
will do are done more or less often (``composing.fit``); what is kept is not. Where no way is short
enough, a sentence says what to take out.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from almanac.arithmetic.composing.asked import Asked
from almanac.arithmetic.composing.changes import as_fitted
from almanac.arithmetic.composing.chosen import (
    ChosenPractice,
    ordered,
    slots_of,
    stands_so,
)
from almanac.arithmetic.composing.fit import RoleSlot, fitted
from almanac.arithmetic.composing.order import Stood, laid, unsafe, whole
from almanac.arithmetic.composing.pieces import COOL_DOWN, MAIN, TENTHS, WARM_UP
from almanac.arithmetic.composing.request import BadWish, with_minutes
from almanac.arithmetic.composing.sentences import said, words_in_a_row
from almanac.arithmetic.composing.wishes import is_held
from almanac.units import show_time


@dataclass(frozen=True)
class OtherMinutes:
    """A practice is given so many minutes."""

    minutes: int


def asked_in(asked: Asked, minutes: int) -> Asked:
    """The same wishes in other minutes. Raises BadWish where these cannot be."""
    return Asked(asked.table, with_minutes(asked.table, asked.wishes, minutes))


def in_minutes(asked: Asked, practice: ChosenPractice) -> ChosenPractice:
    """A practice as it fits into the slot that is asked for, longer or shorter than it. Raises
    BadWish with what to take out where it does not.
    """
    order = ordered(asked, practice)
    slots = slots_of(asked, practice)
    found = fitted(asked, slots, range(len(slots) + 1), leaves=True)
    if found:
        return as_fitted(practice, found)
    if whole(order) <= asked.slot and (reason := unsafe(asked, order)):
        raise BadWish(said(f"broken-{reason}"))
    raise BadWish(_too_long(asked, practice, slots))


def _too_long(asked: Asked, practice: ChosenPractice, slots: Sequence[RoleSlot]) -> str:
    """How short it can be, and what makes it shorter: what is kept freed, one piece taken out, as
    many as it takes from the last on, or the longest swapped.
    """
    order = _at_shortest(asked, slots)
    shortest = show_time(-(-whole(order) // TENTHS))
    found = said("too-long", minutes=asked.wishes.minutes, time=shortest)
    free = replace(practice, parts=tuple(replace(own, kept=False) for own in practice.parts))
    if free != practice and _fits(asked, slots_of(asked, free)):
        return found + said("too-long-kept")
    may = _may_go(practice)
    for gone in [*([place] for place in may), *(may[: k + 1] for k in range(len(may)))]:
        left = [slot for place, slot in enumerate(slots) if place not in gone]
        if stands_so([slot.role for slot in left]) and _fits(asked, left):
            titles = [slots[place].now.piece.title for place in gone]
            return found + said("too-long-out", titles=words_in_a_row(titles))
    ours = [one.own for one in order if not is_held(one.role)]
    longest = max(ours, key=lambda own: own.takes, default=None)
    return found + said("too-long-swap", title=longest.piece.title) if longest else found


def _at_shortest(asked: Asked, slots: Sequence[RoleSlot]) -> tuple[Stood, ...]:
    each = [(slot.role, (slot.now, *slot.others)) for slot in slots]
    return laid(asked, [(role, min(own, key=lambda one: one.takes)) for role, own in each])


def _fits(asked: Asked, slots: Sequence[RoleSlot]) -> bool:
    is_short = whole(_at_shortest(asked, slots)) <= asked.slot
    return is_short and fitted(asked, slots, range(len(slots) + 1), leaves=True) is not None


def _may_go(practice: ChosenPractice) -> list[int]:
    """The places of what may be taken out, the last first."""
    parts = practice.parts
    stays = (WARM_UP, MAIN, COOL_DOWN)
    inside = range(len(parts) - 2, 0, -1)
    return [at for at in inside if not parts[at].kept and parts[at].role not in stays]
