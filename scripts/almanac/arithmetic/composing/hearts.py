"""The work of an evening: skill, main set and a second main set, in every way that may fit; in a
long evening a third.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.costs import idle_cost, own_cost, pair_cost, served, skill_cost
from almanac.arithmetic.composing.lists import Lists
from almanac.arithmetic.composing.order import change, taken_off
from almanac.arithmetic.composing.pieces import MAIN, SKILL
from almanac.arithmetic.composing.shape import shape_cost
from almanac.arithmetic.composing.wishes import MAINS, SECOND, THIRD

SECOND_FROM, THIRD_FROM = 50 * 600, 95 * 600
"""A shorter slot has no second main set, and none a third."""


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

    def with_third(self, asked: Asked, known: Lists, most: int) -> Iterator[Heart]:
        """The same with each third main set that may stand beside two and leaves room: in a long
        slot what serves is soon done, and the rest of it is no warm-up.
        """
        if asked.slot < THIRD_FROM or len(self.mains) != len(MAINS) - 1:
            return
        skill = [both for both in self.order if both[0] == SKILL]
        mains = sorted(self.order[len(skill) :], key=lambda both: both[0])
        taken = {own.place for own in self.pieces}
        for own in known.thirds:
            if own.place not in taken and self.takes + own.takes <= most:
                order = (*skill, *_in_order(asked, [*mains, (THIRD, own)]))
                takes = _takes(asked, order)
                if takes <= most:
                    by_itself = sum(own_cost(asked, own, role) for role, own in order)
                    yield Heart(order, takes, by_itself + heart_cost(asked, order))


def heart_cost(asked: Asked, order: Sequence[tuple[str, Sized]]) -> int:
    """What the work of an evening costs beside what each piece of it does by itself, in whatever
    order; of a practice that is written it may have no main set.
    """
    by_role = dict(order)
    skill, mains = by_role.get(SKILL), [by_role[role] for role in MAINS if role in by_role]
    cost: int = sum(idle_cost(asked, own, role) for role, own in order)
    each = [served(asked, own, role) for role, own in order]
    cost += sum(min(costs) for costs in zip(*each, strict=True))
    if MAIN not in by_role:
        return cost
    cost += skill_cost(asked, skill, mains) if skill else 0
    cost += sum(pair_cost(asked, *both) for both in combinations(mains, 2))
    return cost + shape_cost(asked, skill, mains)


def hearts(asked: Asked, known: Lists, least: int, most: int) -> list[Heart]:
    """Every heart that takes between ``least`` and ``most`` tenths, cheapest first; alike, in the
    order in which the lists have them. Less by as much as taking its gear off takes will do, since
    that may be longer than the talk that ``least`` counts after it.
    """
    seconds = [_weighed(asked, own, SECOND) for own in known.seconds]
    skills = [_weighed(asked, own, SKILL) for own in known.skills]
    found = [
        heart
        for sizes in known.mains
        for main in sizes
        for heart in _around(asked, seconds, skills, main, least, most)
    ]
    return sorted(found, key=lambda heart: heart.cost)


@dataclass(frozen=True)
class _Weighed:
    """A piece with what it costs in its role, and by wished goal what it costs that it serves it or
    misses it.
    """

    own: Sized
    cost: int
    serves: tuple[int, ...]


def _weighed(asked: Asked, own: Sized, role: str) -> _Weighed:
    cost = own_cost(asked, own, role) + idle_cost(asked, own, role)
    return _Weighed(own, cost, served(asked, own, role))


def _around(
    asked: Asked,
    seconds: Sequence[_Weighed],
    skills: Sequence[_Weighed],
    main: Sized,
    least: int,
    most: int,
) -> Iterator[Heart]:
    """The hearts of a main set."""
    kept = {own.role for own in asked.wishes.kept}
    of_main = _weighed(asked, main, MAIN)
    others: list[_Weighed | None] = [] if SECOND in kept else [None]
    if asked.slot >= SECOND_FROM or SECOND in kept:
        others += [own for own in seconds if own.own.place != main.place]
    before: list[_Weighed | None] = [] if SKILL in kept else [None]
    before += [
        each
        for each in skills
        if each.own.place != main.place and each.own.takes + main.takes <= most
    ]
    for second in others:
        pair = [(MAIN, main), (SECOND, second.own)] if second else [(MAIN, main)]
        mains = _in_order(asked, pair)
        of_mains, serves = of_main.cost, of_main.serves
        if second:
            of_mains += second.cost + pair_cost(asked, main, second.own)
            serves = _cheaper(serves, second.serves)
        for skill in before:
            if second and skill and second.own.place == skill.own.place:
                continue
            order = ((SKILL, skill.own), *mains) if skill else mains
            takes = _takes(asked, order)
            if least - taken_off(asked, order[-1][1]) <= takes <= most:
                own, cost = skill.own if skill else None, of_mains
                if skill:
                    beside = [main, second.own] if second else [main]
                    cost += skill.cost + skill_cost(asked, skill.own, beside)
                cost += sum(_cheaper(serves, skill.serves) if skill else serves)
                cost += shape_cost(asked, own, [each for _, each in mains])
                yield Heart(order, takes, cost)


def _cheaper(one: tuple[int, ...], other: tuple[int, ...]) -> tuple[int, ...]:
    """What the wished goals cost as they are served, the cheaper way for each."""
    return tuple(map(min, one, other))


def _in_order(asked: Asked, mains: Sequence[tuple[str, Sized]]) -> tuple[tuple[str, Sized], ...]:
    """The main sets: what is fast first, while all are fresh; then legs before the stroke that they
    carry.
    """

    def key(both: tuple[str, Sized]) -> tuple[bool, int]:
        piece = both[1].piece
        return piece.hardest < asked.table.fast, -piece.kick

    return tuple(sorted(mains, key=key))


def _takes(asked: Asked, order: tuple[tuple[str, Sized], ...]) -> int:
    """What it takes after a warm-up, which is done without gear."""
    takes, worn = 0, frozenset[int]()
    for _, own in order:
        takes += max(own.piece.talk, change(asked, worn, own)) + own.takes
        worn = frozenset(own.piece.ends)
    return takes
