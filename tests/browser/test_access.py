"""axe-core on every kind of page, light and dark, phone and desk."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from typing import Literal

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect
from shared import is_long

from .web import TEMPLATES, Kept, Server

LOOKS = list(product((360, 1280), ("light", "dark")))
# One page a template in one look each, by turns; every page in every look with --long.
CASES = [
    pytest.param(page, *look, id=f"{page.split('#')[0]} {look[0]} px {look[1]}")
    for number, page in enumerate(TEMPLATES)
    for look in (LOOKS if is_long() else [LOOKS[number % len(LOOKS)]])
]


@pytest.fixture(scope="module")
def sheets() -> set[str]:
    """The style sheets that axe has read, for a lock to one orientation: to read one again shows
    nothing new.
    """
    return set()


@pytest.fixture(scope="module")
def kept(browser: Browser, server: Server) -> Iterator[Kept]:
    with Kept(browser, server, viewport={"width": 360, "height": 640}) as window:
        yield window


@pytest.fixture
def page(kept: Kept) -> Iterator[Page]:
    """A page 360 px wide, unless a test makes it wider."""
    yield from kept.lent()


def settled(page: Page, file: str) -> None:
    """Wait for what a page shows last: of Make a practice, what is proposed."""
    if file.startswith("make.html#"):
        expect(page.locator(".make-goes").first).to_be_visible()


@pytest.mark.parametrize(("file", "width", "scheme"), CASES)
def test_no_violations_and_with_text_of_twice_its_size_the_page_stays_where_it_is(
    page: Page,
    server: Server,
    sheets: set[str],
    file: str,
    width: int,
    scheme: Literal["light", "dark"],
) -> None:
    """On a phone what is then wider than the screen moves in a box of its own."""
    page.set_viewport_size({"width": width, "height": 800})
    page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
    page.goto(server.address + file)
    settled(page, file)
    own = {*page.evaluate("[...document.styleSheets].map(sheet => sheet.href)")}
    options = {"resultTypes": ["violations"], "preload": not own <= sheets}
    sheets |= own
    found = Axe().run(page, options=options).response["violations"]
    assert {
        f"{each['id']}: {node['html'][:160]}" for each in found for node in each["nodes"]
    } == set()
    if width > 360:
        page.set_viewport_size({"width": 360, "height": 800})
        page.reload()
        settled(page, file)
    assert_no_wider_with_text_of_twice_its_size(page)


def assert_no_wider_with_text_of_twice_its_size(page: Page) -> None:
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    assert page.evaluate("document.documentElement.scrollWidth") <= 360


# Of each line of a whiteboard, how many lines of text it takes, and how many words it has.
_LINES = """() => [...document.querySelectorAll(".board .what")].filter(part =>
  part.checkVisibility()).map(part => {
    const range = document.createRange();
    range.selectNodeContents(part);
    const rows = new Set([...range.getClientRects()].map(({ bottom }) => Math.round(bottom)));
    return [part.textContent.trim(), rows.size, part.textContent.trim().split(/\\s+/).length];
  })"""


@pytest.mark.parametrize("file", ["sets/kick-and-go.html", "sets/chute-by-turns.html"])
def test_no_word_of_a_board_is_broken_in_text_of_twice_its_size(
    page: Page, server: Server, file: str
) -> None:
    """The send-off has a line of its own where it leaves no room for a word."""
    page.goto(server.address + file)
    assert_no_wider_with_text_of_twice_its_size(page)
    lines = page.evaluate(_LINES)
    assert len(lines) > 2
    assert [what for what, rows, words in lines if rows > words] == []


def test_a_window_made_narrow_shows_all_lane_groups_and_stays_where_it_is(
    page: Page, server: Server
) -> None:
    """A desk shows every lane group, and goes on to where it becomes as narrow as a phone."""
    page.set_viewport_size({"width": 1280, "height": 800})
    page.goto(f"{server.address}practices/heron-kick-and-go.html")
    page.set_viewport_size({"width": 360, "height": 640})
    expect(page.locator(".sheet-minutes").first.locator("span:visible")).to_have_count(2)
    assert_no_wider_with_text_of_twice_its_size(page)


@pytest.mark.parametrize(
    "file",
    [
        "index.html",
        "find.html#open=goal,minutes",
        "drills/back-streamline-kick.html",
        "sets/kick-and-go.html",
        "cards.html",
    ],
)
def test_what_is_pressed_is_large_enough(page: Page, server: Server, file: str) -> None:
    page.goto(server.address + file)
    small = page.evaluate("""() => [...document.querySelectorAll(
        '.tool, .chip, .door, .entries > li > a, .chooser select, '
        + '.facet-box > summary, .folded > summary, nav.bar > a, .rows > li > a')]
      .map(part => [part.outerHTML.slice(0, 80), part.getBoundingClientRect()])
      .filter(([, box]) => box.width && box.right > 0 && (box.height < 47.5 || box.width < 47.5))
        .map(([html]) => html)""")
    assert small == []


def test_the_bar_is_reached_by_keyboard_and_leads_on(browser: Browser, server: Server) -> None:
    context = browser.new_context(viewport={"width": 360, "height": 640})
    page = context.new_page()
    page.goto(server.address)
    page.keyboard.press("Tab")
    expect(page.get_by_role("link", name="To the page")).to_be_focused()
    for name in ("Home", "Find", "Tonight", "More lists and pages"):
        page.keyboard.press("Tab")
        expect(page.get_by_role("link", name=name, exact=True)).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("h1")).to_have_text("More")
    context.close()


def test_light_or_dark_once_chosen_stands_before_the_first_paint(
    browser: Browser, server: Server
) -> None:
    context = browser.new_context(color_scheme="light")
    page = context.new_page()
    page.goto(f"{server.address}settings.html")
    page.get_by_label("Dark").check()
    page.goto(f"{server.address}drills/back-streamline-kick.html", wait_until="commit")
    expect(page.locator("html")).to_have_attribute("data-look", "dark")
    page.goto(f"{server.address}settings.html")
    page.get_by_label("As the device").check()
    expect(page.locator("html")).to_have_attribute("data-look", "light")
    context.close()
