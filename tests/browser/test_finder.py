"""The finder: what it finds, its counts, what is greyed, the address, words with typing errors, the
keyboard.
"""

from __future__ import annotations

import json
import re

import pytest
from playwright.sync_api import Locator, Page, expect

from almanac.analysis.analysis import Analysis
from almanac.site.links import page_of
from almanac.units import COURSES

from .web import Server

MORE = ("fault", "level", "effort", "position", "stroke", "whom")  # below "More" on a phone


@pytest.fixture
def phone(kept_phone: Page) -> Page:
    return kept_phone


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
        if facet == "kind":
            page.locator(".kinds .chip", has=page.locator(f'[value="{value}"]')).click()
            continue
        if facet in MORE and page.locator("[data-more-facets]").get_attribute("open") is None:
            page.locator("[data-more-facets] > summary").click()
        if page.locator(f"[data-facet={facet}]").get_attribute("open") is None:
            page.locator(f"[data-facet={facet}] summary").click()
        box(page, facet, value).check()


def total(page: Page) -> int:
    return int(page.locator("[data-total]").inner_text().split()[0])


def of_kind(page: Page, kind: str) -> int:
    """How many of a kind are found, as its chip says."""
    return int(page.locator(f".kinds .chip:has([value={kind}]) [data-count]").text_content() or "")


def test_everything_is_found_first(finder: Page, analysis: Analysis) -> None:
    drills = len(analysis.catalogue.drills)
    assert of_kind(finder, "drill") == drills
    assert of_kind(finder, "set") == len(analysis.computable)
    assert of_kind(finder, "practice") == len(analysis.practices)
    tick(finder, "kind", "drill")
    expect(finder.locator(".hits > li")).to_have_count(min(20, drills))
    if drills > 20:
        finder.locator("[data-more]").press("Enter")
        expect(finder.locator(".hits > li")).to_have_count(min(40, drills))


def test_nothing_is_listed_before_anything_is_asked(finder: Page) -> None:
    hits, lists = finder.locator("[data-results] a"), finder.locator("[data-plain-lists]")
    expect(lists).to_be_visible()
    expect(hits).to_have_count(0)
    screens = finder.evaluate("document.documentElement.scrollHeight / window.innerHeight")
    assert screens < 2.5
    finder.locator("#find-words").fill("kick")
    expect(lists).to_be_hidden()
    assert hits.count() > 3
    finder.locator("[data-clear]").click()
    expect(lists).to_be_visible()
    expect(hits).to_have_count(0)


def test_an_address_gone_to_stands_before_one_being_written(finder: Page) -> None:
    tick(finder, "level", "foundation")
    finder.evaluate(
        """() => {
          document.querySelector("[data-facet=level] input[value=building]").click();
          // while the click's own address is still to be written
          location.hash = "#level=performing";
        }"""
    )
    expect(finder).to_have_url(re.compile("#level=performing$"))
    expect(box(finder, "level", "performing")).to_be_checked()
    expect(box(finder, "level", "building")).not_to_be_checked()


def test_a_count_is_what_its_choice_gives(finder: Page, analysis: Analysis) -> None:
    catalogue = analysis.catalogue
    squads = catalogue.club.squads
    everything = finder.locator("[data-total]").inner_text()
    for level in catalogue.words("levels"):
        expected = (
            sum(drill.level == level for drill in catalogue.drills.values())
            + sum(item.level == level for item in analysis.computable.values())
            + sum(squads[own.practice.squad].level == level for own in analysis.practices.values())
        )
        finder.goto(finder.url.split("#")[0] + "#open=level")
        expect(finder.locator("[data-total]")).to_have_text(everything)  # the address is read
        expect(finder.locator("[data-facet=level]")).to_have_attribute("open", "")
        assert count(finder, "level", level) == expected
        tick(finder, "level", level)
        assert total(finder) == expected
        # before it, going to the same address again would be going nowhere
        expect(finder).to_have_url(re.compile(f"level={level}"))


