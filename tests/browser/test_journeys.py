"""From what a coach sees or wants to the right drill, its cue and its danger: three taps at most,
scrolling aside.
"""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from almanac.analysis.analysis import Analysis

from .web import Server

FAULTS = ("knees-break-surface", "legs-die-in-last-quarter", "head-lifts-on-back", "crossing-legs")
GOALS = {"Kick speed": "kick-speed", "Kick into stroke": "kick-into-stroke"}


class Hand:
    """Counts taps."""

    def __init__(self) -> None:
        self.taps = 0

    def tap(self, target: Locator) -> None:
        target.scroll_into_view_if_needed()
        target.tap()
        self.taps += 1


@pytest.fixture
def phone(kept_phone: Page) -> Page:
    return kept_phone


def assert_drill(phone: Page) -> None:
    expect(phone.locator(".first-screen .say li").first).to_be_in_viewport()
    expect(phone.locator(".first-screen .danger strong").first).to_be_in_viewport()
    assert "/drills/" in phone.url


@pytest.mark.parametrize("fault", FAULTS)
def test_from_a_fault_to_its_drill(
    phone: Page, server: Server, analysis: Analysis, fault: str
) -> None:
    hand = Hand()
    phone.goto(server.address)
    hand.tap(phone.get_by_text("I see something wrong"))
    hand.tap(
        phone.locator(".entries").get_by_role(
            "link", name=analysis.catalogue.faults[fault].title, exact=True
        )
    )
    expect(phone.locator(".causes .test").first).to_be_visible()
    hand.tap(phone.locator(".first-drill a").first)
    assert_drill(phone)
    first = analysis.catalogue.faults[fault].causes[0].mended_by[0]
    assert phone.url.endswith(f"/drills/{first}.html")
    assert hand.taps == 3


@pytest.mark.parametrize("goal", GOALS)
def test_from_a_goal_to_its_drill(phone: Page, server: Server, goal: str) -> None:
    hand = Hand()
    phone.goto(server.address)
    hand.tap(phone.get_by_text("I want to train something"))
    hand.tap(phone.locator(".chip").get_by_text(goal, exact=True))
    expect(phone.locator("[data-facet=goal] [data-chosen]")).to_have_text(goal)
    first = phone.locator("[data-results] a").first
    expect(first).to_be_in_viewport()  # the choices have made room for the list
    hand.tap(first)
    assert_drill(phone)
    expect(phone.locator(f'dl.facts a[href$="#{GOALS[goal]}"]')).to_have_count(1)
    assert hand.taps == 3


def test_from_gear_and_minutes_to_a_drill(phone: Page, server: Server) -> None:
    hand = Hand()
    phone.goto(server.address)
    hand.tap(phone.get_by_text("I have N minutes and this gear"))
    expect(phone.locator("[data-facet=minutes]")).to_have_attribute("open", "")
    hand.tap(phone.locator(".chip").get_by_text("Fins", exact=True))
    hand.tap(phone.locator("[data-results] a").first)
    assert_drill(phone)
    assert hand.taps == 3
    expect(phone.locator("ul.facts").first).to_contain_text(
        "Fins"
    )  # what uses the gear comes first


def test_doors_fit_a_phone_with_text_at_twice_its_size(phone: Page, server: Server) -> None:
    phone.goto(server.address)
    phone.evaluate(
        """() => {
          const root = document.documentElement;
          root.style.fontSize = `${2 * parseFloat(getComputedStyle(root).fontSize)}px`;
        }"""
    )
    for door in phone.locator(".door").all():
        box = door.bounding_box()
        assert box and box["x"] >= 0 and box["x"] + box["width"] <= 360


def test_doors_lead_somewhere_without_scripts(server: Server, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 360, "height": 640})
    page = context.new_page()
    page.goto(server.address + "settings.html")
    expect(page.locator(".keep-box")).to_be_hidden()  # empty without its script
    page.goto(server.address)
    doors = [door.get_attribute("href") for door in page.locator(".door").all()]
    for door in doors:
        page.goto(server.address + str(door))
        assert page.locator("article a:visible").count() > 4
    page.goto(server.address + "find.html")
    page.get_by_text("By gear").last.click()
    page.locator("article .list > summary").first.click()
    page.locator("article ul.entries a").first.click()
    assert page.locator("h1").count() == 1
    context.close()


def mine(phone: Page, server: Server, group: str) -> None:
    """Choose a lane group once, as one does in the settings."""
    phone.goto(server.address + "settings.html")
    phone.locator(".my-groups .chip", has=phone.locator(f'[value="{group}"]')).tap()
    for other in phone.locator(f'[data-my-group]:checked:not([value="{group}"])').all():
        other.evaluate("box => box.click()")
    phone.goto(server.address)


