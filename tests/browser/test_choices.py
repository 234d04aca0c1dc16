"""Lane group, pool and units: chosen once, kept on the device, followed on every page."""

from __future__ import annotations

import gzip
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from almanac.analysis.analysis import Analysis

from .web import Server

SET = "sets/kick-and-go.html"


@pytest.fixture
def phone(kept_phone: Page) -> Page:
    return kept_phone


def choose(page: Page, **choices: str) -> None:
    for name, value in choices.items():
        if name == "group" and "settings.html" in page.url:
            choose_mine(page, value)
            continue
        page.locator(f'[data-choose="{name}"]').first.select_option(value)


def test_a_choice_in_the_settings_is_followed_on_a_set(phone: Page, server: Server) -> None:
    phone.goto(server.address + "settings.html")
    choose(phone, group="osprey-1", pool="50m", units="yd")
    phone.goto(server.address + SET)
    shown = phone.locator("article.clocks .lane-group:visible")
    expect(shown).to_have_attribute("data-group", "osprey-1")
    assert phone.locator("article.clocks .pool:visible").get_attribute("data-pool") == "50m"
    expect(phone.locator("dt[data-units=yd]")).not_to_have_attribute("hidden", "")
    expect(phone.locator(".board .go:visible").first).to_have_text("on 1:00", use_inner_text=True)
    choose(phone, group="heron-2")
    expect(phone.locator(".board .go:visible").first).to_have_text("on 1:20", use_inner_text=True)
    phone.reload()
    expect(shown).to_have_attribute("data-group", "heron-2")


def test_the_finder_follows_and_a_shared_address_does_not_overwrite(
    phone: Page, server: Server
) -> None:
    phone.goto(server.address + "settings.html")
    choose(phone, group="heron-1")
    phone.goto(server.address + "find.html#open=minutes")
    expect(phone.locator('[data-my-group][value="heron-1"]')).to_be_checked()
    phone.goto(server.address + "settings.html")
    phone.goto(server.address + "find.html#minutes=20&group=osprey-2&pool=25yd")
    expect(phone.locator('[data-my-group][value="osprey-2"]')).to_be_checked()
    phone.goto(server.address + "settings.html")
    expect(phone.locator("[data-my-group]:checked")).to_have_value("heron-1")


def test_lengths_of_a_drill_follow_the_unit(phone: Page, server: Server) -> None:
    phone.goto(server.address + "drills/back-streamline-kick.html")
    expect(phone.locator("dl.facts [data-length]")).to_have_text("50 m or yd")
    phone.goto(server.address + "settings.html")
    choose(phone, units="yd")
    phone.goto(server.address + "drills/back-streamline-kick.html")
    expect(phone.locator("dl.facts [data-length]")).to_have_text("50 yd")
    phone.goto(server.address + "settings.html")
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
    shown = page.locator("article.clocks .lane-group:visible")
    expect(shown).to_have_attribute("data-group", "osprey-2")
    context.close()


def test_all_lane_groups_stand_without_scripts(browser: Browser, server: Server) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(server.address + SET)
    assert page.locator("article.clocks .lane-group:visible").count() == 1
    expect(page.locator(".board .whose").first).to_be_visible()
    page.get_by_text("Other pools, groups and sizes").click()
    page.get_by_role("link", name="The clock for every lane group and pool").click()
    assert page.locator("article.clocks .lane-group:visible").count() > 6
    page.get_by_role("link", name="←").click()
    assert page.url == server.address + SET
    context.close()


def test_from_a_folder_a_choice_follows_a_link_and_keeps(browser: Browser, site: Path) -> None:
    context = browser.new_context()
    page = context.new_page()
    troubles: list[str] = []
    page.on("pageerror", lambda problem: troubles.append(str(problem)))
    page.goto((site / SET).as_uri())
    shown = page.locator("article.clocks .lane-group:visible")
    assert shown.get_attribute("data-group") == "heron-1"
    choose(page, group="osprey-1")
    page.wait_for_url("**/sets/clocks/kick-and-go.html#25m-osprey-1", wait_until="load")
    expect(shown).to_have_attribute("data-group", "osprey-1")
    choose(page, pool="50m")
    expect(page.locator("article.clocks .pool:visible")).to_have_attribute("data-pool", "50m")
    page.get_by_role("link", name="←").click()
    expect(page.locator("[data-clocks-told]").first).to_contain_text("a page of its own")
    page.locator("article.clocks").get_by_role("link", name="a page of its own").click()
    page.wait_for_load_state("load")
    expect(page.locator("[data-chooser]")).to_be_visible()
    expect(shown).to_have_attribute("data-group", "osprey-1")
    assert troubles == []
    context.close()


def test_a_clock_that_cannot_be_fetched_is_said_and_asked_for_again(
    context: BrowserContext, server: Server
) -> None:
    page = context.new_page()
    page.goto(server.address + SET)
    page.route("**/sets/clocks/*", lambda route: route.abort())
    choose(page, group="osprey-1")
    told = page.locator("article.clocks [data-clocks-told]")
    expect(told).to_contain_text("could not be fetched")
    shown = page.locator("article.clocks .lane-group:visible")
    assert shown.get_attribute("data-group") == "heron-1"
    page.unroute("**/sets/clocks/*")
    choose(page, group="osprey-2")
    expect(shown).to_have_attribute("data-group", "osprey-2")
    expect(told).to_have_count(0)


