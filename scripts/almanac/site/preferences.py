"""What the chooser of lane group, pool and units offers; the choice itself is made and kept in the
browser.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.units import COURSES, Course

EVERY_GROUP = ("", "every lane group")


def preferences(
    analysis: Analysis,
    own_group: str = "",
    own_pool: str = "",
    together: Collection[str] = (),
    meant: Collection[str] = (),
) -> dict[str, Any]:
    """What the chooser of lane group, pool and units offers; the first of each where a page is
    written for none.

    ``together`` are the lane groups of a page that is for no other, and may be read for all of
    them at once. ``meant`` are those that a page is written for: they are offered first, and a page
    says where none of them is a reader's own.
    """
    catalogue = analysis.catalogue
    groups = [(id, catalogue.lane_groups[id].title) for id in together or catalogue.lane_groups]
    own = [*meant, *together]
    squads = dict.fromkeys(catalogue.lane_groups[id].squad for id in own)
    home = catalogue.club.home_course
    return {
        "groups": [*groups, EVERY_GROUP] if len(together) > 1 else groups,
        "meant": [group for group in groups if group[0] in meant],
        "meant_ids": own,
        "meant_for": " and ".join(catalogue.club.squads[squad].title for squad in squads),
        "group_word": "Lane group" if catalogue.club.waters else "Group",
        "pools": list(COURSES.values()) if catalogue.club.waters else [],
        "group": own_group or (groups[0][0] if groups else ""),
        "pool": own_pool or str(home),
        "pool_shown": (Course.parse(own_pool) if own_pool else home).shown,
    }
