"""Three clubs begun with ``start``, on one host below three paths, on a phone: each whole, each by
itself.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from own_clubs import CLUBS, OwnClub, own_club
from playwright.sync_api import BrowserContext, Page, expect
from shared import share

from .web import Server, Watched

FIRST = {"yards": "first-performing", "long-course": "first-building", "land": "first-foundation"}
# A calculator, what is typed, and what it says: load is minutes times rating (Foster 2001).
CALCULATED = {
    "water": ("points", {"Base time": "46.91", "Time swum": "125"}, "is worth 168 points of 1,000"),
    "land": ("session-load",
             {"Minutes, first start to last finish": "60", "Rating of the whole, 0 to 10": "7"},
             "60 minutes at 7: 420"),
}  # fmt: skip
_IS_WIDER = "document.documentElement.scrollWidth > innerWidth"
_KEYS = "Object.keys(localStorage)"


@pytest.fixture(scope="module")
def clubs(tmp_path_factory: pytest.TempPathFactory) -> dict[str, OwnClub]:
    return {which: own_club(tmp_path_factory, which) for which in CLUBS}


@pytest.fixture(scope="module")
def host(clubs: dict[str, OwnClub], tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """One host, each club below its own path."""
    folder = tmp_path_factory.mktemp("host")
    for club in clubs.values():
        (folder / club.path.strip("/")).symlink_to(club.root / "site")
    with Server(folder) as running:
        yield running


@pytest.fixture
def page(context: BrowserContext, host: Server) -> Iterator[Page]:
    """A page on a phone of its own; the test fails where it logs an error or asks another host."""
    opened = context.new_page()
    watched = Watched(opened, host.address)
    yield opened
    assert watched.troubles == []


def at(host: Server, club: OwnClub, file: str = "") -> str:
    return f"{host.address.rstrip('/')}{club.path}{file}"


def keep(page: Page, address: str) -> None:
    """Keep a site on the phone, from its settings."""
    page.goto(f"{address}settings.html")
    page.get_by_role("button", name="Keep this site on my phone").tap()
    expect(page.locator("[data-keep]")).to_contain_text("Kept on this device", timeout=60_000)


@pytest.mark.parametrize("which", CLUBS)
def test_every_page_is_the_clubs_own_and_fits_a_phone(
    page: Page, host: Server, clubs: dict[str, OwnClub], which: str
) -> None:
    club, site = clubs[which], clubs[which].root / "site"
    others = ["Quillwater", "Deck Almanac", *(own.name for own in clubs.values() if own != club)]
    host.asked.clear()
    files = sorted(str(path.relative_to(site)) for path in site.rglob("*.html"))
    for file in ["index.html", "404.html", *share(files, 5, which)]:
        page.goto(at(host, club, file))
        assert page.title().endswith(club.name), file
        assert not re.search("|".join(others), page.locator("body").inner_text()), file
        assert not page.evaluate(_IS_WIDER), file
    assert [path for path in host.asked if not path.startswith(club.path)] == []


@pytest.mark.parametrize("which", CLUBS)
def test_find_run_learn_and_a_calculator_work(
    page: Page, host: Server, clubs: dict[str, OwnClub], which: str
) -> None:
    club = clubs[which]
    page.goto(at(host, club, "find.html"))
    page.locator("#find-words").fill("streamline")
    expect(page.locator("[data-results] a").first).to_be_visible()
    expect(page.get_by_text("Lanes", exact=True)).to_have_count(0 if which == "land" else 1)
    page.locator("[data-results] a").first.click()
    assert club.path in page.url
    page.goto(at(host, club, f"run.html#practice={FIRST[which]}"))
    page.get_by_role("button", name="Begin").tap()
    expect(page.locator(".run-row").first).to_be_visible()
    assert ("Lane" in page.locator("body").inner_text()) == (which != "land")
    page.goto(at(host, club, "learn.html"))
    page.locator("[data-questions] a").first.click()
    page.locator("details.fold:has([data-question]) > summary").first.click()
    question = page.locator("[data-question]").first
    question.locator("[data-right] .option").click()
    expect(question.locator(".verdict")).to_have_text("Right.")
    name, given, said = CALCULATED["land" if which == "land" else "water"]
    page.goto(at(host, club, f"calculators.html#{name}"))
    fold = page.locator(f"#{name}")
    for label, value in given.items():
        fold.get_by_label(label, exact=True).fill(value)
    expect(fold.locator("[data-answer]")).to_contain_text(said)
    expect(page.locator("#points")).to_have_count(0 if which == "land" else 1)


def test_what_two_clubs_keep_on_one_host_never_mixes(
    context: BrowserContext, page: Page, host: Server, clubs: dict[str, OwnClub]
) -> None:
    """Choices, caches and workers: while one is fetched, an open page of the other says nothing of
    it.
    """
    yards, land = clubs["yards"], clubs["land"]
    page.goto(at(host, land))
    page.evaluate("localStorage.setItem('deck-almanac-look', '\"dark\"')")  # of an older version
    page.goto(at(host, yards, "settings.html"))
    assert page.evaluate(_KEYS) == [f"deck-almanac {yards.path} look"]
    expect(page.locator("html")).to_have_attribute("data-look", "dark")
    page.get_by_label("Reds 1").check()
    other = context.new_page()
    other.goto(at(host, land, "settings.html"))
    expect(other.locator("html")).not_to_have_attribute("data-look", "dark")
    expect(other.locator("[data-my-group]:checked")).to_have_count(0)
    expect(other.locator("[data-keep]")).to_contain_text("MB to fetch")
    said = (
        "() => { self.said = []; new MutationObserver(() => "
        "said.push(document.querySelector('[data-keep]').innerText))"
        ".observe(document.querySelector('[data-keep]'), { childList: true, subtree: true }); }"
    )
    other.evaluate(said)
    keep(page, at(host, yards))
    assert other.evaluate("self.said") == []
    keep(other, at(host, land))
    assert len(page.evaluate("caches.keys()")) == 2
    context.set_offline(True)
    for club in (yards, land):
        page.goto(at(host, club, f"practices/{FIRST['yards' if club == yards else 'land']}.html"))
        assert page.title().endswith(club.name)
        page.goto(at(host, club, "nowhere.html"))
        assert page.title().endswith(club.name)
    context.set_offline(False)
    page.goto(at(host, land, "settings.html"))
    page.get_by_role("button", name="Do not keep it").tap()
    expect(page.locator("[data-keep]")).to_contain_text("Every page, the finder and the search")
    context.set_offline(True)
    page.goto(at(host, yards))
    assert page.title() == yards.name


def test_a_club_below_the_path_of_another_leaves_its_worker_alone(
    context: BrowserContext, clubs: dict[str, OwnClub], tmp_path: Path
) -> None:
    """One is at the root of its host, the other below it: the worker of the one reaches its pages
    too.
    """
    folder = tmp_path / "host"
    folder.mkdir()
    for path in (clubs["yards"].root / "site").iterdir():
        (folder / path.name).symlink_to(path)
    (folder / "dry").symlink_to(clubs["land"].root / "site")
    scopes = (
        "navigator.serviceWorker.getRegistrations().then(all => all.map(own => new "
        "URL(own.scope).pathname).sort())"
    )
    with Server(folder) as server:
        page = context.new_page()
        keep(page, server.address)
        page.goto(f"{server.address}dry/settings.html")
        expect(page.locator("[data-keep]")).to_contain_text("MB to fetch")
        keep(page, f"{server.address}dry/")
        assert page.evaluate(scopes) == ["/", "/dry/"]
        page.get_by_role("button", name="Do not keep it").tap()
        expect(page.locator("[data-keep]")).to_contain_text("Every page, the finder and the search")
        assert page.evaluate(scopes) == ["/"]
        context.set_offline(True)
        page.goto(server.address)
        assert page.title() == clubs["yards"].name
