"""One built site for all browser tests, one browser a worker; pages that tell of every error and
foreign request.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright
from shared import CATALOGUE, built_once

from .web import Kept, Server, Watched

expect.set_options(timeout=20_000)  # a slow machine is no failure of a page

CHROMIUM = os.environ.get("ALMANAC_CHROMIUM", "")
# A renderer in reserve for each page is begun and never used. The others are those that Playwright
# names: a list of ours takes the place of its own.
_LEFT_OFF = (
    "SpareRendererForSitePerProcess,ImprovedCookieControls,LazyFrameLoading,GlobalMediaControls,MediaRouter,"
    "DestroyProfileOnBrowserClose,DialMediaRouteProvider,AcceptCHFrame,AutoExpandDetailsElement,LensOverlay,"
    "CertificateTransparencyComponentUpdater,AvoidUnnecessaryBeforeUnloadCheckSync,Translate,HttpsUpgrades,"
    "PaintHolding,ThirdPartyStoragePartitioning,PlzDedicatedWorker"
)
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--in-process-gpu",  # nothing is drawn by it: no process of its own
    "--num-raster-threads=1",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    f"--disable-features={_LEFT_OFF}",
    # No page lives as long as it takes to win back what optimising its scripts costs.
    "--js-flags=--no-opt",
]
ROOT = CATALOGUE


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Without a browser its tests are left out; the end of the run says which."""
    if not CHROMIUM:
        reason = "no Chromium: set ALMANAC_CHROMIUM to its path (Debian: apt-get install chromium)"
        for item in items:
            if "browser" in item.path.parts:
                item.add_marker(pytest.mark.skip(reason=reason))


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site of the small catalogue, built once; or the one that ALMANAC_TEST_SITE names, when
    working on tests.
    """
    if "ALMANAC_TEST_SITE" in os.environ:
        return Path(os.environ["ALMANAC_TEST_SITE"])
    return built_once(tmp_path_factory, "small", CATALOGUE) / "site"


@pytest.fixture(scope="session")
def club_site(club_root: Path) -> Path:
    """The site of the club's own entries, built once."""
    return club_root / "site"


@pytest.fixture(scope="session")
def server(site: Path) -> Iterator[Server]:
    """The site served on loopback."""
    with Server(site) as running:
        yield running


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Debian's Chromium."""
    with sync_playwright() as playwright:
        running = playwright.chromium.launch(executable_path=CHROMIUM, args=ARGUMENTS)
        yield running
        running.close()


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """A phone held upright, with nothing kept on it."""
    made = browser.new_context(viewport={"width": 360, "height": 640}, has_touch=True)
    yield made
    made.close()


@pytest.fixture
def new_phone(context: BrowserContext, server: Server) -> Iterator[Page]:
    """A page on a phone of its own. The test fails where it logged an error, threw one, or asked
    another host.
    """
    page = context.new_page()
    watched = Watched(page, server.address)
    yield page
    assert watched.troubles == []


@pytest.fixture
def phone(new_phone: Page) -> Page:
    """Files whose tests set no clock and add no script have ``kept_phone`` in its place."""
    return new_phone


@pytest.fixture(scope="session")
def kept_phones(browser: Browser, server: Server) -> Iterator[Kept]:
    """A window that stays open, of the size of a phone."""
    with Kept(browser, server, viewport={"width": 360, "height": 640}, has_touch=True) as kept:
        yield kept


@pytest.fixture
def kept_phone(kept_phones: Kept) -> Iterator[Page]:
    """A page on a phone that others have used and that keeps nothing of them: half as long to have
    as a new one.
    """
    yield from kept_phones.lent()
