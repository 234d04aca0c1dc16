"""The page of a fault: each cause with its quick test and its first drill, before any prose."""

from __future__ import annotations

import re

import pytest

from almanac.analysis.analysis import Analysis
from almanac.site.site_pages import SitePages

FAULT = "knees-break-surface"


@pytest.fixture(scope="module")
def page(analysis: Analysis) -> str:
    pages = SitePages(analysis, {})
    return dict(pages.of_entries(lambda entry: entry.id == FAULT))[f"faults/{FAULT}.md"]


def test_causes_come_before_prose_and_pain_is_in_sight(page: str) -> None:
    marks = ["<h1>", '<ol class="causes">', 'class="refer"', 'id="what-you-see"', 'id="why-']
    places = [page.index(mark) for mark in marks]
    assert places == sorted(places)
    assert "<details" not in page[page.index("</ol>") : page.index('class="refer"')]


def test_under_each_cause_stand_its_test_and_its_first_drill(page: str, analysis: Analysis) -> None:
    fault, drills = analysis.catalogue.faults[FAULT], analysis.catalogue.drills
    causes = page[page.index('<ol class="causes">') : page.index("</ol>")]
    found = re.findall(r'class="test">.*?class="first-drill"><a [^>]*>(.*?)</a>', causes, re.DOTALL)
    assert found == [drills[cause.mended_by[0]].title for cause in fault.causes]
    for cause in fault.causes:
        for id in cause.mended_by:
            assert f"drills/{id}.html" in causes


def test_what_a_test_needs_stands_behind_it(analysis: Analysis) -> None:
    pages = SitePages(analysis, {})
    needs = dict(pages.of_entries(lambda entry: entry.id == "feet-too-deep"))
    tests = re.findall(r'class="test">.*?</p>', needs["faults/feet-too-deep.md"])
    causes = analysis.catalogue.faults["feet-too-deep"].causes
    assert [one.endswith("Needs: watch.</span></p>") for one in tests] == [
        cause.needs == ("watch",) for cause in causes
    ]
    assert any(cause.needs for cause in causes)
