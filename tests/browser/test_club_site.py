"""The site of the club's own entries, which is what visitors see: a page of every kind, a share of
the rest.
"""

from __future__ import annotations

import io
import re
from pathlib import Path

from playwright.sync_api import BrowserContext, expect
from pypdf import PdfReader
from shared import share

from almanac.model.load import load
from almanac.resources import HOME

from .test_every_page import troubles
from .test_journeys import Hand, assert_drill
from .web import Server, sitemap

FIRST = ("index.html", "find.html", "cards.html")


def _leads_on(page: Path) -> bool:
    """Whether a page only leads to where its entry has moved: it is gone before it is measured."""
    return 'http-equiv="refresh"' in page.read_text("utf-8")


def test_the_clubs_pages_are_sound(context: BrowserContext, club_site: Path) -> None:
    catalogue = load(HOME).catalogue
    assert catalogue is not None
    drills = {f"drills/{id}.html" for id in catalogue.drills}
    pages = [page for page in sitemap(club_site) if not _leads_on(club_site / page)]
    assert set(FIRST) <= set(pages) and drills <= set(pages)
    folders = sorted({page.split("/")[0] for page in pages if "/" in page})
    of_a_kind = [next(page for page in pages if page.startswith(f"{name}/")) for name in folders]
    chosen = [*FIRST, *of_a_kind, *share(sorted(drills), 8), *share(pages, 8)]
    with Server(club_site) as server:
        assert troubles(context, server, chosen, drills) == []


def test_no_page_shows_a_link_as_it_is_written(club_site: Path) -> None:
    """As Markdown does of a link within HTML."""
    written = re.compile(r"\]\([\w./#?=-]+\.(?:md|html)\b")
    pages = {page: page.read_text("utf-8") for page in club_site.rglob("*.html")}
    assert len(pages) > 300
    assert [page.name for page, text in pages.items() if written.search(text)] == []


def test_from_what_is_seen_to_the_drill_is_three_taps(
    context: BrowserContext, club_site: Path
) -> None:
    """As the README has it, where the faults are many."""
    hand, phone = Hand(), context.new_page()
    with Server(club_site) as server:
        phone.goto(server.address)
        hand.tap(phone.get_by_text("I see something wrong"))
        hand.tap(phone.get_by_role("link", name="Knees break the surface", exact=True))
        hand.tap(phone.locator(".first-drill a").first)
        assert_drill(phone)
    assert hand.taps == 3


# Where the second screen of a phone ends, above the Bar that covers its foot.
TWO_SCREENS_PX = 2 * 640 - 56
END_PX = "last => last.getBoundingClientRect().bottom + window.scrollY"
# Each page of a kind in the place of the one that is open, which gives styles and no script to it.
ENDS_PX = """async ([pages, last]) => {
  const ends = {};
  for (const page of pages) {
    const parsed = new DOMParser().parseFromString(await (await fetch(page)).text(), "text/html");
    document.querySelector("article").replaceWith(parsed.querySelector("article"));
    const end = [...document.querySelectorAll(last)].at(-1).getBoundingClientRect().bottom;
    ends[page] = end + window.scrollY;
  }
  return ends;
}"""


def test_the_drill_of_the_last_cause_stands_on_the_second_screen(
    context: BrowserContext, club_site: Path
) -> None:
    pages = [page for page in sitemap(club_site) if re.match(r"faults/(?!index)", page)]
    pages = [page for page in pages if not _leads_on(club_site / page)]
    phone = context.new_page()
    with Server(club_site) as server:
        phone.goto(f"{server.address}{pages[0]}")
        addresses = [f"{server.address}{page}" for page in pages]
        ends = phone.evaluate(ENDS_PX, [addresses, ".causes > li:last-child .first-drill"])
    assert len(ends) > 40
    assert {page: end for page, end in ends.items() if end > TWO_SCREENS_PX} == {}