def test_counts_hold_beside_other_choices(finder: Page, analysis: Analysis) -> None:
    tick(finder, "kind", "drill")
    tick(finder, "goal", "kick-speed")
    drills = [drill for drill in analysis.catalogue.drills.values() if "kick-speed" in drill.goals]
    assert total(finder) == len(drills)
    for position in {drill.position for drill in drills} - {"any"}:
        finder.locator("[data-more-facets]").evaluate("box => { box.open = true }")
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
    finder.locator("[data-more-facets] > summary").click()
    finder.locator("[data-facet=level] > summary").click()
    expect(finder.locator("[data-facet=level] [data-count]").first).not_to_be_empty()
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
    assert total(finder) == len(within)
    first = finder.locator("[data-results] a").first.get_attribute("href") or ""
    assert (
        "fins" in analysis.catalogue.drills[first.split("/")[-1].removesuffix(".html")].gear.needs
    )


def seconds_told(page: Page) -> list[tuple[str, int]]:
    """Each set that is shown, with the seconds that it takes: "11:20 of 12:00" is 680."""
    hits = page.locator(".hits li").evaluate_all(
        "hits => hits.map(hit => [hit.querySelector('a').href, "
        "hit.querySelector('.hit-fact').textContent])"
    )
    found = []
    for href, fact in hits:
        minutes, seconds = re.findall(r"(\d+):(\d\d) of", fact)[0]
        found.append((href.split("/", 3)[3], 60 * int(minutes) + int(seconds)))
    return found


def test_minutes_count_talk_and_the_slowest_of_my_groups(finder: Page, analysis: Analysis) -> None:
    talk = json.loads(finder.locator("#finder-data").text_content() or "")["talk_s"]
    address = finder.url.split("#")[0]
    for groups in (("osprey-1",), ("reed-1", "heron-1"), ("heron-1", "heron-2", "osprey-2")):
        finder.goto(f"{address}#kind=set&minutes=25&pool=25m&groups={','.join(groups)}")
        expect(finder.locator("[data-whose]")).to_contain_text("Times for")
        expected = {}
        for id in analysis.computable:
            summary = analysis.summary_in(id, COURSES["25m"])
            runs = [summary.clocks[group] for group in groups]
            if all(run.clock and not run.unfit for run in runs):
                ends = [
                    max(run.clock.value, run.last_touch.value if run.last_touch else 0)
                    for run in runs
                ]  # type: ignore[union-attr]
                worn = next((rep.pieces[0].gear for rep in summary.reps), ())
                gear = [analysis.catalogue.gear[own].change_s for own in worn]
                expected[f"sets/{id}.html"] = max(ends) + max([talk, *gear])
        told = seconds_told(finder)
        assert told
        for href, seconds in told:
            assert seconds <= 25 * 60
            if "scaled" not in href:
                assert seconds == pytest.approx(expected[href], abs=1)
        whole = {href for href, seconds in expected.items() if seconds <= 25 * 60}
        assert whole <= {href for href, _ in told}


def test_a_set_that_fits_when_cut_is_offered_cut_and_says_so(
    finder: Page, analysis: Analysis
) -> None:
    found = 0
    for minutes in range(5, 40):
        finder.goto(
            f"{finder.url.split('#')[0]}#kind=set&minutes={minutes}&groups=heron-1&pool=25m"
        )
        for hit in finder.locator(".hits a[href*='scaled']").all():
            expect(hit).to_contain_text(re.compile(rf"of {minutes}:00, cut to \d+ (rounds?|reps?)"))
            found += 1
            place = hit.get_attribute("href") or ""
    assert found
    finder.goto(place)
    expect(finder.locator(f"[id='{place.split('#')[1]}']")).to_be_visible()


def test_until_a_time_of_day_is_minutes_from_now(new_phone: Page, server: Server) -> None:
    new_phone.clock.install(time="2026-11-26T19:20:30")
    new_phone.goto(server.address + "find.html#open=minutes")
    new_phone.locator("[data-until]").fill("19:45")
    new_phone.locator("[data-until]").blur()
    expect(new_phone.locator("[data-facet=minutes] > summary")).to_contain_text(
        "until 19:45 (24 min)"
    )
    new_phone.goto(server.address + "find.html#until=19:30&kind=drill")
    expect(new_phone.locator("[data-facet=minutes] > summary")).to_contain_text(
        "until 19:30 (9 min)"
    )


