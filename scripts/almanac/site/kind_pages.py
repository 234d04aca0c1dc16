"""The page of each kind of entry, under the kind's key."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.findings import Finding
from almanac.model.block import Block
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry
from almanac.model.practice import Practice
from almanac.model.swim_set import SwimSet
from almanac.site.benchmark_page import benchmark_page
from almanac.site.block_page import block_page
from almanac.site.drill_page import drill_page
from almanac.site.fault_page import fault_page
from almanac.site.gear_page import gear_page
from almanac.site.links import Page
from almanac.site.meet_page import meet_page
from almanac.site.need_page import need_page
from almanac.site.practice_page import practice_page
from almanac.site.progression_page import progression_page
from almanac.site.scaled_page import scaled_page
from almanac.site.season_page import season_page
from almanac.site.set_clocks import own_clock
from almanac.site.set_page import clocks_page, set_page
from almanac.site.source_page import source_page
from almanac.site.timetable_page import timetable_page

Wanted = Callable[[Entry], bool]
Pages = Callable[[Analysis, Sequence[Finding], Any], Iterator[Page]]


def every(entry: Entry) -> bool:
    """Any entry: the pages of all of them are wanted."""
    return True


def _one(page: Callable[[Catalogue, Any], Page]) -> Pages:
    """One page, from the catalogue alone."""

    def pages(analysis: Analysis, _: Sequence[Finding], entry: Entry) -> Iterator[Page]:
        yield page(analysis.catalogue, entry)

    return pages


def _one_analysed(page: Callable[[Analysis, Any], Page]) -> Pages:
    """One page, from the analysis."""

    def pages(analysis: Analysis, _: Sequence[Finding], entry: Entry) -> Iterator[Page]:
        yield page(analysis, entry)

    return pages


def _one_by_day(page: Callable[[Catalogue, Any, date], Page]) -> Pages:
    """One page, from the catalogue and the tests that are known by a day."""

    def pages(analysis: Analysis, _: Sequence[Finding], entry: Entry) -> Iterator[Page]:
        yield page(analysis.catalogue, entry, analysis.today)

    return pages


def _set(analysis: Analysis, findings: Sequence[Finding], swim_set: SwimSet) -> Iterator[Page]:
    if swim_set.id in analysis.computable:
        pools = [own_clock(analysis, swim_set)]
        yield set_page(analysis, analysis.summary(swim_set.id), findings, pools)
        yield clocks_page(analysis, swim_set, pools)
        other = scaled_page(analysis, swim_set)
        if other is not None:
            yield other


def _practice(
    analysis: Analysis, findings: Sequence[Finding], practice: Practice
) -> Iterator[Page]:
    if practice.id in analysis.practices:
        yield practice_page(analysis, analysis.practices[practice.id], findings)


def _block(analysis: Analysis, findings: Sequence[Finding], block: Block) -> Iterator[Page]:
    groups = analysis.blocks.get(block.id)
    if groups:
        yield block_page(analysis, groups, findings)


def _one_with_findings(page: Callable[[Analysis, Any, Sequence[Finding]], Page]) -> Pages:
    """One page, from the analysis and what the checks say."""

    def pages(analysis: Analysis, findings: Sequence[Finding], entry: Entry) -> Iterator[Page]:
        yield page(analysis, entry, findings)

    return pages


PAGES: Mapping[str, Pages] = {
    "drill": _one_analysed(drill_page),
    "fault": _one(fault_page),
    "gear": _one_analysed(gear_page),
    "benchmark": _one_by_day(benchmark_page),
    "progression": _one(progression_page),
    "source": _one(source_page),
    "need": _one_analysed(need_page),
    "set": _set,
    "practice": _practice,
    "block": _block,
    "meet": _one_with_findings(meet_page),
    "season": _one_with_findings(season_page),
    "timetable": _one_with_findings(timetable_page),
}


def pages_of(analysis: Analysis, findings: Sequence[Finding], entry: Entry) -> Iterator[Page]:
    """The page of one entry and those beside it; none where it has none."""
    if entry.kind in PAGES:
        yield from PAGES[entry.kind](analysis, findings, entry)
