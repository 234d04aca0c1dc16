"""The briefs of the club's own practices: each fits a phone's screen, and a third of a page."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import Browser, Page

SCREEN = {"width": 360, "height": 640}
# A4 less its margins of 12 mm, in pixels of a printed page; a third of its height.
PAPER = {"width": 703, "height": 1032}
THIRD_PX = 1032 / 3
# From the heading to the end of the folds; on paper, the part of the run sheet.
FOLDED = """() => document.querySelector('.brief-box').getBoundingClientRect().bottom
  - document.getElementById('brief').getBoundingClientRect().top"""
ON_PAPER = "() => document.querySelector('.run-papers .paper-brief').getBoundingClientRect().height"


# What stands in sight of a brief, from its heading on, and each line that it has beside.
IN_SIGHT = re.compile(r'id="brief".*?<ul class="dangers brief">.*?</ul>', re.DOTALL)
MORE = re.compile(
    r'<details class="folded brief-more".*?</ul></details>\s*(?=<details|</div>)', re.DOTALL
)
HEAVIEST = 5


def heaviest(folder: Path) -> list[Path]:
    """The practices whose briefs have the most in sight, and those with the most hazards."""
    texts = {file: file.read_text("utf-8") for file in (folder / "practices").glob("*.html")}
    found: dict[Path, tuple[int, int]] = {}
    for file, text in texts.items():
        sight, more = IN_SIGHT.search(text), MORE.search(text)
        if file.stem != "index" and 'id="brief"' in text:  # else it leads on to another
            assert sight and more, file
            found[file] = (len(sight[0]), more[0].count("<summary>"))
    assert len(found) > 30
    chosen = [
        file
        for by in (0, 1)
        for file in sorted(found, key=lambda file: (-found[file][by], file.stem))[:HEAVIEST]
    ]
    return list(dict.fromkeys(chosen))


def briefs(
    browser: Browser, folder: Path, size: dict[str, int], media: str
) -> Iterator[tuple[str, Page]]:
    """The heaviest practices, each opened from its folder."""
    context = browser.new_context(viewport=size)  # type: ignore[arg-type]
    page = context.new_page()
    page.emulate_media(media=media)  # type: ignore[arg-type]
    for file in heaviest(folder):
        page.goto(file.as_uri())
        yield file.stem, page
    context.close()


def test_no_brief_of_the_club_is_longer_than_a_screen(browser: Browser, club_site: Path) -> None:
    for id, page in briefs(browser, club_site, SCREEN, "screen"):
        assert 200 < page.evaluate(FOLDED) <= SCREEN["height"], id


def test_no_brief_of_the_club_takes_more_than_a_third_of_a_page(
    browser: Browser, club_site: Path
) -> None:
    for id, page in briefs(browser, club_site, PAPER, "print"):
        assert 100 < page.evaluate(ON_PAPER) <= THIRD_PX, id
