"""A practice that was changed by hand, fitted into its slot again: as few as can be of its other
pieces are cut or lengthened, and of the ways to do so the cheapest is taken.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, product

from almanac.arithmetic.composing.around import A_POINT, SPARE
from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.costs import held_cost, own_cost
from almanac.arithmetic.composing.hearts import heart_cost
from almanac.arithmetic.composing.lists import some
from almanac.arithmetic.composing.order import SLACK_MOST, Stood, laid, unsafe, whole
from almanac.arithmetic.composing.pieces import COOL_DOWN, EASY, SKILL, TENTHS, WARM_UP
from almanac.arithmetic.composing.shape import (
    cool_down_cost,
    ends_cost,
    relief_cost,
    warm_up_cost,
)
from almanac.arithmetic.composing.wishes import MAINS, is_held


@dataclass(frozen=True)
class RoleSlot:
    """A place in a practice: its role, how often its piece is done now, and the other ways that it
    may be done; none where it is held.
    """

    role: str
    now: Sized
    others: tuple[Sized, ...] = ()


@dataclass(frozen=True)
class Fitted:
    """A practice that fits: its pieces in order, and what it costs in points."""

    order: tuple[Stood, ...]
    cost: int


def fitted(
    asked: Asked, slots: Sequence[RoleSlot], changes: Sequence[int], leaves: bool = False
) -> Fitted | None:
    """The practice with as few ``changes`` as will do, of those numbers that are told; None where
    none will. ``leaves`` whether more than two minutes may be left where nothing fills the slot:
    then what leaves the least.
    """
    for count in changes:
        found = _cheapest(asked, slots, count, SLACK_MOST)
        if found:
            return found
    if not leaves:
        return None
    ways = (_cheapest(asked, slots, count, asked.slot) for count in changes)
    known = [own for own in ways if own]
    return min(known, key=lambda own: asked.slot - whole(own.order), default=None)


def _cheapest(asked: Asked, slots: Sequence[RoleSlot], count: int, slack: int) -> Fitted | None:
    """The cheapest with so many pieces done more or less often; where more than ``SLACK_MOST`` may
    be left, what leaves the least.
    """
    best: tuple[int, int] | None = None
    chosen: tuple[Stood, ...] | None = None
    takes = whole(laid(asked, [(slot.role, slot.now) for slot in slots]))
    for order in _ways(slots, count, asked.slot - takes, slack):
        cost = cost_of(asked, order)
        left = asked.slot - sum(own.takes for _, own in order) if slack > SLACK_MOST else 0
        if best is not None and (left, cost) >= best:
            continue
        stood = laid(asked, order)
        if not unsafe(asked, stood):
            best, chosen = (left, cost), stood
    return Fitted(chosen, best[1]) if best and chosen else None


def _ways(
    slots: Sequence[RoleSlot], count: int, left: int, slack: int
) -> Iterator[list[tuple[str, Sized]]]:
    """Every way to do ``count`` of the pieces more or less often that leaves no more than ``slack``
    of the slot, of which ``left`` is left now. Of one piece all sizes are tried, of two a few.
    """
    free = [place for place, slot in enumerate(slots) if slot.others]
    for places in combinations(free, count):
        sizes = [slots[place].others if count == 1 else _few(slots[place]) for place in places]
        for chosen in product(*sizes):
            pairs = zip(places, chosen, strict=True)
            more = sum(own.takes - slots[place].now.takes for place, own in pairs)
            if 0 <= left - more <= slack:
                order = [(slot.role, slot.now) for slot in slots]
                for place, own in zip(places, chosen, strict=True):
                    order[place] = slots[place].role, own
                yield order


def _few(slot: RoleSlot) -> list[Sized]:
    return some(slot.others)


def held(slot: RoleSlot) -> RoleSlot:
    """A place whose piece is done as often as it is."""
    return replace(slot, others=())


def cost_of(asked: Asked, order: Sequence[tuple[str, Sized]]) -> int:
    """What a practice costs in whatever order it stands: as it is reckoned where it is composed.
    What is held costs nothing, for it is no choice, but that other work is as fast; nor does what
    is not there of a practice that is written.
    """
    chosen = [(role, own) for role, own in order if not is_held(role)]
    heart = [(role, own) for role, own in chosen if role in (SKILL, *MAINS)]
    by_role = dict(chosen)
    cost: int = sum(own_cost(asked, own, role) for role, own in chosen) + held_cost(asked, order)
    if heart:
        work = [own for _, own in heart]
        cost += heart_cost(asked, heart) + relief_cost(asked, by_role.get(EASY), work)
        if WARM_UP in by_role:
            cost += warm_up_cost(asked, by_role[WARM_UP], work)
    if COOL_DOWN in by_role:
        cost += cool_down_cost(asked, by_role[COOL_DOWN])
    cost += ends_cost(asked, *(by_role.get(role) for role in (WARM_UP, EASY, COOL_DOWN)))
    *before, end = laid(asked, order)
    slack = (asked.slot - whole(before)) // TENTHS + -(end.lead + end.own.takes) // TENTHS
    return cost + abs(slack - SPARE) // A_POINT
