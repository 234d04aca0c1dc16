"""The page of each kind of entry, under the kind's key."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.findings import Finding
from almanac.model.catalogue import Catalogue
from almanac.model.entry import Entry
from almanac.site.benchmark_page import benchmark_page
from almanac.site.block_page import block_page
from almanac.site.drill_page import drill_page
from almanac.site.fault_page import fault_page
from almanac.site.gear_page import gear_page
from almanac.site.links import Page
from almanac.site.practice_page import practice_page
from almanac.site.progression_page import progression_page
from almanac.site.scaled_page import scaled_page
from almanac.site.set_page import clocks_page, set_page

Wanted = Callable[[Entry], bool]
Pages = Callable[[Analysis, Sequence[Finding], Wanted], Iterator[Page]]


def every(entry: Entry) -> bool:
    """Any entry: the pages of all of them are wanted."""
    return True


def _each(
    entries: Callable[[Catalogue], Mapping[str, Any]], page: Callable[[Catalogue, Any], Page]
) -> Pages:
    """A page for each entry, from the catalogue alone."""

    def pages(analysis: Analysis, _: Sequence[Finding], wanted: Wanted) -> Iterator[Page]:
        for entry in filter(wanted, entries(analysis.catalogue).values()):
            yield page(analysis.catalogue, entry)

    return pages


def _each_by_day(
    entries: Callable[[Catalogue], Mapping[str, Any]], page: Callable[[Catalogue, Any, date], Page]
) -> Pages:
    """A page for each entry, from the catalogue and the tests that are known by a day."""

    def pages(analysis: Analysis, _: Sequence[Finding], wanted: Wanted) -> Iterator[Page]:
        for entry in filter(wanted, entries(analysis.catalogue).values()):
            yield page(analysis.catalogue, entry, analysis.today)

    return pages


def _sets(analysis: Analysis, findings: Sequence[Finding], wanted: Wanted) -> Iterator[Page]:
    for id in (id for id, own in analysis.computable.items() if wanted(own)):
        yield set_page(analysis, analysis.summary(id), findings)
        yield clocks_page(analysis, analysis.computable[id])
        other = scaled_page(analysis, analysis.computable[id])
        if other is not None:
            yield other


def _practices(analysis: Analysis, findings: Sequence[Finding], wanted: Wanted) -> Iterator[Page]:
    for summary in analysis.practices.values():
        if wanted(summary.practice):
            yield practice_page(analysis, summary, findings)


def _blocks(analysis: Analysis, findings: Sequence[Finding], wanted: Wanted) -> Iterator[Page]:
    for id, groups in analysis.blocks.items():
        if groups and wanted(analysis.catalogue.blocks[id]):
            yield block_page(analysis, groups, findings)


PAGES: Mapping[str, Pages] = {
    "drill": _each(lambda catalogue: catalogue.drills, drill_page),
    "fault": _each(lambda catalogue: catalogue.faults, fault_page),
    "gear": _each_by_day(lambda catalogue: catalogue.gear, gear_page),
    "benchmark": _each_by_day(lambda catalogue: catalogue.benchmarks, benchmark_page),
    "progression": _each(lambda catalogue: catalogue.progressions, progression_page),
    "set": _sets,
    "practice": _practices,
    "block": _blocks,
}


def entry_pages(
    analysis: Analysis, findings: Sequence[Finding], wanted: Wanted = every
) -> Iterator[Page]:
    """The page of every entry that has one and is wanted."""
    for pages in PAGES.values():
        yield from pages(analysis, findings, wanted)
