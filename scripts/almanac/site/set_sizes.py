"""The sizes in which a set is offered: as it is written, and with fewer or more rounds or reps."""

from __future__ import annotations

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.scaling import REPS, ROUNDS, Scalable, scalable, scaled
from almanac.arithmetic.summary import SetSummary, summarise
from almanac.model.swim_set import SwimSet

_MOST_KEPT = 32  # a set's page and the finder ask one after the other


def scale_of(analysis: Analysis, swim_set: SwimSet) -> Scalable | None:
    """What of a set its page offers fewer or more of: its rounds, else its reps."""
    most = analysis.catalogue.policy.limit("most_reps")
    found = scalable(swim_set, ROUNDS, most) or scalable(swim_set, REPS, most)
    return found if found and len(found.offered()) > 1 else None


def size_words(scale: Scalable, number: int) -> str:
    """A number of rounds or reps in words."""
    one = scale.what.removesuffix("s") if number == 1 else scale.what
    return f"{number} {one}"


def summary_of_size(analysis: Analysis, id: str, number: int) -> SetSummary:
    """The figures of a computable set with so many of what it is scaled by, in its own course."""
    kept = analysis.once(summary_of_size, dict[tuple[str, int], SetSummary])
    if (id, number) not in kept:
        while len(kept) >= _MOST_KEPT:
            kept.pop(next(iter(kept)))
        kept[id, number] = _summarised(analysis, id, number)
    return kept[id, number]


def _summarised(analysis: Analysis, id: str, number: int) -> SetSummary:
    swim_set = analysis.computable[id]
    scale = scale_of(analysis, swim_set)
    if scale is None or number == scale.written:
        return analysis.summary(id)
    return summarise(analysis.timing, scaled(swim_set, scale, number))
