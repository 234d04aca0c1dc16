"""What is reported of each kind that is added up: as text and as JSON."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures.wholes import WHOLES, figures_for
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.summary import SetSummary, summarise
from almanac.findings import Finding
from almanac.model.catalogue import Catalogue
from almanac.report.block.json import block_json
from almanac.report.block.text import block_text
from almanac.report.practice_json import practice_json
from almanac.report.practice_text import practice_text
from almanac.report.set_json import set_json
from almanac.report.set_text import set_text
from almanac.report.shown import rounded
from almanac.rounding import in_tenths
from almanac.units import Course


@dataclass(frozen=True)
class Report:
    """How a kind is reported.

    ``summed`` gives a computable entry added up, in a course and for a lane group where they are
    named; it is empty where the entry is not for that group. ``takes_course`` where it can be laid
    into another pool.
    """

    summed: Callable[[Analysis, str, Course | None, str | None], Any]
    text: Callable[[Catalogue, Any], str]
    json: Callable[[Any, Iterable[Finding]], dict[str, Any]]
    takes_course: bool = False


def _set(analysis: Analysis, id: str, course: Course | None, group: str | None) -> SetSummary:
    if course is None and group is None:
        return analysis.summary(id)
    groups = None if group is None else [group]
    return summarise(analysis.timing, analysis.computable[id], course, groups)


def _practice(
    analysis: Analysis, id: str, course: Course | None, group: str | None
) -> PracticeSummary:
    return analysis.practices[id]


def _block(
    analysis: Analysis, id: str, course: Course | None, group: str | None
) -> dict[str, BlockSummary]:
    groups = analysis.blocks[id]
    return {name: summary for name, summary in groups.items() if group in (None, name)}


REPORTS: Mapping[str, Report] = {
    "set": Report(_set, set_text, set_json, takes_course=True),
    "practice": Report(_practice, practice_text, lambda *of: in_tenths(practice_json(*of))),
    "block": Report(_block, block_text, lambda *of: in_tenths(block_json(*of))),
}


def figures_json(analysis: Analysis, kind: str, id: str) -> dict[str, Any]:
    """The figures of an entry that is not added up, by name: those that are the same for every lane
    group under ``figures``, the others under ``groups``. Nothing where it has none.
    """
    shared = figures_for(analysis, kind, id, None)
    groups = {}
    for group in WHOLES[kind].groups(analysis, id):
        own = figures_for(analysis, kind, id, group)
        found = {name: rounded(figure) for name, figure in own.items() if name not in shared}
        if found:
            groups[group] = found
    figures = {name: rounded(figure) for name, figure in shared.items()}
    return {
        **({"figures": figures} if figures else {}),
        **({"groups": groups} if groups else {}),
    }
