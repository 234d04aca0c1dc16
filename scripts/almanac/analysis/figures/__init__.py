"""The registry of figures: by kind of entry, every number that is worked out of it. Pages, reports,
``explain``, reviews and "How it is computed" read this and list no figure themselves, so that a new
figure is one function in ``arithmetic`` and one line in the module of its kind here.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import Any

from almanac.analysis.figures.benchmarks import BENCHMARK
from almanac.analysis.figures.blocks import BLOCK
from almanac.analysis.figures.figure import Figure, NamedFigure, Section
from almanac.analysis.figures.gear import GEAR
from almanac.analysis.figures.practices import PRACTICE
from almanac.analysis.figures.sets import SET

REGISTRY: dict[str, tuple[Section, ...]] = {
    "set": SET,
    "practice": PRACTICE,
    "block": BLOCK,
    "benchmark": BENCHMARK,
    "gear": GEAR,
}


def section(kind: str, key: str) -> Section:
    """One section of a kind's figures. Raises KeyError where the kind has none of that key."""
    return {section.key: section for section in REGISTRY[kind]}[key]


def table(
    kind: str, key: str, name: str, subject: Any, told: Collection[str] = ()
) -> list[NamedFigure]:
    """The figures of one table of a section, of one subject, those without a number too; not those
    that are ``told`` elsewhere.
    """
    figures = section(kind, key).tables[name]
    return [figure.of(subject) for figure in figures if figure.name not in told]


def heads(kind: str, key: str, name: str) -> list[str]:
    """What a page writes over the columns of a table."""
    return [figure.title for figure in section(kind, key).tables[name]]


def by_name(kind: str, key: str, subject: Any) -> dict[str, NamedFigure]:
    """The figures of all tables of a section, of one subject, by their short names."""
    found = (figure for own in section(kind, key).tables.values() for figure in own)
    return {figure.name: figure.of(subject) for figure in found}


def all_figures(kind: str, whole: Any) -> dict[str, NamedFigure]:
    """Every figure of a whole entry that has a number, by its full name."""
    found = (figure for section in REGISTRY[kind] for figure in section.figures(whole))
    return {figure.name: figure for figure in found if figure.working is not None}


def registered() -> Iterator[tuple[Section, Figure[Any]]]:
    """Every figure of every kind, with the section that it stands in."""
    for sections in REGISTRY.values():
        for own in sections:
            for figures in own.tables.values():
                yield from ((own, figure) for figure in figures)
