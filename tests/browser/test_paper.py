"""Run sheets on paper: a sheet for each lane group with all it needs, every hazard in full, nothing
small.
"""

from __future__ import annotations

import io
import math
import re
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect
from pypdf import PdfReader

from .web import Server

PRACTICES = ("osprey-ladder", "heron-kick-and-go", "reed-kick-then-swim")
LEAST_PT, SENDOFF_PT, LINE_PT = 11, 16, 12
NEARLY = 0.1  # points: a size in pixels is rounded


def printed(page: Page, address: str, **options: object) -> list[str]:
    """The text of each page of paper."""
    return [words(own.extract_text()) for own in pdf(page, address, **options).pages]


def pdf(page: Page, address: str, **options: object) -> PdfReader:
    page.goto(address)
    return PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True, **options)))  # type: ignore[arg-type]


def words(text: str) -> str:
    return " ".join(text.split())


def sizes(reader: PdfReader) -> Iterator[tuple[str, float]]:
    """Each piece of text with its size on paper, in points."""
    found: list[tuple[str, float]] = []

    def seen(text: str, cm: Any, tm: Any, _: Any, size: float) -> None:
        if text.strip():
            scale = math.sqrt(
                abs(cm[0] * cm[3] - cm[1] * cm[2]) * abs(tm[0] * tm[3] - tm[1] * tm[2])
            )
            found.append((text.strip(), size * scale))

    for page in reader.pages:
        page.extract_text(visitor_text=seen)
    yield from found


@pytest.fixture(params=[True, False], ids=["with scripts", "without scripts"], scope="module")
def page(browser: Browser, request: pytest.FixtureRequest) -> Iterator[Page]:
    context = browser.new_context(java_script_enabled=request.param)
    yield context.new_page()
    context.close()


@pytest.fixture(params=PRACTICES, scope="module")
def practice(page: Page, server: Server, request: pytest.FixtureRequest) -> list[str]:
    """A practice in view, as it is printed."""
    return printed(page, f"{server.address}practices/{request.param}.html")


def test_every_hazard_is_told_in_full_on_paper(page: Page, practice: list[str]) -> None:
    pages = practice
    text = " ".join(pages)
    hazards = page.locator(".brief > li, .brief-more > ul > li:not(.brief-from)")
    told = hazards.evaluate_all(
        "lines => lines.map(line => [line.querySelector('strong, summary').firstChild.textContent,"
        " (line.querySelector('p') ?? line.querySelector('strong').nextSibling).textContent])"
    )
    assert len(told) > 6
    for title, control in told:
        assert words(title) in text, title
        assert words(control) in text, control
        for own in pages:
            assert own.count(words(control)) <= 1, title
    for rule in page.locator(".house-rules li").all_text_contents():
        assert words(rule) in text


def test_each_lane_group_has_its_own_sheet(page: Page, practice: list[str]) -> None:
    pages = practice
    groups = page.locator("[data-choose=group] option:not([value=''])").all_text_contents()
    for group in groups:
        own = [text for text in pages if text.startswith(group)]
        assert own, group
        assert all("Printed" in text and "data " in text and "Paces" in text for text in own)
        whole = " ".join(own)
        assert all(text.count("Latecomers") == 1 for text in own)
        assert "Gear:" in whole and "told on the last sheet" in whole
        for line in page.locator(".sheet > li .board .what").all_text_contents():
            count = line.split(" × ")[0]
            assert not count.isdigit() or line.split(", ")[0] in " ".join(pages)


def test_a_button_beside_the_slot_prints_the_run_sheets(phone: Page, server: Server) -> None:
    phone.add_init_script("window.print = () => { window.asked = (window.asked ?? 0) + 1; }")
    phone.goto(f"{server.address}practices/heron-kick-and-go.html")
    button = phone.get_by_role("button", name="Print run sheets")
    expect(button).to_be_in_viewport(ratio=1)
    button.click()
    assert phone.evaluate("asked") == 1


