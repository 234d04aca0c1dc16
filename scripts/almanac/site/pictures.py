"""Body figures as small files of their own, for lists: one file for all drills that are drawn
alike.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping

from almanac.model.knowledge import Drill
from almanac.site.drawing_html import picture

FOLDER = "figures"


def picture_of(drill: Drill) -> tuple[str, str]:
    """The name of a drill's picture, which follows from what it shows, and the SVG."""
    svg = picture(drill)
    return hashlib.sha256(svg.encode()).hexdigest()[:10], svg


def picture_names(drills: Mapping[str, Drill]) -> tuple[dict[str, str], dict[str, str]]:
    """By drill id the name of its picture; and by name the SVG."""
    names: dict[str, str] = {}
    drawn: dict[str, str] = {}
    for id, drill in drills.items():
        names[id], svg = picture_of(drill)
        drawn[names[id]] = svg
    return names, drawn


def picture_files(drawn: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Every picture, as its path below the site's root and its text."""
    for name, svg in drawn.items():
        yield f"{FOLDER}/{name}.svg", svg
