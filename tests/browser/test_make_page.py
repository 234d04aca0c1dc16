"""Make a practice on a phone: from three questions to a run, a sheet, a file and a link; and what
cannot be, in a sentence.
"""

from __future__ import annotations

import gzip
import io
import json
import re
from datetime import datetime, timedelta
from pathlib import Path

import zxingcpp
from playwright.sync_api import BrowserContext, Page, Route, expect
from pypdf import PdfReader
from qr_pictures import drawn
from shared import CATALOGUE, DAY, copied

from almanac.analysis.analysis import Analysis
from almanac.checks import check
from almanac.model.load import load

from .web import Server

ASKED = (
    "#squad=heron&pool=home&minutes=60&goals=kick-endurance,kick-into-stroke"
    "&on=2026-11-25&start=17:30"
)


def titles(page: Page) -> list[str]:
    return page.locator(".make-rows b").all_inner_texts()


def propose(page: Page) -> None:
    page.get_by_role("button", name="Propose a practice").click()


def findings(root: Path, file: str) -> list[str]:
    """What check says of a file."""
    catalogue = load(root).catalogue
    assert catalogue is not None
    return [own.code for own in check(Analysis(catalogue, DAY)) if own.place.file == file]


def test_three_questions_then_it_is_changed_saved_handed_on_printed_and_run(
    kept_phone: Page, server: Server, tmp_path: Path
) -> None:
    phone = kept_phone
    phone.goto(f"{server.address}settings.html")
    for group in ("heron-1", "heron-2"):
        phone.locator(f'[data-my-group][value="{group}"]').check()
    phone.goto(f"{server.address}tonight.html")
    phone.get_by_role("link", name="Make", exact=True).click()
    phone.get_by_label("Minutes", exact=True).fill("60")
    phone.get_by_label("Kick endurance").check()
    phone.get_by_label("Fins").first.check()
    propose(phone)
    expect(phone.locator(".make-rows b").nth(2)).to_be_visible()
    before = titles(phone)
    assert len(before) >= 3
    assert "gear=fins:0" in phone.url
    phone.get_by_role("button", name=re.compile("^Change main set")).first.click()
    phone.locator(".is-open").get_by_role("button", name=re.compile("^Swap")).press("Enter")
    expect(phone.locator(".make-moved")).to_contain_text(
        re.compile(r"^Now \d.*main set now", re.IGNORECASE)
    )
    expect(phone.locator(".is-open [data-do=swap]")).to_be_focused()
    after = titles(phone)
    assert after != before
    phone.reload()
    expect(phone.locator(".make-rows b").nth(1)).to_be_visible()
    assert titles(phone) == after, "what was changed stands in the address"
    with phone.expect_download() as saved:
        phone.get_by_role("button", name="Save as a file").click()
    name = saved.value.suggested_filename
    root = copied(CATALOGUE, tmp_path / "club")
    saved.value.save_as(root / "plans/practices" / name)
    assert findings(root, f"plans/practices/{name}") == []
    saved_text = (root / "plans/practices" / name).read_text("utf-8")
    told = phone.locator(".make-named b").all_inner_texts()
    for line in ("title: ", "focus: "):
        words = saved_text.partition(f"\n{line}" if line[0] == "f" else line)[2]
        assert json.loads(words.partition("\n")[0]) in told, "it is told before it is saved"
    expect(phone.get_by_text("repository does not have this practice yet")).to_be_visible()
    phone.get_by_role("button", name="Hand on").click()
    link = phone.get_by_label("A link that makes this practice").input_value()
    code = phone.get_by_role("img", name="QR code of this practice")
    (scanned,) = zxingcpp.read_barcodes(drawn(code.evaluate("own => own.outerHTML")))
    assert scanned.text == link
    box = code.bounding_box()
    assert box and box["x"] >= 0 and box["x"] + box["width"] <= 360, "whole on the screen"
    expect(phone.locator(".danger strong").first).to_be_visible()
    assert phone.locator(".make-sheet").count() == 2
    phone.emulate_media(media="print")
    expect(phone.locator(".make-sheet").first).to_be_visible()
    expect(phone.locator(".make-rows")).to_be_hidden()
    sheet = phone.locator(".make-sheet").first
    assert sheet.locator("p b").first.inner_text() in told
    expect(sheet.locator("p").nth(2)).to_contain_text(re.compile(r" \d+ m · done 18:\d\d"))
    for facts in sheet.locator(".make-facts").all_inner_texts():
        assert re.fullmatch(r"\d+ m, \d+ min, to \d\d:\d\d(:\d\d)?", facts)
    expect(sheet).to_contain_text(re.compile(r"\d rounds, \d:\d\d between"))
    assert phone.locator(".make-sheet").first.locator(".dangers li").count() >= 3
    phone.emulate_media(media="screen")
    phone.goto(f"{server.address}offline.json")
    phone.goto(link)
    expect(phone.locator(".make-rows b").nth(1)).to_be_visible()
    assert titles(phone) == after, "another phone makes the same"
    phone.get_by_role("button", name="Run", exact=True).click()
    expect(phone.locator(".panel-body")).to_contain_text("Parts begin at Go")
    phone.get_by_role("button", name="Begin").click()
    expect(phone.locator(".run-row").first).to_contain_text(after[0])
    phone.reload()
    expect(phone.locator(".run-row").first).to_contain_text(after[0])


