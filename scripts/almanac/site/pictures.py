"""Body figures as small files of their own, for lists: one file for all drills that are drawn
alike. It stands beside the page of the first of them, which shows the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

FOLDER = "drills"


def named(pictures: Mapping[str, str]) -> dict[str, str]:
    """By drill id the name of its picture: the id of the first drill that is drawn like it.
    ``pictures`` holds the SVG of each drill.
    """
    first: dict[str, str] = {}
    return {id: first.setdefault(svg, id) for id, svg in pictures.items()}


def picture_files(pictures: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Every picture once, as its path below the site's root and its text."""
    for name in dict.fromkeys(named(pictures).values()):
        yield f"{FOLDER}/{name}.svg", pictures[name]
