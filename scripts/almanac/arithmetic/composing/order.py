"""Pieces in the order of a practice: when each begins, and what of the limits of a whole practice
they break.
"""

from __future__ import annotations

from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass

from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.pieces import UNKNOWN, Size

SLACK_MOST = 1200
"""Tenths of the slot that may be left."""
_WHOLE = 1000

TIME, LIMIT, DOSE, BREATH, TAUGHT = "minutes", "limit", "dose", "breath", "taught"
"""What pieces break together."""


@dataclass(frozen=True)
class Stood:
    """A piece in its place: its role, and ``lead`` tenths of talk and change before it."""

    role: str
    own: Sized
    lead: int


def change(asked: Asked, worn: AbstractSet[int], after: Sized) -> int:
    """What changing into the gear of a piece takes: the longest of what goes on or off."""
    changed = worn ^ set(after.piece.begins)
    return max((asked.table.gear[gear].change for gear in changed), default=0)


def taken_off(asked: Asked, own: Sized) -> int:
    """What taking off takes that is worn at the last length of a piece: the longest of it."""
    return max((asked.table.gear[gear].change for gear in own.piece.ends), default=0)


def laid(asked: Asked, order: Sequence[tuple[str, Sized]]) -> tuple[Stood, ...]:
    """Pieces with what goes before each: the talk, or the change of gear where that is longer;
    before the first the talk alone.
    """
    found: list[Stood] = []
    for role, own in order:
        costs = change(asked, set(found[-1].own.piece.ends), own) if found else 0
        found.append(Stood(role, own, max(own.piece.talk, costs)))
    return tuple(found)


def whole(order: Sequence[Stood]) -> int:
    """What all of it takes, in tenths."""
    return sum(one.lead + one.own.takes for one in order)


def broken(asked: Asked, order: Sequence[Stood]) -> str:
    """The first that pieces break together; "" where they break nothing."""
    left = asked.slot - whole(order)
    if not 0 <= left <= SLACK_MOST:
        return TIME
    return unsafe(asked, order)


def unsafe(asked: Asked, order: Sequence[Stood]) -> str:
    """The first limit of a whole practice, or rule of teaching, that is broken; or ""."""
    if found := too_much(asked, [one.own for one in order]):
        return found
    soonest = soonest_under(asked, order)
    if soonest != UNKNOWN and soonest < asked.table.squad.limits.under_after_fast:
        return BREATH
    return TAUGHT if _is_before_its_need(asked, order) else ""


def too_much(asked: Asked, pieces: Sequence[Sized]) -> str:
    """The first limit that pieces are beyond, in whatever order they stand; "" where none is."""
    limits, sizes = asked.table.squad.limits, [own.size for own in pieces]
    if (
        sum(size.fast for size in sizes) > limits.fast
        or sum(size.resisted for size in sizes) > limits.resisted
        or sum(size.plates for size in sizes) > limits.plates
        or sum(size.under for size in sizes) > limits.under
    ):
        return LIMIT
    return DOSE if _is_over_dose(sizes) else ""


def _is_over_dose(sizes: Sequence[Size]) -> bool:
    """Whether some drill is done more than its dose lets the level: reckoned as plain where all of
    it is.
    """
    plain: dict[int, int] = {}
    strict: dict[int, int] = {}
    for size in sizes:
        for drill, as_plain, otherwise in size.doses:
            known = plain.get(drill, 0)
            is_plain = UNKNOWN not in (known, as_plain)
            plain[drill] = known + as_plain if is_plain else UNKNOWN
            strict[drill] = strict.get(drill, 0) + otherwise
    return any((strict[drill] if own == UNKNOWN else own) > _WHOLE for drill, own in plain.items())


def soonest_under(asked: Asked, order: Sequence[Stood]) -> int:
    """The least from fast work of an earlier piece until somebody goes under water, in tenths;
    ``UNKNOWN`` where nobody does.
    """
    soonest = since = UNKNOWN
    for one in order:
        size = one.own.size
        since = since if since == UNKNOWN else since + one.lead
        if since != UNKNOWN and size.goes_under != UNKNOWN:
            now = since + size.goes_under
            soonest = now if soonest == UNKNOWN else min(soonest, now)
        if size.calm != UNKNOWN:
            since = size.calm
        elif since != UNKNOWN:
            groups = asked.wishes.groups
            since += min(size.times[group] or 0 for group in groups)
    return soonest


def _is_before_its_need(asked: Asked, order: Sequence[Stood]) -> bool:
    """Whether a drill comes before what it needs, neither taught nor done before."""
    known = set(asked.wishes.taught)
    for one in order:
        if not known.issuperset(one.own.piece.asks):
            return True
        known |= set(one.own.piece.drills)
    return False
