"""What the author of a set believes of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class GroupExpectation:
    """What the author believes of one lane group's totals, and of its distance by facet."""

    distance: int | None = None
    reps: int | None = None
    lengths: int | None = None
    by: Mapping[str, Mapping[str, float]] = field(default_factory=dict)


@dataclass(frozen=True)
class Expectation:
    """What the author believes of the computed figures: for whichever lane group it is meant for,
    and those of one group alone.
    """

    distance: int | None = None
    reps: int | None = None
    lengths: int | None = None
    by_group: Mapping[str, GroupExpectation] = field(default_factory=dict)
    clock: Mapping[str, float] = field(default_factory=dict)
    by: Mapping[str, Mapping[str, float]] = field(default_factory=dict)
