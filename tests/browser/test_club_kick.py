"""The kick of a drill's picture: still until it is asked for, and wherever less motion is
wanted.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from .web import Server, Watched

RUNNING = "document.getAnimations().filter(one => one.playState === 'running').length"
SHIN = "getComputedStyle(document.querySelector('.kick-late .kick-shank')).transform"
PAGE = "drills/back-streamline-kick.html"


def seconds(page: Page) -> set[float]:
    """The lengths of one cycle of all that moves."""
    found = page.evaluate(
        "document.getAnimations().map(one => one.effect.getTiming().duration / 1000)"
    )
    return set(found)


def test_a_kick_moves_when_it_is_tapped_and_stops_when_it_is_tapped_again(
    context: BrowserContext, club_site: Path
) -> None:
    with Server(club_site) as server:
        page = context.new_page()
        watched = Watched(page, server.address)
        page.goto(server.address + PAGE)
        button = page.get_by_role("button", name="Show the kick move")
        expect(button).to_have_attribute("aria-pressed", "false")
        box = button.bounding_box()
        assert box and box["width"] >= 48 and box["height"] >= 48
        assert page.evaluate(RUNNING) == 0
        button.tap()
        expect(button).to_have_attribute("aria-pressed", "true")
        assert page.evaluate(RUNNING) > 0 and seconds(page) == {0.625}  # 1.6 cycles a second
        before = page.evaluate(SHIN)
        page.wait_for_function(f"before => {SHIN} !== before", arg=before)
        whole = page.locator(".moves").bounding_box()
        assert whole  # all of the picture is the button
        page.touchscreen.tap(whole["x"] + 60, whole["y"] + 20)
        assert page.evaluate(RUNNING) == 0
        button.focus()
        page.keyboard.press("Enter")
        assert page.evaluate(RUNNING) > 0
        page.keyboard.press("Space")
        assert page.evaluate(RUNNING) == 0
        page.goto(server.address + "drills/dolphin-body-wave.html")
        page.get_by_role("button", name="Show the kick move").tap()
        assert seconds(page) == {0.5}
        page.goto(server.address + "drills/board-kick-face-in.html")
        assert page.locator("svg[data-beat]").count() == 1
        page.goto(server.address + "drills/backstroke-pull.html")  # legs are still
        assert page.locator(".kick-button").count() == 0
        assert watched.troubles == []


@pytest.mark.parametrize("size", [(360, 640), (390, 844), (1280, 800)])
def test_the_mark_of_the_button_is_in_the_corner_of_what_is_drawn(
    browser: Browser, club_site: Path, size: tuple[int, int]
) -> None:
    page = browser.new_page(viewport={"width": size[0], "height": size[1]})
    with Server(club_site) as server:
        for drill in (
            "freestyle-tumble-turn",
            "dolphin-on-back-at-surface",
            "vertical-flutter-kick",
        ):
            page.goto(f"{server.address}drills/{drill}.html")
            page.wait_for_function(
                "() => document.querySelector('.kick-button')?.style.getPropertyValue('--beside')"
            )
            right, bottom = page.evaluate(
                """() => {
                  const button = document.querySelector('.kick-button');
                  const svg = document.querySelector('svg[data-beat]');
                  const mark = getComputedStyle(button, '::before');
                  const room = button.getBoundingClientRect();
                  const corner = svg.createSVGPoint();
                  [corner.x, corner.y] = [svg.viewBox.baseVal.width, svg.viewBox.baseVal.height];
                  const drawn = corner.matrixTransform(svg.getScreenCTM());
                  return [drawn.x - room.right + parseFloat(mark.right),
                          drawn.y - room.bottom + parseFloat(mark.bottom)];
                }"""
            )
            assert abs(right - 2) < 1 and abs(bottom - 2) < 1, (drill, right, bottom)
    page.close()


def test_no_kick_moves_where_less_motion_is_wanted(browser: Browser, club_site: Path) -> None:
    calm = browser.new_context(reduced_motion="reduce", viewport={"width": 360, "height": 640})
    with Server(club_site) as server:
        page = calm.new_page()
        page.goto(server.address + PAGE)
        expect(page.locator(".kick-button")).to_be_hidden()
        page.locator("svg[data-beat]").click(force=True)
        assert page.evaluate(RUNNING) == 0
        page.evaluate("document.querySelector('svg[data-beat]').classList.add('is-kicking')")
        assert page.evaluate(RUNNING) == 0
    calm.close()
