"""Kept on the phone: every page with the network off, updates whole or not at all."""

from __future__ import annotations

import json
import os
import re
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, Worker, expect

from almanac.publish.bundles import bundles
from almanac.publish.offline import kept_files

from .web import Server, sitemap

WORKER = (bundles() / "offline" / "worker.js").read_text("utf-8")
DRILL = "drills/back-streamline-kick.html"
FEW = {
    "index.html",
    "settings.html",
    "find.html",
    DRILL,
    "sets/kick-and-go.html",
    "sets/index.html",
}
_STATUS = """async files => {
  const bad = [];
  for (const file of files) {
    try {
      const response = await fetch(file);
      const text = await response.text();
      if (!response.ok || (file.endsWith(".html") && !text.includes("<h1"))) bad.push(file);
    } catch (problem) { bad.push(`${file}: ${problem.message}`); }
  }
  return bad;
}"""

_VERSIONS_WITH = """async address => {
  const held = await Promise.all((await caches.keys())
    .map(name => caches.match(address, { cacheName: name })));
  return held.filter(Boolean).length;
}"""

LOOKS = 4  # so often the worker looks whether the page that asks is the only one open
_COUNT_LOOKS = """() => {
  self.looks = 0;
  const look = clients.matchAll.bind(clients);
  clients.matchAll = (...asked) => look(...asked).finally(() => { self.looks += 1; });
}"""


@pytest.fixture
def whole(site: Path, tmp_path: Path) -> Iterator[Server]:
    """A copy of the site."""
    folder = tmp_path / "whole"
    shutil.copytree(site, folder, copy_function=os.link)
    with Server(folder) as running:
        yield running


@pytest.fixture
def live(site: Path, tmp_path: Path) -> Iterator[Server]:
    """A copy that a test may renew, with the few pages that it opens: a version is soon fetched."""
    folder = tmp_path / "live"

    def left_out(path: str, names: list[str]) -> set[str]:
        pages = {name for name in names if name.endswith((".html", ".svg", ".json"))}
        return {name for name in pages if str(Path(path, name).relative_to(site)) not in FEW}

    shutil.copytree(site, folder, copy_function=os.link, ignore=left_out)
    list_files(folder)
    with Server(folder) as running:
        yield running


def list_files(folder: Path) -> None:
    """Have the list and the worker made for the files as they are."""
    told = kept_files(folder).told(WORKER, lambda file: (folder / file).read_bytes())
    for file, content in told:
        (folder / file).parent.mkdir(exist_ok=True)
        (folder / file).unlink(missing_ok=True)  # a hard link, as below
        (folder / file).write_bytes(content)


def renew(live: Server, *files: str) -> None:
    """A new version: the named pages say so, and the list and the worker are made for them."""
    for file in files:
        path = live.folder / file
        text = path.read_text("utf-8").replace("<h1", "<p class='renewed'>renewed</p><h1", 1)
        path.unlink()  # a hard link: the built site keeps its own
        path.write_text(text, "utf-8")
    worker = live.folder / "worker.js"
    later = worker.stat().st_mtime + 2  # a server tells versions of one second by nothing but this
    list_files(live.folder)
    os.utime(worker, (later, later))


def keep(context: BrowserContext, live: Server) -> Page:
    page = context.new_page()
    page.goto(live.address + "settings.html")
    expect(page.locator("[data-keep] button")).to_contain_text("MB to fetch)")
    page.locator("[data-keep] button").tap()
    expect(page.locator("[data-keep]")).to_contain_text("Kept on this device", timeout=60_000)
    return page


def ready(page: Page) -> None:
    """Wait until the page says that a newer version is here and the browser has it waiting: the one
    comes just before the other.
    """
    expect(page.locator("[data-kept]")).to_contain_text("newer version is here", timeout=60_000)
    until(
        page,
        lambda: page.evaluate(
            "navigator.serviceWorker.getRegistration().then((own) => Boolean(own && own.waiting))"
        ),
    )


