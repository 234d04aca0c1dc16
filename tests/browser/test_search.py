"""One search: one way in, typing errors forgiven, the trade's other words known, the last five, the
nearest word.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from .web import Server, Watched, ask

HITS = "[data-results] a"


@pytest.fixture
def phone(kept_phone: Page) -> Page:
    return kept_phone


def test_a_word_in_the_address_is_looked_for_and_the_box_has_the_cursor(
    phone: Page, server: Server
) -> None:
    phone.goto(f"{server.address}find.html?q=parashute")
    expect(phone.locator("#find-words")).to_be_focused()
    first = phone.locator(HITS).first
    expect(first).to_contain_text("arachute")
    expect(first).to_contain_text("Gear")
    first.click()
    expect(phone).to_have_url(f"{server.address}gear/parachute.html")
    expect(phone.locator("h1")).to_contain_text("arachute")


def test_the_box_in_the_bar_is_answered_in_find(browser: Browser, server: Server) -> None:
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    page.goto(f"{server.address}drills/back-streamline-kick.html")
    page.locator(".bar-search input").fill("strealine kick")
    page.keyboard.press("Enter")
    page.wait_for_url("**/find.html?q=strealine+kick*")
    expect(page.locator("[data-results] a").first).to_contain_text("treamline")
    context.close()


def test_the_best_three_stand_before_the_kinds(phone: Page, server: Server) -> None:
    phone.goto(f"{server.address}find.html?q=kick")
    expect(phone.locator("[data-found]")).to_have_attribute("data-texts", "read")
    assert phone.locator("[data-best] > li").count() == 3
    kinds = phone.locator("[data-results] h2")
    assert kinds.count() > 2
    counts = phone.locator(".kinds .chip [data-count]").all_text_contents()
    told = int((phone.locator("[data-total]").inner_text()).split()[0])
    assert told == sum(map(int, counts))
    assert {text.split()[-1] for text in kinds.all_text_contents()} <= set(counts)
    chip = phone.locator(".kinds .chip", has=phone.locator("[value=fault]"))
    number = int(chip.locator("[data-count]").inner_text())
    chip.click()
    expect(phone.locator("[data-total]")).to_have_text(re.compile(rf"^{number} hits?[.,]"))
    expect(phone.locator("[data-results] h2")).to_have_count(0)


def test_a_word_that_nothing_has_is_told_with_the_nearest_one(phone: Page, server: Server) -> None:
    phone.goto(f"{server.address}find.html?q=parashute")
    unknown = phone.locator("[data-unknown]")
    expect(unknown).to_have_text("Nothing for “parashute”; nearest: “parachute”.")
    misspelt = phone.locator(HITS).evaluate_all("hits => hits.map(hit => hit.href)")
    phone.locator("#find-words").fill("parachute")
    expect(unknown).to_be_hidden()
    assert misspelt == phone.locator(HITS).evaluate_all("hits => hits.map(hit => hit.href)")
    phone.locator("#find-words").fill("zzzzzz kick")
    expect(unknown).to_have_text("Nothing for “zzzzzz”.")
    phone.locator("#find-words").fill("stoped")
    expect(unknown).to_have_text("Nothing for “stoped”; nearest: “stopped”.")
    phone.locator("#find-words").fill("strem line kick")
    expect(unknown).to_have_text("Nothing for “strem line”; nearest: “streamline”.")


def test_what_answers_little_of_a_question_stands_below_a_line(phone: Page, server: Server) -> None:
    phone.goto(f"{server.address}find.html?q=kick")
    expect(phone.locator("[data-found]")).to_have_attribute("data-texts", "read")
    first = phone.locator(HITS).first.get_attribute("href")
    phone.locator("#find-words").fill("kick zzzzzz qqqqqq")
    line = phone.locator("[data-less-sure]")
    expect(line).to_have_text("Less sure")
    expect(phone.locator("[data-best]")).to_have_count(0)
    under = phone.locator("[data-less-sure] ~ * a")
    assert under.count() == phone.locator(HITS).count() > 3
    assert first in under.evaluate_all(
        "hits => hits.slice(0, 3).map(hit => hit.getAttribute('href'))"
    )
    phone.locator("#find-words").fill("parachute kick")
    expect(line).to_have_count(1)
    sure = phone.locator("[data-best] a")
    assert sure.count() == 3
    assert line.evaluate("line => line.previousElementSibling !== null")


def test_pages_for_editors_stand_last_unless_they_are_asked_for(
    phone: Page, server: Server
) -> None:
    asked = (
        "form",
        "add speed",
        "check the kick",
        "words to say",
        "data",
        "add a drill",
    )
    *coach, data, add = ask(phone, server.address, *asked)
    editors = {f"{name}.html" for name in ("add", "checks", "fields", "style", "life", "coverage")}
    assert not editors & {hit for found in coach[1:4] for hit in found}
    assert data[0] == "data.html" and add[0] == "add.html"


def test_every_hit_is_high_enough_to_tap(phone: Page, server: Server) -> None:
    phone.goto(f"{server.address}find.html?q=kick")
    expect(phone.locator("[data-found]")).to_have_attribute("data-texts", "read")
    heights = phone.locator(HITS).evaluate_all("hits => hits.map(hit => hit.offsetHeight)")
    assert min(heights) >= 56


def test_an_empty_box_shows_the_last_five(phone: Page, server: Server) -> None:
    for word in ("board", "chute", "fins", "knees", "board", "hips", "back"):
        phone.goto(f"{server.address}find.html")
        expect(phone.locator("[data-found]")).to_have_attribute("data-texts", "read")
        phone.locator("#find-words").fill(word)
        phone.locator(HITS).first.press("Enter")
        phone.wait_for_url(lambda url: "find.html" not in url)
    phone.goto(f"{server.address}find.html")
    assert phone.locator("[data-looked-for] button").all_inner_texts() == [
        "back", "hips", "board", "knees", "fins",
    ]  # fmt: skip
    phone.locator("[data-looked-for] button").first.click()
    expect(phone.locator("#find-words")).to_have_value("back")
    expect(phone.locator("[data-recent]")).to_be_hidden()
    phone.goto(f"{server.address}find.html")
    phone.locator("[data-forget]").click()
    expect(phone.locator("[data-recent]")).to_be_hidden()
    phone.reload()
    expect(phone.locator("[data-found]")).to_be_visible()
    expect(phone.locator("[data-recent]")).to_be_hidden()


def test_no_hit_shows_the_nearest_word_and_what_it_finds(phone: Page, server: Server) -> None:
    phone.goto(f"{server.address}find.html?q=parrxachutqzt")
    near = phone.locator("[data-nearest]")
    expect(near).to_have_text(re.compile(r"^Nearest word: parachute \(\d+ hits?\)$"))
    near.click()
    assert phone.locator(HITS).count() > 0
    expect(phone.locator("[data-nothing]")).to_be_hidden()


def test_it_answers_in_a_page_opened_from_a_folder(browser: Browser, site: Path) -> None:
    page = browser.new_page()
    watched = Watched(page, "file://")
    page.goto(f"{(site / 'find.html').as_uri()}?q=parashute")
    expect(page.locator("[data-found]")).to_have_attribute("data-texts", "read")
    expect(page.locator(HITS).first).to_contain_text("arachute")
    page.close()
    assert watched.troubles == []


def test_idle_words_break_nothing(phone: Page, server: Server) -> None:
    answers = ask(phone, server.address, "zzzzzzzzzzz", "***", "the of", "(", "kick")
    assert answers[0] == []
    assert all(len(found) == 3 for found in answers[1:])


def test_minutes_lanes_gear_and_a_squad_are_heard_in_a_question(
    phone: Page, server: Server
) -> None:
    phone.goto(f"{server.address}find.html?q=heron+two+lanes+half+an+hour+fins")
    expect(phone.locator("[data-found]")).to_have_attribute("data-texts", "read")
    expect(phone.locator("[data-total]")).to_have_text(
        re.compile(r"hits? for 30 min, 2 lanes, with fins[.,]")
    )
    expect(phone.locator("[data-whose]")).to_contain_text("Heron")
    expect(phone.locator("[data-whose]")).not_to_contain_text("Reed")
    assert phone.locator(HITS).count() > 0
    total = phone.locator("[data-total]")
    for words, heard in {
        "3 lanes 24 kids": "3 lanes, 24 swimmers",
        "one coach two lanes": "2 lanes, 1 adult",
        "only 12 min": "12 min",
        "fins 4x50": "with fins",
        "no fins left": "without fins",
    }.items():
        phone.locator("#find-words").fill(words)
        expect(total).to_have_text(re.compile(rf"hits? for {heard}[.,]"))
