"""Marked words on a page of the club: meaning at a tap and by the keyboard, off under Settings,
nothing in cues; the page of all words, by letter.
"""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import BrowserContext, expect

from .web import Server, Watched

PAGE = "faults/hips-sink-on-back.html"


def test_a_marked_word_tells_its_meaning(context: BrowserContext, club_site: Path) -> None:
    with Server(club_site) as server:
        page = context.new_page()
        watched = Watched(page, server.address)
        page.goto(server.address + PAGE)
        page.locator("details.fold:has(a.term) > summary").first.click()
        mark = page.locator("a.term").first
        mark.click()
        told = page.locator(".term-means")
        expect(told).to_contain_text(mark.inner_text(), ignore_case=True)
        expect(mark).to_have_attribute("aria-expanded", "true")
        assert page.url == server.address + PAGE
        mark.press("Enter")
        expect(told).to_have_count(0)
        mark.press(" ")
        expect(told).to_be_visible()
        assert (
            page.locator(
                ".say a.term, .board a.term, h1 a.term, h2 a.term, .link-chips a.term"
            ).count()
            == 0
        )
        page.goto(server.address + "settings.html")
        page.get_by_label("Mark words that are explained").uncheck()
        page.goto(server.address + PAGE)
        expect(page.locator("a.term")).to_have_count(0)
        assert watched.troubles == []
        page.close()


def test_words_fold_by_letter_and_a_link_opens_its_own(
    context: BrowserContext, club_site: Path
) -> None:
    with Server(club_site) as server:
        page = context.new_page()
        page.goto(f"{server.address}words.html")
        assert page.evaluate("document.documentElement.scrollHeight / innerHeight") < 4
        key = page.locator(".words dt[id]").last.get_attribute("id")
        expect(page.locator(f"#{key}")).to_be_hidden()
        page.goto(f"{server.address}words.html#{key}")
        expect(page.locator(f"#{key}")).to_be_in_viewport()
        page.goto(f"{server.address}words.html")
        page.locator(".letters a").nth(2).click()
        expect(page.locator("#letter-3 dt").first).to_be_in_viewport()
        page.close()
