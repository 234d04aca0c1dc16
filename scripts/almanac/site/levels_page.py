"""The page of levels: what each asks, who swims at it, what leads on from it and by what it is
timed.
"""

from __future__ import annotations

from almanac.model.catalogue import Catalogue
from almanac.site.links import Page, link

LEVELS = "levels"


def levels_page(catalogue: Catalogue) -> Page:
    """Levels in their order, each with its squads and progressions; the last has none after it."""
    words = list(catalogue.words(LEVELS).items())
    later = [word.title for _, word in words[1:]]
    return Page(
        "levels.md",
        "levels",
        {
            "levels": [
                {
                    "id": id,
                    "title": word.title,
                    "means": word.means,
                    "next": following,
                    "squads": [
                        squad.title for squad in catalogue.club.squads.values() if squad.level == id
                    ],
                    "progressions": [
                        (link(own), len(own.stages))
                        for own in catalogue.progressions.values()
                        if own.level == id
                    ],
                }
                for (id, word), following in zip(words, [*later, ""], strict=False)
            ],
            "benchmarks": bool(catalogue.benchmarks),
        },
    )
