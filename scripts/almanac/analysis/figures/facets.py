"""Figures that sets and practices have alike: distance by the words of each facet, and the shares
that coaches ask for.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.analysis.figures.figure import Figure, Shown
from almanac.arithmetic.facets import Shares, by_facet, facet_working
from almanac.arithmetic.set_workings import (
    board_share,
    fast_share,
    kick_into_stroke,
    kick_share,
    prone_share,
    resisted_share,
    supine_share,
)
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.working import Working


@dataclass(frozen=True)
class FacetWord:
    """One word of a facet in a set or a practice."""

    swum: Swum
    facet: str
    word: str
    unit: str


def facet_words(swum: Swum, unit: str) -> Iterator[tuple[str, FacetWord]]:
    """Each word of each facet, under a name of its own: ``mode kick``."""
    for facet, split in swum.by.items():
        for word in split:
            yield f"{facet} {word} {{}}", FacetWord(swum, facet, word, unit)


def _distance(of: FacetWord) -> Working:
    return facet_working(of.swum.pieces, of.facet, of.word, of.swum.timing.scale)


def _unit(swum: Swum) -> str:
    return swum.course.unit.value


FACET_WORD: tuple[Figure[FacetWord], ...] = (
    Figure("", "Distance", _distance, Shown.DISTANCE, lambda of: of.unit, (by_facet,)),
)

_SHARES = (Shares,)
SHARES: tuple[Figure[Swum], ...] = (
    Figure("kick share", "Kick", kick_share, Shown.SHARE, "", _SHARES, "none"),
    Figure("supine share", "Flutter on the back", supine_share, Shown.SHARE, "", _SHARES, "none"),
    Figure("prone share", "Flutter on the front", prone_share, Shown.SHARE, "", _SHARES, "none"),
    Figure("board share", "Flutter with a board", board_share, Shown.SHARE, "", _SHARES, "none"),
    Figure("resisted share", "Resisted", resisted_share, Shown.SHARE, "", _SHARES, "none"),
    Figure("fast share", "Fast", fast_share, Shown.SHARE, "", _SHARES, "none"),
    Figure("kick into stroke", "Kick into stroke", kick_into_stroke, Shown.DISTANCE, _unit,
           _SHARES),
)  # fmt: skip
