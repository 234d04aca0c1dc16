"""QR codes of pages, drawn once and kept: a page's address seldom changes, and a code takes longer
to draw than the rest of its page.
"""

from __future__ import annotations

import json
from collections.abc import Mapping

import segno

from almanac.cache import Cache

# One of the eight masks of a QR code for all: a reader takes any, and weighing each against each
# takes five times as long.
_MASK = 3
_KEY = "codes"


class QrCodes:
    """The codes of one site. What was drawn for it before is read at the first code asked for."""

    def __init__(self, site: str) -> None:
        self._cache = Cache("qr", (site,))
        self._known: dict[str, str] | None = None
        self.used: dict[str, str] = {}

    def of(self, address: str) -> str:
        """The code of an address."""
        if self._known is None:
            stored = self._cache.get(_KEY)
            self._known = json.loads(stored) if stored else {}
        self.used[address] = self._known.get(address) or qr_code(address)
        return self.used[address]

    def take(self, drawn: Mapping[str, str]) -> None:
        """Take codes that were asked for of a copy of this."""
        self.used.update(drawn)

    def save(self) -> None:
        """Keep the codes that were asked for, where they are not kept already."""
        if self.used != self._known:
            self._cache.put(_KEY, json.dumps(self.used).encode())
            self._cache.trim()


def qr_code(address: str) -> str:
    """A QR code (ISO/IEC 18004, error correction M) of an address, as SVG in black on white with
    its quiet zone.
    """
    code = segno.make(address, micro=False, error="m", mask=_MASK)
    svg = code.svg_inline(
        border=4, omitsize=True, dark="#000", light="#fff", svgclass="code", lineclass=None
    )
    return svg.replace("<svg ", '<svg role="img" aria-label="QR code of this page" ', 1)
