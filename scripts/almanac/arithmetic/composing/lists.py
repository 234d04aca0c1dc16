"""The pieces that are tried in each role, best first, and of each a few sizes."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.costs import idle_cost, own_cost, served
from almanac.arithmetic.composing.pieces import (
    COOL_DOWN,
    EASY,
    MAIN,
    SKILL,
    UNKNOWN,
    WARM_UP,
)
from almanac.arithmetic.composing.wishes import MAINS, SECOND, THIRD

A_GOAL: Mapping[str, int] = {MAIN: 9, SKILL: 5, SECOND: 4, THIRD: 4}
"""So many of the best that serve a wished goal are tried in a role, for each goal."""
BESIDE: Mapping[str, int] = {MAIN: 5, SKILL: 3, SECOND: 3, THIRD: 3}
"""And so many of the best whatever they serve."""
EASIES, SIZES = 12, 4
"""So many pieces of relief, and so many sizes of one piece but a cool-down, beside the written."""


@dataclass(frozen=True)
class Lists:
    """What is tried in each role, by what it costs by itself; alike, by place and number."""

    warm_ups: tuple[Sized, ...]
    skills: tuple[Sized, ...]
    mains: tuple[tuple[Sized, ...], ...]
    seconds: tuple[Sized, ...]
    thirds: tuple[Sized, ...]
    easies: tuple[Sized, ...]
    cool_downs: tuple[Sized, ...]

    @property
    def is_enough(self) -> bool:
        """Whether there is something to begin with, to do and to end with."""
        return bool(self.warm_ups and self.mains and self.cool_downs)


def lists(asked: Asked) -> Lists:
    """The lists for some wishes. Mains are by piece, all sizes of one together. Before a warm-up
    nothing is taught, so that what its drills need has been.
    """
    mains, seconds = _chosen(asked, MAIN), _chosen(asked, SECOND)
    kept = any(own.role == SECOND for own in asked.wishes.kept)
    thirds = _chosen(asked, THIRD) if kept else seconds
    taught = asked.wishes.taught
    warm_ups = [own for own in of_role(asked, WARM_UP) if taught.issuperset(own[0].piece.asks)]
    return Lists(
        warm_ups=_flat(map(some, warm_ups), _by_cost(asked, WARM_UP)),
        skills=_flat(map(some, _chosen(asked, SKILL)), _by_cost(asked, SKILL)),
        mains=tuple(tuple(some(own)) for own in mains),
        seconds=_flat(map(some, seconds), _by_cost(asked, SECOND)),
        thirds=_flat(map(some, thirds), _by_cost(asked, THIRD)),
        easies=_flat(map(some, _best(asked, EASY)), _by_cost(asked, EASY)),
        cool_downs=_flat(of_role(asked, COOL_DOWN), _by_cost(asked, COOL_DOWN)),
    )


Key = Callable[[Sized], tuple[int, int, int]]


def _by_cost(asked: Asked, role: str) -> Key:
    return lambda own: (own_cost(asked, own, role), own.place, own.number)


def _flat(each: Iterable[Sequence[Sized]], key: Key) -> tuple[Sized, ...]:
    return tuple(sorted((own for sizes in each for own in sizes), key=key))


def of_role(asked: Asked, role: str) -> list[list[Sized]]:
    """The pieces that may stand in a role, with their sizes; where one is kept there, it alone.
    What opens, eases or closes is done without gear.
    """
    letter = MAIN if role in MAINS else role
    kept = [own for own in asked.wishes.kept if own.role == role]
    elsewhere = {own.piece for own in asked.wishes.kept} - {own.piece for own in kept}
    found = []
    for offer in asked.offers:
        piece = asked.table.pieces[offer.piece]
        bare = role in (*MAINS, SKILL) or not piece.gear
        may = letter in (piece.roles if kept else asked.roles_of(piece))
        may = may and bare and offer.piece not in elsewhere
        if may and not asked.why_not(offer, role):
            found.append([*asked.sized(offer)])
    if kept:
        number = kept[0].number
        found = [
            [own for own in sizes if number in (UNKNOWN, own.number)]
            for sizes in found
            if sizes[0].place == kept[0].piece
        ]
    if role in MAINS and not kept:
        wished = {*asked.wanted}
        found = [
            [
                own
                for own in sizes
                if own.takes >= (SHORTEST if wished.isdisjoint(own.piece.goals) else SHORT)
            ]
            for sizes in found
        ]
    return [sizes for sizes in found if sizes]


SHORTEST, SHORT = 3000, 1800
"""Tenths that a main set lasts at least, a second one too; one that serves a wished goal, as speed
that is soon done.
"""


def some(sizes: Sequence[Sized]) -> list[Sized]:
    """A few sizes, from the least to the most, and the one that is written."""
    last = len(sizes) - 1
    chosen = {number * last // (SIZES - 1) for number in range(SIZES)}
    return [own for place, own in enumerate(sizes) if place in chosen or not own.steps]


def _rank(asked: Asked, sizes: Sequence[Sized], role: str) -> tuple[int, int]:
    """What a piece costs at its cheapest; then its place."""
    first = min(own_cost(asked, own, role) for own in sizes)
    if role in (*MAINS, SKILL):
        first += idle_cost(asked, sizes[0], role) + min(served(asked, sizes[0], role), default=0)
    return first, sizes[0].place


def _best(asked: Asked, role: str) -> list[list[Sized]]:
    return sorted(of_role(asked, role), key=lambda own: _rank(asked, own, role))[:EASIES]


def _chosen(asked: Asked, role: str) -> list[list[Sized]]:
    """For each goal the best that serve it, and the best of all; in the order of their rank."""
    ranked = sorted(of_role(asked, role), key=lambda own: _rank(asked, own, role))
    chosen = {own[0].place for own in ranked[: BESIDE[role]]}
    for goal in asked.wanted:
        of_goal = [own[0].place for own in ranked if goal in own[0].piece.goals]
        chosen |= set(of_goal[: A_GOAL[role]])
    return [own for own in ranked if own[0].place in chosen]
