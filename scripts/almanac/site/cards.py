"""Deck cards: what stands at the end of every entry's page for print, with a QR code that leads
back to the page.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Any
from urllib.parse import urljoin

from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.kinds import KIND, WITH_PAGES
from almanac.site.links import Page
from almanac.site.preferences import preferences
from almanac.site.qr_codes import qr_code


def cards_page(analysis: Analysis) -> Page:
    """The page that lays gathered cards out for printing."""
    return Page("cards.md", "cards", {"choosing": preferences(analysis)})


def card_context(
    page: Page, address: str, draw: Callable[[str], str] = qr_code
) -> Mapping[str, Any] | None:
    """What the card of an entry's page shows beside what the page shows; None for a page that is no
    entry's.

    ``address`` is the site's own, "" where the club has not said it: such a card has no code, and
    names its file. ``draw`` gives the code of an address as SVG.
    """
    if page.template not in WITH_PAGES:
        return None
    href = page.file.removesuffix(".md") + ".html"
    figure = str(page.context.get("figure", ""))
    whole = urljoin(address.rstrip("/") + "/", href) if address else ""
    return {
        "kind": KIND[page.template].title,
        "template": page.template,
        "href": href,
        "address": whole,
        "code": Markup(draw(whole)) if whole else "",
        "drawing_box": _view_box(figure),
        "drawing_has_words": "<text" in figure,
    }


def _view_box(svg: str) -> str:
    found = re.search(r'viewBox="([^"]*)"', svg)
    return found[1] if found else ""
