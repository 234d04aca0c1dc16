"""Composed practices of which no two say nearly the same."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Sequence

from almanac.analysis.analysis import Analysis
from almanac.analysis.texts import texts_of
from almanac.arithmetic.likeness import alike


def unlike(analysis: Analysis, drafts: Sequence[str], gone: Collection[str] = ()) -> list[str]:
    """Of practices that are only tried, the earliest of each that are alike: none is like one that
    is there, or like one that was kept before it. Those that are ``gone`` count as nothing.
    """
    limit = analysis.catalogue.policy.limit("near_duplicate")
    like = defaultdict[str, set[str]](set)
    for pair in alike(texts_of(analysis.catalogue, "practice"), limit):
        like[pair.first].add(pair.second)
        like[pair.second].add(pair.first)
    kept = analysis.catalogue.practices.keys() - {*drafts, *gone}
    found = []
    for id in drafts:
        if like[id].isdisjoint(kept):
            kept.add(id)
            found.append(id)
    return found