def test_one_lane_group_s_sheet_is_printed_alone_with_the_dangers(
    phone: Page, server: Server
) -> None:
    phone.add_init_script("window.print = () => { window.asked = (window.asked ?? 0) + 1; }")
    phone.goto(f"{server.address}practices/heron-kick-and-go.html")
    phone.locator("[data-choose=group]").select_option("heron-2")
    phone.get_by_role("button", name="Print Heron, lanes 4 to 6 alone").click()
    assert phone.evaluate("asked") == 1
    heads = [words(own.extract_text())[:20] for own in PdfReader(io.BytesIO(phone.pdf())).pages]
    assert [head for head in heads if head.startswith("Heron")] == ["Heron, lanes 4 to 6,"]
    assert any(head.startswith("Danger") for head in heads)
    phone.evaluate("dispatchEvent(new Event('afterprint'))")
    every = [words(own.extract_text())[:20] for own in PdfReader(io.BytesIO(phone.pdf())).pages]
    assert len([head for head in every if head.startswith("Heron")]) == 2
    phone.locator("[data-choose=group]").select_option("")
    expect(phone.locator("[data-print-own]")).to_be_hidden()


def test_what_does_not_fit_goes_on_with_the_groups_name(browser: Browser, server: Server) -> None:
    page = browser.new_page()
    page.goto(f"{server.address}practices/osprey-ladder.html")
    part = page.locator(".run-paper").first.locator("tbody").first
    part.evaluate("part => { for (let n = 0; n < 5; n++) part.after(part.cloneNode(true)); }")
    pages = [
        words(own.extract_text())
        for own in PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True))).pages
    ]
    own = [text for text in pages if text.startswith("Osprey, lanes 1 to 3")]
    assert len(own) > 1
    for number, text in enumerate(own, 1):
        assert re.match(rf"Osprey, lanes 1 to 3, \d+ swimmers {number} of {len(own)}", text)
    assert "Notes" in own[-1]
    page.close()


def test_what_nearly_fits_is_laid_closer_and_not_onto_another_page(
    browser: Browser, server: Server
) -> None:
    """No text is smaller for it."""
    page = browser.new_page()
    page.goto(f"{server.address}practices/osprey-ladder.html")
    page.emulate_media(media="print")
    laid = """() => {
      window.dispatchEvent(new Event('beforeprint'));
      const own = [...document.querySelectorAll('.run-laid .paper-page')].filter(page =>
        page.querySelector('.paper-who').textContent.startsWith('Osprey, lanes 1 to 3'));
      return [own.length, own[0].querySelector('.is-close') !== null];
    }"""
    found = [page.evaluate(laid)]
    note = "document.querySelector('.run-paper .paper-note')"
    while found[-1][0] == 1 and len(found) < 150:
        page.evaluate(f"{note}.append(' About as long as a line of a sheet is wide on its paper.')")
        found.append(page.evaluate(laid))
    assert found[0] == [1, False] and found[-1] == [2, False]
    closer = [own for own in found if own[1]]
    assert closer and all(pages == 1 for pages, _ in closer)
    page.close()


def test_nothing_is_small_and_send_offs_are_large(browser: Browser, server: Server) -> None:
    page = browser.new_page()
    found = list(sizes(pdf(page, f"{server.address}practices/osprey-ladder.html")))
    assert len(found) > 50
    assert min(size for _, size in found) >= LEAST_PT - NEARLY
    large = {text for text, size in found if abs(size - SENDOFF_PT) < NEARLY}
    assert {"2:00", "1:10", "3:25"} <= large
    lines = [size for text, size in found if text.startswith("4 × 100")]
    assert lines and all(abs(size - LINE_PT) < NEARLY for size in lines)
    page.close()


def test_a_season_is_one_sheet(page: Page, server: Server) -> None:
    """A row a week, and what begins in it; the card that stands for other entries is left out."""
    (sheet,) = printed(page, f"{server.address}seasons/the-year.html", format="A4")
    assert sheet.startswith("The year, 7 September 2026 to 28 March 2027")
    for said in ("14 Sep", "22 Mar", "Spring meet, Osprey", "Heron: legs in three weeks"):
        assert said in sheet