def until(page: Page, happens: Callable[[], bool]) -> None:
    """Wait for something on the server's side, 30 seconds at most."""
    for _ in range(300):
        if happens():
            return
        page.wait_for_timeout(100)
    raise AssertionError("it never happened")


def waiting(context: BrowserContext) -> Worker:
    """The newer version's worker, which has yet to take over."""
    states = {each: each.evaluate("self.serviceWorker.state") for each in context.service_workers}
    (found,) = (worker for worker, state in states.items() if state == "installed")
    return found


def test_every_page_the_finder_and_the_search_with_the_network_off(
    context: BrowserContext, whole: Server, site: Path
) -> None:
    page = keep(context, whole)
    asked = {path.lstrip("/") for path in whole.asked}
    packed = {
        file for files in kept_files(site).packs.values() if len(files) >= 4 for file in files
    }
    assert len(packed) > 50
    assert not packed & asked - {"settings.html"}  # the page that was opened
    assert {address for address in asked if address.startswith("packs/")}
    whole.asked.clear()
    context.set_offline(True)
    files = sitemap(site)
    assert page.evaluate(_STATUS, [whole.address + file for file in files]) == []
    for file in (
        DRILL,
        "sets/kick-and-go.html",
        "faults/knees-break-surface.html",
        "cards.html",
        "",
    ):
        page.goto(whole.address + file)
        expect(page.locator("h1")).to_be_visible()
        expect(page.locator("[data-kept]")).to_contain_text("kept on this device")
    expect(page.locator("[data-keep]")).to_contain_text("✓ Kept on this phone")  # Home
    expect(page.locator("[data-keep] button")).to_have_count(0)
    page.set_viewport_size({"width": 1280, "height": 800})  # a phone's list shows no pictures
    page.goto(whole.address + "find.html#gear=fins")
    picture = page.locator("[data-results] img").first
    expect(picture).to_have_js_property("complete", True)
    assert picture.evaluate("image => image.naturalWidth") > 0
    page.goto(whole.address + "find.html?q=parachute")
    expect(page.locator("[data-results] a").first).to_be_visible()
    page.goto(whole.address + "run.html#practice=heron-kick-and-go")
    expect(page.get_by_text("The site is not kept on this phone")).to_be_hidden()
    page.get_by_role("button", name="Begin").click()
    expect(page.locator(".run-row").first).to_contain_text("ready")
    page.goto(whole.address + "no-such-page.html")
    expect(page.locator("h1")).to_contain_text("Not here")
    expect(page.locator("html.is-kept")).to_have_count(1)
    expect(page.locator("[data-kept]")).to_be_empty()  # what is not there is not kept
    assert set(whole.asked) <= {"/worker.js"}  # the browser itself looks for a newer worker


def test_the_size_is_the_sum_and_the_list_is_complete(site: Path) -> None:
    told = json.loads((site / "offline.json").read_text("utf-8"))
    files = kept_files(site).files
    assert told["bytes"] == sum(size for _, size in files.values())
    assert set(sitemap(site)) <= set(files)
    assert {"search/texts.js", "find.html", "app.webmanifest", "404.html"} <= set(files)
    listed = json.loads((site / "precache.json").read_text("utf-8"))
    assert {file: tuple(told) for file, told in listed["files"].items()} == files
    assert f'"{listed["version"]}"' in (site / "worker.js").read_text("utf-8")


def test_a_pack_that_will_not_do_is_made_up_for_page_by_page(
    context: BrowserContext, whole: Server, site: Path
) -> None:
    packs = {address: files for address, files in kept_files(site).packs.items() if len(files) > 4}
    (gone, of_gone), (garbled, of_garbled), (other, of_other), *_ = packs.items()
    (whole.folder / gone).unlink()
    (whole.folder / garbled).unlink()
    (whole.folder / garbled).write_text("<h1>Log in to the pool's network</h1>", "utf-8")
    keep(context, whole)
    asked = {path.lstrip("/") for path in whole.asked}
    assert {gone, garbled, other, *of_gone, *of_garbled} <= asked
    assert not set(of_other) & asked - {"index.html"}


