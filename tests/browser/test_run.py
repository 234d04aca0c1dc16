"""The run: the clock over 90 minutes, a frozen page and a reload; Stop; wet hands; a second phone;
what a phone can't do.
"""

from __future__ import annotations

import datetime
import json
import os
import random
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest
import yaml
from playwright.sync_api import Browser, BrowserContext, Locator, Page, expect
from shared import examples

from almanac.publish.node import search_path

from .web import Server, Watched

START = datetime.datetime(2026, 11, 26, 18, 45)
PRACTICE: dict[str, Any] = json.loads(
    (Path(__file__).resolve().parents[1] / "run" / "practice.json").read_text("utf-8")
)
LONG_S = 60


def long_practice() -> dict[str, Any]:
    """One group, 95 reps on the minute."""
    block = {"item": 1, "reps": 95, "every": LONG_S, "target": 30, "rest": 30, "home": 40}
    part = PRACTICE["parts"][0] | {"crews": {"b": {"blocks": [block]}}}
    return PRACTICE | {"parts": [part], "crews": PRACTICE["crews"][1:], "cuts": []}


def served(context: BrowserContext, data: dict[str, Any]) -> None:
    """Have the site answer with these data where the run of `two-lanes` is asked for."""
    body = json.dumps(data)
    context.route("**/run/practices/two-lanes.json", lambda route: route.fulfill(body=body))


@pytest.fixture
def at_six(context: BrowserContext, server: Server) -> Page:
    """A phone of 360 × 560 whose clock stands at the start of the practice."""
    page = context.new_page()
    page.set_viewport_size({"width": 360, "height": 560})
    page.clock.install(time=START - datetime.timedelta(minutes=1))
    page.clock.pause_at(START)
    served(context, PRACTICE)
    return page


def opened(page: Page, server: Server) -> None:
    page.goto(f"{server.address}run.html#practice=two-lanes")
    expect(page.get_by_role("button", name="Begin")).to_be_visible()


