"""Body figures as small files of their own, for lists: one file for all drills that are drawn
alike.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping

from almanac.model.catalogue import Catalogue
from almanac.model.knowledge import Drill
from almanac.site.drawing_html import picture

FOLDER = "figures"


def picture_of(catalogue: Catalogue, drill: Drill) -> tuple[str, str]:
    """The name of a drill's picture, which follows from what it shows, and the SVG."""
    svg = picture(catalogue, drill)
    return hashlib.sha256(svg.encode()).hexdigest()[:10], svg


def picture_names(catalogue: Catalogue) -> tuple[dict[str, str], dict[str, str]]:
    """By drill id the name of its picture; and by name the SVG."""
    names: dict[str, str] = {}
    drawn: dict[str, str] = {}
    for id, drill in catalogue.drills.items():
        names[id], svg = picture_of(catalogue, drill)
        drawn[names[id]] = svg
    return names, drawn


def picture_files(drawn: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Every picture, as its path below the site's root and its text."""
    for name, svg in drawn.items():
        yield f"{FOLDER}/{name}.svg", svg