def test_more_swimmers_in_a_lane_come_home_later_and_may_have_no_room(
    finder: Page, analysis: Analysis
) -> None:
    address = finder.url.split("#")[0] + "#kind=set&minutes=90&groups=heron-1&pool=25m"
    finder.goto(address)
    usual = dict(seconds_told(finder))
    finder.goto(address + "&lanes=1")
    crowded = dict(seconds_told(finder))
    assert usual and crowded
    assert all(crowded[href] >= usual[href] for href in crowded.keys() & usual.keys())
    assert any(crowded[href] > usual[href] for href in crowded.keys() & usual.keys())
    heads = analysis.catalogue.lane_groups["heron-1"].heads
    expect(finder.locator("[data-results]")).to_contain_text(f"{heads} in a lane, room for")


def test_a_practice_for_the_slow_group_is_picked_from_the_list(
    finder: Page, analysis: Analysis
) -> None:
    finder.goto(finder.url.split("#")[0] + "#kind=practice&minutes=90&groups=heron-2")
    first = finder.locator(".hits a").first
    id = (first.get_attribute("href") or "").split("/")[-1].removesuffix(".html")
    summary = analysis.practices[id]
    assert "heron-2" in summary.groups
    ends = max(
        cell.ends_s or 0 for row in summary.sheet for cell in row.cells if cell.group == "heron-2"
    )
    minutes, seconds = divmod(round(ends), 60)
    expect(first).to_contain_text(f"{minutes}:{seconds:02d} of 90:00")
    expect(first).to_contain_text(re.compile(r"[\d,]+ m · .+ · \d lanes"))
    others = [own for own in analysis.practices.values() if "heron-2" not in own.groups]
    if others:
        expect(finder.locator(".hits")).to_contain_text("for ")


def test_no_pool_is_offered_for_what_is_done_on_land(finder: Page) -> None:
    page = finder.url.split("#")[0]
    pool = finder.locator("[data-finder] [data-choose=pool]")
    finder.goto(f"{page}#kind=drill&position=on-land&open=lanes")
    expect(finder.locator(".hits a").first).to_be_visible()
    expect(pool).to_be_hidden()
    finder.goto(f"{page}#kind=drill&position=supine&open=lanes")
    expect(pool).to_be_visible()


def test_what_has_no_computed_time_can_be_shown(finder: Page) -> None:
    finder.goto(finder.url.split("#")[0] + "#kind=drill&minutes=60&groups=reed-2")
    before = total(finder)
    show = finder.locator("[data-untimed]")
    number = int(re.findall(r"\d+", show.inner_text())[0])
    show.click()
    assert total(finder) == before + number
    show.click()
    assert total(finder) == before


def test_several_efforts_are_asked_for_in_one_set(finder: Page, analysis: Analysis) -> None:
    tick(finder, "kind", "set")
    tick(finder, "effort", "easy")
    number = count(finder, "effort", "fast")
    tick(finder, "effort", "fast")
    both = [
        id
        for id in analysis.computable
        if all(
            any(effort in own.by["effort"] for own in analysis.summary(id).each)
            for effort in ("easy", "fast")
        )
    ]
    assert total(finder) == len(both) == number


def test_more_says_how_many_of_its_choices_are_set(finder: Page) -> None:
    tick(finder, "level", "building")
    tick(finder, "stroke", "backstroke")
    expect(finder.locator("[data-more-facets] > summary [data-chosen]")).to_have_text("2")


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
    assert total(finder) == 0
    way = finder.locator("[data-ways] button", has_text="Without words: zzzqqq (")
    way.click()
    assert total(finder) > 0
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
    expect(finder.locator("[data-found]")).to_have_attribute("data-texts", "read")
    finder.locator("#find-words").fill(asked)
    tick(finder, "kind", "drill")
    while finder.locator("[data-more]").is_visible():
        finder.locator("[data-more]").click()
    found = [str(link.get_attribute("href")) for link in finder.locator("[data-results] a").all()]
    assert any(address.endswith(f"/{expected}.html") for address in found)


