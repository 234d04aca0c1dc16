"""axe-core on every kind of page, light and dark, phone and desk."""

from __future__ import annotations

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from .web import Server

KINDS = (
    "index.html", "find.html#open=goal,gear,minutes", "cards.html", "drills/back-streamline-kick.html", "sets/kick-and-go.html",
    "faults/knees-break-surface.html", "gear/parachute.html", "benchmarks/back-kick-200.html", "progressions/kick-into-stroke.html",
    "by/goal.html", "drills/index.html", "practices/index.html", "safety.html", "fields.html", "checks.html", "computed.html",
    "add.html", "data.html", "privacy.html", "404.html",
)  # fmt: skip


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1280])
def test_no_violations(browser: Browser, server: Server, scheme: str, width: int) -> None:
    context = browser.new_context(
        viewport={"width": width, "height": 800}, color_scheme=scheme, reduced_motion="reduce"
    )  # type: ignore[arg-type]
    page = context.new_page()
    found: dict[str, str] = {}
    for file in KINDS:
        page.goto(server.address + file)
        for violation in Axe().run(page).response["violations"]:
            for node in violation["nodes"]:
                found.setdefault(f"{violation['id']}: {node['html'][:160]}", file)
    context.close()
    assert found == {}


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
def test_what_is_pressed_is_large_enough(browser: Browser, server: Server, file: str) -> None:
    context = browser.new_context(viewport={"width": 360, "height": 640})
    page = context.new_page()
    page.goto(server.address + file)
    small = page.evaluate("""() => [...document.querySelectorAll('.tool, .chip, .door, .entries > li > a, .chooser select, .facet-box > summary, .folded > summary, .md-header__button')]
      .map(part => [part.outerHTML.slice(0, 80), part.getBoundingClientRect()])
      .filter(([, box]) => box.width && box.right > 0 && (box.height < 43.5 || box.width < 43.5)).map(([html]) => html)""")
    context.close()
    assert small == []


def test_the_menu_and_the_search_open_by_keyboard(browser: Browser, server: Server) -> None:
    context = browser.new_context(viewport={"width": 360, "height": 640})
    page = context.new_page()
    page.goto(server.address)
    page.locator("header label[for=__drawer]").focus()
    page.keyboard.press("Enter")
    assert page.locator("#__drawer").is_checked()
    context.close()
