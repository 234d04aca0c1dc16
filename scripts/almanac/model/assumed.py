"""Times that an entry assumes of a rep, where no test of a lane group tells."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from almanac.model.entry import Seconds


@dataclass(frozen=True)
class Assumed:
    """The time in seconds that a rep is assumed to take where no test tells: for all lane groups,
    or by group. ``ratio`` as that of a send-off.
    """

    every: Seconds | None = None
    by_group: Mapping[str, Seconds] = field(default_factory=dict)
    ratio: Fraction = Fraction(1)

    def of(self, group: str) -> Seconds | None:
        """What is assumed for a lane group, None where nothing is."""
        return self.by_group.get(group, self.every)
