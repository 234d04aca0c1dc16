"""Every page of the site on a phone: no trouble, no sideways scrolling; and the first screen of every drill."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import BrowserContext

from .web import Server, Watched, sitemap

WIDTH, HEIGHT = 360, 640
TABS = 4  # pages open side by side, so that one loads while another is measured
_SEEN = (
    "h1",
    ".first-screen .lead",
    ".first-screen .figure svg",
    ".first-screen .cues",
    ".first-screen .danger",
)
_MEASURE = """selectors => ({
  wide: document.documentElement.scrollWidth,
  boxes: selectors.map(selector => {
    const box = document.querySelector(selector)?.getBoundingClientRect();
    return box ? [box.left, box.top, box.right, box.bottom] : null;
  }),
  head: document.querySelector(".md-header").getBoundingClientRect().bottom,
})"""


def test_no_page_scrolls_sideways_and_every_drill_is_told_at_a_glance(
    context: BrowserContext, server: Server, site: Path
) -> None:
    tabs = [context.new_page() for _ in range(TABS)]
    watched = [Watched(tab, server.address) for tab in tabs]
    wide: list[str] = []
    hidden: list[str] = []
    pages = sitemap(site)
    assert len(pages) > 50
    for start in range(0, len(pages), TABS):
        batch = list(zip(tabs, pages[start : start + TABS], strict=False))
        for tab, file in batch:
            tab.goto(server.address + file, wait_until="commit")
        for tab, file in batch:
            tab.wait_for_load_state("load")
            seen = tab.evaluate(_MEASURE, list(_SEEN))
            if seen["wide"] > WIDTH:
                wide.append(f"{file}: {seen['wide']} px")
            if file.startswith("drills/") and not file.endswith("index.html"):
                hidden += [f"{file}: {trouble}" for trouble in not_in_sight(seen)]
    assert wide == []
    assert hidden == []
    assert [trouble for tab in watched for trouble in tab.troubles] == []


def not_in_sight(seen: dict[str, object]) -> list[str]:
    """What of a drill's first screen is missing, small, covered by the head, or below the fold."""
    troubles = []
    top = seen["head"]
    assert isinstance(top, float | int)
    boxes = seen["boxes"]
    assert isinstance(boxes, list)
    for selector, box in zip(_SEEN, boxes, strict=True):
        if box is None:
            troubles.append(f"{selector} is missing")
        elif box[1] < top or box[3] > HEIGHT or box[0] < 0 or box[2] > WIDTH:
            troubles.append(f"{selector} lies at {[round(side) for side in box]}")
    figure = boxes[2]
    if figure and figure[3] - figure[1] < 60:
        troubles.append(f"the figure is {figure[3] - figure[1]:.0f} px high")
    return troubles