def test_the_whole_board_of_a_set_stands_on_two_screens(
    context: BrowserContext, club_site: Path
) -> None:
    """The longest boards by their words, and a share of the others."""
    pages = [page for page in sitemap(club_site) if re.match(r"sets/(?!index)[^/]+$", page)]
    boards = {
        page: re.search(
            r'<div class="board">.*?</div>', (club_site / page).read_text("utf-8"), re.DOTALL
        )
        for page in pages
    }
    words = {page: len(re.sub(r"<[^>]+>", "", board[0])) for page, board in boards.items() if board}
    assert len(words) > 70
    longest = sorted(words, key=lambda page: -words[page])
    phone, ends = context.new_page(), {}
    with Server(club_site) as server:
        for page in [*longest[:8], *share(longest[8:], 4)]:
            phone.goto(f"{server.address}{page}")
            ends[page] = phone.locator(".board").first.evaluate(END_PX)
    assert {page: end for page, end in ends.items() if end > TWO_SCREENS_PX} == {}


def test_a_whole_year_is_one_sheet_of_paper(context: BrowserContext, club_site: Path) -> None:
    """Forty-five weeks of three squads, as the page of the season promises it."""
    page = context.new_page()
    with Server(club_site) as server:
        (year,) = [own for own in sitemap(club_site) if own.startswith("seasons/season-")]
        page.goto(f"{server.address}{year}")
        cut = (
            "all => all.filter(own => own.scrollWidth > own.clientWidth).map(own => own.innerText)"
        )
        # On the phone, where a holiday of two weeks has a longer name than a week.
        assert page.locator(".year th[scope=row]").evaluate_all(cut) == []
        (sheet,) = PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True, format="A4"))).pages
    assert "12 Jul" in sheet.extract_text()


def test_a_practice_that_is_written_is_opened_to_be_changed(
    context: BrowserContext, club_site: Path
) -> None:
    """Every practice: its page leads to Make a practice with all of its parts, at the times of its
    page; stations too, which are swapped for nothing and stand in the file that is saved.
    """
    texts = {
        page.stem: page.read_text("utf-8") for page in (club_site / "practices").glob("*.html")
    }
    pages = {id: texts[id] for id in sorted(texts) if "data-slot-start" in texts[id]}
    links = [id for id, text in pages.items() if ">Change it<" in text]
    assert links == [*pages]
    name = "osprey-cords"
    phone = context.new_page()
    with Server(club_site) as server:
        phone.goto(f"{server.address}practices/{name}.html")
        title = phone.locator("h1").inner_text()
        slot = phone.locator(".slot").inner_text()
        hours, minutes, seconds = map(int, re.findall(r"Ends (\d+):(\d+):?(\d*)", slot)[0])
        phone.get_by_role("link", name="Change it").click()
        expect(phone.locator(".make-head h2")).to_have_text(title)
        expect(phone.locator(".make-total")).to_contain_text(
            f"ends {hours}:{minutes + bool(seconds):02d}"
        )
        rows, told = phone.locator(".make-rows b"), phone.locator(".make-moved")
        first = rows.all_inner_texts()
        assert len(first) >= 3
        phone.get_by_role("button", name=re.compile("^Change main set")).first.click()
        phone.locator(".is-open").get_by_role("button", name=re.compile("^Swap")).click()
        expect(told).to_contain_text("main set now", ignore_case=True)
        assert rows.all_inner_texts() != first
        phone.get_by_role("button", name="Take back").click()
        expect(told).to_have_text("Taken back.")
        phone.reload()
        expect(phone.locator(".make-head h2")).to_have_text(title)
        assert rows.all_inner_texts() == first
        phone.get_by_role("button", name=re.compile("^Change as written")).first.click()
        ways = phone.locator(".is-open .make-ways")
        expect(ways.get_by_role("button", name=re.compile("^Swap"))).to_have_count(0)
        expect(phone.locator(".is-open .about")).to_contain_text("goes round stations")
        with phone.expect_download() as saved:
            phone.get_by_role("button", name="Save as a file").click()
        text = saved.value.path().read_text("utf-8")
        written = (Path(__file__).parents[2] / f"plans/practices/{name}.yml").read_text("utf-8")
        stations = written[written.index("    stations:") :].partition("  - part")[0]
        assert stations in text and ", changed " in text.partition("\n")[0]
        expect(phone.locator("[data-handed]")).to_contain_text("Not in it: what it is found by")


def test_no_pool_is_chosen_for_a_circuit_on_land(club_site: Path) -> None:
    choice = 'data-choose="pool"'
    assert choice not in (club_site / "sets/ankles-and-line-on-mats.html").read_text("utf-8")
    assert choice in (club_site / "sets/kick-and-go.html").read_text("utf-8")
