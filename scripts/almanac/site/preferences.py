"""What the chooser of lane group, pool and units offers; the choice itself is made and kept in the
browser.
"""

from __future__ import annotations

from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.units import COURSES


def preferences(analysis: Analysis, own_group: str = "", own_pool: str = "") -> dict[str, Any]:
    """What the chooser of lane group, pool and units offers; the first of each where a page is
    written for none.
    """
    catalogue = analysis.catalogue
    groups = [(id, group.title) for id, group in catalogue.lane_groups.items()]
    home = next((str(pool.course) for pool in catalogue.club.pools.values()), next(iter(COURSES)))
    return {
        "groups": groups,
        "pools": list(COURSES),
        "group": own_group or (groups[0][0] if groups else ""),
        "pool": own_pool or home,
    }
