"""Home: today's practices, those of my lane groups first; the last pages; what is chosen; nothing
that shifts.
"""

from __future__ import annotations

import json
import re

from playwright.sync_api import Browser, Page, expect

from .test_journeys import Hand
from .web import Server

_SHIFTS = """window.shifted = 0;
new PerformanceObserver(list => list.getEntries()
  .forEach(entry => { window.shifted += entry.value; }))
  .observe({ type: "layout-shift", buffered: true });"""
PAGES = (
    "index.html", "settings.html", "tonight.html", "drills/back-streamline-kick.html",
    "sets/kick-and-go.html", "practices/heron-kick-and-go.html", "faults/knees-break-surface.html",
    "blocks/heron-legs-in-three-weeks.html",
)  # fmt: skip


def days(page: Page, server: Server) -> list[dict[str, str]]:
    """Every planned practice, as Home holds them."""
    page.goto(server.address)
    data = json.loads(page.locator("#home-data").text_content() or "")
    return [dict(zip(data["columns"], row, strict=True)) for row in data["rows"]]


def test_todays_practice_stands_first_and_is_one_tap_away(phone: Page, server: Server) -> None:
    (first, *_) = days(phone, server)
    phone.clock.install(time=f"{first['on']}T{first['start']}:00")
    phone.goto(server.address)
    tonight = phone.locator("[data-tonight]")
    expect(tonight.locator(".band-kind")).to_contain_text("Tonight")
    expect(tonight.locator("h2")).to_have_text(first["title"])
    expect(tonight.locator("h2 a")).to_have_attribute("href", first["href"])
    tonight.locator(".is-main").tap()
    expect(phone.get_by_role("heading", name=first["title"])).to_be_visible()
    expect(phone.get_by_role("button", name="Begin")).to_be_visible()


def test_a_run_is_three_presses_from_home_and_stop_is_two(phone: Page, server: Server) -> None:
    (first, *_) = days(phone, server)
    phone.clock.install(time=f"{first['on']}T{first['start']}:00")
    phone.goto(server.address)
    hand = Hand()
    hand.tap(phone.locator("[data-tonight] .is-main"))
    phone.wait_for_timeout(410)  # a sooner touch counts for nothing
    hand.tap(phone.get_by_role("button", name="Begin"))
    go = phone.locator(".run-main")
    expect(go).to_contain_text("Go")
    phone.wait_for_timeout(410)
    go.click(delay=700)  # pressed for longer than the 0.6 s that it needs
    expect(go).to_contain_text("Hold")
    assert hand.taps + 1 == 3
    phone.goto(server.address)
    hand = Hand()
    hand.tap(phone.get_by_role("link", name="Back to the run"))
    stop = phone.get_by_role("button", name="Stop")
    expect(stop).to_be_visible()
    phone.wait_for_timeout(410)
    hand.tap(stop)
    expect(phone.get_by_role("heading", name="Stopped")).to_be_visible()
    assert hand.taps == 2


def test_with_nothing_today_the_next_day_is_told(phone: Page, server: Server) -> None:
    (first, *_) = days(phone, server)
    phone.clock.install(time=f"{int(first['on'][:4]) - 1}-06-01T10:00:00")
    phone.goto(server.address)
    expect(phone.locator("[data-tonight] .band-kind")).to_contain_text("Nothing today")
    expect(phone.locator("[data-tonight] h2")).to_have_text(first["title"])


def test_on_a_desk_tonight_stands_to_scale_for_each_lane_group(
    browser: Browser, server: Server
) -> None:
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    (first, *_) = days(page, server)
    page.clock.install(time=f"{first['on']}T{first['start']}:00")
    page.goto(server.address)
    lines = page.locator("[data-tonight] .parts-lines svg.parts-line")
    expect(lines).to_have_count(len(first["groups"]))
    context.close()


def test_tonight_begins_with_today_and_folds_away_what_is_over(phone: Page, server: Server) -> None:
    all_days = days(phone, server)
    planned = sorted({own["on"] for own in all_days})
    phone.clock.install(time=f"{planned[1]}T10:00:00")
    phone.goto(f"{server.address}tonight.html")
    expect(phone.locator("[data-days] h2:visible").first).to_contain_text("Tonight, ")
    expect(phone.locator("[data-days] > [data-on]")).to_have_count(1)
    expect(phone.locator("[data-days] li:visible")).to_have_count(
        sum(own["on"] == planned[1] for own in all_days)
    )
    counted = phone.locator("[data-week]:visible .fold-count").all_text_contents()
    assert sum(map(int, counted)) == sum(own["on"] > planned[1] for own in all_days)
    expect(phone.locator("details:not([data-week]) [data-on]")).to_have_count(1)  # over
    expect(phone.locator("details [data-on]").last).to_be_hidden()
    phone.get_by_role("link", name=re.compile("^Run ")).first.tap()
    expect(phone.get_by_role("button", name="Begin")).to_be_visible()


def test_the_last_three_entries_are_kept_newest_first(phone: Page, server: Server) -> None:
    phone.goto(server.address)
    expect(phone.locator("[data-last]")).to_be_hidden()
    for file in (*PAGES[3:7], PAGES[3]):
        phone.goto(server.address + file)
    phone.goto(server.address)
    links = phone.locator("[data-last] a")
    assert [link.get_attribute("href") for link in links.all()] == [PAGES[3], PAGES[6], PAGES[5]]


def test_what_is_chosen_runs_on_behind_settings(phone: Page, server: Server) -> None:
    """As one text, and not as a column of its own beside the word."""
    phone.goto(server.address)
    keep = "groups => localStorage.setItem('deck-almanac / choices', JSON.stringify({groups}))"
    phone.evaluate(keep, ["osprey-1", "osprey-2"])
    phone.reload()
    link = phone.locator(".settings-line > a")
    expect(link).to_have_text("Settings: Osprey, lanes 1 to 3; Osprey, lanes 4 to 6")
    rows = link.locator("span").evaluate("span => span.getClientRects().length")
    left = "part => [...part.getClientRects()].map(({ left }) => left)"
    assert rows == 2 and link.locator("span").evaluate(left)[1] == link.evaluate(left)[0]


def test_nothing_shifts_while_a_page_loads(browser: Browser, server: Server) -> None:
    """With a lane group chosen that the pages are not written for, and a slow line."""
    context = browser.new_context(viewport={"width": 360, "height": 640})
    context.add_init_script(
        'localStorage.setItem(\'deck-almanac / choices\', \'{"group": "heron-2", "groups": '
        '["heron-2"]}\')'
    )
    context.add_init_script(_SHIFTS)
    page = context.new_page()
    for file in PAGES:
        page.goto(server.address + file, wait_until="networkidle")
        assert page.evaluate("shifted") < 0.05, file
    context.close()
