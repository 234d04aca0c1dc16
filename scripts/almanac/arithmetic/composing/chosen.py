"""A practice by what of it is chosen, piece by piece; one that cannot stand is refused."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.fit import Fitted, RoleSlot, cost_of, held
from almanac.arithmetic.composing.order import Stood, laid, unsafe, whole
from almanac.arithmetic.composing.pieces import (
    COOL_DOWN,
    MAIN,
    PLACES,
    ROLES,
    TENTHS,
    WARM_UP,
    Offer,
)
from almanac.arithmetic.composing.request import BadWish
from almanac.arithmetic.composing.sentences import said
from almanac.arithmetic.composing.wishes import MAINS, is_held


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


def practice_of(order: Sequence[Stood]) -> ChosenPractice:
    """A proposal, to be changed."""
    return ChosenPractice(
        tuple(Chosen(one.role, one.own.piece.key, one.own.number) for one in order)
    )


def standing(asked: Asked, practice: ChosenPractice) -> Fitted:
    """A practice laid out, with its points. Raises BadWish for one that cannot be."""
    stood = ordered(asked, practice)
    reason = "minutes" if whole(stood) > asked.slot else unsafe(asked, stood)
    if reason:
        raise BadWish(said(f"broken-{reason}"))
    return Fitted(stood, cost_of(asked, [(one.role, one.own) for one in stood]))


def ordered(asked: Asked, practice: ChosenPractice) -> tuple[Stood, ...]:
    """A practice laid out, however long it is. Raises BadWish for pieces that cannot stand so."""
    _check_roles(practice)
    order = [(own.role, sized_of(asked, own)) for own in practice.parts]
    places = [own.place for _, own in order]
    if len(set(places)) < len(places):
        raise BadWish(said("bad-twice"))
    return laid(asked, order)


def slots_of(asked: Asked, practice: ChosenPractice) -> list[RoleSlot]:
    """The places of a practice, each with the other sizes of its piece."""
    slots = []
    for own in practice.parts:
        now = sized_of(asked, own)
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
    if (MAIN if own.role in MAINS else own.role) not in piece.roles:
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


def sized_of(asked: Asked, own: Chosen) -> Sized:
    """A piece so often as it is chosen. Raises BadWish where it may not stand there so."""
    found = next((size for size in _sizes(asked, own) if size.number == own.number), None)
    if found is None:
        raise BadWish(said("bad-keep", key=own.piece))
    return found


def _check_roles(practice: ChosenPractice) -> None:
    if not stands_so([own.role for own in practice.parts]):
        raise BadWish(said("bad-roles"))


def stands_so(roles: list[str]) -> bool:
    """Whether a practice of these roles begins with a warm-up, ends with a cool-down and has a main
    set, each role once. One that is written stands as it does.
    """
    usual = (roles[:1], roles[-1:]) == ([WARM_UP], [COOL_DOWN]) and MAIN in roles
    known = len(set(roles)) == len(roles) and set(roles) <= {*ROLES, *MAINS, *PLACES}
    return known and (usual or any(map(is_held, roles)))
