"""Body figures as small files of their own, for lists: one file for all drills that are drawn
alike.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping

FOLDER = "figures"


def named(pictures: Mapping[str, str]) -> dict[str, str]:
    """By drill id the name of its picture, which follows from what it shows; ``pictures`` holds
    the SVG of each drill.
    """
    return {id: hashlib.sha256(svg.encode()).hexdigest()[:10] for id, svg in pictures.items()}


def picture_files(pictures: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Every picture once, as its path below the site's root and its text."""
    for name, drill in {name: drill for drill, name in named(pictures).items()}.items():
        yield f"{FOLDER}/{name}.svg", pictures[drill]
