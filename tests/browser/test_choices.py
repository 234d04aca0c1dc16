"""Lane group, pool and units: chosen once, kept on the device, followed on every page."""

from __future__ import annotations

from playwright.sync_api import Browser, Page, expect

from .web import Server

SET = "sets/kick-and-go.html"


def choose(page: Page, **choices: str) -> None:
    for name, value in choices.items():
        page.locator(f'[data-choose="{name}"]').first.select_option(value)


def test_a_choice_on_home_is_followed_on_a_set(phone: Page, server: Server) -> None:
    phone.goto(server.address)
    choose(phone, group="osprey-1", pool="50m", units="yd")
    phone.goto(server.address + SET)
    shown = phone.locator("article.clocks .lane-group:visible")
    assert [shown.count(), shown.first.get_attribute("data-group")] == [1, "osprey-1"]
    assert phone.locator("article.clocks .pool:visible").get_attribute("data-pool") == "50m"
    expect(phone.locator("dt[data-units=yd]")).to_be_visible()
    expect(phone.locator(".board .go:visible").first).to_have_text("on 1:00", use_inner_text=True)
    choose(phone, group="heron-2")
    expect(phone.locator(".board .go:visible").first).to_have_text("on 1:20", use_inner_text=True)
    phone.reload()
    assert (
        phone.locator("article.clocks .lane-group:visible").get_attribute("data-group") == "heron-2"
    )


def test_the_finder_follows_and_a_shared_address_does_not_overwrite(
    phone: Page, server: Server
) -> None:
    phone.goto(server.address)
    choose(phone, group="heron-1")
    phone.goto(server.address + "find.html#open=minutes")
    expect(phone.locator('[data-choose="group"]')).to_have_value("heron-1")
    phone.goto(server.address)
    phone.goto(server.address + "find.html#minutes=20&group=osprey-2&pool=25yd")
    expect(phone.locator('[data-choose="group"]')).to_have_value("osprey-2")
    phone.goto(server.address)
    expect(phone.locator('[data-choose="group"]')).to_have_value("heron-1")


def test_lengths_of_a_drill_follow_the_unit(phone: Page, server: Server) -> None:
    phone.goto(server.address + "drills/back-streamline-kick.html")
    expect(phone.locator("dl.facts [data-length]")).to_have_text("50 m or yd")
    phone.goto(server.address)
    choose(phone, units="yd")
    phone.goto(server.address + "drills/back-streamline-kick.html")
    expect(phone.locator("dl.facts [data-length]")).to_have_text("50 yd")
    phone.goto(server.address)
    choose(phone, units="pool", pool="50m")
    phone.goto(server.address + "drills/back-streamline-kick.html")
    expect(phone.locator("dl.facts [data-length]")).to_have_text("50 m")


def test_without_choices_a_set_shows_what_it_is_written_for(phone: Page, server: Server) -> None:
    phone.goto(server.address + SET)
    assert phone.locator("article.clocks .pool:visible").get_attribute("data-pool") == "25m"
    assert (
        phone.locator("article.clocks .lane-group:visible").get_attribute("data-group") == "heron-1"
    )


def test_a_device_that_keeps_nothing_still_chooses(browser: Browser, server: Server) -> None:
    context = browser.new_context()
    context.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new Error('no'); } })"
    )
    page = context.new_page()
    page.goto(server.address + SET)
    choose(page, group="osprey-2")
    assert (
        page.locator("article.clocks .lane-group:visible").get_attribute("data-group") == "osprey-2"
    )
    context.close()


def test_all_lane_groups_stand_without_scripts(browser: Browser, server: Server) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(server.address + SET)
    assert page.locator("article.clocks .lane-group:visible").count() > 6
    expect(page.locator(".board .whose").first).to_be_visible()
    context.close()
