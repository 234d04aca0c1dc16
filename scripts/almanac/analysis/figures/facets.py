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
from almanac.units import show_distance


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


def partly(swum: Swum) -> str:
    """What of a distance is no plain number: how much of it is estimated, and how often it is not
    known how far something swum by time goes; "" where all is measured.
    """
    unknown = sum(piece.unknown is not None for piece in swum.by_time)
    words = []
    if swum.estimated and swum.estimated == swum.distance.value:
        words.append(ESTIMATED)
    elif swum.estimated:
        words.append(f"{show_distance(swum.estimated, swum.course.unit)} of it estimated")
    if unknown:
        words.append(f"without {unknown} swum by time, whose distance is not known")
    return ", ".join(words)


ESTIMATED, PART_ESTIMATED = "estimated", "part estimated"


def word_partly(swum: Swum, facet: str, word: str) -> str:
    """Whether the distance of one word of a facet, or some of it, is estimated, in words."""
    estimated = by_facet(swum.by_time, facet, swum.timing.scale)
    if word not in estimated:
        return ""
    return ESTIMATED if estimated[word] == swum.by[facet][word] else PART_ESTIMATED


def _partly(of: FacetWord) -> str:
    return word_partly(of.swum, of.facet, of.word)


def part_estimated(swum: Swum) -> str:
    """Whether what is swum, or some of it, is estimated, in words."""
    if not swum.by_time:
        return ""
    return ESTIMATED if swum.estimated == swum.distance.value else PART_ESTIMATED


def _distance(of: FacetWord) -> Working:
    return facet_working(of.swum.pieces, of.facet, of.word, of.swum.timing.scale)


def _unit(swum: Swum) -> str:
    return swum.course.unit.value


FACET_WORD: tuple[Figure[FacetWord], ...] = (
    Figure(
        "", "Distance", _distance, Shown.DISTANCE, lambda of: of.unit, (by_facet,), partly=_partly
    ),
)

_SHARES = (Shares,)
SHARES: tuple[Figure[Swum], ...] = (
    Figure("kick share", "Kick", kick_share, Shown.SHARE, "", _SHARES, "none",
           partly=part_estimated),
    Figure("supine share", "Flutter on the back", supine_share, Shown.SHARE, "", _SHARES, "none",
           partly=part_estimated),
    Figure("prone share", "Flutter on the front", prone_share, Shown.SHARE, "", _SHARES, "none",
           partly=part_estimated),
    Figure("board share", "Flutter with a board", board_share, Shown.SHARE, "", _SHARES, "none",
           partly=part_estimated),
    Figure("resisted share", "Resisted", resisted_share, Shown.SHARE, "", _SHARES, "none",
           partly=part_estimated),
    Figure("fast share", "Fast", fast_share, Shown.SHARE, "", _SHARES, "none",
           partly=part_estimated),
    Figure("kick into stroke", "Kick into stroke", kick_into_stroke, Shown.DISTANCE, _unit,
           _SHARES, partly=part_estimated),
)  # fmt: skip
