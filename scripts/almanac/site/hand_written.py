"""The pages that are written by hand: those of them that a club has a use for."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from almanac.resources import SITE_SOURCE
from almanac.site.front_matter import front_matter_of


def hand_written(has_water: bool) -> Iterator[tuple[Path, str]]:
    """Every page by hand, with its text; a club without water has none that is about it."""
    for path in sorted((SITE_SOURCE / "pages").glob("*.md")):
        text = path.read_text("utf-8")
        if has_water or front_matter_of(text)[0].get("where") != "water":
            yield path, text