def test_a_change_is_taken_back_and_another_proposal_is_one_button_away(
    kept_phone: Page, server: Server
) -> None:
    phone = kept_phone
    phone.goto(f"{server.address}make.html{ASKED}")
    expect(phone.locator(".make-head h2")).to_contain_text("1 of")
    swims = phone.locator(".make-rows .make-swim")
    expect(swims).to_have_text([re.compile(r"\d+ \S+")] * len(titles(phone)))
    assert phone.locator(".make-rows .about").evaluate_all(
        "some => some.every(own => own.scrollWidth <= own.clientWidth + 1)"
    ), "each why stands whole"
    first = titles(phone)
    phone.get_by_role("button", name=re.compile("^Change main set")).first.click()
    phone.locator(".is-open").get_by_role("button", name=re.compile("^Swap")).click()
    told, back = phone.locator(".make-moved"), phone.get_by_role("button", name="Take back")
    expect(told).to_contain_text("main set now", ignore_case=True)
    moved, over = told.inner_text(), phone.locator(".make-told").bounding_box()
    assert over and over["height"] < 70, "what moved leaves the rows in view"
    size = re.compile(r"^\d+:\d\d (longer|shorter)\.")
    expect(phone.locator(".make-rows .about", has_text=size).first).to_be_visible()
    phone.locator(".is-open").get_by_role("button", name=re.compile("^Keep")).click()
    expect(told).to_contain_text("kept")
    phone.locator(".is-open").get_by_role("button", name=re.compile("^Swap")).click()
    expect(told).to_contain_text("is kept")
    expect(back).to_have_count(0)  # it would take back another change than is told
    phone.get_by_role("button", name="OK", exact=True).click()
    expect(told).not_to_contain_text("is kept")
    back.click()
    expect(told).to_have_text(f"Taken back. {moved}".replace("\n", " "))
    back.click()
    expect(told).to_have_text("Taken back.")
    expect(back).to_have_count(0)
    assert titles(phone) == first
    phone.get_by_role("button", name="Next").click()
    expect(phone.locator(".make-head h2")).to_contain_text("2 of")
    assert titles(phone) != first
    phone.get_by_role("button", name="Previous").click()
    expect(phone.locator(".make-head h2")).to_contain_text("1 of")
    assert titles(phone) == first, "and the first is one button back"
    expect(phone.get_by_role("button", name="Previous")).to_have_count(0)
    phone.get_by_role("button", name="Next").click()
    expect(phone.locator(".make-head h2")).to_contain_text("2 of")
    phone.go_back()
    expect(phone.locator(".make-head h2")).to_contain_text("1 of")
    phone.get_by_role("button", name="Questions").click()
    expect(phone.get_by_label("Minutes", exact=True)).to_have_value("60")
    expect(phone.get_by_label("Kick into stroke")).to_be_checked()


