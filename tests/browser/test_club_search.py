"""What coaches type into the search, against the club's own entries: which share finds what is
meant.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest
import yaml
from playwright.sync_api import Browser, Page
from shared import CATALOGUE

from .web import Server, answered, find

QUERIES = CATALOGUE.parent / "queries"
AMONG_THE_FIRST_THREE = {
    "everyday": 0.95, "more": 0.92, "untuned": 0.95, "on-deck": 0.95, "kept-aside": 0.92,
    "fresh": 0.9, "needs": 0.95, "people": 0.93, "fifty-more": 0.88, "sixty": 0.95,
    "sixty-unseen": 0.88, "eighty-unseen": 0.93, "year": 0.92, "eighty-other-hand": 0.94,
    "many-voices": 0.93, "eighty-blind": 0.95, "safety": 1, "five-voices": 0.92,
    "six-by-class": 0.93, "around": 1, "wet-thumbs": 0.95, "fifty-mixed": 0.94,
}  # fmt: skip


@pytest.fixture(scope="module")
def club(club_site: Path) -> Iterator[Server]:
    """The club's own site, served."""
    with Server(club_site) as running:
        yield running


@pytest.fixture(scope="module")
def page(browser: Browser, club: Server) -> Iterator[Page]:
    """Find, opened once for all lists of questions: it keeps nothing of what it is asked by a
    script.
    """
    kept = browser.new_page()
    find(kept, club.address)
    yield kept
    kept.close()


def _is_sure(page: Page, question: str) -> bool:
    """Whether Find gives an answer that it does not call less sure."""
    page.locator("#find-words").fill(question)
    return page.locator("[data-best]").count() > 0


def _page_of(address: str) -> str:
    """The page that a hit leads to: a set cut to fewer rounds is that set, a danger stands on its
    page.
    """
    return address.partition("#")[0].removesuffix(".html").replace("sets/scaled/", "sets/")


@pytest.mark.parametrize("name", AMONG_THE_FIRST_THREE)
def test_everyday_words_find_what_is_meant(
    page: Page, name: str, record_property: pytest.RecordProperty
) -> None:
    wanted: Mapping[str, list[str]] = yaml.load(
        (QUERIES / f"{name}.yml").read_text("utf-8"), yaml.CSafeLoader
    )
    answers = answered(page, *map(str, wanted))
    of_nothing = [str(question) for question, pages in wanted.items() if not pages]
    sure = [question for question in of_nothing if _is_sure(page, question)]
    missed = {
        question: found
        for (question, pages), found in zip(wanted.items(), answers, strict=True)
        if pages and not {_page_of(address) for address in found} & set(pages)
    }
    share = 1 - (len(missed) + len(sure)) / len(wanted)
    record_property("share", share)
    print(f"{name}: {share:.1%} of {len(wanted)} queries, missed: {missed}, sure of: {sure}")
    assert share >= AMONG_THE_FIRST_THREE[name], missed


def test_what_happens_now_leads_to_what_is_done_in_an_emergency(page: Page) -> None:
    happens = (
        "chlorine leak", "there is a gas leak", "choking", "she is chocking", "asthma attack",
        "child having a seizure", "not breathing",
        "head injury", "hit her head", "blue lips", "swimmer drowning", "fire alarm",
        "allergic reaction", "collapsed at the wall",
    )  # fmt: skip
    found = dict(zip(happens, answered(page, *happens), strict=True))
    assert {question: hits[0] for question, hits in found.items()} == dict.fromkeys(
        happens, "safety.html#in-an-emergency"
    )


_CARRIED = """([facet, hits]) => {
  const { rows, columns, words } = JSON.parse(document.querySelector("#finder-data").textContent);
  const at = (name) => columns.indexOf(name);
  const names = words[facet === "needs" ? "gear" : facet];
  return hits.flatMap((hit) => rows.find((row) => row[at("href")] === hit)[at(facet)].map((own) =>
    names[own][0]));
}"""


@pytest.mark.parametrize(
    ("question", "facet", "word"),
    [
        ("kick without board", "needs", "kickboard"),
        ("kick set, not with fins", "needs", "fins"),
        ("nothing on the back", "position", "supine"),
        ("drills but not butterfly", "stroke", "butterfly"),
        ("anything except freestyle", "stroke", "freestyle"),
        ("back kick no fins or boards", "needs", "kickboard"),
    ],
)
def test_what_is_not_wanted_is_not_among_the_first(
    page: Page, question: str, facet: str, word: str
) -> None:
    (hits,) = answered(page, question)
    whole = [hit.partition("#")[0].replace("sets/scaled/", "sets/") for hit in hits]
    assert len(hits) == 3
    assert word not in page.evaluate(_CARRIED, [facet, whole])


@pytest.mark.parametrize(
    ("question", "kind"),
    [
        ("kick", "faults/"),  # a word that half of all pages have says nothing of what is wrong
        ("kicking", "faults/"),
        ("cant float", "gear/"),  # what is not done is no float to hold
        ("won't float", "gear/"),
        ("can not float", "gear/"),
    ],
)
def test_what_is_not_meant_by_a_word_is_not_among_the_first(
    page: Page, question: str, kind: str
) -> None:
    (hits,) = answered(page, question)
    assert len(hits) == 3 and not [hit for hit in hits if hit.startswith(kind)], hits
