"""When reps leave: send-offs, for all or by lane group, one or one for each rep."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property

Times = tuple[float, ...]  # in seconds: one for every rep, or one for each


@dataclass(frozen=True)
class Sendoff:
    """The interval a rep leaves on, in seconds: for all, or by lane group; one for every rep, or
    one for each.

    ``ratio`` is 1 as an entry writes it; a set laid into another course carries the ratio of the
    lengths.
    """

    every: Times = ()
    by_group: Mapping[str, Times] = field(default_factory=dict)
    ratio: Fraction = Fraction(1)

    def times(self, group: str) -> Times:
        """The group's intervals as written; none where the set names none for it."""
        return self.by_group.get(group, self.every)

    def of(self, group: str, number: int = 1) -> float | None:
        """The group's interval for rep ``number`` (from 1), or None where the set names none for
        it. Reps beyond the last that is named leave as that one does.
        """
        times = self.times(group)
        return times[min(number, len(times)) - 1] if times else None

    @cached_property
    def differs(self) -> bool:
        """Whether some group leaves on one interval after one rep and on another after the next."""
        return any(len(times) > 1 for times in (self.every, *self.by_group.values()))