def test_it_is_made_shorter_and_longer_and_keeps_its_pieces(
    kept_phone: Page, server: Server
) -> None:
    phone = kept_phone
    phone.goto(f"{server.address}make.html{ASKED}")
    expect(phone.locator(".make-rows b").nth(2)).to_be_visible()
    before, told = titles(phone), phone.locator(".make-told")
    less, total = phone.get_by_role("button", name="Five minutes less"), ".make-total"
    row = phone.locator(".make-slot").bounding_box()
    assert row and row["height"] < 60, "one line"
    less.click()
    expect(phone.locator(total)).to_contain_text("of 55 min")
    expect(told).to_contain_text("shorter")
    expect(less).to_be_focused()
    assert titles(phone) == before, "no piece is another"
    phone.reload()
    expect(phone.locator(total)).to_contain_text("of 55 min")
    assert titles(phone) == before, "nor on another phone"
    phone.locator("#make-end").fill("18:10")
    phone.get_by_role("button", name="Fit", exact=True).click()
    expect(told).to_contain_text("In 40 minutes it does not fit: at its shortest it takes")
    expect(told).to_contain_text("Swap Heron warm-up, the longest, first.")
    assert titles(phone) == before
    phone.get_by_role("button", name="Five minutes more").click()
    expect(phone.locator(total)).to_contain_text("of 60 min")
    expect(told).to_contain_text("longer")
    phone.goto(phone.url.replace("minutes=60", "minutes=55"))
    phone.reload()
    expect(told).to_contain_text("Made to fit 55 minutes")
    assert titles(phone) == before, "an address with fewer minutes cuts it"


def test_what_is_too_long_is_made_so_by_one_tap_and_taken_back(
    kept_phone: Page, server: Server
) -> None:
    phone = kept_phone
    asked = ASKED.replace("kick-endurance,kick-into-stroke", "last-quarter").replace("60", "90")
    phone.goto(f"{server.address}make.html{asked}")
    expect(phone.locator(".make-rows b").nth(2)).to_be_visible()
    before, told = titles(phone), phone.locator(".make-told")
    phone.locator("#make-end").fill("18:30")
    phone.get_by_role("button", name="Fit", exact=True).click()
    out = re.search(r"Take out (.*) first", told.inner_text())
    assert out, told.inner_text()
    told.get_by_role("button", name="Take out").click()
    expect(phone.locator(".make-total")).to_contain_text("of 60 min")
    expect(told).to_contain_text("taken out")
    assert titles(phone) == [own for own in before if own not in out[1]]
    told.get_by_role("button", name="Take back").click()
    expect(phone.locator(".make-total")).to_contain_text("of 90 min")
    assert titles(phone) == before


def test_a_row_that_is_opened_shows_its_ways_and_each_word_does_one_thing(
    kept_phone: Page, server: Server
) -> None:
    phone = kept_phone
    phone.goto(f"{server.address}make.html{ASKED}")
    openers = phone.get_by_role("button", name=re.compile("^Change"))
    expect(openers.nth(2)).to_be_visible()
    assert openers.count() == len(titles(phone)), "Change opens a row and nothing else"
    above, rows = (phone.locator(way).bounding_box() for way in (".make-slot", ".make-rows"))
    assert above and rows and rows["y"] - above["y"] - above["height"] < 16, "no empty band"
    foot = "() => document.querySelector('.bar').getBoundingClientRect().top"
    for opener in openers.all():
        opener.click()
        ways = phone.locator(".is-open .make-ways").bounding_box()
        assert ways and ways["y"] + ways["height"] <= phone.evaluate(foot)
    phone.get_by_role("button", name=re.compile("^Keep")).last.click()
    told = phone.locator(".make-moved")
    expect(told).to_contain_text("Now")
    over = phone.locator(".make-told").bounding_box()
    ways = phone.locator(".is-open .make-ways").bounding_box()
    assert over and ways and ways["y"] + ways["height"] <= over["y"] + 1, "what moved hides no way"
    assert over["y"] + over["height"] <= phone.evaluate(foot) + 1, "and is in view"


def test_the_adults_that_it_takes_are_those_that_it_is_refused_without(
    kept_phone: Page, server: Server
) -> None:
    phone = kept_phone
    phone.goto(f"{server.address}make.html{ASKED}")
    total = phone.locator(".make-total")
    expect(total).to_contain_text(re.compile(r"ends 18:\d\d .* takes \d+ adults for \d+ heads"))
    adults, heads = re.findall(r"takes (\d+) adults for (\d+) heads", total.inner_text())[0]
    phone.goto(f"{server.address}make.html{ASKED}&adults={int(adults) - 1}")
    expect(phone.locator(".make-problem")).to_contain_text(
        re.compile(rf"for {heads} in .* it takes {adults}\.")
    )


