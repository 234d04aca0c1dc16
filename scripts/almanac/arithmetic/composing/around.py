"""Warm-ups, relief and cool-downs, tried around the work of a practice to fill its slot."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from almanac.arithmetic.composing.asked import Asked, Sized
from almanac.arithmetic.composing.costs import own_cost
from almanac.arithmetic.composing.hearts import Heart
from almanac.arithmetic.composing.lists import Lists
from almanac.arithmetic.composing.order import (
    SLACK_MOST,
    Stood,
    broken,
    change,
    laid,
    taken_off,
)
from almanac.arithmetic.composing.pieces import COOL_DOWN, EASY, TENTHS, WARM_UP
from almanac.arithmetic.composing.shape import (
    are_legs_tired,
    cool_down_cost,
    ends_cost,
    relief_cost,
    warm_up_cost,
)

REFUSED = 60
"""So many practices around one heart may break a limit before it is given up."""
SPARE, A_POINT = 30, 2
"""So many seconds are well left; so many fewer or more cost a point."""


@dataclass(frozen=True)
class Proposal:
    """A practice: its pieces in order, and what it costs in points; ``out`` are the keys of pieces
    that were swapped or taken out.
    """

    order: tuple[Stood, ...]
    cost: int
    out: tuple[str, ...] = ()


_Easy = tuple[int, int, Sized | None]  # its cost, what it takes with what goes before, itself


class Around:
    """Warm-ups, relief and cool-downs, tried around hearts."""

    def __init__(self, asked: Asked, known: Lists) -> None:
        self.asked, self.known = asked, known
        self._closing: dict[int, dict[int, list[tuple[int, Sized]]]] = {}
        self._eased: dict[tuple[object, ...], list[_Easy]] = {}
        easies = [own_cost(asked, own, EASY) for own in known.easies]
        if not any(own.role == EASY for own in asked.wishes.kept):
            easies.append(0)
        # What cool-down, relief and warm-up cost at least, with what comes after them.
        self._least_end = min(
            own_cost(asked, own, COOL_DOWN) + cool_down_cost(asked, own) for own in known.cool_downs
        )
        self._least_eased = self._least_end + min(easies, default=0)
        self.least = self._least_eased + min(
            own_cost(asked, own, WARM_UP) for own in known.warm_ups
        )
        self._teaches = {frozenset(own.piece.drills) for own in known.warm_ups}

    def can_teach(self, heart: Heart) -> bool:
        """Whether what the drills of a heart need first has been taught, or is done before them: in
        the heart itself, or in some warm-up.
        """
        known, needs = set(self.asked.wishes.taught), set[int]()
        for own in heart.pieces:
            needs.update(need for need in own.piece.asks if need not in known)
            known.update(own.piece.drills)
        return not needs or any(needs <= drills for drills in self._teaches)

    @property
    def bounds(self) -> tuple[int, int]:
        """The least and the most that a heart may take; after each it is a talk that is counted."""
        warm = [own.takes + own.piece.talk for own in self.known.warm_ups]
        cool = [own.takes + own.piece.talk for own in self.known.cool_downs]
        easy = [own.takes + own.piece.talk for own in self.known.easies]
        room = max(warm) + max(cool) + max(easy, default=0)
        return self.asked.slot - room - SLACK_MOST, self.asked.slot - min(warm) - min(cool)

    def _by_second(self, off: int) -> dict[int, list[tuple[int, Sized]]]:
        """By the whole seconds that are left, the cool-downs that fill them after gear that is so
        long taken off, or the talk where that is longer; each with its cost.
        """
        if off in self._closing:
            return self._closing[off]
        found: dict[int, list[tuple[int, Sized]]] = {}
        for own in self.known.cool_downs:
            cost = own_cost(self.asked, own, COOL_DOWN) + cool_down_cost(self.asked, own)
            takes = -(-(max(own.piece.talk, off) + own.takes) // TENTHS)
            for slack in range(SLACK_MOST // TENTHS + 1):
                spare = abs(slack - SPARE) // A_POINT
                found.setdefault(takes + slack, []).append((cost + spare, own))
        for each in found.values():
            each.sort(key=lambda both: both[0])
        self._closing[off] = found
        return found

    def fill(
        self, heart: Heart, cost: int, best: Proposal | None, warm: Mapping[int, int]
    ) -> Proposal | None:
        """The cheapest practice around a heart that costs less than ``best``; else that one.
        ``warm`` are points for warm-ups that open another, by place.
        """
        asked, work = self.asked, heart.pieces
        taken = {own.place for own in work}
        left = asked.slot - heart.takes
        easies, off = self._easies(heart, taken), taken_off(asked, work[-1])
        refused = 0
        for of_warm_up, warm_up in self._warm_ups(work, taken, warm):
            so_far = cost + of_warm_up
            if best and so_far + self._least_eased >= best.cost:
                break
            rest = left - warm_up.takes - warm_up.piece.talk
            for of_easy, takes, easy in easies:
                if best and so_far + of_easy + self._least_end >= best.cost:
                    break
                if easy and easy.place == warm_up.place:
                    continue
                ends = self._by_second(0 if easy else off)
                for of_end, end in ends.get((rest - takes) // TENTHS, ()):
                    whole = so_far + of_easy + of_end
                    if best and whole >= best.cost:
                        break
                    if end.place in taken or end.place in (warm_up.place, easy and easy.place):
                        continue
                    whole += ends_cost(asked, warm_up, easy, end)
                    if best and whole >= best.cost:
                        continue
                    order = [(WARM_UP, warm_up), *heart.order]
                    order += [(EASY, easy)] if easy else []
                    stood = laid(asked, [*order, (COOL_DOWN, end)])
                    if not broken(asked, stood):
                        best = Proposal(stood, whole)
                        continue
                    refused += 1
                    if refused >= REFUSED:
                        return best
        return best

    def _warm_ups(
        self, work: Sequence[Sized], taken: set[int], warm: Mapping[int, int]
    ) -> list[tuple[int, Sized]]:
        found = [
            (
                own_cost(self.asked, own, WARM_UP)
                + warm_up_cost(self.asked, own, work)
                + warm.get(own.place, 0),
                own,
            )
            for own in self.known.warm_ups
            if own.place not in taken
        ]
        return sorted(found, key=lambda both: both[0])

    def _easies(self, heart: Heart, taken: set[int]) -> list[_Easy]:
        """Relief that may follow a heart, the cheapest first."""
        work = heart.pieces
        strokes = frozenset(stroke for own in work for stroke in own.piece.strokes)
        hardest = max(own.piece.hardest for own in work)
        key = are_legs_tired(work), strokes, hardest, work[-1].piece.ends
        if key not in self._eased:
            self._eased[key] = self._every_easy(work)
        return [own for own in self._eased[key] if own[2] is None or own[2].place not in taken]

    def _every_easy(self, work: Sequence[Sized]) -> list[_Easy]:
        """Relief with its cost and what it takes with what goes before it; none where it is left
        out, and what goes before the cool-down is counted there.
        """
        asked, worn = self.asked, set(work[-1].piece.ends)
        kept = any(own.role == EASY for own in asked.wishes.kept)
        found: list[_Easy] = [] if kept else [(relief_cost(asked, None, work), 0, None)]
        for own in self.known.easies:
            cost = own_cost(asked, own, EASY) + relief_cost(asked, own, work)
            lead = max(own.piece.talk, change(asked, worn, own))
            found.append((cost, lead + own.takes, own))
        return sorted(found, key=lambda each: each[0])