def test_a_fault_shows_first_what_to_try_first(finder: Page, analysis: Analysis) -> None:
    fault = analysis.catalogue.faults["knees-break-surface"]
    finder.goto(finder.url.split("#")[0] + f"#fault={fault.id}")
    found = [str(link.get_attribute("href")) for link in finder.locator("[data-results] a").all()]
    wanted = list(dict.fromkeys(id for cause in fault.causes for id in cause.mended_by))[:3]
    assert [address.split("/")[-1] for address in found[:3]] == [f"{id}.html" for id in wanted]


def test_by_keyboard_alone(finder: Page) -> None:
    before = total(finder)
    expect(finder.locator("#find-words")).to_be_focused()
    finder.keyboard.press("Tab")
    finder.keyboard.press("Space")  # the first kind
    assert finder.evaluate("document.activeElement.name") == "kind"
    assert total(finder) != before
    finder.keyboard.press("Space")
    assert total(finder) == before
    finder.keyboard.press("Space")
    finder.locator(".hits a").first.focus()
    finder.keyboard.press("Enter")
    finder.wait_for_url("**/drills/*.html")


def test_the_arrow_keys_and_enter_lead_from_the_box_along_the_hits(finder: Page) -> None:
    box = finder.locator("#find-words")
    hits = finder.locator("[data-results] a")
    box.fill("kick")
    box.press("ArrowDown")
    expect(hits.nth(0)).to_be_focused()
    finder.keyboard.press("ArrowDown")
    expect(hits.nth(1)).to_be_focused()
    for _ in range(2):
        finder.keyboard.press("ArrowUp")
    expect(box).to_be_focused()
    box.press("Enter")
    expect(hits.nth(0)).to_be_focused()
    finder.locator("[data-results] section > .tool").first.press("Enter")  # all of a kind
    expect(hits.nth(0)).to_be_focused()


def test_an_address_that_waits_is_written_before_a_hit_is_gone_to(finder: Page) -> None:
    finder.locator("#find-words").fill("kick")
    finder.locator("[data-results] a").first.click()
    finder.wait_for_url(lambda url: "find.html" not in url)
    finder.go_back()
    expect(finder).to_have_url(re.compile("#words=kick$"))
    expect(finder.locator("#find-words")).to_have_value("kick")


def test_it_speaks_to_a_screen_reader(finder: Page) -> None:
    finder.locator("#find-words").fill("fins")
    said = finder.locator("[role=status][data-spoken]")
    expect(said).to_have_text(re.compile(r"^\d+ hits?.*\. First: Fins, gear\.$"))
    finder.locator("#find-words").fill("parashute")
    expect(said).to_have_text(
        re.compile(r"^Nothing for “parashute”; nearest: “parachute”\. \d+ hit")
    )
    for group in finder.locator("fieldset").all():
        assert group.locator(":scope > legend").text_content()
    names = finder.locator("fieldset input").evaluate_all(
        "inputs => inputs.map(input => input.labels[0].textContent.trim())"
    )
    assert all(names)


def test_rows_of_the_table_name_what_they_say(finder: Page, analysis: Analysis) -> None:
    data = json.loads(finder.locator("#finder-data").text_content() or "")
    at = {name: number for number, name in enumerate(data["columns"])}
    rows = {row[at["href"]]: row for row in data["rows"]}
    for drill in analysis.catalogue.drills.values():
        row = rows[page_of(drill)]
        goals = [data["words"]["goal"][number][0] for number in row[at["goal"]]]
        assert goals == list(drill.goals)
        gear = [data["words"]["gear"][number][0] for number in row[at["needs"]]]
        assert gear == list(drill.gear.needs)


def test_nothing_stands_between_a_danger_and_what_to_do(finder: Page) -> None:
    finder.locator("#find-words").fill("collapsed qqqzzz")
    first = finder.locator("[data-results] a").first
    expect(first).to_have_attribute("href", re.compile(r"safety\.html#in-an-emergency$"))
    expect(finder.locator("[data-total]")).to_have_text(re.compile(r"^[1-9]"))
    expect(finder.locator("[data-unknown]")).to_be_empty()
    expect(finder.locator("[data-nothing]")).to_be_hidden()
    finder.locator("#find-words").fill("qqqzzz")
    expect(finder.locator("[data-nothing]")).to_be_visible()
    expect(finder.locator("[data-unknown]")).not_to_be_empty()
