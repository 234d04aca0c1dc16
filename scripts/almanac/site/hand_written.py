"""The pages that are written by hand: those of them that a club has a use for."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from almanac.resources import SITE_SOURCE
from almanac.site.front_matter import front_matter_of

# What a page says in water, and what in its place on land.
_APART = re.compile(
    r"<!-- in water -->\n(.*?)<!-- on land -->\n(.*?)<!-- everywhere -->\n", re.DOTALL
)


def hand_written(has_water: bool) -> Iterator[tuple[Path, str]]:
    """Every page by hand, with its text; a club without water has none that is about it, and
    of the others what is said on land.
    """
    for path in sorted((SITE_SOURCE / "pages").glob("*.md")):
        text = path.read_text("utf-8")
        if has_water or front_matter_of(text)[0].get("where") != "water":
            yield path, _APART.sub(r"\1" if has_water else r"\2", text)
