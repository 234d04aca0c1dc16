"""The work of an evening: skill, main set and a second main set, in every way that may fit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.arithmetic.composing_costs import (
    idle_cost,
    own_cost,
    pair_cost,
    served,
    shape_cost,
    skill_cost,
)
from almanac.arithmetic.composing_lists import Lists
from almanac.arithmetic.composing_order import change
from almanac.arithmetic.composing_pieces import MAIN, SKILL
from almanac.arithmetic.composing_wishes import SECOND, Asked, Sized

SECOND_FROM = 50 * 600
"""A shorter slot has no second main set."""


@dataclass(frozen=True)
class Heart:
    """The work of an evening, in order: each piece with its role. ``takes`` is with what goes
    before each, ``cost`` in points.
    """

    order: tuple[tuple[str, Sized], ...]
    takes: int
    cost: int

    @property
    def pieces(self) -> list[Sized]:
        """The pieces, in order."""
        return [own for _, own in self.order]

    @property
    def mains(self) -> set[int]:
        """The main sets, by their place in the table."""
        return {own.place for role, own in self.order if role != SKILL}


def hearts(asked: Asked, known: Lists, least: int, most: int) -> list[Heart]:
    """Every heart that takes between ``least`` and ``most`` tenths, cheapest first; alike, in the
    order in which the lists have them.
    """
    found = [
        heart
        for sizes in known.mains
        for main in sizes
        for heart in _around(asked, known, main, least, most)
    ]
    return sorted(found, key=lambda heart: heart.cost)


def _around(asked: Asked, known: Lists, main: Sized, least: int, most: int) -> Iterator[Heart]:
    """The hearts of a main set."""
    kept = {own.role for own in asked.wishes.kept}
    of_main = own_cost(asked, main, MAIN) + idle_cost(asked, main, MAIN)
    seconds: list[tuple[Sized | None, int]] = [] if SECOND in kept else [(None, 0)]
    if asked.slot >= SECOND_FROM or SECOND in kept:
        seconds += [
            (
                own,
                own_cost(asked, own, SECOND)
                + idle_cost(asked, own, SECOND)
                + pair_cost(asked, main, own),
            )
            for own in known.seconds
            if own.place != main.place
        ]
    skills: list[tuple[Sized | None, int]] = [] if SKILL in kept else [(None, 0)]
    skills += [
        (
            own,
            own_cost(asked, own, SKILL) + idle_cost(asked, own, SKILL) + skill_cost(own, main),
        )
        for own in known.skills
        if own.place != main.place and own.takes + main.takes <= most
    ]
    for second, of_second in seconds:
        mains = _in_order(asked, main, second)
        for skill, of_skill in skills:
            if second and skill and second.place == skill.place:
                continue
            order = ((SKILL, skill), *mains) if skill else mains
            takes = _takes(asked, order)
            if least <= takes <= most:
                cost = of_main + of_second + of_skill + _missed(asked, order)
                cost += shape_cost(asked, skill, [own for _, own in mains])
                yield Heart(order, takes, cost)


def _in_order(asked: Asked, main: Sized, second: Sized | None) -> tuple[tuple[str, Sized], ...]:
    """The main sets: what is fast first, while all are fresh; then legs before the stroke that they
    carry.
    """
    if second is None:
        return ((MAIN, main),)
    fast = asked.table.fast

    def key(own: Sized) -> tuple[bool, int]:
        return own.piece.hardest < fast, -own.piece.kick

    both = ((MAIN, main), (SECOND, second))
    return both if key(main) <= key(second) else both[::-1]


def _takes(asked: Asked, order: tuple[tuple[str, Sized], ...]) -> int:
    """What it takes after a warm-up, which is done without gear."""
    takes, worn = 0, frozenset[int]()
    for _, own in order:
        takes += max(own.piece.talk, change(asked, worn, own)) + own.takes
        worn = frozenset(own.piece.ends)
    return takes


def _missed(asked: Asked, order: tuple[tuple[str, Sized], ...]) -> int:
    """What the wished goals cost as they are served, the cheapest way for each."""
    each = [served(asked, own, role) for role, own in order]
    return sum(min(costs) for costs in zip(*each, strict=True))
