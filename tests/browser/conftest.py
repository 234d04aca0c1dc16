"""One built site and one browser for all browser tests; pages that tell of every error and every foreign request."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright

from almanac.analysis.analysis import Analysis
from almanac.model.load import load
from almanac.publish.build import build_site

from .web import Server, Watched

expect.set_options(timeout=20_000)  # a slow machine is no failure of a page

CHROMIUM = os.environ.get("ALMANAC_CHROMIUM", "")
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
ROOT = Path(os.environ.get("ALMANAC_TEST_ROOT", Path(__file__).resolve().parents[2]))


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Without a browser, say what is skipped and how to get it."""
    if not CHROMIUM:
        reason = "no Chromium: set ALMANAC_CHROMIUM to its path (Debian: apt-get install chromium)"
        for item in items:
            if "browser" in item.path.parts:
                item.add_marker(pytest.mark.skip(reason=reason))


@pytest.fixture(scope="session")
def analysis() -> Analysis:
    """The repository's own catalogue."""
    catalogue = load(ROOT).catalogue
    assert catalogue is not None, "the catalogue does not load: run almanac check"
    return Analysis(catalogue, date(2026, 11, 25))


@pytest.fixture(scope="session")
def site(analysis: Analysis, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site of the repository's catalogue, built once; or the one that ALMANAC_TEST_SITE names, when working on the tests."""
    if "ALMANAC_TEST_SITE" in os.environ:
        return Path(os.environ["ALMANAC_TEST_SITE"])
    root = tmp_path_factory.mktemp("root")
    for name in ("drills", "plans"):
        shutil.copytree(ROOT / name, root / name)
    loaded = load(root)
    assert loaded.catalogue is not None
    out = tmp_path_factory.mktemp("built") / "site"
    build_site(Analysis(loaded.catalogue, date(2026, 11, 25)), loaded.names, root, out)
    return out


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
def phone(context: BrowserContext, server: Server) -> Iterator[Page]:
    """A page on the phone. The test fails where it logged an error, threw one, or asked another host."""
    page = context.new_page()
    watched = Watched(page, server.address)
    yield page
    assert watched.troubles == []
