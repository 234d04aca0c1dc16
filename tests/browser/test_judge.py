"""Judge it on a phone: ten pictures judged by touch and by keyboard, and the round kept."""

from __future__ import annotations

from playwright.sync_api import Page, expect

from .web import Server


def test_a_round_of_ten_is_judged_and_kept(phone: Page, server: Server) -> None:
    phone.goto(f"{server.address}judge.html")
    ask = phone.locator("[data-ask]")
    touched = False
    for number in range(1, 11):
        expect(phone.locator("[data-count]")).to_contain_text(f"Picture {number} of 10")
        expect(phone.locator("[data-picture] svg path").first).to_be_attached()
        expect(ask.locator("h2")).to_have_text("What do you see?")
        assert ask.locator(".option").last.text_content() == "Nothing to mend"
        ask.locator(".option").first.press("Enter")
        if ask.locator("[data-place]").count():
            if not touched:
                phone.locator("[data-picture] svg").tap()
                touched = True
            else:
                ask.locator("[data-place]").first.press("Enter")
            expect(ask.locator("h2")).to_have_text("What first?")
            ask.locator(".option").first.click()
            expect(ask.locator("h2")).to_have_text("What do you say?")
            ask.locator(".option").first.click()
        expect(ask.locator(".verdict").first).to_be_visible()
        if number < 10:
            phone.get_by_role("button", name="Next picture").press("Enter")
    assert touched
    expect(phone.locator("[data-ready]")).to_contain_text("Last round:")
    phone.reload()
    expect(phone.locator("[data-ready]")).to_contain_text("Not ready yet.")
