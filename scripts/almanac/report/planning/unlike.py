"""Composed practices of which no two say nearly the same: which of them a plan wants most."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace

from almanac.analysis.analysis import Analysis
from almanac.analysis.texts import texts_of
from almanac.arithmetic.likeness import alike
from almanac.arithmetic.planning.choices import LOAD
from almanac.arithmetic.planning.greedy import greedy, improved
from almanac.report.planning.problem import Planning

_NEAR = 0.9
"""Of the likeness that a check tells: titles, which come in the end, make it a little more."""


@dataclass
class _Sets:
    """Sets of composed practices of which no two are alike, and what a plan costs with each."""

    planning: Planning
    analysis: Analysis
    gone: Collection[str]
    steps: int

    def tried(self, order: Sequence[str]) -> tuple[int, list[str]]:
        """What a plan costs with the earliest of each that are alike, and which these are."""
        kept = unlike(self.analysis, order, self.gone)
        _, cost = self.planned(self.with_only(kept))
        return cost, kept

    def with_only(self, kept: Collection[str]) -> Planning:
        """The planning with some of its composed practices alone."""
        choices = (own for own in self.planning.choices if not own.composed or own.id in kept)
        return replace(self.planning, choices=tuple(choices))

    def planned(self, planning: Planning) -> tuple[set[str], int]:
        """The practices of a plan, and what it costs."""
        problem = planning.problem
        plan = improved(problem, greedy(problem), self.steps)
        return {problem.choices[place].id for place in plan}, problem.cost(plan)


def best_apart(
    planning: Planning, analysis: Analysis, gone: Collection[str], steps: int
) -> Planning:
    """A planning where of composed practices that are alike one stays: the one with which so many
    exchanges find a cheaper plan. ``analysis`` is of a catalogue in which all of them stand.

    It begins with the better of two orders, as they were composed and the lightest first; then each
    other that a plan of all of them has is put before those that it is like, and stays where the
    plan is cheaper so.
    """
    sets = _Sets(planning, analysis, gone, steps)
    composed = [own for own in planning.choices if own.composed]
    orders = composed, sorted(composed, key=lambda own: own.sums[LOAD])
    cost, kept = min(sets.tried([own.id for own in order]) for order in orders)
    wanted, _ = sets.planned(planning)
    for own in composed:
        if own.id in wanted and own.id not in kept:
            others = [other.id for other in composed if other.id not in {own.id, *kept}]
            cost, kept = min((cost, kept), sets.tried([own.id, *kept, *others]))
    return sets.with_only(kept)


def unlike(analysis: Analysis, drafts: Sequence[str], gone: Collection[str] = ()) -> list[str]:
    """Of practices that are only tried, the earliest of each that are alike: none is like one that
    is there, or like one that was kept before it. Those that are ``gone`` count as nothing.

    Each is held beside those alone that are kept: what very many texts say counts as no text's, so
    that the more are tried, the less alike they would be.
    """
    limit = _NEAR * analysis.catalogue.policy.limit("near_duplicate")
    texts, found = texts_of(analysis.catalogue, "practice"), list[str]()
    kept = {id: text for id, text in texts.items() if id not in {*drafts, *gone}}
    for id in drafts:
        beside = {**kept, id: texts[id]}
        if not any(id in (pair.first, pair.second) for pair in alike(beside, limit)):
            kept = beside
            found.append(id)
    return found
