"""Beside a set's page, the set with fewer or more rounds or reps: whiteboard, sums and clocks of
each number that is offered.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures import heads, table
from almanac.arithmetic.scaling import Scalable, item_at, scaled
from almanac.arithmetic.summary import SetSummary
from almanac.model.reps import Reps
from almanac.model.swim_set import SwimSet
from almanac.report.known_words import unfit_lines
from almanac.report.shown import shown
from almanac.report.timed_board import timed_lines
from almanac.report.ways import ways_of
from almanac.report.whiteboard import board, board_lines
from almanac.site.links import Page
from almanac.site.preferences import preferences
from almanac.site.set_sizes import scale_of, size_words, summary_of_size

_FOLDER = "sets/scaled"


@dataclass(frozen=True)
class ScaledOffer:
    """One number of rounds or reps, with the link to what it comes to; "" for what is written."""

    words: str
    href: str


def offers(analysis: Analysis, swim_set: SwimSet) -> list[ScaledOffer]:
    """The numbers that a set's page links to; none where it cannot be asked for another."""
    scale = scale_of(analysis, swim_set)
    if scale is None:
        return []
    page = f"{_FOLDER}/{swim_set.id}.html"
    return [
        ScaledOffer(
            size_words(scale, number), "" if number == scale.written else f"{page}#{number}"
        )
        for number in scale.offered()
    ]


def ways_offered(analysis: Analysis, swim_set: SwimSet) -> str:
    """Whether what is offered is fewer, more, or both."""
    scale = scale_of(analysis, swim_set)
    return scale.ways if scale else ""


def of_what(analysis: Analysis, swim_set: SwimSet) -> str:
    """Which of its items a set is scaled by, as the whiteboard has it; "" where it has but one."""
    scale = scale_of(analysis, swim_set)
    if scale is None or scale.alone:
        return ""
    item = item_at(swim_set.items, scale.path)
    lines = board_lines(analysis.catalogue, (item,))
    if isinstance(item, Reps):
        return lines[-1 if item.by_group else 0].what
    first = next(line for line in lines if line.depth)
    return f"the rounds that begin with {first.what}"


def scaled_page(analysis: Analysis, swim_set: SwimSet) -> Page | None:
    """The page of the numbers that are offered, None where there is none."""
    scale = scale_of(analysis, swim_set)
    if scale is None:
        return None
    meant = analysis.meant(swim_set)
    own = next(iter(meant), "")
    context = {
        "entry": swim_set,
        "what": f"{scale.ways} {scale.what}",
        "of_what": of_what(analysis, swim_set),
        "written": size_words(scale, scale.written),
        "choosing": preferences(analysis, own, str(swim_set.course), meant=meant),
        "heads": heads("set", "group", "clock"),
        "sizes": [_size(analysis, swim_set, scale, number) for number in scale.offered()],
    }
    return Page(f"{_FOLDER}/{swim_set.id}.md", "scaled", context)


def _size(analysis: Analysis, swim_set: SwimSet, scale: Scalable, number: int) -> dict[str, Any]:
    own = scaled(swim_set, scale, number)
    order = dict.fromkeys((*analysis.meant(swim_set), *analysis.catalogue.lane_groups))
    summary = summary_of_size(analysis, swim_set.id, number)
    return {
        "number": number,
        "words": size_words(scale, number),
        "board": [
            *timed_lines(
                analysis.catalogue, board(analysis.catalogue, own), summary.clocks, tuple(order)
            ),
            *unfit_lines(analysis.catalogue, summary.clocks, analysis.meant(swim_set)),
        ],
        "totals": [(who, ids, _totals(summary, ids)) for who, ids, _ in _ways(analysis, summary)],
        "rows": [
            (id, analysis.catalogue.lane_groups[id].title, _cells(summary, id)) for id in order
        ],
    }


def _ways(analysis: Analysis, summary: SetSummary) -> list[tuple[str, tuple[str, ...], Any]]:
    return ways_of(analysis.catalogue.lane_groups, summary)


def _totals(summary: SetSummary, ids: tuple[str, ...]) -> list[tuple[str, str]]:
    figures = table("set", "set", "totals", summary.of(ids[0] if ids else None))
    if summary.swim_set.is_on_land:
        figures = [figure for figure in figures if figure.name == "reps"]
    return [
        (figure.figure.title, shown(figure)) for figure in figures if not figure.figure.converts
    ]


def _cells(summary: SetSummary, group: str) -> list[str]:
    return [shown(figure) for figure in table("set", "group", "clock", summary.clocks[group])]