def test_what_cannot_be_is_a_sentence_and_what_hinders_stands_first(
    kept_phone: Page, server: Server
) -> None:
    phone = kept_phone
    phone.goto(f"{server.address}make.html")
    phone.get_by_role("button", name="Heron").click()
    told = phone.locator(".make-problem")
    propose(phone)
    expect(told).to_have_text("No goal is named: one to 3 can be asked for.")
    phone.get_by_label("Kick endurance").check()
    for minutes in ("0", "12"):
        phone.get_by_label("Minutes", exact=True).fill(minutes)
        propose(phone)
        expect(told).to_have_text(f"{minutes} min: from 20 to 120 minutes can be composed.")
        field = phone.locator("#make-minutes")
        expect(field).to_be_focused()
        expect(field).to_have_attribute("aria-invalid", "true")
        expect(field).to_have_accessible_description(told.inner_text())
    late = phone.evaluate("new Date(Date.now() + 4 * 3600e3).toTimeString().slice(0, 5)")
    phone.locator("#make-until").fill(late)
    propose(phone)
    expect(told).to_contain_text(
        re.compile(rf"^Until {late} there are 2[34]\d min: from 20 to 120 minutes can be composed")
    )
    past = phone.evaluate("new Date(Date.now() - 3600e3).toTimeString().slice(0, 5)")
    phone.locator("#make-until").fill(past)
    propose(phone)
    expect(told).to_contain_text(f"{past} is past. ")
    phone.get_by_label("Minutes", exact=True).fill("")
    propose(phone)
    expect(told).to_have_text("Say how many minutes, or until when.")
    expect(field).to_be_focused()
    phone.get_by_label("Minutes", exact=True).fill("60")
    phone.locator("summary", has_text="More").click()
    lanes = phone.get_by_label("Heron, lanes 1 to 3: lanes")
    lanes.fill("0")
    phone.locator("summary", has_text="More").click()
    propose(phone)
    expect(told).to_contain_text("0 lanes for Heron, lanes 1 to 3: from 1 to 6 can be")
    expect(lanes).to_be_focused()
    expect(field).not_to_have_attribute("aria-invalid", "true")
    lanes.fill("3")
    groups = phone.locator("[name=group]")
    for one in range(groups.count()):
        groups.nth(one).uncheck()
    propose(phone)
    expect(told).to_have_text("No lane group is ticked: say who swims.")
    assert groups.evaluate_all("all => all.every((own) => !own.checked)"), "none is ticked again"
    for one in range(groups.count()):
        groups.nth(one).check()
    for goal in ("Kick into stroke", "Kick speed"):
        phone.get_by_label(goal).check()
    expect(phone.get_by_label("Kick technique")).to_be_disabled()
    phone.goto(
        f"{server.address}make.html{ASKED.replace('minutes=60', 'minutes=20')}&effort=all-out"
    )
    first = phone.locator(".make-hinders")
    expect(first).to_be_visible()
    assert phone.evaluate("""() => {
      const [told, rows] = [".make-hinders", ".make-rows"].map(way => document.querySelector(way));
      return !rows ||
        Boolean(told.compareDocumentPosition(rows) & Node.DOCUMENT_POSITION_FOLLOWING);
    }""")
    asked = phone.url
    first.get_by_role("button").first.click()
    phone.wait_for_url(lambda address: address != asked)
    phone.goto(f"{server.address}make.html{ASKED}&effort=all-out")
    missed = phone.get_by_role("button", name=re.compile("^Not met: .*all-out"))
    expect(missed).to_be_visible()
    phone.locator(".make-rows").evaluate("rows => rows.scrollIntoView()")
    missed.click()
    expect(first).to_be_in_viewport()
    for link, said in (
        ("squad=heron&pool=moon&minutes=60&goals=walls", "There is no pool “moon” here: there are"),
        (
            "squad=heron&pool=home&minutes=60&goals=kick-sped",
            "“kick-sped” here: is Kick speed meant?",
        ),
        ("squad=heron&pool=home&minutes=60&goals=kick-speed&effort=eesy", "is Easy meant?"),
        ("squad=heron,osprey&minutes=60", "names “heron,osprey”, and a practice is for one squad."),
        ("squad=heron&minutes=soon", "This link says “soon” for the minutes"),
    ):
        phone.goto(f"{server.address}make.html#{link}")
        expect(phone.get_by_text(said)).to_be_visible()
    phone.goto(f"{server.address}make.html#squad=heron&pool=home&minutes=99999&goals=kick-speed")
    expect(told).to_contain_text("99999 min: from 20 to 120 minutes can be composed")
    phone.goto(f"{server.address}make.html#squad=heron&pool=home&minutes=60&from=x")
    expect(told).to_contain_text("The practice that this link opens is no longer here.")
    phone.goto(f"{server.address}make.html#squad=nobody&minutes=60")
    expect(phone.locator("[role=alert]").first).to_have_text("There is no such squad here.")
    expect(phone.get_by_role("button", name="Heron")).to_be_visible()


