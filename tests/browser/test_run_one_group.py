"""A run of one lane group: what its row says of the rep leaves the time whole."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, expect

from .web import Server

# What of the row reaches past the phone's edge, or is wider than its place.
_PAST = """() => [...document.querySelectorAll('.run-row, .run-row > *, .row-rep > *')]
  .filter(part => part.getClientRects().length && !part.matches('.unseen') &&
    (part.getBoundingClientRect().right > innerWidth + 1 ||
      part.scrollWidth > part.clientWidth + 1 && getComputedStyle(part).display !== 'inline'))
  .map(part => part.className || part.textContent)"""


@pytest.mark.parametrize("width", [320, 360, 412])
def test_the_time_of_a_group_in_rounds_is_whole(
    browser: Browser, server: Server, width: int
) -> None:
    context = browser.new_context(viewport={"width": width, "height": 640}, has_touch=True)
    page = context.new_page()
    page.goto(f"{server.address}run.html#set=all-out-fifties")
    page.get_by_role("button", name="Begin").click()
    go = page.locator(".run-main")
    expect(go).to_contain_text("Go")
    page.wait_for_timeout(410)  # a sooner touch counts for nothing
    go.click(delay=700)
    expect(go).to_contain_text("Hold")
    expect(page.locator(".row-rep")).to_contain_text("round 1/2")
    assert page.locator(".run-row").count() == 1
    assert page.evaluate(_PAST) == []
    context.close()
