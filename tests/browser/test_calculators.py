"""The page Calculators on a phone: a keypad's digits, the answer above them, one fold at a time."""

from __future__ import annotations

from playwright.sync_api import Page, expect

from .web import Server


def test_a_time_is_typed_on_a_keypad_and_the_answer_follows(phone: Page, server: Server) -> None:
    phone.goto(f"{server.address}calculators.html#points")
    fold = phone.locator("#points")
    answer = fold.locator("[data-answer]")
    expect(answer).to_contain_text("Still to be filled in: Base time; Time swum.")
    fold.get_by_label("Base time", exact=True).fill("46.91")
    swum = fold.get_by_label("Time swum", exact=True)
    swum.fill("125")
    expect(fold.locator("[data-read]").nth(1)).to_have_text("= 1:25")
    expect(answer).to_contain_text("1:25 is worth 168 points of 1,000 for 0:46.91.")
    fold.get_by_role("button", name="Time swum: a second less").click()
    expect(swum).to_have_value("1:24")
    swum.fill("175")
    expect(answer).to_have_text("Time swum: “175” is no time: seconds go from 00 to 59.")
    expect(swum).to_have_attribute("aria-invalid", "true")
    box, field = answer.bounding_box(), swum.bounding_box()
    assert box and field and box["y"] + box["height"] <= field["y"]


def test_one_calculator_is_open_at_a_time_and_a_group_s_tests_fill_it(
    phone: Page, server: Server
) -> None:
    phone.goto(f"{server.address}calculators.html#points")
    fold = phone.locator("#send-offs")
    fold.locator("summary").click()
    expect(phone.locator("#points")).not_to_have_attribute("open", "")
    fold.get_by_label("From tests of a lane group").select_option(index=1)
    expect(fold.locator(".said")).to_contain_text("hold")
