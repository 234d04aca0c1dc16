"""Learn on a phone: a question asked, kept over a reload, come back on another day, and the record
on paper.
"""

from __future__ import annotations

import io

import pypdf
from playwright.sync_api import Page, expect

from .web import Server


def test_a_wrong_answer_is_told_kept_and_comes_back(phone: Page, server: Server) -> None:
    phone.clock.install(time="2026-11-27T18:00:00")
    phone.goto(f"{server.address}learn.html")
    phone.locator("[data-questions] a").first.click()
    question = phone.locator("[data-question]").first
    phone.locator("details.fold:has([data-question]) > summary").first.click()
    question.locator("li:not([data-right]) .option").first.click()
    expect(question.locator(".verdict")).to_contain_text("Not so")
    expect(question.locator(".why")).to_have_count(question.locator(".option").count())
    expect(question.locator(".why").first).to_be_visible()
    expect(phone.locator("[data-learnt]")).to_contain_text("0 of")
    address = phone.url
    phone.clock.set_fixed_time("2026-11-28T18:00:00")
    phone.goto(server.address)
    expect(phone.locator("[data-due]")).to_contain_text("One question comes back")
    phone.locator("[data-due] a").click()
    phone.locator("[data-due] li a").click()
    question = phone.locator("[data-question]").first
    expect(question).to_be_visible()
    expect(question.locator(".comes-back")).to_have_text("Comes back now")
    question.locator("[data-right] .option").click()
    expect(question.locator("[data-right] .option")).to_contain_text("(right)")
    expect(phone.locator(".comes-back")).to_have_count(0)
    expect(question.locator(".verdict")).to_have_text("Right.")
    phone.goto(address)
    expect(phone.locator("[data-learnt]")).to_contain_text("1 of")
    expect(phone.locator("[data-learnt]")).not_to_contain_text("comes back")


def test_what_comes_back_leads_to_the_next(phone: Page, server: Server) -> None:
    phone.clock.install(time="2026-11-27T18:00:00")
    phone.goto(f"{server.address}learn.html")
    phone.locator("[data-questions] a").first.click()
    for fold in phone.locator("details.fold:has([data-question]) > summary").all():
        fold.click()
    for number in range(2):
        question = phone.locator("[data-question]").nth(number)
        question.locator("li:not([data-right]) .option").first.click()
        expect(question.locator(".is-chosen .option")).to_contain_text("(chosen, not right)")
    phone.clock.set_fixed_time("2026-11-28T18:00:00")
    phone.goto(f"{server.address}learn.html")
    expect(phone.locator("[data-next-one]")).to_contain_text("what comes back")
    phone.locator("[data-next-one] a").click()
    expect(phone.locator("p.comes-back")).to_have_count(2)
    first, second = (phone.locator("[data-question]").nth(at) for at in range(2))
    first.locator("[data-right] .option").click()
    first.get_by_role("link", name="Next that comes back").click()
    expect(second).to_be_in_viewport()
    expect(phone.locator("p.comes-back")).to_have_count(1)
    second.locator("[data-right] .option").click()
    expect(second.get_by_role("link")).to_have_count(0)


def test_the_record_is_one_page_with_a_line_to_sign(phone: Page, server: Server) -> None:
    phone.goto(f"{server.address}learn.html")
    phone.locator("[data-questions] a").first.click()
    phone.evaluate("() => { window.print = () => {}; }")
    phone.get_by_role("button", name="Print the record").click()
    pages = pypdf.PdfReader(io.BytesIO(phone.pdf())).pages
    assert len(pages) == 1
    text = pages[0].extract_text()
    assert "Head coach: ___" in text and "Right at the last time: 0 of" in text
    phone.evaluate("() => dispatchEvent(new Event('afterprint'))")
    assert "Record:" not in pypdf.PdfReader(io.BytesIO(phone.pdf())).pages[0].extract_text()


def test_a_picture_of_a_stage_is_told_in_a_line_and_in_all_its_words_in_a_fold(
    phone: Page, server: Server
) -> None:
    phone.goto(f"{server.address}progressions/kick-into-stroke.html")
    pictures = phone.locator("img.stage-figure")
    assert pictures.count() > 1
    for picture in pictures.all():
        line = picture.get_attribute("alt") or ""
        told = phone.locator(f"#{picture.get_attribute('aria-describedby')}")
        assert 10 < len(line) <= 150 < len(told.text_content() or "")
        expect(told).to_be_hidden()
    phone.locator("details.fold").first.locator("summary").first.tap()
    phone.get_by_text("in words").first.tap()
    expect(phone.locator("#told-1")).to_be_visible()


def test_in_the_dark_a_picture_that_is_a_file_is_no_white_box(phone: Page, server: Server) -> None:
    phone.emulate_media(color_scheme="dark")
    phone.goto(f"{server.address}progressions/kick-into-stroke.html")
    picture = phone.locator("img.stage-figure").first
    assert picture.evaluate("own => getComputedStyle(own).filter").startswith("invert(1)")
    ground = picture.evaluate("own => getComputedStyle(own).backgroundColor")
    assert ground == "rgba(0, 0, 0, 0)"
