"""The finder: what it finds, its counts, what is greyed, the address, words with typing errors, the keyboard."""

from __future__ import annotations

import json
import re

import pytest
from playwright.sync_api import Locator, Page, expect

from almanac.analysis.analysis import Analysis

from .web import Server


@pytest.fixture
def finder(phone: Page, server: Server) -> Page:
    phone.goto(server.address + "find.html")
    return phone


def box(page: Page, facet: str, value: str) -> Locator:
    return page.locator(f'[data-facet={facet}] input[value="{value}"]')


def count(page: Page, facet: str, value: str) -> int:
    told = box(page, facet, value).locator("..").locator("[data-count]")
    expect(told).to_have_text(re.compile(r"^\d+$"))
    return int(told.text_content() or "")


def tick(page: Page, facet: str, *values: str) -> None:
    for value in values:
        if page.locator(f"[data-facet={facet}]").get_attribute("open") is None:
            page.locator(f"[data-facet={facet}] summary").click()
        box(page, facet, value).check()


def total(page: Page) -> tuple[int, int]:
    drills, sets = re.findall(r"\d+", page.locator("[data-total]").inner_text())[:2]
    return int(drills), int(sets)


def test_everything_is_found_first(finder: Page, analysis: Analysis) -> None:
    assert total(finder) == (len(analysis.catalogue.drills), len(analysis.computable))
    expect(finder.locator("[data-results] > li")).to_have_count(12)
    finder.locator("[data-more]").press("Enter")  # a tap may miss while pictures still come in
    expect(finder.locator("[data-results] > li")).to_have_count(24)


def test_an_address_gone_to_stands_before_one_being_written(finder: Page) -> None:
    tick(finder, "level", "foundation")
    finder.evaluate(
        """() => {
          document.querySelector("[data-facet=level] input[value=building]").click();
          location.hash = "#level=performing"; // while the click's own address is still to be written
        }"""
    )
    expect(finder).to_have_url(re.compile("#level=performing$"))
    expect(box(finder, "level", "performing")).to_be_checked()
    expect(box(finder, "level", "building")).not_to_be_checked()


def test_a_count_is_what_its_choice_gives(finder: Page, analysis: Analysis) -> None:
    drills = analysis.catalogue.drills.values()
    everything = finder.locator("[data-total]").inner_text()
    for level in analysis.catalogue.words("levels"):
        expected = sum(drill.level == level for drill in drills) + sum(
            item.level == level for item in analysis.computable.values()
        )
        finder.goto(finder.url.split("#")[0] + "#open=level")
        expect(finder.locator("[data-total]")).to_have_text(everything)  # the address is read
        expect(finder.locator("[data-facet=level]")).to_have_attribute("open", "")
        assert count(finder, "level", level) == expected
        tick(finder, "level", level)
        assert sum(total(finder)) == expected
        # before it, going to the same address again would be going nowhere
        expect(finder).to_have_url(re.compile(f"level={level}"))


def test_counts_hold_beside_other_choices(finder: Page, analysis: Analysis) -> None:
    tick(finder, "kind", "drill")
    tick(finder, "goal", "kick-speed")
    drills = [drill for drill in analysis.catalogue.drills.values() if "kick-speed" in drill.goals]
    assert total(finder) == (len(drills), 0)
    for position in {drill.position for drill in drills} - {"any"}:
        finder.locator("[data-facet=position]").evaluate("box => { box.open = true }")
        assert count(finder, "position", position) == sum(
            drill.position == position for drill in drills
        )


def test_what_leads_to_nothing_is_greyed(finder: Page, analysis: Analysis) -> None:
    tick(finder, "kind", "drill")
    tick(finder, "goal", "kick-speed")
    used = {
        drill.level for drill in analysis.catalogue.drills.values() if "kick-speed" in drill.goals
    }
    for level in analysis.catalogue.words("levels"):
        assert box(finder, "level", level).is_disabled() == (level not in used)
        assert (count_text(finder, level) == "0") == (level not in used)


def count_text(page: Page, level: str) -> str:
    return box(page, "level", level).locator("..").locator("[data-count]").text_content() or ""


def test_gear_at_hand_is_all_that_may_be_needed(finder: Page, analysis: Analysis) -> None:
    tick(finder, "kind", "drill")
    tick(finder, "gear", "none", "fins")
    within = [
        drill for drill in analysis.catalogue.drills.values() if set(drill.gear.needs) <= {"fins"}
    ]
    assert total(finder) == (len(within), 0)
    first = finder.locator("[data-results] a").first.get_attribute("href") or ""
    assert (
        "fins" in analysis.catalogue.drills[first.split("/")[-1].removesuffix(".html")].gear.needs
    )


def test_minutes_follow_the_lane_group(finder: Page, analysis: Analysis) -> None:
    tick(finder, "kind", "set")
    found = {}
    for group in ("reed-1", "osprey-1"):
        finder.locator("[data-facet=minutes]").evaluate("box => { box.open = true }")
        finder.locator('[data-choose="group"]').select_option(group)
        tick(finder, "minutes", "25")
        clocks = [
            analysis.summary(id).clocks[group].clock
            for id, item in analysis.computable.items()
            if str(item.course) == "25m"
        ]
        fit = sum(clock is not None and clock.value <= 25 * 60 for clock in clocks)
        found[group] = total(finder)[1]
        assert found[group] >= fit  # sets of other pools are laid into this one too
    assert found["osprey-1"] > found["reed-1"]
    assert (
        "minutes=25" in finder.url and "group=osprey-1" in finder.url and "pool=25m" in finder.url
    )