def press(page: Page, button: Locator, seconds: float = 0.7) -> None:
    """Press for a while, by the page's own clock."""
    box = button.bounding_box()
    assert box is not None
    page.clock.run_for(410)  # a touch sooner than 0.4 s after the last counts for nothing
    page.mouse.move(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    page.mouse.down()
    page.clock.run_for(int(seconds * 1000))
    page.mouse.up()


def tap(page: Page, name: str) -> None:
    page.clock.run_for(410)
    words = re.compile(rf"^{re.escape(name)}( can end .*)?$")
    page.get_by_role("button", name=words).click()


def begin(page: Page, server: Server) -> None:
    opened(page, server)
    tap(page, "Begin")
    expect(page.locator(".run-main")).to_contain_text("Go")


def go(page: Page) -> None:
    expect(page.locator(".run-main")).to_contain_text("Go")  # no longer Begin
    press(page, page.locator(".run-main"))
    expect(page.locator(".run-main")).to_contain_text("Hold")


def seconds(text: str | None) -> int:
    """Of a time as it is shown, from "18:45:02" or "1:25"."""
    total = 0
    for part in (text or "").split(":"):
        total = 60 * total + int(part)
    return total


def send_offs(page: Page) -> list[int]:
    """The second of the day of each row's next send-off, by what the page shows."""
    now = seconds(page.locator(".run-time").text_content())
    return [now + seconds(text) for text in page.locator(".row-time").all_text_contents()]


def changes(page: Page) -> list[dict[str, Any]]:
    kept = page.evaluate("localStorage.getItem('deck-almanac / run')")
    found: list[dict[str, Any]] = json.loads(kept)["run"]["changes"]
    return found


def test_ninety_minutes_a_frozen_page_and_a_reload_move_nothing(
    context: BrowserContext, at_six: Page, server: Server
) -> None:
    context.unroute("**/run/practices/two-lanes.json")
    served(context, long_practice())
    begin(at_six, server)
    go(at_six)
    first = send_offs(at_six)[0]
    assert first % 15 == 0
    for turn in range(9):
        if turn == 3:
            at_six.clock.fast_forward("10:00")  # the page was frozen: nothing was drawn
            at_six.clock.run_for(1100)
        elif turn == 6:
            at_six.clock.run_for(600_000)
            at_six.reload()
            expect(at_six.locator(".run-row")).to_have_count(1)
            at_six.clock.run_for(1100)
        else:
            at_six.clock.run_for(600_000)
        [due] = send_offs(at_six)
        assert (due - first) % LONG_S == 0, f"after {turn + 1} times ten minutes"
    expect(at_six.locator(".row-rep")).to_contain_text("of 95")


def test_without_times_it_is_a_list_with_a_clock_and_a_reload_leaves_no_wait(
    context: BrowserContext, at_six: Page, server: Server
) -> None:
    context.unroute("**/run/practices/two-lanes.json")
    block = {"item": 1, "reps": 4, "every": None, "target": None, "rest": None}
    part = PRACTICE["parts"][0] | {"crews": {"b": {"blocks": [block, block | {"item": 0}]}}}
    served(context, PRACTICE | {"parts": [part], "crews": PRACTICE["crews"][1:], "cuts": []})
    begin(at_six, server)
    expect(at_six.locator(".run-ends")).to_have_text(re.compile("^ends from"))
    press(at_six, at_six.locator(".run-main"))
    at_six.clock.run_for(20_000)
    for _ in range(2):
        expect(at_six.locator(".row-rep")).to_contain_text("no time known")
        expect(at_six.locator(".row-line")).to_have_text("4 × 50 Back kick")
        expect(at_six.locator(".row-then")).to_have_text("Next: 300 Easy swim, 4 reps")  # by a tap
        expect(at_six.locator(".run-main")).to_contain_text("Go")
        at_six.reload()
        expect(at_six.locator(".run-row")).to_have_count(1)
        at_six.clock.run_for(1100)


def test_a_clock_that_was_moved_is_asked_about(at_six: Page, server: Server) -> None:
    begin(at_six, server)
    go(at_six)
    before = send_offs(at_six)
    at_six.clock.set_system_time(START + datetime.timedelta(hours=1))
    at_six.clock.run_for(1100)
    expect(at_six.get_by_text("clocks have parted")).to_be_visible()
    assert at_six.evaluate(_TARGETS) == []
    press(at_six, at_six.get_by_role("button", name=re.compile("the run’s own clock")))
    assert send_offs(at_six) == before
    at_six.clock.run_for(2000)
    expect(at_six.locator(".run-row")).to_have_count(2)


def test_stop_is_one_press_in_every_state(at_six: Page, server: Server) -> None:
    """Always in the same corner; what was pressed by mistake is as it was."""
    begin(at_six, server)
    stop_and_back(at_six, "ready")
    go(at_six)
    stop_and_back(at_six, "running")
    press(at_six, at_six.locator(".run-main"))
    stop_and_back(at_six, "held")
    for names in (
        ["Change"],
        ["Change", "Pass it on"],
        ["Change", "Lock touch"],
        ["Change", "More ↓", "Helper’s page"],
    ):
        for name in names:
            tap(at_six, name)
        stop_and_back(at_six, names[-1])
    assert [change["do"] for change in changes(at_six)].count("stop") == 7


def stop_and_back(page: Page, state: str) -> None:
    stop = page.get_by_role("button", name="Stop", exact=True)
    box = stop.bounding_box()
    assert box is not None
    assert (box["x"], box["y"] + box["height"]) == (12, 548), state
    assert min(box["width"], box["height"]) >= 72
    page.touchscreen.tap(box["x"] + 20, box["y"] + 20)
    expect(page.get_by_role("timer")).to_have_text("0:00")
    tap(page, "Go on …")
    press(page, page.get_by_role("button", name=re.compile("^Pressed by mistake")), 1.1)
    expect(page.locator(".run-row")).to_have_count(2)


def test_a_stop_shows_the_emergency_page_and_ends_by_a_long_press(
    at_six: Page, server: Server
) -> None:
    begin(at_six, server)
    go(at_six)
    at_six.clock.run_for(100_000)
    at_six.get_by_role("button", name="Stop", exact=True).click()
    for words in ("Call", "Address", "Telephone", "Defibrillator", "First aid", "Way in for help"):
        expect(at_six.get_by_text(words, exact=True)).to_be_in_viewport(ratio=1)
    at_six.clock.run_for(65_000)
    expect(at_six.get_by_role("timer")).to_have_text("1:05")
    expect(at_six.get_by_role("timer")).to_be_in_viewport(ratio=1)
    tap(at_six, "Go on …")
    press(at_six, at_six.get_by_role("button", name="The same rep again"), 0.8)
    expect(at_six.get_by_role("button", name="The same rep again")).to_be_visible()  # too short
    press(at_six, at_six.get_by_role("button", name="The same rep again"), 1.1)
    expect(at_six.locator(".row-rep")).to_have_text(["1 of 1next", "1 of 1next"])


def test_with_text_of_twice_its_size_the_time_since_a_stop_stands_beside_its_title(
    at_six: Page, server: Server
) -> None:
    begin(at_six, server)
    at_six.evaluate("document.documentElement.style.fontSize = '200%'")
    at_six.get_by_role("button", name="Stop", exact=True).click()
    at_six.clock.run_for(3_700_000)
    title, since = at_six.get_by_role("heading", name="Stopped"), at_six.get_by_role("timer")
    expect(since).to_have_text("1:01:40")
    end = title.evaluate(
        "title => { const range = document.createRange(); range.selectNodeContents(title);"
        " return range.getBoundingClientRect().right; }"
    )
    box = since.bounding_box()
    assert box and box["x"] >= end + 8 and box["x"] + box["width"] <= 360


def test_stop_before_a_run_begins(at_six: Page, server: Server) -> None:
    opened(at_six, server)
    at_six.get_by_role("button", name="Stop", exact=True).click()
    expect(at_six.get_by_text("Call", exact=True)).to_be_visible()


def test_a_slowed_lane_and_a_late_start(at_six: Page, server: Server) -> None:
    """Each change shows its end before it is taken, and the last can be taken back."""
    begin(at_six, server)
    said = at_six.locator(".run-main small").inner_text().splitlines()
    assert said[0] == "all"
    go(at_six)
    assert at_six.locator(".run-ends").text_content() == said[1]
    at_six.clock.run_for(400_000)
    before = send_offs(at_six)
    at_six.clock.run_for(410)
    at_six.locator(".run-row").nth(1).click()
    tap(at_six, "Change")
    expect(at_six.locator(".run-chip").first).to_have_attribute("aria-pressed", "true")
    offer = at_six.get_by_role("button", name=re.compile("^10 s more from the next rep"))
    expect(offer).to_contain_text(re.compile(r"ends 19:\d\d:\d\d"))
    press(at_six, offer)
    at_six.clock.run_for(1000)
    assert send_offs(at_six)[0] == before[0]
    assert "10 s more" in (at_six.locator(".run-last").text_content() or "")
    tap(at_six, "Change")
    tap(at_six, "More ↓")
    press(at_six, at_six.get_by_role("button", name=re.compile("^Meet the others")))
    expect(at_six.locator(".run-main")).to_have_text(
        "Holdall"
    )  # there is nothing to hold of theirs
    at_six.clock.run_for(400_000)
    expect(at_six.locator(".row-time")).to_have_text(["ready", "ready"])
    at_six.clock.run_for(410)
    at_six.locator(".run-row").nth(1).click()
    tap(at_six, "Change")
    tap(at_six, "Cut to end at a time …")
    expect(at_six.get_by_role("heading", name="End by 19:45")).to_be_visible()  # of the slot
    expect(at_six.get_by_text("It ends by then as it is")).to_be_visible()
    tap(at_six, "−1 min")
    expect(at_six.get_by_text(re.compile("^As it is, it ends at"))).to_be_visible()
    whole = at_six.get_by_role("button", name=re.compile("^Main set: chute: left out"))
    expect(whole).to_contain_text(re.compile(r"ends 19:0\d:\d\d; 250 m less"))
    ends = at_six.locator(".run-ends").text_content()
    press(at_six, at_six.get_by_role("button", name=re.compile("^Main set: chute: a round fewer")))
    assert at_six.locator(".run-ends").text_content() != ends
    press(at_six, at_six.get_by_role("button", name="Take back"))
    assert at_six.locator(".run-ends").text_content() == ends


def test_what_a_change_leads_to_keeps_up_with_the_clock(at_six: Page, server: Server) -> None:
    """Group b begins its four 50s at 6:35, 1:25 apart: after the second, one rep less is made
    longer.
    """
    begin(at_six, server)
    go(at_six)
    at_six.clock.run_for(400_000)
    at_six.locator(".run-row").nth(1).click()
    tap(at_six, "Change")
    longer = at_six.get_by_role("button", name=re.compile("^10 s more"))
    expect(longer).to_contain_text(re.compile("target 1:06, rest 0:29; ends .*: wait 1:30"))
    at_six.clock.run_for(85_000)
    expect(longer).to_contain_text("wait 1:20")
    at_six.clock.run_for(170_000)  # the last rep of the part has begun
    expect(longer).to_contain_text("not any more")
    press(at_six, longer)
    expect(at_six.get_by_role("heading", name="Too late for that")).to_be_visible()
    assert [change["do"] for change in changes(at_six)] == ["go"]


def test_until_when_the_water_is_ours_goes_to_find_and_comes_from_there(
    at_six: Page, server: Server
) -> None:
    begin(at_six, server)
    tap(at_six, "Change")
    tap(at_six, "Late …")
    for _ in range(3):
        press(at_six, at_six.get_by_role("button", name="10 min later"))
        tap(at_six, "Change")
        tap(at_six, "Late …")
    expect(at_six.locator(".run-ends")).to_have_text(re.compile("^ends 19:49, 4 min over$"))
    tap(at_six, "Back")
    tap(at_six, "Change")
    tap(at_six, "More ↓")
    tap(at_six, "What fits until 19:45")
    expect(at_six.locator("[data-facet=minutes] > summary")).to_contain_text("until 19:45 (5")
    at_six.evaluate("localStorage.removeItem('deck-almanac / run')")
    at_six.goto(f"{server.address}run.html#set=kick-and-go")
    expect(at_six.get_by_label("The water is ours until")).to_have_value("19:45")


def test_a_second_phone_follows_by_a_typed_code(
    at_six: Page, browser: Browser, server: Server
) -> None:
    begin(at_six, server)
    go(at_six)
    for _ in range(2):
        at_six.clock.run_for(30_000)
        press(at_six, at_six.locator(".run-main"))  # hold
        at_six.clock.run_for(30_000)
        press(at_six, at_six.locator(".run-main"))  # go
    assert len(changes(at_six)) == 5
    tap(at_six, "Change")
    tap(at_six, "Pass it on")
    code = at_six.locator(".run-code").text_content() or ""
    assert len(code.replace(" ", "")) <= 40
    expect(at_six.locator(".run-code")).to_be_in_viewport(ratio=1)  # beside the code to scan
    expect(at_six.get_by_role("button", name="More ↓")).to_be_hidden()
    tap(at_six, "Back")
    other = browser.new_context(viewport={"width": 360, "height": 560}, has_touch=True)
    served(other, PRACTICE)
    page = other.new_page()
    now = at_six.evaluate("Date.now()") / 1000
    page.clock.install(time=now - 60)
    page.clock.pause_at(now)
    opened(page, server)
    tap(page, "More ↓")
    tap(page, "Follow another phone, by its code …")
    expect(page.get_by_label("Code from the coach’s phone")).to_be_focused()
    page.get_by_label("Code from the coach’s phone").fill("6KS4 C90Y DHYG G401 0FF")
    tap(page, "Follow")
    expect(page.get_by_role("alert").last).to_contain_text("nothing is guessed")
    page.get_by_label("Code from the coach’s phone").fill(code.lower())
    tap(page, "Follow")
    expect(page.get_by_text("Same as coach’s up to change 5")).to_be_visible()
    assert send_offs(page) == send_offs(at_six)
    for name in ("More", "Helper’s page", "Lanes 4–6"):
        tap(page, name)
    page.set_viewport_size({"width": 360, "height": 340})  # so that it does not fit
    page.clock.run_for(1000)
    whole = page.evaluate(_CUT)["whole"]
    page.set_viewport_size({"width": 360, "height": 560})
    assert f"{page.locator('.helper-time').text_content()} (0)" in whole and "Where (0)" in whole
    expect(page.locator(".helper-lines dt").nth(1)).to_have_text("Now")  # they swim the 300
    page.reload()
    expect(page.get_by_role("button", name="Tell the coach")).to_be_visible()
    for name in ("Tell the coach", "Leave this page"):
        tap(page, name)
    press(page, page.locator(".run-main"))
    expect(page.locator(".run-main")).to_contain_text("Hold")  # it leads from here
    page.clock.run_for(2000)
    press(page, page.locator(".run-main"))
    for name in ("Change", "Pass it on"):
        tap(page, name)
    code = page.locator(".run-code").text_content() or ""
    other.close()
    for name in ("Change", "Pass it on", "Follow another"):  # so that there are not two that lead
        tap(at_six, name)
    at_six.get_by_label("Code from the coach’s phone").fill(code)
    tap(at_six, "Follow")
    expect(at_six.get_by_text("Same as coach’s up to change 6")).to_be_visible()
    expect(at_six.locator(".run-main")).to_have_text("Lead from here")


def test_no_choice_of_whom_a_change_is_for_moves_under_the_finger(
    at_six: Page, server: Server
) -> None:
    """The row that was touched stands first, and stays there whoever is chosen."""
    begin(at_six, server)
    go(at_six)
    tap_row(at_six, 1)
    tap(at_six, "Change")
    for name in ("Lanes 4–6", "Lanes 1–3", "All"):
        tap(at_six, name)
        expect(at_six.locator(".run-chip")).to_have_text(["Lanes 4–6", "Lanes 1–3", "All"])
        expect(at_six.locator(".run-chip[aria-pressed=true]")).to_have_text(name)


def tap_row(page: Page, number: int) -> None:
    page.clock.run_for(410)
    page.locator(".run-row").nth(number).click()


def test_on_a_tall_phone_an_open_row_leaves_the_others_their_size(
    context: BrowserContext, at_six: Page, server: Server
) -> None:
    """What is opened takes what its words need, and not all that there is."""
    context.unroute("**/run/practices/two-lanes.json")
    served(context, with_a_third(PRACTICE))
    at_six.set_viewport_size({"width": 390, "height": 844})
    begin(at_six, server)
    go(at_six)
    at_six.clock.run_for(400_000)
    tap_row(at_six, 1)
    heights = at_six.locator(".run-row").evaluate_all("rows => rows.map(row => row.offsetHeight)")
    assert min(heights) >= 120 and heights[1] == 340, heights
    for row in (0, 2):
        shut = at_six.locator(".run-row").nth(row)
        assert shut.locator(".row-time").evaluate(_FIGURE_PX) >= 50
        expect(shut.locator(".row-line")).to_be_visible()
    assert at_six.evaluate(_SPILLED) == []


def test_a_set_is_set_up_for_the_group_that_its_page_shows(phone: Page, server: Server) -> None:
    """Of several groups of mine it is the first that the set is meant for; else the first of
    all.
    """
    chosen = "[aria-label='Kick and go'] .run-chip[aria-pressed=true]"
    for mine, title in (
        (["heron-2"], "Heron, lanes 4 to 6"),
        (["reed-1", "heron-2"], "Heron, lanes 4 to 6"),
        (["reed-1"], "Reed, lanes 1 and 2"),
        ([], "Heron, lanes 1 to 3"),
    ):
        phone.goto(f"{server.address}sets/kick-and-go.html")
        phone.evaluate(
            "groups => localStorage.setItem('deck-almanac / choices', JSON.stringify({groups}))",
            mine,
        )
        phone.reload()
        expect(phone.locator("select[data-choose=group] :checked")).to_have_text(title)
        phone.get_by_role("link", name="Run", exact=True).click()
        expect(phone.locator(chosen).first).to_have_text(title)


def test_on_its_side_a_helper_reads_place_and_work_on_the_first_screen(
    at_six: Page, server: Server
) -> None:
    """The time stands beside them, and takes no lines of its own."""
    at_six.set_viewport_size({"width": 640, "height": 360})
    begin(at_six, server)
    go(at_six)
    at_six.clock.run_for(20_000)
    panel = ("Change", "More ↓", "More ↓", "Helper’s page", "Lanes 4–6")
    for name in panel:
        if name != "More ↓" or at_six.get_by_role("button", name=name).is_visible():
            tap(at_six, name)
    shown = at_six.evaluate(_CUT)["whole"]
    for words in ("Where (0)", "Now (0)", f"{at_six.locator('.helper-time').text_content()} (0)"):
        assert words in shown
    assert any("300 Easy swim" in words for words in shown)


def test_a_station_that_nobody_is_at_says_who_comes_next(
    context: BrowserContext, at_six: Page, server: Server
) -> None:
    """The assistant reads what to look for before the first of them are there."""
    first, turn, *others = PRACTICE["parts"]
    context.unroute("**/run/practices/two-lanes.json")
    served(context, PRACTICE | {"parts": [first, turn | {"led_by": "Second coach"}, *others]})
    begin(at_six, server)
    for name in ("Change", "Helper’s page", "Station: Second coach"):
        tap(at_six, name)
    lines = at_six.locator(".helper-lines")
    expect(lines).to_contain_text("Next here")
    expect(lines).to_contain_text("Main set: chute")


def test_wet_touches_change_no_clock(at_six: Page, server: Server) -> None:
    """A dozen touches on Hold, some dozens anywhere but on Stop, 200 by --long."""
    begin(at_six, server)
    go(at_six)
    before = changes(at_six)
    box = at_six.locator(".run-main").bounding_box()
    assert box
    for _ in range(12):
        at_six.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
        at_six.clock.run_for(450)
    assert changes(at_six) == before
    by = random.Random(7)
    for _ in range(examples(60, 200)):
        x, y = by.uniform(0, 360), by.uniform(0, 560)
        if x > 112 or y < 460:  # a browser takes a touch beside a button for one on it
            at_six.touchscreen.tap(x, y)
        at_six.clock.run_for(by.randrange(150))
    assert changes(at_six) == before
    assert at_six.evaluate("localStorage.getItem('deck-almanac / run-clock')") is None  # no offset
    assert at_six.url.endswith("run.html#practice=two-lanes")


def test_going_back_asks_and_home_and_tonight_lead_to_the_run_that_is_on(
    at_six: Page, server: Server
) -> None:
    begin(at_six, server)
    for path in ("index.html", "tonight.html"):
        at_six.go_back()
        expect(at_six.get_by_role("heading", name="Leave the run?")).to_be_visible()
        at_six.goto(server.address + path)
        expect(at_six.locator(".tonight")).to_contain_text("On now")
        at_six.get_by_role("link", name="Back to the run").click()
        expect(at_six.locator(".row-time")).to_have_text(["ready", "ready"])


def test_where_another_run_is_on_stop_is_its_own(at_six: Page, server: Server) -> None:
    """Who opens a set while a practice is run is asked which, and can stop what is on meanwhile."""
    begin(at_six, server)
    go(at_six)
    at_six.goto(f"{server.address}index.html")
    at_six.goto(f"{server.address}run.html#set=kick-and-go")
    expect(at_six.get_by_role("button", name="Go to it")).to_be_visible()
    assert at_six.evaluate(_TARGETS) == []
    stop_and_back(at_six, "asked which run")
    at_six.goto(f"{server.address}index.html")
    at_six.goto(f"{server.address}run.html#set=kick-and-go")
    press(at_six, at_six.get_by_role("button", name="Leave it, and set up the other"))
    expect(at_six.get_by_role("heading", name="Kick and go")).to_be_visible()
    expect(at_six.locator(".run-top")).to_have_text("")  # of the run that was left
    tap(at_six, "Begin")
    expect(at_six.locator(".run-row")).to_have_count(1)


def test_a_key_must_be_pressed_twice(at_six: Page, server: Server) -> None:
    begin(at_six, server)
    expect(at_six.locator(".run-main")).to_be_focused()  # where the set-up led to
    at_six.keyboard.press("Enter")
    assert changes(at_six) == []
    expect(at_six.get_by_text("Once more")).to_have_attribute("role", "status")
    at_six.keyboard.press("Enter")
    assert [change["do"] for change in changes(at_six)] == ["go"]
    at_six.clock.run_for(16_000)
    heard = at_six.get_by_role("button", name="Lanes 4–6, next send-off in")
    expect(heard).to_be_visible()
    tap(at_six, "Change")
    at_six.keyboard.press("Escape")
    expect(at_six.locator(".run-main")).to_be_visible()
    expect(at_six.get_by_role("button", name="Change")).to_be_focused()


_POOR = """
Object.defineProperty(navigator, "wakeLock", {
  value: { request: () => Promise.reject(new DOMException("no", "NotAllowedError")) },
});
delete Navigator.prototype.vibrate;
delete window.AudioContext;
"""


def test_what_a_phone_cannot_do_is_said(at_six: Page, server: Server) -> None:
    at_six.add_init_script(_POOR)
    watched = Watched(at_six, server.address)
    opened(at_six, server)
    for words in ("will go dark after its own time", "No vibration here", "No sound here"):
        expect(at_six.locator(".run-told")).to_contain_text(words)
    expect(at_six.locator(".run-told")).to_contain_text("A dark or locked phone gives no sign.")
    expect(at_six.get_by_text("The site is not kept on this phone")).to_be_visible()
    tap(at_six, "Begin")
    expect(at_six.locator(".run-marks")).to_have_text("goes dark")
    go(at_six)
    expect(at_six.locator(".run-marks")).to_have_text("goes dark")
    at_six.clock.run_for(60_000)
    expect(at_six.locator(".run-marks")).to_have_text("goes dark")  # it stays
    assert watched.troubles == []


_KEPT_LIT = """
window.lock = Object.assign(new EventTarget(),
  { released: false, release: () => Promise.resolve() });
Object.defineProperty(navigator, "wakeLock", { value: { request: () =>
  Promise.resolve(window.lock) } });
"""


def test_a_phone_that_is_no_longer_kept_lit_says_so(at_six: Page, server: Server) -> None:
    at_six.add_init_script(_KEPT_LIT)
    begin(at_six, server)
    expect(at_six.locator(".run-marks")).to_be_empty()
    at_six.evaluate("lock.dispatchEvent(new Event('release'))")  # a low battery
    expect(at_six.locator(".run-marks")).to_have_text("goes dark")


_MUTE = """
Navigator.prototype.vibrate = () => false;
window.AudioContext = class { state = "suspended";
  resume() { return Promise.reject(new Error("no")); } };
"""


def test_a_sign_that_is_refused_when_it_is_tried_is_said_as_one_that_is_missing(
    at_six: Page, server: Server
) -> None:
    at_six.add_init_script(_MUTE)
    opened(at_six, server)
    told = at_six.locator(".run-told")
    expect(told).to_contain_text("Vibration is off.")
    for name, none in (("Sound", "No sound here."), ("Vibration", "No vibration here.")):
        tap(at_six, "More ↓")
        tap(at_six, name)
        expect(told).to_contain_text(none)
        expect(at_six.get_by_role("button", name=none)).to_have_attribute("aria-pressed", "false")
    expect(told).not_to_contain_text("is off")


@pytest.mark.parametrize("kind", ["practices", "sets"])
def test_every_run_file_is_laid_as_it_was_planned(site: Path, kind: str) -> None:
    """And changes by chance keep its rests."""
    path = Path(__file__).resolve().parents[1] / "run" / "engine.test.js"
    own = {
        **os.environ,
        "PATH": search_path(),
        "RUN_FILES": str(site / "data" / "v1" / "run" / kind),
    }
    command = ["node", "--test", "--test-name-pattern", "every file of a site", str(path)]
    done = subprocess.run(command, capture_output=True, text=True, env=own, check=False)
    assert done.returncode == 0, done.stdout[-4000:]
    assert "# pass 2" in done.stdout


def test_what_was_done_is_an_entry_that_the_reader_takes(at_six: Page, server: Server) -> None:
    begin(at_six, server)
    go(at_six)
    at_six.clock.run_for(740_000)
    tap(at_six, "Change")
    tap(at_six, "More ↓")
    tap(at_six, "End")
    press(at_six, at_six.get_by_role("button", name="End it here"))
    at_six.get_by_label("Swimmers").fill("18")
    at_six.get_by_label("A note, no names").fill("Yes: cold water, 1:15 late")
    gone_through(at_six, "What was done")
    tap(at_six, "Top ↑")
    at_six.set_viewport_size({"width": 640, "height": 360})
    at_six.clock.run_for(1000)
    gone_through(at_six, "What was done, in landscape")
    at_six.set_viewport_size({"width": 360, "height": 560})
    told = at_six.locator(".run-text").last
    expect(told).to_contain_text("cold water")
    entry = yaml.load(told.text_content() or "", yaml.BaseLoader)
    assert list(entry) == ["title", "practice", "on", "minutes", "metres", "heads", "note"]
    assert entry["title"] == "Two lanes and a chute, 26 November"
    assert (entry["minutes"], entry["metres"], entry["heads"]) == ("12", "500", "18")
    assert entry["note"] == "Yes: cold water, 1:15 late"


def with_a_third(data: dict[str, Any]) -> dict[str, Any]:
    """With a group c that does what b does."""
    crew = data["crews"][1] | {"key": "c", "group": "c", "title": "C, lane 7", "lanes": [7]}
    parts = [part | {"crews": part["crews"] | {"c": part["crews"]["b"]}} for part in data["parts"]]
    return data | {"crews": [*data["crews"], crew], "parts": parts}


_TARGETS = """() => {
  const clips = box => { const own = box.closest(".panel-body")?.getBoundingClientRect();
    return own ?? { top: 0, bottom: innerHeight }; };
  const shown = [...document.querySelectorAll(".run :is(button, input, textarea)")].filter(box =>
    box.checkVisibility())
    .map(box => ({ box, place: box.getBoundingClientRect(), clip: clips(box) }))
    .map(({ box, place: { left, right, top, bottom }, clip }) => ({
      name: box.textContent, left, right, top: Math.max(top, clip.top),
        bottom: Math.min(bottom, clip.bottom), whole: top >= clip.top && bottom <= clip.bottom }))
    .filter(({ top, bottom }) => bottom > top);
  const small = shown.filter(({ whole, left, right, top, bottom }) => whole &&
    Math.min(right - left, bottom - top) < 63.5).map(({ name }) => `${name} is small`);
  const near = shown.flatMap((a, k) => shown.slice(k + 1)
    .filter(b => Math.max(a.left - b.right, b.left - a.right, a.top - b.bottom,
      b.top - a.bottom) < 11.5).map(b => `${a.name} is near ${b.name}`));
  return [...small, ...near];
}"""
_SPILLED = """() => [...document.querySelectorAll(".run-row")].flatMap(row =>
  [...row.children].filter(part => {
  const [own, all] = [part.getBoundingClientRect(), row.getBoundingClientRect()];
  return part.className !== "row-more" && own.height &&
    (own.top < all.top || own.bottom > all.bottom);
})).map(part => part.className)"""
_FIGURE_PX = "element => 0.7 * parseFloat(getComputedStyle(element).fontSize)"
_IS_WHOLE = "element => element.scrollWidth <= element.clientWidth + 1"


def test_three_groups_are_read_from_afar_and_nothing_is_small_or_near(
    context: BrowserContext, at_six: Page, server: Server
) -> None:
    """Of 70 cm: figures of 40 px and lines of 18, whole, also where a row is open. A figure is some
    0.7 of the size of its letters high.
    """
    context.unroute("**/run/practices/two-lanes.json")
    served(context, with_a_third(PRACTICE))
    opened(at_six, server)
    assert at_six.evaluate(_TARGETS) == []
    tap(at_six, "Begin")
    go(at_six)
    at_six.clock.run_for(20_000)
    expect(at_six.locator(".row-rep").first).to_have_text("1 of 1swimming")
    for is_open in (False, True):
        if is_open:
            at_six.locator(".run-row").nth(1).click()
        for row in at_six.locator(".row-time").all():
            assert row.evaluate(_FIGURE_PX) >= 40
        for line in at_six.locator(".row-line:visible").all():
            assert line.evaluate(_FIGURE_PX) >= 0.7 * 18 and line.evaluate(_IS_WHOLE)
        assert at_six.evaluate(_TARGETS) == []
        assert at_six.evaluate(_SPILLED) == []
    for name in (
        "Change",
        "More ↓",
        "Helper’s page",
        "Back",
        "Change",
        "More ↓",
        "Results",
        "Stop",
        "Go on …",
    ):
        tap(at_six, name)
        assert at_six.evaluate(_TARGETS) == [], name


# Of a panel, what its screen shows in part only, and what it shows whole: lines of text, with what
# hangs below them, and things to press.
_CUT = """() => {
  const body = document.querySelector(".panel-body"), place = body.getBoundingClientRect();
  const [top = 0, , bottom = top] = (body.style.clipPath.match(/-?[\\d.]+px/g) ?? [])
    .map(parseFloat);
  const [from, to] = [place.top + top, place.bottom - bottom];
  const range = document.createRange(), all = [...body.querySelectorAll("button, input")].map(own =>
    [own.textContent || own.id, own.getBoundingClientRect()]);
  const walk = document.createTreeWalker(body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    range.selectNodeContents(walk.currentNode);
    all.push(...[...range.getClientRects()].map((box, line) =>
      [`${walk.currentNode.textContent} (${line})`, box]));
  }
  // a letter's box is higher than what is drawn: above it, and hardly below it
  const spare = ([name, { height }], share) =>
    0.5 + (/\\(\\d+\\)$/.test(name) ? share * height : 0);
  const seen = all.filter(own => own[1].height > 0 && own[1].bottom > from + spare(own, 0.12) &&
    own[1].top < to - spare(own, 0.12));
  const whole = seen.filter(own => own[1].top >= from - spare(own, 0.12) &&
    own[1].bottom <= to + spare(own, 0.03));
  return { cut: seen.filter(own => !whole.includes(own)).map(([name]) => name),
    whole: whole.map(([name]) => name), all: all.filter(([, { height }]) => height > 0)
      .map(([name]) => name) };
}"""


@pytest.mark.parametrize("size", [(360, 560), (640, 360)])
def test_no_screen_of_a_panel_cuts_a_line_or_a_button_through(
    at_six: Page, server: Server, size: tuple[int, int]
) -> None:
    """And each of them stands whole on one of its screens."""
    at_six.set_viewport_size({"width": size[0], "height": size[1]})
    opened(at_six, server)
    gone_through(at_six, "set-up")
    tap(at_six, "Begin")
    go(at_six)
    at_six.clock.run_for(400_000)
    for names in (
        ["Change"],
        ["Change", "Settings"],
        ["Change", "Pass it on"],
        ["Change", "Helper’s page"],
        ["Stop"],
    ):
        for name in names:
            tap(at_six, name)
        gone_through(at_six, names[-1])
        if names != ["Stop"]:
            tap(at_six, "Back")


def gone_through(page: Page, name: str) -> None:
    seen: set[str] = set()
    further = page.get_by_role("button", name=re.compile("^(More ↓|Top ↑)$"))
    for _ in range(12):
        found = page.evaluate(_CUT)
        assert found["cut"] == [], name
        seen |= set(found["whole"])
        if not further.is_visible() or further.text_content() == "Top ↑":
            break
        page.clock.run_for(410)
        further.click()
    assert set(found["all"]) <= seen, name


def timed() -> dict[str, Any]:
    """Both groups swim timed reps on the minute, three in a lane, 5 s apart."""
    block = {"item": 0, "reps": 4, "every": 60, "target": 30, "rest": 30, "home": 40}
    crew = {"blocks": [block | {"in_lane": 3, "gap": 5}]}
    part = PRACTICE["parts"][1] | {"stage": 0, "crews": {"a": crew, "b": crew}}
    return PRACTICE | {"parts": [part], "cuts": []}


@pytest.mark.parametrize("size", [(360, 560), (640, 360)])
def test_the_pads_of_all_lanes_are_pressed_on_one_screen(
    context: BrowserContext, at_six: Page, server: Server, size: tuple[int, int]
) -> None:
    """Touches of two lanes come together: there is no time to look for a pad."""
    context.unroute("**/run/practices/two-lanes.json")
    served(context, timed())
    at_six.set_viewport_size({"width": size[0], "height": size[1]})
    begin(at_six, server)
    go(at_six)
    for name in ("Change", "More ↓", "Results"):
        tap(at_six, name)
    whole = at_six.evaluate(_CUT)["whole"]
    for words in ("Lane 1", "Lane 2", "Lane 3", "Missed", "Order changed"):
        wanted = 1 if words.startswith("Lane") else 3
        assert sum(name.startswith(words) and "(" not in name for name in whole) == wanted, words
    assert at_six.evaluate(_TARGETS) == []


def test_a_pad_a_lane_counts_each_swimmer_from_their_own_send_off(
    context: BrowserContext, at_six: Page, server: Server
) -> None:
    context.unroute("**/run/practices/two-lanes.json")
    served(context, timed())
    begin(at_six, server)
    go(at_six)
    at_six.clock.run_for(14_300)  # at 18:45:15; a press takes 0.7 s
    for name in ("Change", "More ↓", "Results", "Lanes 4–6"):
        tap(at_six, name)
    pad = at_six.get_by_role("button", name=re.compile("^Lane 4"))
    gone_s = seconds(at_six.locator(".run-time").text_content()) - seconds("18:45:15")
    at_six.clock.run_for((30 - gone_s) * 1000 + 400)
    told = []
    for wait_ms in (5000, 5600, 0):
        pad.dispatch_event("pointerdown")
        told.append(pad.locator("small").text_content())
        at_six.clock.run_for(wait_ms)
    first = seconds_in(told[0], "leader")
    assert 30 <= first < 32
    assert seconds_in(told[1], "second") == pytest.approx(first, abs=0.11)
    assert seconds_in(told[2], "third") == pytest.approx(first + 0.6, abs=0.11)
    at_six.clock.run_for(410)
    at_six.get_by_role("button", name="Order changed").first.click()  # second and third of lane 4
    last = pad.locator("small").text_content()
    assert seconds_in(last, "second") == pytest.approx(first + 5.6, abs=0.11)
    at_six.clock.run_for(55_000)
    at_six.get_by_role("button", name="Missed").first.click()
    at_six.clock.run_for(4500)
    pad.dispatch_event("pointerdown")
    expect(pad.locator("small")).to_have_text(re.compile("^leader –, second 0:3"))
    tap(at_six, "All reps")
    expect(at_six.get_by_text(re.compile("^Rep 1, lane 4, leader: 0:3.* by hand$"))).to_be_visible()
    at_six.clock.set_system_time(START + datetime.timedelta(days=15))
    at_six.evaluate("localStorage.removeItem('deck-almanac / run')")
    kept = "JSON.parse(localStorage.getItem('deck-almanac / run-results')).length"
    assert at_six.evaluate(kept) == 1
    at_six.reload()
    for name in ("Begin", "Change", "More ↓", "Results"):
        tap(at_six, name)
    assert at_six.evaluate(kept) == 0  # gone after a fortnight


def seconds_in(told: str | None, who: str) -> float:
    """The result of a place, of "leader 0:30.4, second –"."""
    found = re.search(rf"{who} (\d+):([\d.]+)", told or "")
    assert found, told
    return 60 * int(found[1]) + float(found[2])


_SIGNS = """
window.given = { buzz: 0, tone: 0 };
Navigator.prototype.vibrate = () => { window.given.buzz++; return true; };
window.AudioContext = class {
  state = "running"; currentTime = 0; destination = {};
  resume() { return Promise.resolve(); }
  createOscillator() { return { frequency: {}, connect: to => to, start: () =>
    { window.given.tone++; }, stop() {} }; }
  createGain() { return { gain: { setValueAtTime() {}, exponentialRampToValueAtTime() {} },
    connect: to => to }; }
};
"""


def test_signs_are_off_at_first_and_none_is_given_for_what_is_past_or_stopped(
    context: BrowserContext, at_six: Page, server: Server
) -> None:
    context.unroute("**/run/practices/two-lanes.json")
    served(context, timed())
    at_six.add_init_script(_SIGNS)
    opened(at_six, server)
    expect(at_six.locator(".run-told")).to_contain_text("Sound is off.")
    for name in ("More ↓", "Flash of the row", "Sound", "Vibration"):
        tap(at_six, name)  # each is tried at once
    expect(at_six.locator(".run-told")).not_to_contain_text("is off")
    tap(at_six, "Begin")
    go(at_six)
    assert at_six.evaluate("given") == {"buzz": 1, "tone": 1}
    at_six.clock.run_for(15_000)
    assert at_six.evaluate("given") == {"buzz": 2, "tone": 2}  # once for both groups
    at_six.clock.fast_forward("01:10")  # frozen over a send-off
    at_six.clock.run_for(1000)
    assert at_six.evaluate("given") == {"buzz": 2, "tone": 2}
    now = seconds(at_six.locator(".run-time").text_content())
    at_six.clock.run_for((15 - now % 60) % 60 * 1000 + 100)
    expect(at_six.locator(".is-flashed")).to_have_count(2)
    at_six.clock.run_for(2000)
    expect(at_six.locator(".is-flashed")).to_have_count(0)
    tap(at_six, "Stop")
    at_six.clock.run_for(120_000)
    assert at_six.evaluate("given") == {"buzz": 3, "tone": 3}


def test_one_group_fills_the_page(context: BrowserContext, at_six: Page, server: Server) -> None:
    context.unroute("**/run/practices/two-lanes.json")
    served(context, long_practice())
    begin(at_six, server)
    go(at_six)
    at_six.clock.run_for(15_000)
    digits = at_six.locator(".row-time")
    expect(digits).to_have_text(re.compile(r"^\d:\d\d$"))
    assert digits.evaluate(_FIGURE_PX) >= 110
    assert digits.evaluate(_IS_WHOLE)
    fits = "() => document.documentElement.scrollWidth <= 360 && document.body.scrollHeight <= 560"
    assert at_six.evaluate(fits)
