"""QR codes of pages, drawn once and kept: a page's address seldom changes, and a code takes longer
to draw than the rest of its page.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence

import segno

from almanac.cache import Cache

# One of the eight masks of a QR code for all: a reader takes any, and weighing each against each
# takes five times as long.
_MASK = 3
_QUIET = 4
_DARK = re.compile(rb"\x01+")
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
    its quiet zone of four modules.
    """
    rows = segno.make(address, micro=False, error="m", mask=_MASK).matrix
    size = len(rows) + 2 * _QUIET
    return (
        f'<svg role="img" aria-label="QR code of this page" viewBox="0 0 {size} {size}" '
        f'class="code"><path fill="#fff" d="M0 0h{size}v{size}h-{size}z"/>'
        f'<path stroke="#000" d="{_dark_runs(rows)}"/></svg>'
    )


def _dark_runs(rows: Sequence[bytes | bytearray]) -> str:
    """The dark modules as a path: for each run a step from the end of the last one, and a line. The
    library's own writer asks for each module by itself, and takes three times as long.
    """
    steps = [f"M{_QUIET} {_QUIET}.5"]
    x = y = 0
    for at, row in enumerate(rows):
        for run in _DARK.finditer(row):
            start, end = run.span()
            steps.append(f"m{start - x} {at - y}h{end - start}")
            x, y = end, at
    return "".join(steps).replace("m0 0h", "h", 1)
