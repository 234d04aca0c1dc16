"""The pages that are written by hand: those of them that a club has a use for."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from almanac.resources import SITE_SOURCE

_OF_WATER = re.compile(r"\A---\n(?:.+\n)*?where: water\n")


def hand_written(has_water: bool) -> Iterator[tuple[Path, str]]:
    """Every page by hand, with its text; a club without water has none that is about it."""
    for path in sorted((SITE_SOURCE / "pages").glob("*.md")):
        text = path.read_text("utf-8")
        if has_water or not _OF_WATER.match(text):
            yield path, text