def test_the_card_of_a_set_carries_the_chosen_clock_as_its_page_does(
    phone: Page, server: Server
) -> None:
    """A card is made by a script from the page of clocks: it says what the template would have."""
    phone.goto(server.address + SET)
    card = phone.locator(".deck-card [data-clocks]")
    as_written = card.text_content()
    choose(phone, group="osprey-1")
    expect(card).to_contain_text("Osprey, lanes 1 to 3")
    choose(phone, group="heron-1")
    expect(card).to_contain_text("Heron")
    assert "".join((card.text_content() or "").split()) == "".join((as_written or "").split())


def test_the_page_of_a_set_is_light(site: Path) -> None:
    """As house rules have it: at most 15 kB compressed, with every lane group and pool
    reachable.
    """
    pages = [path for path in (site / "sets").glob("*.html") if "data-clocks" in path.read_text()]
    assert pages
    for path in pages:
        assert len(gzip.compress(path.read_bytes(), 6)) <= 15_000, path.name
        assert (site / "sets" / "clocks" / path.name).is_file()


def test_a_lane_group_sees_its_own_run_sheet(phone: Page, server: Server) -> None:
    phone.goto(server.address + "settings.html")
    choose(phone, group="osprey-1")  # of another squad: the practice is not for it
    phone.goto(server.address + "practices/heron-kick-and-go.html")
    rows = phone.locator("ol.sheet > li")
    seen = {}
    for group in ("heron-1", "heron-2"):
        if group == "heron-2":
            choose(phone, group=group)
        expect(phone.locator('[data-choose="group"]')).to_have_value(group)
        phone.evaluate(
            "document.querySelectorAll('.sheet details').forEach(part => { part.open = true; })"
        )
        for row in rows.locator("visible=true").all():
            expect(row.locator(".board .what").first).to_be_visible()
            expect(row.locator(".whose:visible")).to_have_count(0)
        heads = rows.locator(".sheet-head:visible").all_inner_texts()
        seen[group] = [head for head in heads if "turn" in head]
    assert len(seen["heron-1"]) == len(seen["heron-2"]) == 2
    assert not set(seen["heron-1"]) & set(seen["heron-2"])
    choose(phone, group="")
    both = [
        head for head in rows.locator(".sheet-head:visible").all_inner_texts() if "turn" in head
    ]
    assert len(both) == 4 and all("Heron" in head for head in both)
    expect(rows.locator(".whose:visible").first).to_be_visible()
    phone.goto(server.address + "practices/heron-kick-and-go.html")  # kept: the last lane group
    expect(phone.locator('[data-choose="group"]')).to_have_value("heron-2")


def choose_mine(page: Page, *groups: str) -> None:
    page.goto(page.url.split("#")[0])
    for box in page.locator("[data-my-group]:checked").all():
        if box.get_attribute("value") not in groups:
            box.evaluate("box => { box.checked = false; }")
    for group in groups:
        page.locator(f'[data-my-group][value="{group}"]').evaluate(
            "box => { box.checked = true; box.dispatchEvent(new Event('change', { bubbles: true "
            "})); }"
        )


def test_a_page_is_shown_for_the_first_of_my_groups_that_it_is_written_for(
    phone: Page, server: Server, analysis: Analysis
) -> None:
    meant = analysis.meant(analysis.catalogue.sets["kick-and-go"])
    other = next(group for group in analysis.catalogue.lane_groups if group not in meant)
    phone.goto(server.address + "settings.html")
    choose_mine(phone, other, meant[1])
    phone.goto(server.address + SET)
    expect(phone.locator("html")).to_have_attribute("data-chosen-group", meant[1])
    title = analysis.catalogue.lane_groups[meant[1]].title
    expect(phone.locator("[data-whose-page]")).to_have_text(
        f"Shown for {title}, the first of your groups that this is written for."
    )
    labels = phone.locator('[data-choose="group"] optgroup').evaluate_all(
        "groups => groups.map(group => [group.label, [...group.children].map(own => own.value)])"
    )
    assert labels[0] == ["Written for", list(meant)]
    assert other in labels[1][1]


def test_a_page_for_another_squad_says_so_at_the_top(
    phone: Page, server: Server, analysis: Analysis
) -> None:
    (id, summary), *_ = analysis.practices.items()
    others = [group for group in analysis.catalogue.lane_groups if group not in summary.groups]
    phone.goto(server.address + "settings.html")
    choose_mine(phone, *others[:3])
    boxes = phone.locator("[data-my-group]:not(:checked)")
    if len(others) > 2:  # no more than three
        assert all(box.is_disabled() for box in boxes.all())
    phone.goto(f"{server.address}practices/{id}.html")
    told = phone.locator("h1 ~ [data-whose-page]")
    squad = analysis.catalogue.club.squads[summary.practice.squad].title
    expect(told).to_contain_text(f"Written for {squad}, not for your groups.")
    expect(told).to_be_in_viewport()
    phone.reload()
    expect(told).to_be_visible()