def test_the_address_holds_the_choice(finder: Page, server: Server) -> None:
    tick(finder, "fault", "knees-break-surface")
    tick(finder, "gear", "none")
    finder.locator("#find-words").fill("kick")
    expect(finder).to_have_url(re.compile("words=kick"))  # written when the list is on the screen
    shared, shown = finder.url, total(finder)
    assert "fault=knees-break-surface" in shared
    finder.goto(server.address)
    finder.goto(shared)
    assert total(finder) == shown
    assert box(finder, "fault", "knees-break-surface").is_checked()
    expect(finder.locator("#find-words")).to_have_value("kick")
    finder.locator("[data-results] a").first.click()
    finder.go_back()
    assert total(finder) == shown


def test_an_address_of_another_day_does_no_harm(finder: Page) -> None:
    whole = total(finder)
    finder.goto(
        finder.url.split("#")[0] + "#goal=no-such-goal&minutes=-3&gear=%3Cscript%3E&level=&words="
    )
    assert total(finder) == whole


def test_nothing_found_says_what_to_drop(finder: Page) -> None:
    finder.goto(finder.url.split("#")[0] + "#kind=drill&goal=kick-speed&words=zzzqqq")
    assert total(finder) == (0, 0)
    ways = finder.locator("[data-ways] button")
    assert ways.first.inner_text().startswith("Words: zzzqqq (")
    ways.first.click()
    assert total(finder)[0] > 0
    expect(finder.locator("[data-nothing]")).to_be_hidden()
    expect(finder.locator("#find-words")).to_be_focused()


@pytest.mark.parametrize(
    ("asked", "expected"),
    [
        ("streamline kick", "back-streamline-kick"),
        ("steamline kik", "back-streamline-kick"),
        ("his knees break the surfcae", "deck-edge-back-kick"),
        ("bicycle", "deck-edge-back-kick"),
        ("parashute", "back-kick-with-parachute"),
        ("Supine streamline flutter", "back-streamline-kick"),
        ("toes boil", "back-streamline-kick"),
    ],
)
def test_words_forgive_typing_errors(finder: Page, asked: str, expected: str) -> None:
    finder.locator("#find-words").fill(asked)
    while finder.locator("[data-more]").is_visible():
        finder.locator("[data-more]").click()
    found = [str(link.get_attribute("href")) for link in finder.locator("[data-results] a").all()]
    assert any(address.endswith(f"/{expected}.html") for address in found)


def test_a_fault_shows_first_what_to_try_first(finder: Page, analysis: Analysis) -> None:
    fault = analysis.catalogue.faults["knees-break-surface"]
    finder.goto(finder.url.split("#")[0] + f"#fault={fault.id}")
    found = [str(link.get_attribute("href")) for link in finder.locator("[data-results] a").all()]
    wanted = list(dict.fromkeys(id for cause in fault.causes for id in cause.mended_by))[:4]
    assert [address.split("/")[-1] for address in found[:4]] == [f"{id}.html" for id in wanted]


def test_by_keyboard_alone(finder: Page) -> None:
    before = total(finder)
    finder.locator("#find-words").focus()
    finder.keyboard.press("Tab")
    finder.keyboard.press("Enter")  # the first facet opens
    finder.keyboard.press("Tab")
    finder.keyboard.press("Space")
    assert (
        finder.evaluate("document.activeElement.name") == "kind"
    )  # the choice stays open, and the focus in it
    assert total(finder) != before
    finder.keyboard.press("Space")
    assert total(finder) == before
    finder.locator("[data-results] a").first.focus()
    finder.keyboard.press("Enter")
    finder.wait_for_url("**/drills/*.html")


def test_it_speaks_to_a_screen_reader(finder: Page) -> None:
    expect(finder.locator("[data-total]")).to_have_attribute("aria-live", "polite")
    for group in finder.locator("fieldset").all():
        assert group.locator("legend").text_content()
    names = finder.locator("fieldset input").evaluate_all(
        "inputs => inputs.map(input => input.labels[0].textContent.trim())"
    )
    assert all(names)


def test_rows_of_the_table_name_what_they_say(finder: Page, analysis: Analysis) -> None:
    data = json.loads(finder.locator("#finder-data").text_content() or "")
    at = {name: number for number, name in enumerate(data["columns"])}
    rows = {row[at["id"]]: row for row in data["rows"]}
    for id, drill in analysis.catalogue.drills.items():
        assert [data["words"]["goal"][number][0] for number in rows[id][at["goal"]]] == list(
            drill.goals
        )
        assert [data["words"]["gear"][number][0] for number in rows[id][at["needs"]]] == list(
            drill.gear.needs
        )
    assert set(rows) == set(analysis.catalogue.drills) | set(analysis.computable)
