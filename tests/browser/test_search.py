"""The search in the header: typing errors forgiven, the trade's other words known, nothing put into a page as HTML."""

from __future__ import annotations

from playwright.sync_api import Page, expect

from .web import Server, ask


def test_it_answers_in_the_header_and_leads_to_the_page(phone: Page, server: Server) -> None:
    phone.goto(f"{server.address}index.html")
    phone.locator(".search-link").tap()
    phone.locator(".md-search__input").press_sequentially("parashute")
    first = phone.locator(".md-search-result__link").first
    expect(first).to_contain_text("arachute")
    expect(first).to_contain_text("Gear")
    first.tap()
    expect(phone).to_have_url(f"{server.address}gear/parachute.html?h=parashute")
    expect(phone.locator("h1")).to_contain_text("arachute")


def test_no_words_and_idle_words_find_nothing_and_break_nothing(
    phone: Page, server: Server
) -> None:
    assert ask(phone, server.address, "", "the of", "***", "zzzzzz") == [[], [], [], []]
