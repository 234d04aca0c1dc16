"""What the browser is allowed to do, and the site opened from a folder."""

from __future__ import annotations

import re
from pathlib import Path

from playwright.sync_api import Browser, Page, expect

from almanac.publish.content_security import POLICY

from .web import Server, Watched


def test_every_page_carries_its_policy(site: Path) -> None:
    pages = sorted(site.rglob("*.html"))
    for path in pages:
        text = path.read_text("utf-8")
        head = text.split("<head>", 1)[1].lstrip()
        assert head.startswith(f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">'), (
            path
        )
        assert " style=" not in text.split("</head>")[1].replace("&quot;", ""), path
        assert "javascript:" not in text, path
        for script in re.findall("<script[^>]*>", text):  # none stands in a page but data
            assert " src=" in script or ' type="application/json"' in script, path


def test_no_address_of_another_host_is_loaded(site: Path) -> None:
    for path in sorted(site.rglob("*.html")):
        text = path.read_text("utf-8")
        for mark in (
            'src="http',
            'src="//',
            'rel="preconnect',
            'rel="stylesheet" href="http',
            "@import",
        ):
            assert mark not in text, path


def test_an_injected_script_does_not_run(browser: Browser, server: Server) -> None:
    page = browser.new_page()  # not a watched one: here the browser's complaint is what is wanted
    page.goto(server.address)
    told = page.evaluate("""() => new Promise(done => {
      document.addEventListener('securitypolicyviolation', event => done(event.violatedDirective));
      const script = document.createElement('script');
      script.textContent = 'window.injected = true';
      document.head.append(script);
    })""")
    assert told.startswith("script-src")
    assert page.evaluate("window.injected") is None
    page.close()


def test_first_visit_of_a_drill_asks_for_no_search_documents(phone: Page, server: Server) -> None:
    asked: list[str] = []
    phone.on("request", lambda request: asked.append(request.url))
    phone.goto(server.address + "drills/back-streamline-kick.html", wait_until="networkidle")
    assert not any(
        "search/" in url or "find" in url.rsplit("/", 1)[-1] or "cards" in url for url in asked
    )


def test_opened_from_a_folder(browser: Browser, site: Path) -> None:
    context = browser.new_context(viewport={"width": 360, "height": 640})
    page = context.new_page()
    watched = Watched(page, "file://")
    page.goto((site / "settings.html").as_uri())
    expect(page.locator("[data-keep]")).to_contain_text("Opened from a folder")
    page.goto((site / "index.html").as_uri())
    page.get_by_text("I want to train something").click()
    page.locator("[data-facet=goal] .chip").first.click()
    expect(page.locator("[data-results] a").first).to_be_visible()
    page.locator("[data-results] a").first.click()
    expect(page.locator("h1")).to_be_visible()
    page.get_by_role("button", name="Add to my cards").click()
    page.goto((site / "sets" / "kick-and-go.html").as_uri())
    page.locator('[data-choose="group"]').select_option("osprey-1")
    page.wait_for_url("**/sets/clocks/*", wait_until="load")
    expect(page.locator("article.clocks .lane-group:visible")).to_have_count(1)
    context.close()
    assert watched.troubles == []
