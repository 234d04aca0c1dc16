"""Composing a practice: of all that the table offers, what costs a coach the least.

The choice is by enumeration, in a stated order: work first (``composing.hearts``), then warm-up,
relief and cool-down around it so that the slot is filled (``composing.around``). The limits of a
whole practice are never weighed against points: what breaks one is no answer. Of answers that cost
the same the one that the lists have first is taken. Nothing here is a float, and nothing hangs on
an order that a language leaves open.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from almanac.arithmetic.composing.around import Around, Proposal
from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.costs import is_again
from almanac.arithmetic.composing.hearts import Heart, hearts
from almanac.arithmetic.composing.lists import lists
from almanac.arithmetic.composing.order import too_much
from almanac.arithmetic.composing.pieces import MAIN, SKILL, WARM_UP
from almanac.arithmetic.composing.table import ComposeTable
from almanac.arithmetic.composing.wishes import MAINS, SECOND, Wishes

PROPOSALS = 3
TRIED = 400
"""So many hearts that fit are tried for a proposal."""
SAME_SKILL, OTHER_PLACE, SAME_DRILLS = 60, 250, 150
"""What it costs that an earlier proposal has the same skill, the same work in another place, or a
main set of the same drills.
"""
SAME_WARM_UP, MOST_OPENED = 20, 4
"""And the same warm-up; of what was composed for a block each time, so often at most."""
NOTHING: Mapping[int, int] = MappingProxyType({})
WORSE = 900
"""An answer that costs so much more than the first is none."""


def compose(
    table: ComposeTable,
    wishes: Wishes,
    most: int = PROPOSALS,
    opened: Mapping[int, int] = NOTHING,
) -> tuple[Proposal, ...]:
    """Up to so many practices, the cheapest first; none of them has a main set of one before it.
    ``opened`` is how often each warm-up, by place, opens what was composed for the same block.
    """
    asked = Asked(table, wishes)
    known = lists(asked)
    if not known.is_enough:
        return ()
    around = Around(asked, known)
    every = hearts(asked, known, *around.bounds)
    found: list[Proposal] = []
    while len(found) < most:
        best = _best(asked, around, every, found, opened)
        if best is None or (found and best.cost - found[0].cost >= WORSE):
            break
        found.append(best)
    return tuple(found)


def fits(table: ComposeTable, wishes: Wishes) -> bool:
    """Whether there is a practice at all."""
    asked = Asked(table, wishes)
    known = lists(asked)
    if not known.is_enough:
        return False
    around = Around(asked, known)
    found = _best(asked, around, hearts(asked, known, *around.bounds), (), NOTHING, stops=True)
    return found is not None


def _best(
    asked: Asked,
    around: Around,
    every: Sequence[Heart],
    before: Sequence[Proposal],
    opened: Mapping[int, int],
    stops: bool = False,
) -> Proposal | None:
    """The cheapest practice with other main sets than those before it; one that is not dear where
    it ``stops`` with the first heart that has one. Each that is ``plain`` the cheapest is tried
    with a third main set too.
    """
    used = {one.own.place for own in before for one in own.order if one.role in (MAIN, SECOND)}
    warm = {place: SAME_WARM_UP * min(MOST_OPENED, often) for place, often in opened.items()}
    for place in {one.own.place for own in before for one in own.order if one.role == WARM_UP}:
        warm[place] = warm.get(place, 0) + SAME_WARM_UP
    serves = any(_serves(asked, [(one.role, one.own) for one in own.order]) for own in before)
    plain, best, tried = None, None, 0
    for heart in every:
        if tried >= TRIED or (plain and (stops or heart.cost + around.least >= plain.cost)):
            break  # and no later one costs less
        if heart.mains & used or (serves and not _serves(asked, heart.order)):
            continue
        if too_much(asked, heart.pieces) or not around.can_teach(heart):
            continue
        tried += 1
        found = around.fill(heart, heart.cost + _again(asked, heart, before), plain, warm)
        if found and found is not plain:
            plain, best = found, best if best and best.cost <= found.cost else found
            for third in heart.with_third(asked, around.known, around.bounds[1]):
                if not (third.mains & used or too_much(asked, third.pieces)):
                    cost = third.cost + _again(asked, third, before)
                    best = around.fill(third, cost, best, warm)
    return best


def _again(asked: Asked, heart: Heart, before: Sequence[Proposal]) -> int:
    """What it costs that a heart has work of earlier proposals; each must be another practice."""
    stood = [(one.role, one.own) for own in before for one in own.order if one.role in _WORK]
    cost = 0
    for role, own in heart.order:
        same = [each == SKILL for each, other in stood if other.place == own.place]
        if same:
            cost += SAME_SKILL if role == SKILL and all(same) else OTHER_PLACE
        elif role != SKILL:
            mains = [other for each, other in stood if each != SKILL]
            cost += SAME_DRILLS * any(is_again(asked, own, other) for other in mains)
    return cost


def _serves(asked: Asked, order: Sequence[tuple[str, Sized]]) -> bool:
    """Whether a main set is for something that is wished for: beside one that is, none is another
    answer that is not.
    """
    wished = set(asked.wanted)
    mains = [own for role, own in order if role in MAINS]
    return any(not wished.isdisjoint(own.piece.goals) for own in mains)


_WORK = (SKILL, *MAINS)
