"""The search: asked in the Bar, answered in Find; typing errors forgiven, the trade's other words known."""

from __future__ import annotations

from playwright.sync_api import Browser, Page, expect

from .web import Server, ask


def test_the_box_in_the_bar_is_answered_in_find(browser: Browser, server: Server) -> None:
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    page.goto(f"{server.address}drills/back-streamline-kick.html")
    page.locator(".bar-search input").fill("strealine kick")
    page.keyboard.press("Enter")
    page.wait_for_url("**/find.html?q=strealine+kick*")
    expect(page.locator("[data-results] a").first).to_contain_text("treamline")
    context.close()


def test_no_words_and_idle_words_find_nothing_and_break_nothing(
    phone: Page, server: Server
) -> None:
    assert ask(phone, server.address, "", "the of", "***", "zzzzzz") == [[], [], [], []]
