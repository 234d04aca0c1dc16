"""What a coach changes of a proposal: a piece swapped for the next best, kept, moved or taken out.

A practice is changed piece by piece, and what was not touched stays where it is; the others are cut
or lengthened where the slot asks for it (``composing.fit``). What breaks a limit is refused in a
sentence.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.chosen import (
    Chosen,
    ChosenPractice,
    practice_of,
    sized_of,
    slots_of,
    standing,
)
from almanac.arithmetic.composing.fit import Fitted, RoleSlot, fitted
from almanac.arithmetic.composing.lists import of_role
from almanac.arithmetic.composing.order import laid, unsafe
from almanac.arithmetic.composing.pieces import COOL_DOWN, MAIN, WARM_UP
from almanac.arithmetic.composing.request import BadWish
from almanac.arithmetic.composing.sentences import role_word, said
from almanac.arithmetic.composing.wishes import MAINS, SECOND, is_held

SWAP, KEEP, FREE, UP, DOWN, OUT = DEEDS = ("swap", "keep", "free", "up", "down", "out")
_A_FEW = (0, 1, 2)
_SWAPS = ((0, 1), (2,))
"""How many other pieces are changed: at most one where that does, else two."""


@dataclass(frozen=True)
class Deed:
    """What is done to the piece in a role."""

    do: str
    role: str


def change(asked: Asked, practice: ChosenPractice, deed: Deed) -> ChosenPractice:
    """A practice after a deed. Raises BadWish with a sentence where it cannot be done."""
    roles = [own.role for own in practice.parts]
    if deed.do not in DEEDS or deed.role not in roles:
        raise BadWish(said("bad-deed", do=deed.do, role=deed.role))
    place = roles.index(deed.role)
    own = practice.parts[place]
    standing(asked, practice)
    if deed.do in (KEEP, FREE):
        return _with(practice, place, replace(own, kept=deed.do == KEEP))
    if deed.do in (UP, DOWN):
        return _moved(asked, practice, place, place + (1 if deed.do == DOWN else -1))
    if own.kept:
        raise BadWish(said("change-kept", title=sized_of(asked, own).piece.title))
    return _swapped(asked, practice, place) if deed.do == SWAP else _without(asked, practice, place)


def _swapped(asked: Asked, practice: ChosenPractice, place: int) -> ChosenPractice:
    """With the next best in a place: of all that may stand there and fits, what costs least."""
    slots = slots_of(asked, practice)
    free = Asked(asked.table, replace(asked.wishes, kept=()))
    role, gone = practice.parts[place].role, practice.parts[place].piece
    known = {own.piece for own in practice.parts} | set(practice.out)
    candidates = [own for own in of_role(free, role) if own[0].piece.key not in known]
    for changes in _SWAPS:
        best: Fitted | None = None
        for sizes in candidates:
            found = _in_place(asked, slots, place, sizes, changes)
            if found and (best is None or found.cost < best.cost):
                best = found
        if best:
            return as_fitted(replace(practice, out=(*practice.out, gone)), best)
    raise BadWish(said("change-swap", role=role_word(role).lower()))


def _in_place(
    asked: Asked,
    slots: Sequence[RoleSlot],
    place: int,
    sizes: Sequence[Sized],
    changes: Sequence[int],
) -> Fitted | None:
    """The cheapest with a piece in a place, in whatever size."""
    best: Fitted | None = None
    for count in changes:
        for size in sizes:
            own = [*slots[:place], RoleSlot(slots[place].role, size), *slots[place + 1 :]]
            found = fitted(asked, own, (count,))
            if found and (best is None or found.cost < best.cost):
                best = found
        if best:
            return best
    return None


def _moved(asked: Asked, practice: ChosenPractice, place: int, to: int) -> ChosenPractice:
    """With a piece before or after its neighbour."""
    last = len(practice.parts) - 1
    if 0 in (place, to):
        raise BadWish(said("change-first"))
    if last in (place, to):
        raise BadWish(said("change-last"))
    parts = list(practice.parts)
    parts[place], parts[to] = parts[to], parts[place]
    return _fitted_again(asked, replace(practice, parts=tuple(parts)))


def _without(asked: Asked, practice: ChosenPractice, place: int) -> ChosenPractice:
    """Without a piece; a main set after it is then the one before."""
    own = practice.parts[place]
    roles = [one.role for one in practice.parts]
    if is_held(own.role) and place in (0, len(roles) - 1):
        raise BadWish(said("change-last" if place else "change-first"))
    if own.role in (WARM_UP, COOL_DOWN) or (own.role == MAIN and SECOND not in roles):
        raise BadWish(said("change-out", role=role_word(own.role).lower()))
    parts = [one for one in practice.parts if one is not own]
    if own.role in MAINS:
        later = MAINS[MAINS.index(own.role) :]
        before = dict(pairwise(reversed(later)))
        parts = [replace(one, role=before.get(one.role, one.role)) for one in parts]
    return _fitted_again(asked, ChosenPractice(tuple(parts), (*practice.out, own.piece)))


def _fitted_again(asked: Asked, practice: ChosenPractice) -> ChosenPractice:
    slots = slots_of(asked, practice)
    found = fitted(asked, slots, _A_FEW, leaves=True)
    if found is None:
        stood = laid(asked, [(slot.role, slot.now) for slot in slots])
        raise BadWish(said(f"broken-{unsafe(asked, stood) or 'minutes'}"))
    return as_fitted(practice, found)


def as_fitted(practice: ChosenPractice, found: Fitted) -> ChosenPractice:
    """A practice with the pieces and sizes that fit; what was kept is kept."""
    before = {own.piece: own for own in practice.parts}
    parts = practice_of(found.order).parts
    same = (
        replace(own, kept=before[own.piece].kept, talk_s=before[own.piece].talk_s)
        if own.piece in before
        else own
        for own in parts
    )
    return replace(practice, parts=tuple(same))


def _with(practice: ChosenPractice, place: int, own: Chosen) -> ChosenPractice:
    parts = practice.parts
    return replace(practice, parts=(*parts[:place], own, *parts[place + 1 :]))
