"""Deck cards: what stands at the end of every entry's page for print, with a QR code that leads
back to the page.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any
from urllib.parse import urljoin

import segno
from markupsafe import Markup

from almanac.analysis.analysis import Analysis
from almanac.kinds import KIND, WITH_PAGES
from almanac.site.links import Page
from almanac.site.preferences import preferences

# One of the eight masks of a QR code for all: a reader takes any, and weighing each against each
# takes five times as long.
_MASK = 3


def cards_page(analysis: Analysis) -> Page:
    """The page that lays gathered cards out for printing."""
    return Page("cards.md", "cards", {"choosing": preferences(analysis)})


def card_context(page: Page, address: str) -> Mapping[str, Any] | None:
    """What the card of an entry's page shows beside what the page shows; None for a page that is no
    entry's.

    ``address`` is the site's own, "" where the club has not said it: such a card has no code, and
    names its file.
    """
    if page.template not in WITH_PAGES:
        return None
    href = page.file.removesuffix(".md") + ".html"
    whole = urljoin(address.rstrip("/") + "/", href) if address else ""
    return {
        "kind": KIND[page.template].title,
        "href": href,
        "address": whole,
        "code": qr_code(whole) if whole else "",
        "drawing_box": _view_box(str(page.context.get("figure", ""))),
    }


def _view_box(svg: str) -> str:
    found = re.search(r'viewBox="([^"]*)"', svg)
    return found[1] if found else ""


def qr_code(address: str) -> Markup:
    """A QR code (ISO/IEC 18004, error correction M) of an address, as SVG in black on white with
    its quiet zone.
    """
    code = segno.make(address, micro=False, error="m", mask=_MASK)
    svg = code.svg_inline(
        border=4, omitsize=True, dark="#000", light="#fff", svgclass="code", lineclass=None
    )
    return Markup(svg.replace("<svg ", '<svg role="img" aria-label="QR code of this page" ', 1))
