"""A figure that is registered appears everywhere that tells of its kind, and nothing else lists
it.
"""

from __future__ import annotations

import inspect
import itertools
import json
from collections.abc import Callable
from typing import Any

import pytest

from almanac.analysis.analysis import Analysis
from almanac.analysis.comparison import Side, review
from almanac.analysis.figures import REGISTRY, registered, section
from almanac.analysis.figures.figure import Figure, Shown
from almanac.analysis.figures.wholes import WHOLES, figures_for
from almanac.arithmetic.working import Known, Product, Working
from almanac.checks import check
from almanac.kinds import SUMMED
from almanac.report.reports import REPORTS
from almanac.report.shown import DECIMALS, FORMATS
from almanac.resources import SITE_SOURCE
from almanac.site.computed import code_of, computed_page, paragraphs
from almanac.site.data_files import data_files
from almanac.site.kind_pages import pages_of
from almanac.site.templates import Templates
from almanac.source.names import Names

EACH_TABLE = [
    (kind, own.key, table)
    for kind, sections in REGISTRY.items()
    for own in sections
    for table in own.tables
]
NAME, TITLE, VALUE = "splash", "Splash", "1,234,567"


def splash(subject: Any) -> Working:
    """How far the water flies, by nobody's formula."""
    return Product((Known(1234567, "drops"), Known(1)))


@pytest.fixture
def added(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> tuple[str, str, str]:
    """A table of the registry with one figure more: its kind, section and name."""
    kind, key, table = request.param
    tables = section(kind, key).tables
    figure = Figure(NAME, TITLE, splash, Shown.WHOLE)
    monkeypatch.setitem(tables, table, (*tables[table], figure))
    return kind, key, table


def tables(chosen: Callable[[str, str], bool]) -> pytest.MarkDecorator:
    """The test for each table of the kinds and sections that are chosen."""
    cases = [case for case in EACH_TABLE if chosen(*case[:2])]
    return pytest.mark.parametrize("added", cases, indirect=True, ids=" ".join)


# A word of a facet and an item of a set are told by name, by explain and reviews; a terminal and
# JSON show no working of theirs.
BY_NAME = {"facet", "item"}
each_table = tables(lambda kind, key: True)
each_in_data = tables(lambda kind, key: key not in BY_NAME)
each_reported = tables(lambda kind, key: kind in SUMMED and key not in BY_NAME)


def first_with(analysis: Analysis, kind: str) -> tuple[str, str]:
    """An entry of a kind, and a lane group, that have the new figure."""
    for id in WHOLES[kind].computable(analysis):
        for group in WHOLES[kind].groups(analysis, id):
            if any(NAME in name for name in figures_for(analysis, kind, id, group)):
                return id, group
    raise AssertionError(f"no {kind} of the small catalogue has figures in that table")


@each_table
def test_a_new_figure_is_explained_by_name(added: tuple[str, str, str], analysis: Analysis) -> None:
    """What ``explain`` lists and prints is this dictionary."""
    kind, *_ = added
    id, group = first_with(analysis, kind)
    new = {name: f for name, f in figures_for(analysis, kind, id, group).items() if NAME in name}
    assert all(figure.value == 1234567 for figure in new.values())


@each_table
def test_a_new_figure_stands_on_the_page(added: tuple[str, str, str], analysis: Analysis) -> None:
    kind, *_ = added
    id, _ = first_with(analysis, kind)
    templates = Templates(SITE_SOURCE / "templates")
    pages = pages_of(analysis, check(analysis), analysis.catalogue.entries[kind, id])
    page = next(page for page in pages if page.template == kind)
    text = templates.page(page.template, {**page.context, "base": page.base})
    assert VALUE in text


@each_reported
def test_a_new_figure_stands_in_the_reports(
    added: tuple[str, str, str], analysis: Analysis
) -> None:
    kind, *_ = added
    id, _ = first_with(analysis, kind)
    report = REPORTS[kind]
    summed = report.summed(analysis, id, None, None)
    text = report.text(analysis.catalogue, summed)
    assert VALUE in text and NAME in text.lower()
    assert f'"{NAME}": 1234567' in json.dumps(report.json(summed, ()))


@each_in_data
def test_a_new_figure_stands_in_the_data(added: tuple[str, str, str], analysis: Analysis) -> None:
    kind, *_ = added
    id, _ = first_with(analysis, kind)
    files = dict(data_files(analysis, Names({}, {}), ""))
    assert "1234567" in files[f"data/v1/{kind}/{id}.json"]


@each_table
def test_a_new_figure_is_told_of_by_how_it_is_computed(
    added: tuple[str, str, str], analysis: Analysis
) -> None:
    sections = computed_page(analysis).context["sections"]
    told = [
        (formula.title, formula.paragraphs)
        for chapter in sections
        for formula in chapter["formulas"]
    ]
    assert (TITLE, ("How far the water flies, by nobody's formula.",)) in told


@pytest.mark.parametrize(("kind", "key", "table"), EACH_TABLE, ids=lambda word: word)
def test_a_new_figure_that_moves_is_reviewed(
    kind: str, key: str, table: str, analysis: Analysis, monkeypatch: pytest.MonkeyPatch
) -> None:
    count = itertools.count()
    figure = Figure(NAME, TITLE, lambda subject: Known(next(count)), Shown.WHOLE)
    tables = section(kind, key).tables
    monkeypatch.setitem(tables, table, (*tables[table], figure))
    side = Side(analysis.catalogue.documents, analysis, [])
    # as if each entry had changed: what surely stands still is not compared
    monkeypatch.setattr("almanac.analysis.sameness.Sameness.holds", lambda *_: False)
    moved = {move.kind for move in review(side, side).figures if NAME in move.name}
    assert moved == {kind}


def test_a_catalogue_beside_itself_moves_no_figure(analysis: Analysis) -> None:
    side = Side(analysis.catalogue.documents, analysis, [])
    assert review(side, side).figures == []


def test_every_figure_says_how_it_is_computed() -> None:
    for _, figure in registered():
        for member in figure.documented:
            assert inspect.unwrap(getattr(member, "fget", None) or getattr(member, "func", member))
            assert not code_of(member).startswith("operator"), figure.name
            assert paragraphs(member.__doc__), figure.name


def test_every_way_of_showing_has_its_format() -> None:
    assert set(FORMATS) == set(DECIMALS) == set(Shown)


def test_names_of_figures_are_their_own() -> None:
    for kind, sections in REGISTRY.items():
        for own in sections:
            names = [figure.name for table in own.tables.values() for figure in table]
            assert len(set(names)) == len(names), (kind, own.key)