def test_twelve_minutes_two_lanes_and_fins(phone: Page, server: Server) -> None:
    mine(phone, server, "heron-1")
    hand = Hand()
    hand.tap(phone.locator(".bar-find"))
    minutes = phone.locator("[data-facet=minutes]")
    hand.tap(minutes.locator("summary"))
    hand.tap(minutes.locator(".chip").get_by_text("12 min", exact=True))
    expect(phone.locator(".hits a").first).to_be_in_viewport()
    lanes = phone.locator("[data-facet=lanes]")
    hand.tap(lanes.locator("summary"))
    hand.tap(lanes.locator(".chips-narrow .chip").get_by_text("2", exact=True))
    gear = phone.locator("[data-facet=gear]")
    hand.tap(gear.locator("summary"))
    hand.tap(gear.locator(".chip").get_by_text("Fins", exact=True))
    hand.tap(gear.locator("[data-done]"))
    first = phone.locator(".hits a").first
    expect(first).to_be_in_viewport()
    expect(first).to_contain_text("of 12:00")
    expect(first).to_contain_text("fins")
    hand.tap(first)
    phone.wait_for_url(lambda url: "find.html" not in url)
    assert hand.taps == 9


def test_the_door_of_minutes_and_gear_answers_in_four_taps_and_no_swipe(
    phone: Page, server: Server
) -> None:
    mine(phone, server, "heron-1")
    hand = Hand()
    hand.tap(phone.get_by_text("I have N minutes and this gear"))
    hand.tap(phone.locator("[data-facet=minutes] .chip").get_by_text("12 min", exact=True))
    hand.tap(phone.locator("[data-facet=lanes] .chips-narrow .chip").get_by_text("2", exact=True))
    hand.tap(phone.locator("[data-facet=gear] .chip").get_by_text("Fins", exact=True))
    first = phone.locator(".hits a").first
    expect(first).to_contain_text("of 12:00")
    expect(first).to_contain_text("fins")
    assert (hand.taps, phone.evaluate("scrollY")) == (4, 0)
    at, bar = first.bounding_box(), phone.locator("nav.bar").bounding_box()
    assert at and bar and at["y"] + at["height"] <= bar["y"]
    hand.tap(first)
    phone.wait_for_url(lambda url: "find.html" not in url)
    phone.go_back()
    expect(phone.locator("[data-total]")).to_contain_text("hit")


def test_a_row_of_choices_in_brief_opens_into_all_of_them(phone: Page, server: Server) -> None:
    phone.goto(server.address + "find.html#open=minutes,gear,lanes")
    minutes = phone.locator("[data-facet=minutes]")
    expect(minutes.locator("[data-until]")).to_be_hidden()
    minutes.locator("summary").tap()
    expect(minutes.locator("[data-until]")).to_be_visible()
    expect(minutes.locator(".count").nth(3)).not_to_be_empty()
    expect(phone.locator("[data-facet=gear] .chip").first).to_be_hidden()
    minutes.locator("summary").tap()
    expect(minutes.locator("[data-until]")).to_be_hidden()


def test_a_practice_for_a_slow_group_is_picked_from_the_list(phone: Page, server: Server) -> None:
    mine(phone, server, "heron-2")
    hand = Hand()
    hand.tap(phone.locator(".bar-find"))
    hand.tap(phone.locator(".kinds .chip", has=phone.locator("[value=practice]")))
    minutes = phone.locator("[data-facet=minutes]")
    hand.tap(minutes.locator("summary"))
    hand.tap(minutes.locator(".chip").get_by_text("90 min", exact=True))
    first = phone.locator(".hits a").first
    expect(first).to_be_in_viewport()
    expect(first).to_contain_text("of 90:00")
    hand.tap(first)
    phone.wait_for_url("**/practices/heron-*.html")
    assert hand.taps == 5


def test_what_fits_before_a_group_is_chosen_says_for_whom(phone: Page, server: Server) -> None:
    phone.goto(server.address + "find.html#minutes=20")
    whose = phone.locator("[data-whose]")
    expect(whose).to_contain_text("Times for its slowest group")
    assert phone.locator("[data-my-group]:checked").count() == 0
    expect(phone.locator(".hits a").first).to_contain_text("of 20:00")
    phone.locator("[data-choose-groups]").tap()
    phone.locator(".my-groups .chip", has=phone.locator("[value=heron-1]")).tap()
    expect(whose).to_contain_text("Times for Heron")
    expect(phone.locator("[data-choose-groups]")).to_be_hidden()


def test_what_fits_in_what_is_left_of_a_practice_is_sets_with_a_way_back(
    new_phone: Page, server: Server
) -> None:
    new_phone.clock.install(time="2026-11-26T19:05:00")
    new_phone.goto(server.address + "find.html#until=19:45&groups=heron-1&run=on")
    expect(new_phone.locator("[data-results] h2").first).to_contain_text("Sets")
    back = new_phone.locator("[data-back] a")
    expect(back).to_be_in_viewport()
    expect(new_phone.locator(".hits a").first).to_be_in_viewport()
    assert str(back.get_attribute("href")).endswith("run.html")
    new_phone.goto(server.address + "find.html#minutes=20")
    new_phone.reload()
    expect(new_phone.locator("[data-back]")).to_be_hidden()


def test_a_wrong_word_leads_to_the_right_page(phone: Page, server: Server) -> None:
    phone.goto(server.address)
    hand = Hand()
    hand.tap(phone.locator(".bar-find"))
    expect(phone.locator("#find-words")).to_be_focused()
    phone.keyboard.type("parrashutte")
    expect(phone.locator(".hits a").first).to_contain_text("arachute")
    phone.wait_for_load_state("networkidle")  # the list is written again when the texts have come
    phone.locator(".hits a").first.click(trial=True)
    hand.tap(phone.locator(".hits a").first)
    phone.wait_for_url("**/gear/parachute.html")
    assert hand.taps == 2
