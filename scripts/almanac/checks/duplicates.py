"""Rules on what two entries say alike, and on what nobody uses."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.analysis.texts import TEXT_KINDS, texts_of
from almanac.arithmetic.likeness import alike
from almanac.checks.rule import Problem, warns
from almanac.model.composed_words import made_from
from almanac.model.entry import Entry
from almanac.model.practice import Practice
from almanac.units import show_share


@warns("near-duplicate")
def near_duplicate(analysis: Analysis) -> Iterator[Problem]:
    """No two entries of a kind say the same: fewer shared runs of words than the policy's
    ``near_duplicate``.

    Dangers and evidence may be worded alike: a danger said in one way everywhere is a danger
    remembered. So may practices be that were changed in Make a practice from one.
    """
    for kind in TEXT_KINDS:
        for pair in alike(
            texts_of(analysis.catalogue, kind), analysis.catalogue.policy.limit("near_duplicate")
        ):
            first, second = (
                analysis.catalogue.entries[kind, id] for id in (pair.first, pair.second)
            )
            if _of(first) & _of(second):
                continue
            message = (
                f"it says {show_share(pair.share)} the same as '{second.title}' ({second.file})"
            )
            yield Problem(first, (), message, "say what only this one does, or merge the two")


def _of(entry: Entry) -> set[str]:
    """A practice, and the one that it was changed from in Make a practice."""
    return {entry.id, made_from(entry.composed)} - {""} if isinstance(entry, Practice) else set()