def test_in_a_slot_that_runs_what_is_left_of_it_is_asked_for_and_begins_now(
    phone: Page, server: Server
) -> None:
    phone.goto(f"{server.address}make.html")
    planned = json.loads(phone.locator("#make-data").inner_text())["planned"]
    on, start, minutes = next((own[0], own[2], own[3]) for own in planned if own[1] == "heron")
    late = datetime.fromisoformat(f"{on}T{start}") + timedelta(minutes=minutes - 25)
    phone.clock.install(time=late)
    phone.goto(f"{server.address}make.html")
    phone.get_by_role("button", name="Heron").click()
    expect(phone.get_by_label("Minutes", exact=True)).to_have_value("25")
    expect(phone.locator(".make-form")).to_contain_text(
        "The slot has begun: 25 of its minutes are left. What is made begins now."
    )
    phone.get_by_label("Kick technique").check()
    propose(phone)
    expect(phone.locator(".make .lead")).to_contain_text(f"from {late:%H:%M}")
    assert f"start={late:%H:%M}" in phone.url


def test_of_two_addresses_the_later_is_shown_whichever_data_come_first(
    kept_phone: Page, server: Server
) -> None:
    phone = kept_phone
    late: list[Route] = []
    phone.route("**/compose/heron.json", lambda route: late.append(route))
    phone.goto(f"{server.address}make.html{ASKED}")
    phone.evaluate("address => { location.hash = address }", ASKED.replace("heron", "osprey"))
    expect(phone.locator(".make-rows b").nth(1)).to_be_visible()
    first = titles(phone)
    with phone.expect_response("**/compose/heron.json") as told:
        late[0].continue_()
    told.value.finished()
    phone.wait_for_timeout(100)
    assert titles(phone) == first
    expect(phone.locator(".make > .lead")).to_contain_text("Osprey")


def test_with_letters_twice_as_large_lines_have_the_width_of_the_phone(
    kept_phone: Page, server: Server
) -> None:
    phone = kept_phone
    phone.goto(f"{server.address}make.html{ASKED}")
    expect(phone.locator(".make-sheet")).to_have_count(2)
    phone.evaluate("document.documentElement.style.fontSize = '200%'")
    rows = phone.locator(".make-rows").bounding_box()
    assert rows
    for line in phone.locator(".make-rows :is(.make-swim, .make-what)").all():
        box = line.bounding_box()
        assert box and box["width"] > 0.75 * rows["width"]
    assert phone.evaluate("document.documentElement.scrollWidth") == 360


def test_on_paper_each_group_has_its_pages_told_at_their_foot_and_nothing_stands_alone(
    kept_phone: Page, server: Server
) -> None:
    phone = kept_phone
    osprey = "#squad=osprey&pool=home&minutes=75&goals=kick-speed&on=2026-11-28&start=08:00"
    for asked in (ASKED, osprey):
        phone.goto(f"{server.address}offline.json")
        phone.goto(f"{server.address}make.html{asked}")
        expect(phone.locator(".make-rows b").nth(2)).to_be_visible()
        expect(phone.locator(".make-sheet")).to_have_count(2)
        pages = PdfReader(io.BytesIO(phone.pdf(format="A4", prefer_css_page_size=True))).pages
        texts = [" ".join(page.extract_text().split()) for page in pages]
        half = len(texts) // 2
        for number, text in enumerate(texts):
            assert f"page {number % half + 1}" in text, "counted over the pages of its own group"
            assert len(text) > 500, "a page is worth its paper"
        assert all("Lanes 1–3 ·" in text for text in texts[:half])
        assert all("Lanes 4–6 ·" in text for text in texts[half:])
        assert " and others" not in " ".join(texts), "each rep has its own target"


def test_where_the_sheets_cannot_be_laid_out_print_says_so_and_tries_again(
    context: BrowserContext, server: Server
) -> None:
    phone = context.new_page()
    troubles: list[str] = []
    phone.on("pageerror", lambda problem: troubles.append(str(problem)))
    phone.add_init_script("window.print = () => { window.printed = (window.printed ?? 0) + 1; }")
    phone.route("**/scripts/make/laid.js*", lambda route: route.abort())
    phone.goto(f"{server.address}make.html{ASKED}")
    phone.get_by_role("button", name="Print", exact=True).click()
    expect(phone.locator("[data-handed]")).to_contain_text("nothing is printed")
    assert phone.evaluate("window.printed") is None
    phone.unroute("**/scripts/make/laid.js*")
    phone.get_by_role("button", name="Print", exact=True).click()
    phone.wait_for_function("() => window.printed === 1")
    expect(phone.locator("[data-handed]")).to_be_empty()
    assert phone.locator(".make-sheet").count() == 2
    assert troubles == []


