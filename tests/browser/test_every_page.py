"""Pages on a phone: no trouble, no sideways scrolling; and the first screen of every drill."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from playwright.sync_api import BrowserContext, Page, expect
from shared import share

from almanac.analysis.analysis import Analysis

from .web import TEMPLATES, Server, Watched, sitemap

WIDTH = 360
TABS = 4  # pages open side by side, so that one loads while another is measured
_SEEN = (
    "h1",
    ".first-screen .lead",
    ".first-screen .figure svg",
    ".first-screen .say",
    ".first-screen .danger",
)
_MEASURE = """selectors => ({
  bar: (document.querySelector("nav.bar") ?? document.querySelector(".run-foot"))
    .getBoundingClientRect().top,
  wide: document.documentElement.scrollWidth,
  boxes: selectors.map(selector => {
    const box = document.querySelector(selector)?.getBoundingClientRect();
    return box ? [box.left, box.top, box.right, box.bottom] : null;
  }),
  cut: [...document.querySelectorAll("svg text")].filter(text => {
    const {x, width} = text.getBBox(), seen = text.ownerSVGElement.viewBox.baseVal;
    return width && seen.width && (x < seen.x || x + width > seen.x + seen.width);
  }).map(text => text.textContent),
  small: [false, true].flatMap(isOpen => {  // what is folded away is opened last
    document.querySelectorAll("details").forEach(fold => { fold.open ||= isOpen; });
    return [...document.querySelectorAll("svg text")].filter(text => {
      const drawn = text.getBoundingClientRect().width && text.getScreenCTM();
      return drawn && Math.hypot(drawn.a,
        drawn.b) * parseFloat(getComputedStyle(text).fontSize) < LEAST;
    }).map(text => text.textContent);
  }),
})""".replace("LEAST", "11.95")  # px: 12, but for what scaling rounds off


def test_no_page_scrolls_sideways_and_every_drill_is_told_at_a_glance(
    context: BrowserContext, server: Server, site: Path, analysis: Analysis
) -> None:
    of_a_template = list(dict.fromkeys(page.split("#")[0] for page in TEMPLATES))
    assert [page for page in of_a_template if not (site / page).is_file()] == []
    moved = {f"{kind}s/{id}.html" for kind, id in analysis.catalogue.moved}
    others = [page for page in sitemap(site) if page not in {*of_a_template, *moved}]
    assert len(others) > 50
    drills = {f"drills/{id}.html" for id in analysis.catalogue.drills}
    assert troubles(context, server, [*of_a_template, *share(others, 16)], drills) == []


def test_an_old_address_leads_to_the_new_one(phone: Page, server: Server) -> None:
    phone.goto(server.address + "drills/supine-streamline-flutter.html")
    expect(phone).to_have_url(server.address + "drills/back-streamline-kick.html")


def troubles(
    context: BrowserContext, server: Server, pages: Sequence[str], drills: set[str]
) -> list[str]:
    """What is wrong with pages on a phone, page by page."""
    tabs = [context.new_page() for _ in range(TABS)]
    watched = [Watched(tab, server.address) for tab in tabs]
    found: list[str] = []
    for start in range(0, len(pages), TABS):
        batch = list(zip(tabs, pages[start : start + TABS], strict=False))
        for tab, file in batch:
            tab.goto(server.address + file, wait_until="commit")
        for tab, file in batch:
            tab.wait_for_load_state("load")
            seen = tab.evaluate(_MEASURE, list(_SEEN))
            if seen["wide"] > WIDTH:
                found.append(f"{file}: {seen['wide']} px wide")
            found += [f"{file}: '{words}' is cut off in a drawing" for words in seen["cut"]]
            found += [f"{file}: '{words}' is too small in a drawing" for words in seen["small"]]
            if file in drills:
                found += [f"{file}: {trouble}" for trouble in not_in_sight(seen)]
    return [*found, *(trouble for tab in watched for trouble in tab.troubles)]


def not_in_sight(seen: dict[str, object]) -> list[str]:
    """What of a drill's first screen is missing, small, covered by the Bar, or below the fold."""
    troubles = []
    bar = seen["bar"]
    assert isinstance(bar, float | int)
    boxes = seen["boxes"]
    assert isinstance(boxes, list)
    for selector, box in zip(_SEEN, boxes, strict=True):
        if box is None:
            troubles.append(f"{selector} is missing")
        elif box[1] < 0 or box[3] > bar or box[0] < 0 or box[2] > WIDTH:
            troubles.append(f"{selector} lies at {[round(side) for side in box]}")
    figure = boxes[2]
    if figure and figure[3] - figure[1] < 60:
        troubles.append(f"the figure is {figure[3] - figure[1]:.0f} px high")
    return troubles
