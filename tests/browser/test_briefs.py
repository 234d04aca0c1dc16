"""Briefs that are read: three hazards in sight, the others behind a tap."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from .web import Server

PRACTICE = "practices/osprey-ladder.html"
SCREEN = {"width": 360, "height": 640}


@pytest.fixture(params=[True, False], ids=["with scripts", "without scripts"])
def page(browser: Browser, server: Server, request: pytest.FixtureRequest) -> Iterator[Page]:
    context = browser.new_context(
        viewport=SCREEN, has_touch=True, java_script_enabled=request.param
    )  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(server.address + PRACTICE)
    yield page
    context.close()


def test_three_are_in_sight_and_a_tap_or_a_key_opens_the_others(page: Page) -> None:
    brief = page.locator(".brief-box")
    expect(brief.locator(".brief > li")).to_have_count(3)
    more = brief.locator(".brief-more > ul > li > details")
    assert more.count() >= 3
    expect(more.first).not_to_be_visible()
    brief.locator(".brief-more > summary").tap()
    expect(more.last).to_be_visible()
    last = more.last.locator("summary")
    last.focus()
    page.keyboard.press("Enter")
    expect(more.last.locator("p").first).to_be_visible()
    brief.locator(".house-rules > summary").focus()
    page.keyboard.press("Space")
    expect(brief.get_by_text("Thunder and lightning")).to_be_visible()


def test_each_hazard_stands_once_gravest_first(page: Page) -> None:
    names = page.locator(".brief > li,.brief-more > ul > li:not(.brief-from)").all_text_contents()
    gravities = [
        min(("Life", "Injury", "Ache"), key=lambda word: (name + word).index(word))
        for name in names
    ]
    assert gravities == sorted(gravities, key=["Life", "Injury", "Ache"].index)
    titles = [
        name.split(gravity)[0].strip() for name, gravity in zip(names, gravities, strict=True)
    ]
    assert len(titles) == len(set(titles)) > 6