def test_a_new_version_takes_over_whole_and_fetches_only_what_changed(
    context: BrowserContext, live: Server
) -> None:
    page = keep(context, live)
    renew(live, DRILL, "index.html")
    live.asked.clear()
    page.goto(live.address + "find.html")  # the browser looks for a new worker
    ready(page)
    assert {f"/{DRILL}", "/index.html"} <= set(live.asked)
    assert "/find.html" not in live.asked and not any(
        path.startswith("/assets/") for path in live.asked
    )
    page.goto(live.address + DRILL)  # one page open: it changes over, and asks for itself again
    expect(page.locator(".renewed")).to_be_visible()
    context.set_offline(True)
    page.goto(live.address)
    expect(page.locator(".renewed")).to_be_visible()
    expect(page.locator("[data-kept]")).to_contain_text("kept on this device")


def test_an_update_that_fails_leaves_the_old_version_working(
    context: BrowserContext, live: Server
) -> None:
    page = keep(context, live)
    renew(live, DRILL, "sets/kick-and-go.html")
    live.failing.add("/sets/kick-and-go.html")
    page.goto(live.address + "find.html")
    until(page, lambda: "/sets/kick-and-go.html" in live.asked)
    until(page, lambda: page.evaluate(_VERSIONS_WITH, live.address + DRILL) == 2)
    expect(page.locator("[data-kept]")).to_contain_text("kept on this device")
    context.set_offline(True)
    for file in (DRILL, "sets/kick-and-go.html"):
        page.goto(live.address + file)
        expect(page.locator("h1")).to_be_visible()
        expect(page.locator(".renewed")).to_have_count(0)  # the old one, not a mix
    context.set_offline(False)
    live.failing.clear()
    live.asked.clear()
    page.goto(live.address + "find.html")
    ready(page)
    assert f"/{DRILL}" not in live.asked  # what came before the failure is not fetched again
    page.goto(live.address + DRILL)
    expect(page.locator(".renewed")).to_be_visible()


def test_two_open_pages_change_over_together_when_told_to(
    context: BrowserContext, live: Server
) -> None:
    first = keep(context, live)
    second = context.new_page()
    second.goto(live.address + "sets/index.html")
    renew(live, DRILL, "index.html")
    first.goto(live.address + "find.html")
    ready(first)
    worker = waiting(context)
    worker.evaluate(_COUNT_LOOKS)
    first.goto(live.address + DRILL)
    until(first, lambda: worker.evaluate("looks") == LOOKS)
    # two pages open: nobody is changed under their hands
    assert first.locator(".renewed").count() == 0
    first.get_by_role("button", name="Use it now").tap()
    expect(first.locator(".renewed")).to_be_visible()
    second.goto(live.address)
    expect(second.locator(".renewed")).to_be_visible()


def test_a_login_page_in_between_is_not_kept(context: BrowserContext, live: Server) -> None:
    path = live.folder / DRILL
    path.unlink()
    path.write_text("<h1>Log in to the pool's network</h1>", "utf-8")
    page = context.new_page()
    page.goto(live.address + "settings.html")
    page.locator("[data-keep] button").tap()
    expect(page.locator("[data-keep]")).to_contain_text("did not work", timeout=60_000)
    expect(page.locator("[data-keep] button")).to_contain_text("Keep this site")


def test_kept_with_one_tap_on_home_and_not_any_more(context: BrowserContext, live: Server) -> None:
    page = context.new_page()
    page.goto(live.address)
    expect(page.locator("[data-keep]")).to_contain_text("Not kept on this phone")
    page.get_by_role("button", name=re.compile(r"^Keep it \([\d.]+ MB\)$")).tap()
    expect(page.locator("[data-keep]")).to_contain_text("✓ Kept on this phone", timeout=60_000)
    page.goto(live.address + "settings.html")
    page.get_by_role("button", name="Do not keep it").tap()
    expect(page.locator("[data-keep] button")).to_contain_text("Keep this site")
    assert page.evaluate("caches.keys()") == []
