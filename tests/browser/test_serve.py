"""Under ``serve`` a page loads itself again, under the policy that it has anyway, and shows what is
found wrong.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from example_cases import BASE
from playwright.sync_api import BrowserContext, Page, expect
from shared import DAY, copied

from almanac.commands.rebuild import Rebuilder
from almanac.publish.dev_server import DevServer
from almanac.publish.viewers import Viewers

from .web import Watched

SET = "plans/sets/six-fifties.yml"


class Served:
    """The least catalogue, served from this process; ``save`` rebuilds as the watcher would."""

    def __init__(self, root: Path) -> None:
        self.root, self.viewers = copied(BASE, root), Viewers()
        self.rebuilder = Rebuilder(
            self.root, root / "site", self.viewers, lambda: DAY, lambda: False
        )
        assert self.rebuilder.rebuild()
        self.rebuilder.prepare()
        self.server = DevServer(0, root / "site", self.viewers, self.rebuilder.finished)
        self.address = f"http://127.0.0.1:{self.server.server_port}/"
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def save(self, old: str, new: str) -> None:
        path = self.root / SET
        text = path.read_text("utf-8")
        assert old in text
        path.write_text(text.replace(old, new, 1), "utf-8")
        self.rebuilder.rebuild()


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    running = Served(tmp_path_factory.mktemp("served"))
    yield running
    running.viewers.close()
    running.server.shutdown()


@pytest.mark.parametrize("file", ["gone.html", "drills/gone.html", "sets/clocks/gone.html"])
def test_a_missing_address_finds_the_root_of_a_site_that_names_none(
    context: BrowserContext, served: Served, file: str
) -> None:
    """In the folder of any page: styled, and its links lead where theirs do."""
    page = context.new_page()
    page.goto(served.address + file)
    find = page.get_by_role("link", name="Find it")
    expect(find).to_have_attribute("href", f"{served.address}find.html")
    token = "getComputedStyle(document.documentElement).getPropertyValue('--measure')"
    assert page.evaluate(token), "its style sheets came"
    page.get_by_role("link", name="home", exact=True).click()
    expect(page).to_have_url(f"{served.address}index.html")
    page.close()


@pytest.fixture
def page(context: BrowserContext, served: Served) -> Iterator[Page]:
    """A page that fails the test where it logged an error, as it does where the policy forbids
    something.
    """
    made = context.new_page()
    watched = Watched(made, served.address)
    yield made
    assert watched.troubles == []


def test_a_page_loads_itself_again(served: Served, page: Page) -> None:
    page.goto(f"{served.address}sets/six-fifties.html")
    expect(page.get_by_text("Seen again.")).to_have_count(0)
    served.save("purpose: ", "purpose: Seen again. ")
    expect(page.get_by_text("Seen again.").first).to_be_attached()
    served.save("purpose: Seen again. ", "purpose: ")
    expect(page.get_by_text("Seen again.")).to_have_count(0)


def test_what_is_found_wrong_stands_on_the_page_until_it_is_mended(
    served: Served, page: Page
) -> None:
    page.goto(f"{served.address}index.html")
    box = page.locator("#almanac-findings")
    served.save("title: ", "titel: ")
    expect(box).to_contain_text(f"{SET}:1:1: error")
    expect(box).to_be_in_viewport()
    served.save("titel: ", "title: ")
    expect(box).to_have_count(0)


def test_a_site_that_an_earlier_server_left_in_the_browser_goes(served: Served, page: Page) -> None:
    page.goto(f"{served.address}index.html")
    kept = page.evaluate(
        """async () => {
            await caches.open("deck-almanac of an earlier server");
            const registration = await navigator.serviceWorker.register("worker.js");
            const gone = async () => (await navigator.serviceWorker.getRegistrations()).length
              + (await caches.keys()).length;
            while (registration.active === null || (await gone())) {
                await new Promise((resolve) => setTimeout(resolve, 20));
                if (!(await gone())) { break; }
            }
            return gone();
        }"""
    )
    assert kept == 0