def test_what_could_not_be_fetched_is_run_by_taps_and_named_with_its_dangers(
    context: BrowserContext, server: Server
) -> None:
    phone = context.new_page()
    phone.goto(f"{server.address}make.html{ASKED}")
    expect(phone.locator(".make-sheet")).to_have_count(2)
    expect(phone.locator("[data-tapped]")).to_be_hidden()
    dangers = phone.locator("[data-danger] strong").all_inner_texts()
    phone.route("**/data/v1/compose/runs/**", lambda route: route.abort())
    phone.reload()
    told = phone.locator("[data-tapped]")
    expect(told).to_contain_text("could not be fetched: make the practice again with a signal")
    known = titles(phone)
    named = told.inner_text().partition(": ")[2].partition(". ")[0]
    assert named and all(any(own in title for title in known) for own in named.split(", ")[:1])
    assert phone.locator("[data-danger] strong").all_inner_texts() == dangers


def test_a_run_of_it_is_passed_on_to_a_phone_that_has_not_made_it(
    kept_phone: Page, server: Server
) -> None:
    phone = kept_phone
    phone.goto(f"{server.address}make.html{ASKED}")
    phone.get_by_role("button", name="Run", exact=True).click()
    phone.get_by_role("button", name="Begin").click()
    for name in ("Change", "Pass it on"):
        phone.wait_for_timeout(500)  # a second touch within 0.4 s does nothing
        phone.get_by_role("button", name=name).click()
        if name == "Change":
            expect(phone.get_by_role("button", name="Cut to end at a time")).to_be_visible()
    code = phone.locator(".run-code").inner_text().replace(" ", "")
    phone.goto(f"{server.address}offline.json")
    phone.evaluate("localStorage.clear()")
    phone.goto(f"{server.address}make.html{ASKED}&code={code}")
    expect(phone.locator(".run-last")).to_contain_text("Same as coach’s")


_WITHOUT = """(field) => {
  const key = Object.keys(localStorage).find((own) => own.endsWith("run-made"));
  const made = JSON.parse(localStorage.getItem(key));
  made.cuts = [];
  made.parts.forEach((part) => { delete part[field]; });
  localStorage.setItem(key, JSON.stringify(made));
}"""


def test_that_all_of_it_stays_is_said_where_no_part_may_be_skipped(
    kept_phone: Page, server: Server
) -> None:
    """A short one has nothing to end at a time by, and a main set to skip; one that was made before
    there were parts to skip has neither.
    """
    phone = kept_phone
    for gone, skips, said in (("", 1, 0), ("skip", 0, 1)):
        phone.goto(f"{server.address}make.html{ASKED}")
        phone.get_by_role("button", name="Run", exact=True).click()
        expect(phone.get_by_role("button", name="Begin")).to_be_visible()
        phone.evaluate(_WITHOUT, gone)
        phone.reload()
        phone.get_by_role("button", name="Begin").click()
        phone.wait_for_timeout(500)  # a second touch within 0.4 s does nothing
        phone.get_by_role("button", name="Change").click()
        expect(phone.get_by_role("button", name="Late")).to_be_visible()
        expect(phone.get_by_role("button", name="Cut to end at a time")).to_have_count(0)
        expect(phone.get_by_role("button", name="Skip a part")).to_have_count(skips)
        expect(phone.get_by_text("it is not cut while it runs")).to_have_count(said)
        phone.evaluate("() => localStorage.clear()")


def test_what_it_reads_is_kept_on_a_phone(site: Path) -> None:
    kept = json.loads((site / "precache.json").read_text("utf-8"))["files"]
    scripts = {"scripts/make.js", "scripts/make/propose.js", "scripts/make/laid.js"}
    assert {"make.html", *scripts, "data/v1/compose/heron.json"} <= set(kept)
    first = [(site / name).read_bytes() for name in ("make.html", "scripts/make.js")]
    assert sum(len(gzip.compress(own)) for own in first) < 12_000, "the questions are soon there"
    proposals = (site / "scripts/make/propose.js").read_bytes()
    assert len(gzip.compress(proposals)) < 27_500, "and so is what answers them"
