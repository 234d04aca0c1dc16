"""How many adults a practice has at least, whatever is done in it: by the house rules, for so many
heads in this water. Local codes and the pool operator may ask for more.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from almanac.model.policy import Policy
from almanac.model.pool import Pool


@dataclass(frozen=True)
class AdultsNeeded:
    """The ``fewest`` adults, and the most heads to ``each`` of them; 0 where all can stand."""

    fewest: int
    each: int

    def least(self, heads: int) -> int:
        """The fewest adults for so many heads."""
        return max(self.fewest, math.ceil(heads / self.each) if self.each else 0)


def watch(policy: Policy, level: str, pool: Pool) -> AdultsNeeded:
    """How a level is watched in a pool: where not everybody can stand everywhere by
    ``deep_heads_each_adult_most``, where nobody can anywhere, or nobody knows how deep it is, by
    ``all_deep_heads_each_adult_most``; on land by ``land_heads_each_adult_most``.
    """
    if pool.is_land:
        fewest = int(policy.limit("adults_least"))
        return AdultsNeeded(fewest, int(policy.limit("land_heads_each_adult_most")))
    standing, fewest = policy.limit("standing_depth_most"), int(policy.limit("adults_least"))
    depth = pool.depth_m
    if depth.most is not None and depth.most <= standing:
        return AdultsNeeded(fewest, 0)
    all_deep = depth.least is None or depth.least > standing
    name = "all_deep_heads_each_adult_most" if all_deep else "deep_heads_each_adult_most"
    return AdultsNeeded(fewest, int(policy.of_level(level).limit(name)))
