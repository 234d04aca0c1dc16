"""The site of the club's own entries, which is what visitors see: a page of every kind, a share of the rest."""

from __future__ import annotations

import io
import re
from pathlib import Path

from playwright.sync_api import BrowserContext
from pypdf import PdfReader
from shared import share

from almanac.model.load import load
from almanac.resources import HOME

from .test_every_page import troubles
from .test_journeys import Hand, assert_drill
from .web import Server, sitemap

FIRST = ("index.html", "find.html", "cards.html")


def _leads_on(page: Path) -> bool:
    """Whether a page only leads to where its entry has moved: it is gone before it is measured."""
    return 'http-equiv="refresh"' in page.read_text("utf-8")


def test_the_clubs_pages_are_sound(context: BrowserContext, club_site: Path) -> None:
    catalogue = load(HOME).catalogue
    assert catalogue is not None
    drills = {f"drills/{id}.html" for id in catalogue.drills}
    pages = [page for page in sitemap(club_site) if not _leads_on(club_site / page)]
    assert set(FIRST) <= set(pages) and drills <= set(pages)
    folders = sorted({page.split("/")[0] for page in pages if "/" in page})
    of_a_kind = [next(page for page in pages if page.startswith(f"{name}/")) for name in folders]
    chosen = [*FIRST, *of_a_kind, *share(sorted(drills), 8), *share(pages, 8)]
    with Server(club_site) as server:
        assert troubles(context, server, chosen, drills) == []


def test_no_page_shows_a_link_as_it_is_written(club_site: Path) -> None:
    """As Markdown does of a link within HTML."""
    written = re.compile(r"\]\([\w./#?=-]+\.(?:md|html)\b")
    pages = {page: page.read_text("utf-8") for page in club_site.rglob("*.html")}
    assert len(pages) > 300
    assert [page.name for page, text in pages.items() if written.search(text)] == []


def test_from_what_is_seen_to_the_drill_is_three_taps(
    context: BrowserContext, club_site: Path
) -> None:
    """As the README has it, where the faults are many."""
    hand, phone = Hand(), context.new_page()
    with Server(club_site) as server:
        phone.goto(server.address)
        hand.tap(phone.get_by_text("I see something wrong"))
        hand.tap(phone.get_by_role("link", name="Knees break the surface", exact=True))
        hand.tap(phone.locator(".first-drill a").first)
        assert_drill(phone)
    assert hand.taps == 3


def test_a_whole_year_is_one_sheet_of_paper(context: BrowserContext, club_site: Path) -> None:
    """Forty-five weeks of three squads, as the page of the season promises it."""
    page = context.new_page()
    with Server(club_site) as server:
        (year,) = [own for own in sitemap(club_site) if own.startswith("seasons/season-")]
        page.goto(f"{server.address}{year}")
        (sheet,) = PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True, format="A4"))).pages
    assert "12 Jul" in sheet.extract_text()
