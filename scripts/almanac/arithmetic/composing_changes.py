"""What a coach changes of a proposal: a piece swapped for the next best, kept, moved or taken out.

A practice is changed piece by piece, and what was not touched stays where it is; the others are cut
or lengthened where the slot asks for it (``composing_fit``). What breaks a limit is refused in a
sentence.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from almanac.arithmetic.composing_fit import Fitted, RoleSlot, cost_of, fitted, held
from almanac.arithmetic.composing_lists import of_role
from almanac.arithmetic.composing_order import Stood, laid, unsafe, whole
from almanac.arithmetic.composing_pieces import COOL_DOWN, MAIN, ROLES, TENTHS, WARM_UP, Offer
from almanac.arithmetic.composing_request import BadWish
from almanac.arithmetic.composing_sentences import role_word, said
from almanac.arithmetic.composing_wishes import SECOND, Asked, Sized

SWAP, KEEP, FREE, UP, DOWN, OUT = DEEDS = ("swap", "keep", "free", "up", "down", "out")
_A_FEW = (0, 1, 2)
_SWAPS = ((0, 1), (2,))
"""How many other pieces are changed: at most one where that does, else two."""


@dataclass(frozen=True)
class Chosen:
    """A piece of a practice, by its key, in a role, so often; ``kept`` is neither swapped nor done
    more or less often by what changes elsewhere. ``talk_s`` goes before it where a practice that
    is written has another talk than is usual.
    """

    role: str
    piece: str
    number: int
    kept: bool = False
    talk_s: int | None = None


@dataclass(frozen=True)
class ChosenPractice:
    """A practice by what of it is chosen; ``out`` are pieces that were swapped or taken out, and
    are not offered again.
    """

    parts: tuple[Chosen, ...]
    out: tuple[str, ...] = ()


@dataclass(frozen=True)
class Deed:
    """What is done to the piece in a role."""

    do: str
    role: str


def practice_of(order: Sequence[Stood]) -> ChosenPractice:
    """A proposal, to be changed."""
    return ChosenPractice(
        tuple(Chosen(one.role, one.own.piece.key, one.own.number) for one in order)
    )


def standing(asked: Asked, practice: ChosenPractice) -> Fitted:
    """A practice laid out, with its points. Raises BadWish for one that cannot be."""
    _check_roles(practice)
    order = [(own.role, _sized(asked, own)) for own in practice.parts]
    places = [own.place for _, own in order]
    if len(set(places)) < len(places):
        raise BadWish(said("bad-twice"))
    stood = laid(asked, order)
    reason = "minutes" if whole(stood) > asked.slot else unsafe(asked, stood)
    if reason:
        raise BadWish(said(f"broken-{reason}"))
    return Fitted(stood, cost_of(asked, order))


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
        raise BadWish(said("change-kept", title=_sized(asked, own).piece.title))
    return _swapped(asked, practice, place) if deed.do == SWAP else _without(asked, practice, place)


def _swapped(asked: Asked, practice: ChosenPractice, place: int) -> ChosenPractice:
    """With the next best in a place: of all that may stand there and fits, what costs least."""
    slots = _slots(asked, practice)
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
            return _as_fitted(replace(practice, out=(*practice.out, gone)), best)
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
    """Without a piece; a second main set is then the first."""
    own = practice.parts[place]
    roles = [one.role for one in practice.parts]
    if own.role in (WARM_UP, COOL_DOWN) or (own.role == MAIN and SECOND not in roles):
        raise BadWish(said("change-out", role=role_word(own.role).lower()))
    parts = [one for one in practice.parts if one is not own]
    if own.role == MAIN:
        parts = [replace(one, role=MAIN) if one.role == SECOND else one for one in parts]
    return _fitted_again(asked, ChosenPractice(tuple(parts), (*practice.out, own.piece)))


def _fitted_again(asked: Asked, practice: ChosenPractice) -> ChosenPractice:
    slots = _slots(asked, practice)
    found = fitted(asked, slots, _A_FEW, leaves=True)
    if found is None:
        stood = laid(asked, [(slot.role, slot.now) for slot in slots])
        raise BadWish(said(f"broken-{unsafe(asked, stood) or 'minutes'}"))
    return _as_fitted(practice, found)


def _as_fitted(practice: ChosenPractice, found: Fitted) -> ChosenPractice:
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


def _slots(asked: Asked, practice: ChosenPractice) -> list[RoleSlot]:
    """The places of a practice, each with the other sizes of its piece."""
    slots = []
    for own in practice.parts:
        now = _sized(asked, own)
        others = tuple(size for size in _sizes(asked, own) if size.number != own.number)
        slot = RoleSlot(own.role, now, others)
        slots.append(held(slot) if own.kept else slot)
    return slots


def _offer(asked: Asked, own: Chosen) -> Offer:
    """What is offered of a piece. Raises BadWish where it may not stand there."""
    place = asked.table.piece_of.get(own.piece)
    if place is None:
        raise BadWish(said("bad-place", what=said("what-piece"), id=own.piece))
    piece = asked.table.pieces[place]
    offer = next((one for one in asked.offers if one.piece == place), None)
    if (MAIN if own.role == SECOND else own.role) not in piece.roles:
        raise BadWish(said("bad-keep", key=own.piece))
    reason = asked.why_not(offer, own.role) if offer else "groups"
    if reason or offer is None:
        raise BadWish(said("bad-stand", title=piece.title, because=said(f"because-{reason}")))
    return offer


def _sizes(asked: Asked, own: Chosen) -> Iterator[Sized]:
    """The sizes of a piece, with its own talk before it."""
    for size in asked.sized(_offer(asked, own)):
        if own.talk_s is None:
            yield size
        else:
            yield replace(size, piece=replace(size.piece, talk=TENTHS * own.talk_s))


def _sized(asked: Asked, own: Chosen) -> Sized:
    found = next((size for size in _sizes(asked, own) if size.number == own.number), None)
    if found is None:
        raise BadWish(said("bad-keep", key=own.piece))
    return found


def _check_roles(practice: ChosenPractice) -> None:
    """It begins with a warm-up, ends with a cool-down and has a main set; each role once."""
    roles = [own.role for own in practice.parts]
    sound = len(set(roles)) == len(roles) and set(roles) <= {*ROLES, SECOND} and MAIN in roles
    if not sound or roles[0] != WARM_UP or roles[-1] != COOL_DOWN:
        raise BadWish(said("bad-roles"))
